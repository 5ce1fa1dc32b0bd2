package api

import (
	"fmt"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
)

// planner answers one kind of planning question about a job.
type planner func(q Request, j *job.Job, c core) (Response, error)

// plans are the planning operations.
var plans = map[Op]planner{Variables: askVariables, Apply: apply, Trials: askTrials, Limits: askLimits, Window: askWindow,
	Tolerances: askTolerances, Spread: askSpread, Costs: askCosts, Optimise: askOptimise}

// maxTrials is the largest batch that one request may hold.
const maxTrials = 1024

func askVariables(q Request, j *job.Job, _ core) (Response, error) {
	if q.Study == nil {
		return Response{}, missing("study")
	}
	q.Study.Job = j
	study, aims, err := cure.Aims(*q.Study)
	if err != nil {
		return Response{}, err
	}
	tolerances, varied, err := plan.UsuallyVaried(study)
	return Response{Variables: plan.Named(j, study.Route), Aims: &aims, Tolerances: tolerances, Varied: varied}, err
}

func askTrials(q Request, j *job.Job, c core) (Response, error) {
	t := q.Trials
	if t == nil {
		return Response{}, missing("trials")
	}
	if len(t.Trials) > maxTrials {
		return Response{}, fault.New(fault.Limit, "trials.trials", fmt.Sprintf("%d settings", len(t.Trials)), fmt.Sprintf("Send at most %d at once.", maxTrials))
	}
	t.Study.Job = j
	study, err := t.Study.Settle()
	if err != nil {
		return Response{}, err
	}
	outcomes, err := c.evaluate(study, t.Trials)
	return Response{Outcomes: outcomes}, err
}

func askLimits(q Request, j *job.Job, c core) (Response, error) {
	if q.Limits == nil {
		return Response{}, missing("limits")
	}
	q.Limits.Study.Job = j
	limits, err := cure.Limits(*q.Limits, c.evaluate, func(soFar []plan.Limit) { c.tell(Response{Limits: soFar}) })
	return Response{Limits: limits}, err
}

func askWindow(q Request, j *job.Job, c core) (Response, error) {
	if q.Window == nil {
		return Response{}, missing("window")
	}
	q.Window.Study.Job = j
	w, err := cure.Window(*q.Window, c.evaluate, func(w plan.Window) { c.tell(Response{Window: &w}) })
	return Response{Window: &w}, err
}

// apply makes the settings of a trial in the job; whether it can then be computed is for predict to say.
func apply(q Request, j *job.Job, _ core) (Response, error) {
	if q.Study == nil || q.Setting == nil {
		return Response{}, missing("study and setting")
	}
	q.Study.Job = j
	changed, err := q.Study.At(q.Setting)
	return Response{Job: &changed}, err
}

func missing(member string) error {
	return fault.New(fault.Missing, member, "", fmt.Sprintf("Send %q beside \"op\".", member))
}
