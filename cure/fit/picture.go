package fit

import (
	"math"

	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
)

// points lists the data of one series with what the curve makes of them; x runs over all data of the regression.
func (w *work) points(series string, x []float64, r *regress.Result, d regress.Data) {
	for i, y := range d.Y {
		p := result.FitPoint{Series: series, X: x[i], Y: y, Predicted: r.Predicted[i], Residual: r.Residuals[i], Weight: r.Weights[i]}
		if i < len(w.data.Lines) {
			p.Line = w.data.Lines[i]
		}
		w.fit.Points = append(w.fit.Points, p)
	}
}

// curve draws the fitted curve with the band of its mean: t sqrt(g' C g), the gradient g by differences of a hundredth of a standard
// error. A curve that cannot be computed is left out.
func (w *work) curve(series string, x []float64, at func(p []float64) ([]float64, error)) {
	e := &w.found
	values := func(inner []float64) []float64 {
		out := make([]float64, len(inner))
		for i, v := range inner {
			out[i] = w.outer(i, v)
		}
		return out
	}
	y, err := at(values(e.inner))
	if err != nil {
		return
	}
	c := result.FitCurve{Series: series, X: x, Y: y, Low: append([]float64{}, y...), High: append([]float64{}, y...)}
	gradient := make([][]float64, len(e.inner))
	for j := range e.inner {
		h := 0.05 * math.Sqrt(e.covariance.At(j, j))
		if h == 0 || math.IsNaN(h) {
			continue
		}
		h = math.Max(h, 1e-6*math.Abs(e.inner[j]))
		if limit := w.unknowns[j].wide; limit > 0 {
			h = math.Min(h, limit/10)
		}
		moved := append([]float64{}, e.inner...)
		moved[j] += h
		if up := w.unknowns[j].parameter.High; w.outer(j, moved[j]) > up {
			h = -h
			moved[j] = e.inner[j] + h
		}
		ahead, err := at(values(moved))
		if err != nil {
			continue
		}
		for i := range ahead {
			ahead[i] = (ahead[i] - y[i]) / h
		}
		gradient[j] = ahead
	}
	quantile := finiteOr(e.quantile, 0)
	for i := range x {
		variance := 0.0
		for a := range gradient {
			for b := range gradient {
				if gradient[a] != nil && gradient[b] != nil {
					variance += gradient[a][i] * e.covariance.At(a, b) * gradient[b][i]
				}
			}
		}
		half := quantile * math.Sqrt(math.Max(0, variance))
		c.Low[i], c.High[i] = y[i]-half, y[i]+half
	}
	w.fit.Curves = append(w.fit.Curves, c)
}

// outer turns unknown i out of the search's scale.
func (w *work) outer(i int, inner float64) float64 {
	if w.unknowns[i].parameter.Log {
		return math.Exp(inner)
	}
	return inner
}
