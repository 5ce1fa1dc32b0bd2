package api

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words/languages"
)

// quick is an invented job of a few milliseconds: no pile, no crosslinker, a static oven, the coarsest grid.
func quickOven() job.Job {
	j := job.Default()
	j.Pile, j.Film.Adhesive.Crosslinking, j.Room = nil, nil, nil
	j.Numerics.FilmCells, j.Numerics.PartCells, j.Numerics.RelativeTolerance = 8, 2, 1e-4
	j.StaticOven, j.Part.LimitTemperature = job.NewStaticOven(), 400
	j.Tariffs, j.Costs = job.NewTariffs(), job.NewCosts()
	return j
}

// plannedOven builds a planning request around the quick oven.
func plannedOven(t *testing.T, q Request) []byte {
	t.Helper()
	var err error
	if q.Job, err = job.Encode(quickOven()); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Each question through a pool, piece by piece, has the same bytes as in one go, and tells what it knows on the way.
func TestSureQuestions(t *testing.T) {
	study := plan.Study{Route: result.StaticOven, Goal: &sim.Goal{AtExit: []result.MarkName{result.DryThrough}}}
	tolerances := []plan.Tolerance{{Variable: plan.Coat, Shape: plan.Normal, Width: 0.05, Relative: true}}
	for op, c := range map[Op]struct {
		request Request
		holds   func(r *Response) bool
		told    int
	}{
		Tolerances: {Request{Study: &study}, func(r *Response) bool { return len(r.Tolerances) >= 5 && r.Tolerances[0].Variable == plan.Coat }, 0},
		Spread: {Request{Spread: &plan.SpreadQuestion{Study: study, Tolerances: tolerances, Rows: 4, Replicates: 4}}, func(r *Response) bool {
			return r.Spread.Complete && r.Spread.Samples == 32 && r.Spread.Text != "" && r.Spread.Influences[0].Text != ""
		}, 3},
		Costs: {Request{Costs: &plan.CostQuestion{}}, func(r *Response) bool {
			return r.Costs.Complete && len(r.Costs.Routes) == 1 && r.Costs.Text != "" && r.Costs.Currency == "EUR"
		}, 0},
		Optimise: {Request{Optimise: &plan.OptimiseQuestion{Study: study, Tolerances: tolerances, Free: []plan.Axis{{Variable: plan.Dwell, Low: 600, High: 7200}}}},
			func(r *Response) bool {
				return r.Optimum.Complete && r.Optimum.Found && r.Optimum.Text != "" && r.Optimum.Spread != nil
			}, 2},
	} {
		if testing.Short() && op == Optimise {
			continue
		}
		c.request.Op = op
		request := plannedOven(t, c.request)
		var told []Response
		pooled := Sweep(languages.English(), request, Host{Workers: 2, Pool: func(requests [][]byte) ([][]byte, error) {
			replies := make([][]byte, len(requests))
			for i := range requests {
				replies[i] = Handle(languages.English(), requests[i])
			}
			return replies, nil
		}, Tell: func(text []byte) {
			var r Response
			if err := json.Unmarshal(text, &r); err != nil || !r.OK {
				t.Errorf("%s tells %.200s: %v", op, text, err)
			}
			told = append(told, r)
		}})
		var r Response
		if err := json.Unmarshal(pooled, &r); err != nil || !r.OK || !c.holds(&r) {
			t.Errorf("%s: %.400s, %v", op, pooled, err)
		}
		if op != Optimise && !bytes.Equal(Handle(languages.English(), request), pooled) { // it takes seconds, and stands on the same batches
			t.Errorf("%s: the pool gives other bytes", op)
		}
		if len(told) < c.told {
			t.Errorf("%s: told %d times", op, len(told))
		}
	}
}

func TestSureQuestionsRefused(t *testing.T) {
	room := plan.Study{Route: result.Room}
	for _, c := range []struct {
		q    Request
		code fault.Code
		path string
	}{
		{Request{Op: Spread}, fault.Missing, "spread"}, {Request{Op: Costs}, fault.Missing, "costs"}, {Request{Op: Optimise}, fault.Missing, "optimise"},
		{Request{Op: Tolerances}, fault.Missing, "study"}, {Request{Op: Tolerances, Study: &room}, fault.Missing, "room"},
		{Request{Op: Spread, Spread: &plan.SpreadQuestion{Study: room}}, fault.Missing, "room"},
	} {
		var r Response
		if err := json.Unmarshal(Handle(languages.English(), plannedOven(t, c.q)), &r); err != nil || r.OK || len(r.Faults) != 1 || r.Faults[0].Code != c.code || r.Faults[0].Path != c.path {
			t.Errorf("%s: %+v, %v", c.q.Op, r, err)
		}
	}
}
