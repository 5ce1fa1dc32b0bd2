package api

import (
	"fmt"
	"strconv"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// Predicting are the operations that a form needs, and trials: what others' searches ask of a model.
func Predicting() Group { return predicting(cure.Compute) }

// predictor computes a job that validation has accepted.
type predictor func(report.Speaker, job.Job, ...result.Kind) (result.Result, error)

// predicting is Predicting with the model given, so that a test can hand it one that breaks.
func predicting(predict predictor) Group {
	return Group{
		{Describe, func(q Request) (Response, error) {
			c := describe(q.say)
			return Response{Catalogue: &c}, nil
		}},
		{Demo, func(Request) (Response, error) {
			j := job.Demo()
			return Response{Job: &j}, nil
		}},
		{Check, func(q Request) (Response, error) {
			j, err := q.decode()
			return Response{Job: &j}, err
		}},
		{Predict, func(q Request) (Response, error) {
			j, err := q.decode()
			if err != nil {
				return Response{}, err
			}
			if err := known(q.Routes); err != nil {
				return Response{}, err
			}
			r, err := predict(q.say, j, q.Routes...)
			return Response{Result: &r}, err
		}},
		{MoistAir, Request.moistAir},
		{Derive, Request.derive},
		{Trials, askTrials(plan.Batch)},
	}
}

// known refuses what is the kind of no route. One that the job does not have is no fault: it gives nothing.
func known(routes []result.Kind) error {
	for i, k := range routes {
		if k != result.Room && k != result.StaticOven && k != result.Tunnel {
			return fault.New(fault.Choice, fmt.Sprintf("routes[%d]", i), strconv.Quote(string(k)), words.Told("Give room, static_oven or tunnel."))
		}
	}
	return nil
}

// derive answers derive.
func (q Request) derive() (Response, error) {
	if q.Derive == nil {
		return Response{}, missing("derive")
	}
	a, err := derive.Work(*q.Derive)
	return Response{Derived: &a}, err
}

// maxTrials is the largest batch that one request may hold.
const maxTrials = 1024

// askTrials answers trials, judging them by evaluate.
func askTrials(evaluate plan.Evaluate) func(q Request) (Response, error) {
	return func(q Request) (Response, error) {
		j, err := q.decode()
		if err != nil {
			return Response{}, err
		}
		t := q.Trials
		if t == nil {
			return Response{}, missing("trials")
		}
		if len(t.Trials) > maxTrials {
			return Response{}, fault.New(fault.Limit, "trials.trials", words.Told("{count} settings", "count", len(t.Trials)), words.Told("Send at most {max_trials} at once.", "max_trials", maxTrials))
		}
		t.Study.Job = &j
		worded := cure.Worded(q.say, evaluate)
		study, err := t.Study.Settle(worded)
		if err != nil {
			return Response{}, err
		}
		outcomes, err := worded(study, t.Trials)
		return Response{Outcomes: outcomes}, err
	}
}
