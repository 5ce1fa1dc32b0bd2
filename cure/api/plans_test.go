package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words/languages"
)

// quick is the demo's tunnel at settings that compute fast.
func quick() job.Job {
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	j.Numerics.FilmCells, j.Numerics.PartCells, j.Numerics.RelativeTolerance = 10, 2, 1e-4
	return j
}

func planning(t *testing.T, q Request) []byte {
	t.Helper()
	j := quick()
	text, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	q.Job = text
	request, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	return request
}

var study = plan.Study{Route: result.Tunnel, Goal: &sim.Goal{AtExit: []result.MarkName{result.DryThrough}}}

func TestPlanningOperations(t *testing.T) {
	r := ask(t, string(planning(t, Request{Op: Variables, Study: &study})), canned)
	if !r.OK || len(r.Variables) < 8 || r.Variables[0].ID != plan.LineSpeed {
		t.Errorf("variables: %+v", r)
	}
	r = ask(t, string(planning(t, Request{Op: Trials, Trials: &TrialSet{Study: study, Trials: []plan.Trial{{}, {{Variable: plan.LineSpeed, Value: 0.03}}, {{Variable: plan.Coat, Value: -1}}}}})), canned)
	if !r.OK || len(r.Outcomes) != 3 || !r.Outcomes[0].Met() || r.Outcomes[2].Refused == "" {
		t.Errorf("trials: %+v", r)
	}
	r = ask(t, string(planning(t, Request{Op: Limits, Limits: &plan.LimitsQuestion{Study: study, Limits: []plan.LimitQuestion{{Variable: plan.LineSpeed}}}})), canned)
	if !r.OK || len(r.Limits) != 1 || r.Limits[0].Value == nil || r.Limits[0].Text == "" {
		t.Errorf("limits: %+v", r)
	}
	r = ask(t, string(planning(t, Request{Op: Apply, Study: &study, Setting: plan.Trial{{Variable: plan.LineSpeed, Value: 0.031}}})), canned)
	if !r.OK || r.Job == nil || r.Job.Tunnel.LineSpeed != 0.031 {
		t.Errorf("apply: %+v", r)
	}
}

func TestPlanningRefuses(t *testing.T) {
	lost := study
	lost.Route = result.Room
	for name, c := range map[string]struct {
		q    Request
		code fault.Code
	}{
		"no study":    {Request{Op: Variables}, fault.Missing},
		"no trials":   {Request{Op: Trials}, fault.Missing},
		"no limits":   {Request{Op: Limits}, fault.Missing},
		"no window":   {Request{Op: Window}, fault.Missing},
		"no trial":    {Request{Op: Apply, Study: &study}, fault.Missing},
		"no route":    {Request{Op: Trials, Trials: &TrialSet{Study: lost}}, fault.Missing},
		"no variable": {Request{Op: Apply, Study: &study, Setting: plan.Trial{{Variable: "charge", Value: 1}}}, fault.Choice},
		"too many":    {Request{Op: Trials, Trials: &TrialSet{Study: study, Trials: make([]plan.Trial, maxTrials+1)}}, fault.Limit},
		"same axis":   {Request{Op: Window, Window: &plan.WindowQuestion{Study: study, X: plan.Axis{Variable: plan.Coat}, Y: plan.Axis{Variable: plan.Coat}}}, fault.Conflict},
		"odd axis":    {Request{Op: Window, Window: &plan.WindowQuestion{Study: study, X: plan.Axis{Variable: plan.Coat, Low: 2, High: 1}, Y: plan.Axis{Variable: plan.LineSpeed}}}, fault.Conflict},
		"fine dots":   {Request{Op: Window, Window: &plan.WindowQuestion{Study: study, X: plan.Axis{Variable: plan.Coat}, Y: plan.Axis{Variable: plan.LineSpeed}, Points: 5000}}, fault.Range},
	} {
		r := ask(t, string(planning(t, c.q)), canned)
		if r.OK || len(r.Faults) != 1 || r.Faults[0].Code != c.code {
			t.Errorf("%s: %+v, want %s", name, r, c.code)
		}
	}
}

