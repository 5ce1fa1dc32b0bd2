package route

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
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
	at := func(T, y float64) air.State { return air.State{T: T, P: 101325, Y: y} }
	return &Chamber{Air: at(353.15, 0.02), Balanced: true, CoatedArea: 2, HeaterPower: 12e3, Band: 3, DryAir: 2, AirCapacity: 2e3,
		MakeUp: 0.02, MakeUpAir: at(293.15, 0.012), WallCapacity: 1e5, WallExchange: 100, WallLoss: 10, Room: 293.15}
}

// The empty oven stands still at its set-point when its walls are warm: the bias of the controller is what is lost.
func TestEmptyOvenHoldsItsSetPoint(t *testing.T) {
	c := oven()
	wall := c.Room + (c.Air.T-c.Room)*c.WallExchange/(c.WallExchange+c.WallLoss)
	own, out := c.Start(c.Air.T, wall), make([]float64, c.States())
	c.Rates(0, own, film.Drawn{}, out)
	near(t, "air's drift, W", out[chamberAir]*c.AirCapacity, 0, 1e-9*c.HeaterPower)
	near(t, "walls' drift, W", out[chamberWall]*c.WallCapacity, 0, 1e-9*c.HeaterPower)
	near(t, "power far below", c.Power(c.Air.T-50), c.HeaterPower, 1e-3*c.HeaterPower)
	near(t, "power far above", c.Power(c.Air.T+50), 0, 1e-3*c.HeaterPower)
}

// Whatever the load draws, the heats of air and walls change by exactly what passes, and so does the water.
func TestChamberConserves(t *testing.T) {
	c := oven()
	for _, temperatures := range [][2]float64{{300, 350}, {352, 330}, {360, 345}} {
		d := film.Drawn{FromAir: 900, FromWalls: 150, Vapour: 1e-4}
		own, out := c.Start(temperatures[0], temperatures[1]), make([]float64, c.States())
		c.Rates(0, own, d, out)
		kept := out[chamberAir]*c.AirCapacity + out[chamberWall]*c.WallCapacity
		in := out[chamberHeater] - out[chamberLost] - out[chamberPassed] - c.CoatedArea*(d.FromAir+d.FromWalls)
		near(t, "heat kept, W", kept, in, 1e-9*math.Abs(in))
		water := c.CoatedArea*d.Vapour + c.MakeUp*(c.MakeUpAir.HumidityRatio()-own[chamberHumidity])
		near(t, "water kept, kg/s", out[chamberHumidity]*c.DryAir, water, 1e-12)
	}
}

// Row OVN-4: 2 kg of dry air, 20 kg/h of exhaust, 0.5 kg/h of evaporation, 7.3 g/kg coming in: the humidity climbs with a
// time constant of 360 s. Tolerance of the row 0.1 %.
func TestOvenHumidityMeetsItsClosedForm(t *testing.T) {
	c := oven()
	c.MakeUp, c.MakeUpAir.Y = 20./3600, fraction(0.0073)
	c.Air.Y = c.MakeUpAir.Y
	d := film.Drawn{Vapour: 0.5 / 3600 / c.CoatedArea}
	own, out := c.Start(c.Air.T, c.Air.T), make([]float64, c.States())
	want := map[int]float64{180: 0.0171367, 360: 0.023103, 1080: 0.0310553}
	const parts = 100 // of a second: explicit steps err by 1e-5
	for s := 1; s <= 1080; s++ {
		for range parts {
			c.Rates(0, own, d, out)
			own[chamberHumidity] += out[chamberHumidity] / parts
		}
		if w, asked := want[s]; asked {
			near(t, "humidity", own[chamberHumidity], w, 1e-3*w)
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, tol)
	}
}

// Loads that are in an oven together answer to its air: warmer air gives more heat, damper air takes less vapour, each by the
// coefficient told; in the air of the run that was recorded they draw what it drew.
func TestCompanyAnswersToTheAir(t *testing.T) {
	taken := []Taken{}
	for i := range 4 {
		at := 10 * float64(i)
		taken = append(taken, Taken{Time: at, Air: 300 * at, Walls: 50 * at, Water: 1e-4 * at, AirWas: 400, WallWas: 390, Ease: 20, MoistWas: 0.1, MoistEase: 0.02})
	}
	draws, err := NewDraws(taken)
	if err != nil {
		t.Fatal(err)
	}
	company := Company{Enters: 100, Leaves: 130, Draws: draws}
	for _, c := range []struct{ t, T, Y, heat, vapour float64 }{
		{115, 400, 0.1, 300, 1e-4}, {115, 402, 0.1, 340, 1e-4}, {115, 400, 0.102, 300, 1e-4 - 4e-5}, {99, 402, 0.2, 0, 0}, {131, 402, 0.2, 0, 0},
	} {
		var d film.Drawn
		company.add(c.t, &film.Climate{Air: air.State{T: c.T, P: 101325, Y: c.Y}, Wall: 390}, &d)
		if math.Abs(d.FromAir-c.heat) > 1e-9*300 || math.Abs(d.Vapour-c.vapour) > 1e-9*1e-4 {
			t.Errorf("at %g s in air of %g K and %g: %g W/m2 and %g kg/(m2 s), want %g and %g", c.t, c.T, c.Y, d.FromAir, d.Vapour, c.heat, c.vapour)
		}
	}
}
