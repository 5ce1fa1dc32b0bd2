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
var plans = map[Op]planner{Variables: askVariables, Trials: askTrials, Limits: askLimits,
	Tolerances: askTolerances, Spread: askSpread, Costs: askCosts, Optimise: askOptimise}

// maxTrials is the largest batch that one request may hold.
const maxTrials = 1024

func askVariables(q Request, j *job.Job, _ core) (Response, error) {
	if q.Study == nil {
		return Response{}, missing("study")
	}
	return Response{Variables: plan.Named(j, q.Study.Route)}, nil
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
	limits, err := cure.Limits(*q.Limits, c.evaluate)
	return Response{Limits: limits}, err
}

func missing(member string) error {
	return fault.New(fault.Missing, member, "", fmt.Sprintf("Send %q beside \"op\".", member))
}
