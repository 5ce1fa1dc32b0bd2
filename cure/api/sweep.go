package api

import (
	"encoding/json"
	"errors"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/words"
)

// Host is what carries out the parts of a sweep.
type Host struct {
	// Pool answers many requests for Handle, in their order. An error ends the sweep.
	Pool func(requests [][]byte) ([][]byte, error)
	// Workers is how many requests the pool carries out at once.
	Workers int
	// Tell takes what is known so far, as a response of the sweep's own kind; nil where nobody listens.
	Tell func(response []byte)
}

// Sweep answers a planning request like Handle, but gives the settings that have to be judged to a host, as requests of
// the operation trials.
func Sweep(w *words.Words, request []byte, host Host) []byte {
	tell := func(r Response) {
		if host.Tell != nil {
			r.OK, r.Version, r.Faults = true, Version, []Fault{}
			host.Tell(written(r))
		}
	}
	return written(answer(w, job.NewRules(), request, planner{evaluate: host.share, tell: tell}.group()))
}

// A batch is cut into several pieces for each worker, so that none waits for long when some settings take longer than
// others; a piece costs the reading of its job, worth less than one setting.
const piecesPerWorker = 3

// share cuts a batch into pieces and puts the answers together.
func (h Host) share(s plan.Study, trials []plan.Trial) ([]plan.Outcome, error) {
	text, err := job.Encode(*s.Job)
	if err != nil {
		return nil, err
	}
	pieces := max(1, h.Workers) * piecesPerWorker
	size := min(maxTrials, max(1, (len(trials)+pieces-1)/pieces))
	var requests [][]byte
	for at := 0; at < len(trials); at += size {
		part := trials[at:min(len(trials), at+size)]
		request, err := json.Marshal(Request{Op: Trials, Job: text, Trials: &TrialSet{Study: s, Trials: part}})
		if err != nil {
			return nil, err
		}
		requests = append(requests, request)
	}
	replies, err := h.Pool(requests)
	if err != nil {
		return nil, err
	}
	var outcomes []plan.Outcome
	for _, reply := range replies {
		var r Response
		if err := json.Unmarshal(reply, &r); err != nil {
			return nil, err
		}
		switch {
		case len(r.Faults) > 0:
			f := r.Faults[0].Fault
			return nil, &f
		case !r.OK:
			return nil, errors.New(r.Message)
		}
		outcomes = append(outcomes, r.Outcomes...)
	}
	if len(outcomes) != len(trials) {
		return nil, fault.New(fault.Numeric, "pool", words.Told("settings were lost"), words.Told("Try again."))
	}
	return outcomes, nil
}