// TestSweepEqualsHandle: shared among workers or not, the answer has the same bytes; what is told on the way is of its kind.
func TestSweepEqualsHandle(t *testing.T) {
	for name, q := range map[string]Request{
		"limits": {Op: Limits, Limits: &plan.LimitsQuestion{Study: study, Limits: []plan.LimitQuestion{{Variable: plan.LineSpeed, Levers: true}}}},
		"window": {Op: Window, Window: &plan.WindowQuestion{Study: study, X: plan.Axis{Variable: plan.LineSpeed}, Y: plan.Axis{Variable: plan.ZonesInStep}, Points: 20}},
	} {
		request := planning(t, q)
		alone := Handle(languages.English(), request)
		told := 0
		for _, workers := range []int{1, 4} {
			shared := Sweep(languages.English(), request, Host{Workers: workers, Pool: func(requests [][]byte) ([][]byte, error) {
				replies := make([][]byte, len(requests))
				for i := range requests {
					replies[i] = Handle(languages.English(), requests[i])
				}
				return replies, nil
			}, Tell: func(news []byte) {
				told++
				var r Response
				err := json.Unmarshal(news, &r)
				early := name == "window" && r.Window != nil && !r.Window.Complete ||
					name == "limits" && len(r.Limits) == 1 && !r.Limits[0].Complete && r.Limits[0].Text != "" && len(r.Limits[0].Levers) == 0
				if err != nil || !r.OK || !early {
					t.Errorf("%s: told %.200s (%v)", name, news, err)
				}
			}})
			if !bytes.Equal(alone, shared) {
				t.Errorf("%s: shared among %d workers the answer differs:\n%.300s\n%.300s", name, workers, alone, shared)
			}
		}
		if told < 2 {
			t.Errorf("%s: told %d times", name, told)
		}
	}
}

// TestSweepEnds: a pool that fails, answers too little or refuses ends the sweep with a word.
func TestSweepEnds(t *testing.T) {
	request := planning(t, Request{Op: Limits, Limits: &plan.LimitsQuestion{Study: study, Limits: []plan.LimitQuestion{{Variable: plan.LineSpeed}}}})
	for want, pool := range map[string]func([][]byte) ([][]byte, error){
		"cancelled":           func([][]byte) ([][]byte, error) { return nil, errors.New("cancelled") },
		"settings were lost":  func([][]byte) ([][]byte, error) { return nil, nil },
		"the request is not":  func(r [][]byte) ([][]byte, error) { return [][]byte{Handle(languages.English(), []byte("}"))}, nil },
		"invalid character":   func(r [][]byte) ([][]byte, error) { return [][]byte{[]byte("}")}, nil },
		"panic: out of paper": func(r [][]byte) ([][]byte, error) { return [][]byte{[]byte(`{"message":"panic: out of paper"}`)}, nil },
	} {
		var r Response
		if err := json.Unmarshal(Sweep(languages.English(), request, Host{Workers: 2, Pool: pool}), &r); err != nil {
			t.Fatal(err)
		}
		said := r.Message
		if len(r.Faults) > 0 {
			said = r.Faults[0].Text
		}
		if r.OK || !strings.Contains(said, want) {
			t.Errorf("%+v, want %q", r, want)
		}
	}
}

// TestOutcomesSurviveJSON: an outcome read from bytes is the one that was written, so that a pool changes nothing.
func TestOutcomesSurviveJSON(t *testing.T) {
	j := quick()
	s := study
	s.Job = &j
	outcomes, err := plan.Batch(s, []plan.Trial{{}, {{Variable: plan.Coat, Value: -1}}})
	if err != nil {
		t.Fatal(err)
	}
	for i := range outcomes {
		// For who shares a budget out, and for who words a refusal, both in the same place.
		outcomes[i].Judgement.Spent, outcomes[i].Fault = 0, nil
	}
	text, err := json.Marshal(outcomes)
	if err != nil {
		t.Fatal(err)
	}
	var read []plan.Outcome
	if err := json.Unmarshal(text, &read); err != nil || !reflect.DeepEqual(outcomes, read) {
		t.Errorf("%v\n%+v\n%+v", err, outcomes, read)
	}
}
