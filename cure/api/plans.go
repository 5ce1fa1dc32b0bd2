package api

import (
	"strconv"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/words"
)

// Planning are the operations that search. Each evaluates many settings, one after the other.
func Planning() Group { return planner{evaluate: plan.Batch, tell: func(Response) {}}.group() }

// planner answers planning questions.
type planner struct {
	evaluate plan.Evaluate
	tell     func(Response) // takes what is known so far
}

func (p planner) group() Group {
	var g Group
	for _, o := range []struct {
		op  Op
		ask func(Request, *job.Job) (Response, error)
	}{
		{Variables, p.variables}, {Tolerances, p.tolerances}, {Apply, p.apply}, {Limits, p.limits}, {Window, p.window},
		{Spread, p.spread}, {Costs, p.costs}, {Optimise, p.optimise},
	} {
		g = append(g, operation{o.op, func(q Request) (Response, error) {
			j, err := q.decode()
			if err != nil {
				return Response{}, err
			}
			return o.ask(q, &j)
		}})
	}
	return g
}

func (p planner) variables(q Request, j *job.Job) (Response, error) {
	if q.Study == nil {
		return Response{}, missing("study")
	}
	q.Study.Job = j
	study, aims, err := cure.Aims(q.say, *q.Study, p.evaluate)
	if err != nil {
		return Response{}, err
	}
	tolerances, varied, err := plan.UsuallyVaried(study)
	return Response{Variables: plan.Named(j, study.Route), Aims: &aims, Tolerances: tolerances, Varied: varied}, err
}

func (p planner) limits(q Request, j *job.Job) (Response, error) {
	if q.Limits == nil {
		return Response{}, missing("limits")
	}
	q.Limits.Study.Job = j
	limits, err := cure.Limits(q.say, *q.Limits, p.evaluate, func(soFar []plan.Limit) { p.tell(Response{Limits: soFar}) })
	return Response{Limits: limits}, err
}

func (p planner) window(q Request, j *job.Job) (Response, error) {
	if q.Window == nil {
		return Response{}, missing("window")
	}
	q.Window.Study.Job = j
	w, err := cure.Window(q.say, *q.Window, p.evaluate, func(w plan.Window) { p.tell(Response{Window: &w}) })
	return Response{Window: &w}, err
}

// apply makes the settings of a trial in the job; whether it can then be computed is for predict to say.
func (planner) apply(q Request, j *job.Job) (Response, error) {
	if q.Study == nil || q.Setting == nil {
		return Response{}, missing("study and setting")
	}
	q.Study.Job = j
	changed, err := q.Study.At(q.Setting)
	return Response{Job: &changed}, err
}

func missing(member string) error {
	return fault.New(fault.Missing, member, "", words.Told(`Send {member} beside "op".`, "member", strconv.Quote(member)))
}
