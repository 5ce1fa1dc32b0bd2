package sim

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// Ordinary jobs on the usual grid: accounts closed, numbers within their bounds, marks in order, and no film or part warmer or colder
// than what surrounds it lets it be. TestRandomJobs holds all but the last for any job on the coarsest grid.
func TestOrdinaryJobsKeepTheirAccounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := ordinary(t, result.Room, result.StaticOven, result.Tunnel)
		res := run1(t, &j)
		if err := sane(&res); err != nil {
			t.Fatal(err)
		}
		if err := surrounded(&j, &res.Routes[0]); err != nil {
			t.Fatal(err)
		}
	})
}

// run1 computes a job that must be accepted and must run.
func run1(t *rapid.T, j *job.Job) result.Result {
	if err := job.Validate(*j); err != nil {
		t.Fatal("refused: ", err)
	}
	res, err := Run(j)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

// surrounded says where film or part leave the temperatures that surround them. Without radiators nothing is warmer than the warmest of
// air, walls and start, but for the heat of the water that a dry film takes up from the air, all of it at once. Nothing is
// colder than the coldest of walls, start and the air's dew point: a film that cold takes up water, and is warmed.
func surrounded(j *job.Job, r *result.Route) error {
	a := &j.Film.Adhesive
	low, high := math.Inf(1), math.Inf(-1)
	near := func(t float64) { low, high = math.Min(low, t), math.Max(high, t) }
	space := func(t float64, h job.Humidity) error {
		s, err := h.State(t, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
		high, low = math.Max(high, t), math.Min(low, s.DewPoint())
		return err
	}
	for _, p := range j.Workshop.Air {
		near(p.Temperature) // where the part starts
		if err := space(p.Temperature, p.Humidity); err != nil {
			return err
		}
	}
	if o := j.StaticOven; o != nil {
		near(o.SetPoint)
		if err := space(o.SetPoint, o.Humidity); err != nil {
			return err
		}
	}
	if t := j.Tunnel; t != nil {
		for i := range t.Zones {
			if err := space(t.Zones[i].AirTemperature, t.Zones[i].Humidity); err != nil {
				return err
			}
		}
	}
	full := isotherm(a).Water(1) * j.Film.WetCoat * a.Solids // kg/m2
	capacity := j.Part.Thickness*j.Part.Density*j.Part.HeatCapacity + j.Film.WetCoat*a.Solids*a.SolidsHeatCapacity
	high += full * (air.LatentHeat(air.LowTemperature) + a.Sorption.HeatOfSorption) / capacity
	const hair = 0.03 // K: a hundred times what a relative tolerance of 1e-6 on 300 K leaves; 1e-5 is the usual one
	c := &r.Curves
	for k := range c.Time {
		for name, t := range map[string]float64{"film": c.FilmTemperature[k], "back": c.PartBack[k]} {
			if t < low-hair || t > high+hair {
				return fmt.Errorf("%s: %s at %g K after %g s, outside of %g to %g K", r.Kind, name, t, c.Time[k], low, high)
			}
		}
	}
	return nil
}
