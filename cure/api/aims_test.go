package api

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// aimed puts a planning question about a job.
func aimed(t *testing.T, j job.Job, q Request) Response {
	t.Helper()
	text, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	q.Job = text
	request, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	return ask(t, string(request), canned)
}

func TestVariablesComeWithWhatTheRouteIsAskedFor(t *testing.T) {
	r := aimed(t, job.Demo(), Request{Op: Variables, Study: &plan.Study{Route: result.Tunnel}})
	if !r.OK || r.Aims == nil || len(r.Variables) == 0 {
		t.Fatalf("%+v", r)
	}
	if r.Aims.Text == "" || len(r.Aims.Goal.AtExit) == 0 {
		t.Errorf("%+v", r.Aims)
	}
	offered := map[result.MarkName]bool{}
	for _, m := range r.Aims.Marks {
		if offered[m.Mark] = true; m.Label == "" {
			t.Errorf("%s has no label", m.Mark)
		}
	}
	for _, m := range r.Aims.Goal.AtExit {
		if !offered[m] {
			t.Errorf("%s is asked for but not offered", m)
		}
	}
	// A stated goal stays as it is; a room has its deadline and nothing to choose.
	stated := &sim.Goal{AtExit: []result.MarkName{result.Touch}}
	if r := aimed(t, job.Demo(), Request{Op: Variables, Study: &plan.Study{Route: result.Tunnel, Goal: stated}}); len(r.Aims.Goal.AtExit) != 1 {
		t.Errorf("%+v", r.Aims)
	}
	if r := aimed(t, job.Demo(), Request{Op: Variables, Study: &plan.Study{Route: result.Room}}); len(r.Aims.Marks) != 0 || !r.Aims.Goal.ByDeadline {
		t.Errorf("%+v", r.Aims)
	}
}

func TestATrialIsPutIntoTheJob(t *testing.T) {
	demo := job.Demo()
	study := plan.Study{Route: result.Tunnel}
	trial := plan.Trial{{Variable: plan.LineSpeed, Value: 1.2 * demo.Tunnel.LineSpeed}, {Variable: plan.ZonesInStep, Value: 5}}
	r := aimed(t, demo, Request{Op: Apply, Study: &study, Setting: trial})
	if !r.OK || r.Job == nil {
		t.Fatalf("%+v", r)
	}
	if got := r.Job.Tunnel.LineSpeed; math.Abs(got/demo.Tunnel.LineSpeed-1.2) > 1e-12 {
		t.Errorf("line speed %g", got)
	}
	for i, z := range r.Job.Tunnel.Zones {
		want := demo.Tunnel.Zones[i].AirTemperature
		if z.Kind == job.Heated {
			want += 5
		}
		if math.Abs(z.AirTemperature-want) > 1e-9 {
			t.Errorf("zone %d at %g K, want %g K", i, z.AirTemperature, want)
		}
	}
	bad := plan.Trial{{Variable: "colour", Value: 1}}
	if r := aimed(t, demo, Request{Op: Apply, Study: &study, Setting: bad}); r.OK || len(r.Faults) == 0 {
		t.Errorf("an unknown variable: %+v", r)
	}
}
