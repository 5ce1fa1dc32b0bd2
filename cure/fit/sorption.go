package fit

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// isotherm is one law that points may follow.
type isotherm struct {
	kind  job.IsothermKind
	paths []string
	water func(p []float64, density float64) film.Isotherm
}

func isotherms() []isotherm {
	return []isotherm{
		{job.IsothermGAB, []string{monolayer, gabC, gabK},
			func(p []float64, _ float64) film.Isotherm { return film.GAB{Monolayer: p[0], C: p[1], K: p[2]} }},
		{job.IsothermFloryHuggins, []string{chi},
			func(p []float64, density float64) film.Isotherm {
				return film.FloryHuggins{Chi: p[0], PolymerDensity: density}
			}},
	}
}

// sorption fits the constants of an isotherm to points of relative humidity and water content at room temperature. Scatter grows with
// the water itself on most such points, so that a datum weighs as the inverse of its water, with a floor of a tenth of the largest.
func (w *work) sorption() error {
	humidity, water := w.data.Numbers[trial.Humidity], w.data.Numbers[trial.Water]
	largest := 0.0
	for _, x := range water {
		largest = math.Max(largest, x)
	}
	if largest <= 0 {
		return fault.New(fault.Range, "rows", words.Told("no water above zero"), words.Told("Give the water that the film holds at each humidity."))
	}
	d := regress.Data{Y: water}
	for _, x := range water {
		d.Weight = append(d.Weight, largest/math.Max(x, largest/10))
	}
	if w.question.Isotherm != "" && w.question.Isotherm != job.IsothermGAB && w.question.Isotherm != job.IsothermFloryHuggins {
		return fault.New(fault.Choice, "isotherm", fmt.Sprintf("%q", w.question.Isotherm), words.Told("Give gab or flory_huggins."))
	}
	var best priced
	var law isotherm
	var model regress.Model
	density := w.job.Film.Adhesive.PolymerDensity
	for _, i := range isotherms() {
		if w.question.Isotherm != "" && w.question.Isotherm != i.kind {
			continue
		}
		var unknowns []unknown
		for _, path := range i.paths {
			u, err := w.unknownAt(path)
			if err != nil {
				return err
			}
			unknowns = append(unknowns, u)
		}
		if w.question.Isotherm == "" && len(water) < len(unknowns)+2 && i.kind == job.IsothermGAB {
			continue // three constants from so few points
		}
		if p := &unknowns[0].parameter; i.kind == job.IsothermGAB {
			p.Start = math.Max(p.Low, math.Min(p.High, largest/4)) // humid air holds some monolayers
		}
		m := func(p, out []float64) error {
			law := i.water(p, density)
			for k, a := range humidity {
				out[k] = law.Water(a)
			}
			return nil
		}
		o := w.options()
		o.Central, o.Tolerance = true, 1e-8
		r, err := regress.Fit(m, d, parameters(unknowns), o)
		if err != nil {
			return err
		}
		w.fit.Choices = append(w.fit.Choices, result.FitChoice{Paths: pathsOf(unknowns), AICc: number(r.AICc), BIC: r.BIC})
		if best.result == nil || r.AICc < best.result.AICc || math.IsInf(best.result.AICc, 1) && r.BIC < best.result.BIC {
			best, law, model = priced{unknowns, r}, i, m
		}
	}
	for i := range w.fit.Choices {
		w.fit.Choices[i].Chosen = equal(w.fit.Choices[i].Paths, pathsOf(best.unknowns))
	}
	w.take(best.unknowns, best.result)
	w.fit.Axes = result.FitAxes{X: words.Told("relative humidity"), XUnit: "1", Y: words.Told("water content"), YUnit: "kg/kg"}
	w.points("", humidity, best.result, d)
	var x []float64
	for i := range 50 {
		x = append(x, 0.01+0.97*float64(i)/49)
	}
	w.curve("", x, func(p []float64) ([]float64, error) {
		law := law.water(p, density)
		out := make([]float64, len(x))
		for k, a := range x {
			out[k] = law.Water(a)
		}
		return out, nil
	})
	return w.resample(model, d, best.unknowns, best.result)
}
