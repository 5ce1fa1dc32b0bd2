package api

import (
	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Fitting are the operations about the user's own trials.
func Fitting() Group {
	return Group{{TrialForms, Request.trialForms}, {ReadTable, Request.readTable}, {FitTrial, Request.fit}, {Adopt, Request.adopt}, {Drop, Request.drop}}
}

// trialForms answers trial_forms.
func (q Request) trialForms() (Response, error) {
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	f, err := cure.TrialForms(q.say, j)
	return Response{Forms: &f}, err
}

// fit answers fit.
func (q Request) fit() (Response, error) {
	if q.Trial == nil {
		return Response{}, fault.New(fault.Missing, "trial", "", words.Told(`Send the question, at least '{"kind": "weight"}', beside "table".`))
	}
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	o, err := cure.Fit(q.say, j, []byte(q.Table), *q.Trial)
	return Response{Outcome: &o}, err
}

// adopt answers adopt.
func (q Request) adopt() (Response, error) {
	if q.Adoption == nil {
		return Response{}, fault.New(fault.Missing, "adoption", "", words.Told("Send what the fit offered to adopt."))
	}
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	j, err = job.Adopt(j, *q.Adoption)
	return Response{Job: &j}, err
}

// drop answers drop.
func (q Request) drop() (Response, error) {
	j, err := q.decode()
	if err != nil {
		return Response{}, err
	}
	if j, err = job.Drop(j, q.Name); err != nil {
		return Response{}, err
	}
	return Response{Job: &j}, job.Validate(j)
}
