package sim

import (
	"errors"
	"math"

	"github.com/drywright/drywright/cure/result"
)

// sane lists what is wrong with a result.
func sane(res *result.Result) error {
	for i := range res.Routes {
		r := &res.Routes[i]
		if !r.Status.Complete {
			return errors.New(string(r.Kind) + " ended early: " + r.Warnings[len(r.Warnings)-1].Text)
		}
		m := times(r)
		later := func(a, b result.MarkName) bool {
			ta, okA := m[a]
			tb, okB := m[b]
			return okA && (!okB || ta < tb)
		}
		for _, o := range [][2]result.MarkName{{result.TackFree, result.Touch}, {result.Cured, result.DryThrough},
			{result.Ready, result.TackFree}, {result.Ready, result.DryThrough}, {result.Ready, result.Cool}} {
			if later(o[0], o[1]) {
				return errors.New(string(r.Kind) + ": " + string(o[0]) + " before " + string(o[1]))
			}
		}
		for k := range r.Marks {
			if w := r.Marks[k].State; !(w.MeanWater >= 0 && w.OuterWater >= 0 && w.LeastConversion >= 0 && w.MeanConversion <= 1+1e-11) {
				return errors.New(string(r.Kind) + ": the state at " + string(r.Marks[k].Name) + " makes no sense")
			}
		}
		c := &r.Curves
		for name, column := range map[string][]float64{"time": c.Time, "mean water": c.MeanWater, "outer water": c.OuterWater,
			"surface water": c.SurfaceWater, "inner water": c.InnerWater, "equilibrium": c.Equilibrium, "mean conversion": c.MeanConversion,
			"least conversion": c.LeastConversion, "film": c.FilmTemperature, "back": c.PartBack, "air": c.AirTemperature,
			"humidity": c.AirHumidity, "thickness": c.Thickness} {
			for k, v := range column {
				if math.IsNaN(v) || math.IsInf(v, 0) || v < -1e-12 {
					return errors.New(string(r.Kind) + ": " + name + " is not a number or negative at point " + string(rune('0'+k%10)))
				}
			}
		}
		for k := range c.Time {
			if c.MeanConversion[k] > 1+1e-11 || c.LeastConversion[k] > c.MeanConversion[k]+1e-11 {
				return errors.New(string(r.Kind) + ": conversions make no sense")
			}
		}
		for _, b := range []result.Balance{r.Balances.Water, r.Balances.Heat} {
			if !(b.Relative <= 1e-8) {
				return errors.New(string(r.Kind) + ": a balance is open")
			}
		}
	}
	return nil
}
