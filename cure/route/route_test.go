package route

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// Stages follow each other without a gap from spraying to the horizon, and the fibre is on from flocking.
func TestStagesAreSeamless(t *testing.T) {
	j := job.Demo()
	plans, err := Plans(&j)
	if err != nil {
		t.Fatal(err)
	}
	if len(plans) != 3 {
		t.Fatalf("%d routes", len(plans))
	}
	for _, p := range plans {
		at, position := 0.0, 0.0
		for _, s := range p.Stages {
			if s.Start != at || !(s.End > s.Start) {
				t.Errorf("%s: stage %q runs from %g to %g, after %g", p.Kind, s.Name, s.Start, s.End, at)
			}
			if s.Piled != (s.Start >= j.Pile.AppliedAfter) {
				t.Errorf("%s: stage %q from %g s has fibre: %v", p.Kind, s.Name, s.Start, s.Piled)
			}
			if s.Length > 0 {
				if s.Position != position {
					t.Errorf("%s: zone %q begins at %g m, want %g", p.Kind, s.Name, s.Position, position)
				}
				position += s.Length
			}
			for _, stop := range s.Stops {
				if !(stop > s.Start && stop < s.End) {
					t.Errorf("%s: stop %g outside stage %q", p.Kind, stop, s.Name)
				}
			}
			at = s.End
		}
		if at != p.Horizon {
			t.Errorf("%s ends at %g, horizon %g", p.Kind, at, p.Horizon)
		}
	}
}

// The tunnel's dwell is length over speed; the last heated zone ends where cooling begins.
func TestTunnelTimes(t *testing.T) {
	j := job.Demo()
	plans, err := Plans(&j)
	if err != nil {
		t.Fatal(err)
	}
	p := plans[2]
	heated, all := 0.0, 0.0
	for _, z := range j.Tunnel.Zones {
		all += z.Length / j.Tunnel.LineSpeed
		if z.Kind == job.Heated {
			heated += z.Length / j.Tunnel.LineSpeed
		}
	}
	near(t, "exit", p.Exit, j.Tunnel.EnteredAfter+all, 1e-9)
	near(t, "end of heat", p.HeatedEnd, j.Tunnel.EnteredAfter+heated, 1e-9)
	if last := p.Stages[len(p.Stages)-1]; last.Kind != result.Rest {
		t.Errorf("the part ends in %q", last.Name)
	}
}

// Between two points of the schedule temperature and relative humidity are the means of theirs.
func TestScheduleRunsStraight(t *testing.T) {
	j := job.Demo()
	w, err := newWorkshop(&j)
	if err != nil {
		t.Fatal(err)
	}
	a, b := j.Workshop.Air[1], j.Workshop.Air[2]
	mid := w.air.State((a.Time + b.Time) / 2)
	near(t, "temperature", mid.T, (a.Temperature+b.Temperature)/2, 1e-9)
	near(t, "relative humidity", mid.RelativeHumidity(), (*a.Humidity.RelativeHumidity+*b.Humidity.RelativeHumidity)/2, 1e-9)
	end := w.air.State(1e9)
	near(t, "after the last point", end.T, j.Workshop.Air[len(j.Workshop.Air)-1].Temperature, 1e-9)
}

// oven is a box oven as the tests want it.
func oven() *Chamber {
	c := &Chamber{CoatedArea: 2, HeaterPower: 12e3, Band: 3, AirCapacity: 2e3, MakeUp: 20, MakeUpAir: 293.15,
		WallCapacity: 1e5, WallExchange: 100, WallLoss: 10, Room: 293.15}
	c.Air.T, c.Air.P, c.Air.Y = 353.15, 101325, 0.02
	return c
}

// The empty oven stands still at its set-point when its walls are warm: the bias of the controller is what is lost. The
// rounded corners of the band take up to 1e-3 of the power.
func TestEmptyOvenHoldsItsSetPoint(t *testing.T) {
	c := oven()
	wall := c.Room + (c.Air.T-c.Room)*c.WallExchange/(c.WallExchange+c.WallLoss)
	out := make([]float64, 2)
	c.Rates(0, []float64{c.Air.T, wall}, film.Drawn{}, out)
	near(t, "air's drift, W", out[0]*c.AirCapacity, 0, 2e-2*c.HeaterPower)
	near(t, "walls' drift, W", out[1]*c.WallCapacity, 0, 1e-9*c.HeaterPower)
	near(t, "power far below", c.Power(c.Air.T-50), c.HeaterPower, 1e-3*c.HeaterPower)
	near(t, "power far above", c.Power(c.Air.T+50), 0, 1e-3*c.HeaterPower)
}

// Whatever the load draws, the heats of air and walls change by exactly what passes.
func TestChamberConservesHeat(t *testing.T) {
	c := oven()
	for _, own := range [][]float64{{300, 350}, {352, 330}, {360, 345}} {
		d := film.Drawn{FromAir: 900, FromWalls: 150, Vapour: 1e-4}
		out := make([]float64, 2)
		c.Rates(0, own, d, out)
		kept := out[0]*c.AirCapacity + out[1]*c.WallCapacity
		in := c.Power(own[0]) + c.MakeUp*(c.MakeUpAir-own[0]) - c.WallLoss*(own[1]-c.Room) - c.CoatedArea*(d.FromAir+d.FromWalls)
		near(t, "heat kept, W", kept, in, 1e-9*math.Abs(in))
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, tol)
	}
}
