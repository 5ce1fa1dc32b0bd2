package fit

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// repeatability is the usual standard deviation of a rub or pull test, in the logarithm of the time at which it just passes: 15 % of it.
// Common practice, no source.
const repeatability = 0.15

// passFail fits tests that passed or failed. A test passes with the chance of the logistic law
//
//	p = 1/(1 + exp(-u/s)),   u = ln(k t_eq) - ln G(c)
//
// t_eq being the equivalent time at the reference temperature, G(c) the dose k t that reaches the conversion c which a passed test
// proves, and s pi/sqrt(3) the repeatability of the test, which is given: from verdicts that a line parts cleanly it cannot be told, and the
// likelihood would run away. The likelihood, times the priors', is climbed by Fisher's scoring with halved steps; its information
// matrix gives the intervals, with normal quantiles.
//
// Source: logistic regression, e.g. McCullagh and Nelder (1989), Generalized Linear Models, 2nd ed., chapter 4 (number from memory).
func (w *work) passFail(c *cureTests, set []unknown) error {
	threshold := or(w.question.Threshold, w.job.Targets.FullConversion)
	s := or(w.question.Repeatability, repeatability) * math.Sqrt(3) / math.Pi
	n := w.job.Film.Adhesive.Crosslinking.Order
	need := math.Log(kinetics.OrderIntegral(threshold, n))
	passes := 0.0
	for _, y := range c.outcome {
		passes += y
	}
	if passes == 0 || passes == float64(len(c.outcome)) {
		return fault.New(fault.Conflict, "rows", words.Told("all tests have the same verdict"), words.Told("Add tests that turn out the other way: the limit lies between."))
	}
	u := func(x []float64, i int) float64 { return (x[0] + math.Log(c.dose(i, x[1])) - need) / s }
	chance := func(v float64) float64 { return 1 / (1 + math.Exp(-v)) }
	height := func(x []float64) float64 { // ln of likelihood and priors
		sum := 0.0
		for i, y := range c.outcome {
			v := u(x, i)
			if y == 0 {
				v = -v
			}
			sum -= math.Log1p(math.Exp(-v))
		}
		for j, q := range set {
			if p := q.parameter.Prior; p != nil {
				mean := p.Mean
				if q.parameter.Log {
					mean = math.Log(mean)
				}
				d := (x[j] - mean) / p.SD
				sum -= d * d / 2
			}
		}
		return sum
	}
	x := []float64{math.Log(set[0].parameter.Start), set[1].parameter.Start}
	information := regress.NewMatrix(2, 2)
	converged := false
	for range 100 {
		score := w.scoring(c, set, x, s, func(i int) float64 { return chance(u(x, i)) }, information)
		inverse := regress.Invert(information)
		step := [2]float64{}
		gain := 0.0
		for a := range 2 {
			for b := range 2 {
				step[a] += inverse.At(a, b) * score[b]
			}
			gain += step[a] * score[a]
		}
		now := height(x)
		size := 1.0
		for ; size > 1e-6; size /= 2 {
			moved := []float64{x[0] + size*step[0], x[1] + size*step[1]}
			moved[1] = math.Max(set[1].parameter.Low, math.Min(set[1].parameter.High, moved[1]))
			if h := height(moved); h >= now || math.IsNaN(now) {
				x = moved
				break
			}
		}
		if gain < 1e-10 || size <= 1e-6 {
			converged = true
			break
		}
	}
	w.scoring(c, set, x, s, func(i int) float64 { return chance(u(x, i)) }, information)
	covariance := regress.Invert(information)
	if math.Sqrt(covariance.At(1, 1)) > 1e6 { // J/mol
		return fault.New(fault.Numeric, "rows", words.Told("these tests do not tell rate and activation energy"),
			words.Told("Test at two temperatures or more, or leave the pull towards the job's values on."))
	}
	w.unknowns = set
	w.found = estimate{inner: x, covariance: covariance, quantile: normalQuantile, held: []bool{false, false}, learnt: []float64{1, 1}, converged: converged}
	for j, q := range set {
		if p := q.parameter.Prior; p != nil {
			w.found.learnt[j] = math.Max(0, 1-math.Sqrt(covariance.At(j, j))/p.SD)
		}
	}
	w.found.held[1] = x[1] <= set[1].parameter.Low || x[1] >= set[1].parameter.High
	w.fit.Freedom = float64(len(c.outcome) - 2)
	w.fit.Axes.Y = "chance to pass"
	for i, y := range c.outcome {
		p := chance(u(x, i))
		w.fit.Points = append(w.fit.Points, result.FitPoint{Series: c.series(i), Line: w.data.Lines[i], X: c.time[i], Y: y, Predicted: p,
			Residual: y - p, Weight: 1})
	}
	w.toFrequency(c)
	return nil
}

// normalQuantile is the two-sided 95 % quantile of the normal distribution.
const normalQuantile = 1.959964

// scoring writes the information matrix of the tests and priors at x and returns the slope of the likelihood.
func (w *work) scoring(c *cureTests, set []unknown, x []float64, s float64, chance func(i int) float64, information *regress.Matrix) (score [2]float64) {
	*information = *regress.NewMatrix(2, 2)
	for i, y := range c.outcome {
		const h = 1.0 // J/mol
		du := [2]float64{1 / s, (math.Log(c.dose(i, x[1]+h)) - math.Log(c.dose(i, x[1]-h))) / (2 * h * s)}
		p := chance(i)
		for a := range 2 {
			score[a] += (y - p) * du[a]
			for b := range 2 {
				information.Set(a, b, information.At(a, b)+p*(1-p)*du[a]*du[b])
			}
		}
	}
	for j, q := range set {
		if p := q.parameter.Prior; p != nil {
			mean := p.Mean
			if q.parameter.Log {
				mean = math.Log(mean)
			}
			score[j] -= (x[j] - mean) / (p.SD * p.SD)
			information.Set(j, j, information.At(j, j)+1/(p.SD*p.SD))
		}
	}
	return score
}
