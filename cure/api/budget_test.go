package api

import (
	"encoding/json"
	"os"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words/languages"
)

// Fits and batches of settings end with what they may cost, and are answered where that is enough.
func TestBudget(t *testing.T) {
	j, err := job.Encode(quick())
	if err != nil {
		t.Fatal(err)
	}
	weighing, err := os.ReadFile("../../testdata/invented-trials/weight.csv")
	if err != nil {
		t.Fatal(err)
	}
	room, err := job.Encode(job.Default())
	if err != nil {
		t.Fatal(err)
	}
	area := 0.02
	weigh := Request{Op: FitTrial, Job: room, Table: string(weighing), Trial: &fit.Question{Kind: trial.Weight, Area: &area, Bootstrap: 10}}
	settings := Request{Op: Trials, Job: j, Trials: &TrialSet{Study: plan.Study{Route: result.Tunnel}, Trials: make([]plan.Trial, 5)}}
	enough := Budget{Cells: 64, Steps: 100_000, Settings: 20, Search: 2_000_000, Resamplings: 20, Runs: 1000}
	for name, c := range map[string]struct {
		ask    Request
		change func(*Budget)
		code   fault.Code
	}{
		"a fit":                {weigh, func(*Budget) {}, ""},
		"too many resamplings": {weigh, func(b *Budget) { b.Resamplings = 5 }, fault.Limit},
		"too many runs":        {weigh, func(b *Budget) { b.Runs = 20 }, fault.Limit},
		"settings":             {settings, func(*Budget) {}, ""},
		"too many settings":    {settings, func(b *Budget) { b.Settings = 4 }, fault.Limit},
		"too many steps":       {settings, func(b *Budget) { b.Search = 100 }, fault.Limit},
	} {
		b := enough
		c.change(&b)
		question, err := json.Marshal(c.ask)
		if err != nil {
			t.Fatal(err)
		}
		var r Response
		if err := json.Unmarshal(Offer(languages.English(), Within(b)...)(question), &r); err != nil {
			t.Fatal(err)
		}
		if c.code == "" && !r.OK || c.code != "" && (len(r.Faults) != 1 || r.Faults[0].Code != c.code) {
			t.Errorf("%s: %v %q %+v", name, r.OK, r.Message, r.Faults)
		}
	}
}
