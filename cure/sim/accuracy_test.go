package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/material"
	"github.com/drywright/drywright/cure/result"
)

// adhesive returns a generic record by its identity.
func adhesive(id string) job.Adhesive {
	for _, a := range material.Adhesives() {
		if a.ID == id {
			return a.Adhesive
		}
	}
	panic("no adhesive " + id)
}

// studied are the demo and ten further jobs, chosen to differ in what the integrator and the grid feel: thick and thin
// films, heavy and light parts, all backs, all laws of transfer, warm-up under load, dew, cooling, no crosslinker, no pile.
func studied() map[string]job.Job {
	jobs := map[string]job.Job{"demo": job.Demo(), "room reference": roomReference(), "tunnel reference": tunnelReference()}
	add := func(name string, change func(j *job.Job)) {
		j := job.Demo()
		change(&j)
		jobs[name] = j
	}
	add("thick coat on hardboard", func(j *job.Job) {
		j.Film.WetCoat = 0.4
		j.Part.Thickness, j.Part.Density, j.Part.HeatCapacity, j.Part.Conductivity = 0.012, 800, 1700, 0.18
		j.Part.Orientation, j.Part.BackEmissivity = job.FacingUp, 0.9
	})
	add("thin coat, no pile, facing down", func(j *job.Job) {
		j.Film.WetCoat, j.Pile, j.Part.Orientation = 0.06, nil, job.FacingDown
	})
	add("no crosslinker", func(j *job.Job) { j.Film.Adhesive = adhesive("vinyl-acetate-ethylene") })
	add("isocyanate, both faces coated", func(j *job.Job) {
		j.Film.Adhesive = adhesive("pu-isocyanate")
		j.Part.Back = job.BackCoated
	})
	add("cold steel in a full oven", func(j *job.Job) {
		j.Part.Thickness, j.Part.Density, j.Part.HeatCapacity, j.Part.Conductivity = 0.006, 7850, 460, 50
		j.StaticOven.Chamber.CoatedArea, j.StaticOven.SetPoint = 8, 393.15
		j.StaticOven.Humidity = job.Humidity{HumidityRatio: of(0.05)}
		j.Part.StartTemperature = of(283.15)
	})
	add("carrier and insulated back", func(j *job.Job) {
		j.Part.Back = job.BackInsulated
		j.Part.Carrier = &job.Carrier{Mass: 3, HeatCapacity: 460, Contact: 30, AirSide: 20}
	})
	add("natural convection at a cold wall", func(j *job.Job) {
		j.Workshop.Transfer.Kind, j.Workshop.WallTemperature = job.Natural, of(285.15)
	})
	add("humid summer night", func(j *job.Job) {
		j.Workshop.Air = []job.AirPoint{{Temperature: 300.15, Humidity: job.Humidity{RelativeHumidity: of(0.6)}},
			{Time: 28800, Temperature: 294.15, Humidity: job.Humidity{RelativeHumidity: of(0.85)}}}
	})
	return jobs
}

// worst returns the largest relative difference of two routes' marks, and where.
func worst(t *testing.T, name string, a, b *result.Result) (float64, string) {
	largest, where := 0.0, ""
	for i := range a.Routes {
		x, y := times(&a.Routes[i]), times(&b.Routes[i])
		for _, m := range result.MarkNames() {
			ta, okA := x[m]
			tb, okB := y[m]
			if okA != okB {
				t.Errorf("%s, %s: %s is reached in one run only", name, a.Routes[i].Kind, m)
			}
			if d := math.Abs(ta - tb); okA && okB && d > largest*tb {
				largest, where = d/tb, string(a.Routes[i].Kind)+" "+string(m)
			}
		}
	}
	return largest, where
}

func solve(t *testing.T, j job.Job) result.Result {
	t.Helper()
	res, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	for i := range res.Routes {
		if !res.Routes[i].Status.Complete {
			t.Fatal(res.Routes[i].Warnings)
		}
	}
	return res
}

// Promise: default tolerance within 0.1 % of a run at 1e-10, default grid within 0.5 % of one four times finer, on every
// mark. Water and heat close to 1e-8 on each of these jobs.
func TestDefaultsAreAccurate(t *testing.T) {
	defaults := job.Default().Numerics
	for name, j := range studied() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			j.Numerics = defaults
			base := solve(t, j)
			for i := range base.Routes {
				for what, b := range map[string]result.Balance{"water": base.Routes[i].Balances.Water, "heat": base.Routes[i].Balances.Heat} {
					if !(b.Relative <= 1e-8) {
						t.Errorf("%s: %s is open by %.2g", base.Routes[i].Kind, what, b.Relative)
					}
				}
			}
			if testing.Short() {
				return
			}
			tight := j
			tight.Numerics.RelativeTolerance, tight.Numerics.StepBudget = 1e-10, 1000000
			exact := solve(t, tight)
			d, where := worst(t, name, &base, &exact)
			if d > 1e-3 {
				t.Errorf("tolerance: %s is off by %.2g", where, d)
			}
			fine := j
			fine.Numerics.FilmCells *= 4
			fine.Numerics.PartCells *= 4
			refined := solve(t, fine)
			g, at := worst(t, name, &base, &refined)
			if g > 5e-3 {
				t.Errorf("grid: %s is off by %.2g", at, g)
			}
			t.Logf("tolerance %.1e (%s), grid %.1e (%s)", d, where, g, at)
		})
	}
}

// The grid is of second order: each doubling quarters the error, against a grid far finer. Marks of the film alone are
// taken; 0.4 around the order of 2 leaves room for the cells that fall on one side or other of a kink.
func TestGridIsOfSecondOrder(t *testing.T) {
	if testing.Short() {
		return
	}
	at := func(n int) map[result.MarkName]float64 {
		j := roomReference()
		j.Numerics.RelativeTolerance, j.Numerics.FilmCells = 1e-8, n
		return times(only(t, j))
	}
	exact := at(192)
	coarse, fine := at(16), at(32)
	for _, m := range []result.MarkName{result.Open, result.DryThrough} {
		order := math.Log2(math.Abs(coarse[m]-exact[m]) / math.Abs(fine[m]-exact[m]))
		t.Logf("%s: order %.2f", m, order)
		if math.Abs(order-2) > 0.4 {
			t.Errorf("%s: order %.2f, want 2", m, order)
		}
	}
}
