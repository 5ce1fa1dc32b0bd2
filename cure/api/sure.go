package api

import (
	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
)

func askTolerances(q Request, j *job.Job, _ core) (Response, error) {
	if q.Study == nil {
		return Response{}, missing("study")
	}
	tolerances, err := plan.DefaultTolerances(j, q.Study.Route)
	return Response{Tolerances: tolerances}, err
}

func askSpread(q Request, j *job.Job, c core) (Response, error) {
	if q.Spread == nil {
		return Response{}, missing("spread")
	}
	q.Spread.Study.Job = j
	spread, err := cure.Spread(*q.Spread, c.evaluate, func(s plan.Spread) { c.tell(Response{Spread: &s}) })
	return Response{Spread: &spread}, err
}

func askCosts(q Request, j *job.Job, c core) (Response, error) {
	if q.Costs == nil {
		return Response{}, missing("costs")
	}
	q.Costs.Job = j
	costs, err := cure.Costs(*q.Costs, c.evaluate, func(a plan.Costs) { c.tell(Response{Costs: &a}) })
	return Response{Costs: &costs}, err
}

func askOptimise(q Request, j *job.Job, c core) (Response, error) {
	if q.Optimise == nil {
		return Response{}, missing("optimise")
	}
	q.Optimise.Study.Job = j
	optimum, err := cure.Optimise(*q.Optimise, c.evaluate, func(a plan.Optimum) { c.tell(Response{Optimum: &a}) })
	return Response{Optimum: &optimum}, err
}
