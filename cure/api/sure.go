package api

import (
	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
)

func (planner) tolerances(q Request, j *job.Job) (Response, error) {
	if q.Study == nil {
		return Response{}, missing("study")
	}
	tolerances, err := plan.DefaultTolerances(j, q.Study.Route)
	return Response{Tolerances: tolerances}, err
}

func (p planner) spread(q Request, j *job.Job) (Response, error) {
	if q.Spread == nil {
		return Response{}, missing("spread")
	}
	q.Spread.Study.Job = j
	spread, err := cure.Spread(q.say, *q.Spread, p.evaluate, func(s plan.Spread) { p.tell(Response{Spread: &s}) })
	return Response{Spread: &spread}, err
}

func (p planner) costs(q Request, j *job.Job) (Response, error) {
	if q.Costs == nil {
		return Response{}, missing("costs")
	}
	q.Costs.Job = j
	costs, err := cure.Costs(q.say, *q.Costs, p.evaluate, func(a plan.Costs) { p.tell(Response{Costs: &a}) })
	return Response{Costs: &costs}, err
}

func (p planner) optimise(q Request, j *job.Job) (Response, error) {
	if q.Optimise == nil {
		return Response{}, missing("optimise")
	}
	q.Optimise.Study.Job = j
	optimum, err := cure.Optimise(q.say, *q.Optimise, p.evaluate, func(a plan.Optimum) { p.tell(Response{Optimum: &a}) })
	return Response{Optimum: &optimum}, err
}
