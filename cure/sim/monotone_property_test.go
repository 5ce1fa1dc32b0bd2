package sim

import (
	"sort"
	"testing"

	"pgregory.net/rapid"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// Of what a change does to a job physics says that it dries sooner, or later. Which marks follow is what the properties below say; what
// does not follow is shown, with its reason, in exceptions_test.go.

// warmer air with the vapour that it had. It warms the workshop, or the zones that heat.
func warmer(by float64) func(*job.Job) {
	return func(j *job.Job) {
		p := &j.Workshop.Air[0]
		s, err := p.Humidity.State(p.Temperature, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
		if err == nil {
			p.Temperature, p.Humidity = p.Temperature+by, job.Humidity{HumidityRatio: of(s.HumidityRatio())}
		}
		hotter(by)(j)
	}
}

// hotter oven with the vapour that it had.
func hotter(by float64) func(*job.Job) {
	return func(j *job.Job) {
		if o := j.StaticOven; o != nil {
			o.SetPoint += by
		}
		if t := j.Tunnel; t != nil {
			for i := range t.Zones {
				if t.Zones[i].Kind == job.Heated {
					t.Zones[i].AirTemperature += by
				}
			}
		}
	}
}

// damper air everywhere: by a share of what the air still takes up in the workshop, by a factor in ovens.
func damper(by float64) func(*job.Job) {
	return func(j *job.Job) {
		h := j.Workshop.Air[0].Humidity.RelativeHumidity
		j.Workshop.Air[0].Humidity = job.Humidity{RelativeHumidity: of(*h + by*(1-*h))}
		if o := j.StaticOven; o != nil {
			o.Humidity = job.Humidity{HumidityRatio: of(*o.Humidity.HumidityRatio * (1 + by))}
		}
		if t := j.Tunnel; t != nil {
			z := &t.Zones[0]
			z.Humidity = job.Humidity{HumidityRatio: of(*z.Humidity.HumidityRatio * (1 + by))}
		}
	}
}

// faster air, or a larger coefficient where that is given.
func faster(by float64) func(*job.Job) {
	return func(j *job.Job) {
		laws := []*job.Transfer{&j.Workshop.Transfer}
		if o := j.StaticOven; o != nil {
			laws = append(laws, &o.Transfer)
		}
		if t := j.Tunnel; t != nil {
			for i := range t.Zones {
				laws = append(laws, &t.Zones[i].Transfer)
			}
		}
		for _, l := range laws {
			l.Coefficient *= by
			l.Velocity *= by
		}
	}
}

// thicker coat of the same adhesive.
func thicker(by float64) func(*job.Job) { return func(j *job.Job) { j.Film.WetCoat *= by } }

// follows holds that a change moves marks one way or not at all. Both runs are within the stated 0.1 % of their equations' solution.
func follows(t *testing.T, kinds []result.Kind, size [2]float64, change func(float64) func(*job.Job), later bool, marks ...result.MarkName) {
	t.Helper()
	rapid.Check(t, func(t *rapid.T) {
		j := ordinary(t, kinds...)
		// A film that closes cold does not form, and then waits for warmth; see exceptions_test.go.
		j.Film.Adhesive.FilmForming = 263.15
		k := job.Clone(j)
		change(rapid.Float64Range(size[0], size[1]).Draw(t, "by"))(&k)
		base, changed := run1(t, &j), run1(t, &k)
		before, after := times(&base.Routes[0]), times(&changed.Routes[0])
		if later {
			before, after = after, before
		}
		for _, m := range marks {
			slow, reached := before[m]
			fast, both := after[m]
			if reached && (!both || fast > slow*(1+1e-3)) {
				t.Fatalf("%s: %g s, and %g s (%v) where it should be no later", m, slow, fast, both)
			}
		}
	})
}

var (
	everywhere = []result.Kind{result.Room, result.StaticOven, result.Tunnel}
	ovens      = []result.Kind{result.StaticOven, result.Tunnel}
	inRoom     = []result.Kind{result.Room}
)

// Warmer air with the same vapour in it: every mark of film and cure comes sooner. "Cool" and "ready" do after no oven.
func TestWarmerAirDriesSooner(t *testing.T) {
	follows(t, everywhere, [2]float64{1, 15}, warmer, false, result.Open, result.Touch, result.TackFree, result.DryThrough, result.Cured)
}

// Damper air: the packed layer that ends the open time and "touch" come later. Drying through and what hangs on it may come sooner, since
// they are judged against what the air leaves in the film.
func TestDamperAirDriesLater(t *testing.T) {
	follows(t, everywhere, [2]float64{0.05, 0.5}, damper, true, result.Open, result.Touch)
}

// Damper air in a room leaves no less water in the film at any time. In an oven it may: damp air keeps the wet film warmer, and through a
// warm film the last of the water moves faster. Curves are joined by straight lines here, which a hundredth and 1e-4 kg/kg allow for.
func TestDamperAirLeavesMoreWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := ordinary(t, inRoom...)
		k := job.Clone(j)
		damper(rapid.Float64Range(0.05, 0.5).Draw(t, "by"))(&k)
		a, b := run1(t, &j), run1(t, &k)
		dry, damp := &a.Routes[0].Curves, &b.Routes[0].Curves
		for i, at := range damp.Time {
			if at > dry.Time[len(dry.Time)-1] {
				break
			}
			if w := meanWater(dry, at); damp.MeanWater[i] < 0.99*w-1e-4 {
				t.Fatalf("after %g s the film holds %g kg/kg in damper air, %g in drier", at, damp.MeanWater[i], w)
			}
		}
	})
}

// meanWater is a curve's water at a time within it.
func meanWater(c *result.Curves, at float64) float64 {
	i := sort.SearchFloat64s(c.Time, at)
	if i == 0 || c.Time[i] == c.Time[i-1] {
		return c.MeanWater[i]
	}
	share := (at - c.Time[i-1]) / (c.Time[i] - c.Time[i-1])
	return c.MeanWater[i-1] + share*(c.MeanWater[i]-c.MeanWater[i-1])
}

// Faster air around parts that the air itself warms: every mark of film and cure comes sooner.
func TestFasterAirDriesSooner(t *testing.T) {
	follows(t, everywhere, [2]float64{1.05, 2}, faster, false, result.Open, result.Touch, result.TackFree, result.DryThrough, result.Cured)
}

// A thicker coat: all marks but the open time come later, "cool" and "ready" in a room alone.
func TestThickerCoatDriesLater(t *testing.T) {
	t.Run("room", func(t *testing.T) {
		follows(t, inRoom, [2]float64{1.05, 1.5}, thicker, true, result.Touch, result.TackFree, result.DryThrough, result.Cured, result.Ready)
	})
	t.Run("ovens", func(t *testing.T) {
		follows(t, ovens, [2]float64{1.05, 1.5}, thicker, true, result.Touch, result.TackFree, result.DryThrough, result.Cured)
	})
}
