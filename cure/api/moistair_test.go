package api

import (
	"encoding/json"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

func TestMoistAir(t *testing.T) {
	demo, err := json.Marshal(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	r := send(t, Request{Op: MoistAir, Job: demo, MoistAir: &MoistAirQuestion{Route: result.Tunnel}})
	if !r.OK || r.MoistAir == nil || r.MoistAir.Route != result.Tunnel || len(r.MoistAir.Course.Time) == 0 {
		t.Fatalf("no chart: %v %s", r.Faults, r.Message)
	}
	for _, bad := range []Request{
		{Op: MoistAir, Job: demo},
		{Op: MoistAir, Job: demo, MoistAir: &MoistAirQuestion{Route: "attic"}},
	} {
		if r := send(t, bad); r.OK || len(r.Faults) != 1 || r.Faults[0].Code != fault.Missing {
			t.Errorf("%v: %+v", bad.MoistAir, r.Faults)
		}
	}
}
