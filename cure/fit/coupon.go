package fit

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// nuisances are each coupon's wet coat where the tare is known, else the zero of the scale under each coupon.
func (g *weighing) nuisances() []unknown {
	var all []unknown
	for k := range g.names {
		first := g.mass[slices.Index(g.coupon, k)]
		if g.tared {
			u := nuisance("coat", first, first/3, 3*first, true)
			u.parameter.Step = filmStep
			all = append(all, u)
			continue
		}
		u := nuisance("zero", first-g.w.job.Film.WetCoat, math.Inf(-1), math.Inf(1), false)
		u.parameter.Step = 1e-4 // kg/m2; the model is straight in it
		all = append(all, u)
	}
	return all
}

// model predicts the areal masses from n numbers of the film and the coupons' nuisances after them.
func (g *weighing) model(n int, set []unknown) regress.Model {
	return func(p, out []float64) error {
		for k := range g.names {
			coat, zero := g.w.job.Film.WetCoat, p[n+k]
			if g.tared {
				coat, zero = p[n+k], 0
			}
			masses, err := g.run(set[:n], p[:n], coat)
			if err != nil {
				return err
			}
			for i := range out {
				if g.coupon[i] == k {
					out[i] = masses[g.at[i]] + zero
				}
			}
		}
		return nil
	}
}

// run follows one coupon; runs of the last few points of the search are kept, since coupons share them.
func (g *weighing) run(set []unknown, p []float64, coat float64) ([]float64, error) {
	var key runKey
	copy(key[:12], p)
	key[12] = coat
	if m, ok := g.runs[key]; ok {
		return m, nil
	}
	m, err := g.w.masses(g.kind, set, p, coat, g.times)
	if err != nil {
		return nil, err
	}
	if len(g.runs) >= 64 {
		clear(g.runs)
	}
	g.runs[key] = m
	return m, nil
}

// masses follows one coupon and returns its areal mass at the times.
func (w *work) masses(kind result.Kind, set []unknown, p []float64, coat float64, times []float64) ([]float64, error) {
	if err := w.another(1); err != nil {
		return nil, err
	}
	j := job.Clone(w.job)
	j.Film.WetCoat = coat
	if err := fill(&j, set, p); err != nil {
		return nil, err
	}
	samples, err := sim.Follow(&j, kind, times, nil)
	if err != nil {
		return nil, err
	}
	m := make([]float64, len(samples))
	for i, s := range samples {
		m[i] = s.Mass
	}
	return m, nil
}

// draw lists the points and draws a curve for each coupon.
func (g *weighing) draw(best priced, d regress.Data) {
	w := g.w
	for i, y := range d.Y {
		w.fit.Points = append(w.fit.Points, result.FitPoint{Series: g.names[g.coupon[i]], Line: w.data.Lines[i], X: g.times[g.at[i]], Y: y,
			Predicted: best.result.Predicted[i], Residual: best.result.Residuals[i], Weight: best.result.Weights[i]})
	}
	x := g.moments()
	n := len(best.unknowns) - len(g.names)
	for k, name := range g.names {
		w.curve(name, x, func(p []float64) ([]float64, error) {
			coat, zero := w.job.Film.WetCoat, p[n+k]
			if g.tared {
				coat, zero = p[n+k], 0
			}
			m, err := w.masses(g.kind, best.unknowns[:n], p[:n], coat, x)
			for i := range m {
				m[i] += zero
			}
			return m, err
		})
	}
}

// moments are where the curve is drawn: evenly over the trial, and where the coupons were weighed, or no point would lie on a curve
// that turns within minutes of a day.
func (g *weighing) moments() []float64 {
	const even, most = 60, 100
	last := g.times[len(g.times)-1]
	var x []float64
	for s := range even + 1 {
		x = append(x, last*float64(s)/even)
	}
	step := 1 + (len(g.times)-1)/most
	for i := 0; i < len(g.times); i += step {
		x = append(x, g.times[i])
	}
	slices.Sort(x)
	return slices.Compact(x)
}
