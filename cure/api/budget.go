package api

import (
	"encoding/json"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/words"
)

// Budget bounds what one question may cost, for a service that anybody may ask.
type Budget struct {
	Cells    int // cells through the film
	Steps    int // step budget of a job, which all runs of a prediction share
	Settings int // settings that a search may judge
	Search   int // steps that all settings of a search may take together

	Resamplings int // that check the intervals of a fit
	Runs        int // of the model that a fit may take; all of them share the steps of a search
}

// Within are the operations of a service: predictions, fits, schemas and the searches, none of which may cost more than the
// budget. Errors: fault.Limit, with what is allowed.
func Within(b Budget) []Group {
	var g Group
	for _, o := range append(append(append(Predicting(), Fitting()...), Planning()...), Schemas()...) {
		g = append(g, operation{o.op, b.guard(b.counted(o))})
	}
	return []Group{g}
}

// guard refuses a job whose grid or step budget is larger than the service gives; what it leaves out counts as the default.
func (b Budget) guard(do func(Request) (Response, error)) func(Request) (Response, error) {
	usual := job.Default().Numerics
	return func(q Request) (Response, error) {
		var j struct {
			Numerics struct {
				Cells float64 `json:"film_cells"`
				Steps float64 `json:"step_budget"`
			} `json:"numerics"`
		}
		j.Numerics.Cells, j.Numerics.Steps = float64(usual.FilmCells), float64(usual.StepBudget)
		// What is no job, or holds something else there, the operation itself complains of.
		if len(q.Job) > 0 && json.Unmarshal(q.Job, &j) == nil {
			for _, n := range []struct {
				path string
				got  float64
				most int
			}{{"numerics.film_cells", j.Numerics.Cells, b.Cells}, {"numerics.step_budget", j.Numerics.Steps, b.Steps}} {
				if n.got > float64(n.most) {
					return Response{}, fault.New(fault.Limit, n.path, fault.Number(n.got), words.Told("This service allows at most {most}.", "most", n.most))
				}
			}
		}
		return do(q)
	}
}

// counted is an operation that ends with fault.Limit where it would cost more than the budget has.
func (b Budget) counted(o operation) func(Request) (Response, error) {
	switch o.op {
	case Trials:
		return func(q Request) (Response, error) { return askTrials(b.evaluate(o.op))(q) }
	case FitTrial:
		return func(q Request) (Response, error) { return b.fit(o, q) }
	}
	for _, search := range Planning() {
		if search.op != o.op {
			continue
		}
		return func(q Request) (Response, error) {
			for _, s := range (planner{evaluate: b.evaluate(o.op), tell: func(Response) {}}).group() {
				if s.op == o.op {
					return s.do(q)
				}
			}
			return o.do(q)
		}
	}
	return o.do
}

// evaluate judges settings until as many as the budget allows are judged, or have taken as many steps. It judges them one by one,
// so that it never takes more than one setting too much.
func (b Budget) evaluate(op Op) plan.Evaluate {
	left, steps := b.Settings, b.Search
	return func(s plan.Study, trials []plan.Trial) ([]plan.Outcome, error) {
		advice := words.Told("Ask for less at once: fewer things to turn, a coarser picture.")
		if left -= len(trials); left < 0 {
			return nil, fault.New(fault.Limit, string(op), words.Told("the search needs more than {settings} settings", "settings", b.Settings), advice)
		}
		outcomes := make([]plan.Outcome, 0, len(trials))
		for i := range trials {
			one, err := plan.Batch(s, trials[i:i+1])
			if err != nil {
				return nil, err
			}
			if steps -= one[0].Judgement.Spent; steps < 0 {
				return nil, fault.New(fault.Limit, string(op), words.Told("the search needs more than {steps} steps", "steps", b.Search), advice)
			}
			outcomes = append(outcomes, one...)
		}
		return outcomes, nil
	}
}

// fit refuses a fit that would be checked by more resamplings than the service gives, and bounds its runs and the steps of each.
func (b Budget) fit(o operation, q Request) (Response, error) {
	if q.Trial == nil {
		return o.do(q)
	}
	if q.Trial.Bootstrap > b.Resamplings {
		return Response{}, fault.New(fault.Limit, "bootstrap", fault.Number(float64(q.Trial.Bootstrap)), words.Told("This service allows at most {most}.", "most", b.Resamplings))
	}
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	bounded := *q.Trial
	bounded.Runs = b.Runs
	j.Numerics.StepBudget = min(j.Numerics.StepBudget, b.Search/b.Runs)
	outcome, err := cure.Fit(q.say, j, []byte(q.Table), bounded)
	return Response{Outcome: &outcome}, err
}
