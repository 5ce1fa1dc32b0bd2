package regress

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Quantile is the two-sided quantile of Student's t: P(|T| <= t) = level for the degrees of freedom, from the inverse of the
// incomplete beta function. For 10 degrees and 0.95 it is 2.2281 (any table of t).
func Quantile(level, freedom float64) float64 {
	if math.IsInf(freedom, 1) || freedom > 1e7 {
		freedom = 1e7
	}
	x := mathext.InvRegIncBeta(freedom/2, 0.5, 1-level)
	return math.Sqrt(freedom * (1/x - 1))
}

// result makes intervals, bands and criteria of a search that has ended.
//
// Covariance is s^2 (J'J)^-1 of the Jacobian at the end, priors counted as data. With the robust loss it is Huber's (1981,
// Robust Statistics, eq. 7.6.9; number from memory): the mean square of the bounded residuals over the squared share of
// residuals inside the bound, with his correction for small samples, and J unweighted by the loss.
func (f *fit) result() *Result {
	n, k := len(f.data.Y), len(f.parameters)
	r := &Result{Converged: f.found.converged, Evaluations: f.spent, inner: f.found.x,
		Predicted: make([]float64, n), Residuals: make([]float64, n), Band: make([]float64, n), Weights: f.robust}
	all := f.found.jacobian.clone()
	squares, inside := 0.0, 0.0
	for i := range n {
		root := math.Sqrt(f.robust[i])
		plain := f.found.r[i] / root
		r.Residuals[i] = -plain / f.weight(i)
		r.Predicted[i] = f.data.Y[i] - r.Residuals[i]
		squares += square(plain * f.robust[i]) // bounded: psi
		if f.robust[i] == 1 {
			inside++
		}
		r.Sum += f.robust[i] * plain * plain
		for j := range k {
			all.Set(i, j, all.At(i, j)/root)
		}
	}
	r.jacobian = all.top(n)
	held := f.held()
	told := f.told(all, held)
	r.Freedom = float64(n) - told
	variance := square(f.options.Sigma)
	if variance == 0 && r.Freedom > 0 {
		share := inside / float64(n)
		correction := 1 + float64(k)/float64(n)*(1-share)/share
		variance = squares / r.Freedom * square(correction/share)
	}
	r.Sigma = math.Sqrt(variance)
	r.Covariance = covariance(all, n, r.Sigma, f, held)
	r.Correlation = correlation(r.Covariance)
	quantile := math.Inf(1)
	if r.Freedom >= 0.5 || f.options.Sigma > 0 {
		freedom := math.Max(r.Freedom, 1)
		if f.options.Sigma > 0 {
			freedom = math.Inf(1)
		}
		quantile = Quantile(f.options.Level, freedom)
	}
	for j := range f.parameters {
		r.Parameters = append(r.Parameters, f.fitted(j, r.Covariance.At(j, j), quantile, held[j]))
	}
	f.bands(r, quantile)
	r.AICc, r.BIC = criteria(r.Sum, n, k)
	return r
}

// held says which parameters stand on a bound.
func (f *fit) held() []bool {
	held := make([]bool, len(f.parameters))
	for j := range held {
		p := &f.parameters[j]
		low, high := p.Low, p.High
		if p.Log {
			low, high = math.Log(low), math.Log(high)
		}
		slack := 1e-9 * math.Max(1, math.Abs(f.found.x[j]))
		held[j] = f.found.x[j] <= low+slack || f.found.x[j] >= high-slack
	}
	return held
}

// normal is J'J over the first rows of a, with held parameters fixed by a unit diagonal.
func normal(a *Matrix, rows int, held []bool) *Matrix {
	k := len(held)
	m := NewMatrix(k, k)
	for i := range k {
		for j := i; j < k; j++ {
			sum := 0.0
			if !held[i] && !held[j] {
				for row := range rows {
					sum += a.At(row, i) * a.At(row, j)
				}
			} else if i == j {
				sum = 1
			}
			m.Set(i, j, sum)
			m.Set(j, i, sum)
		}
	}
	return m
}

// told is how many parameters the data tell, priors taking their share: the trace of (J'J + P)^-1 J'J over the data.
func (f *fit) told(all *Matrix, held []bool) float64 {
	n, k := len(f.data.Y), len(held)
	rows := all.Rows()
	inverse := Invert(normal(all, rows, held))
	data := normal(all, n, held)
	sum := 0.0
	for i := range k {
		if held[i] {
			continue
		}
		for j := range k {
			if !held[j] {
				sum += inverse.At(i, j) * data.At(j, i)
			}
		}
	}
	return sum
}

// covariance of the parameters. The priors' rows of the Jacobian were measured in the search's sigma; here they count in the
// final one.
func covariance(all *Matrix, n int, sigma float64, f *fit, held []bool) *Matrix {
	a := all.clone()
	k := len(held)
	for p, i := range f.priors {
		for j := range k {
			a.Set(n+p, j, 0)
		}
		a.Set(n+p, i, sigma/f.parameters[i].Prior.SD)
	}
	rows := a.Rows()
	c := Invert(normal(a, rows, held))
	for i := range k {
		for j := range k {
			if held[i] || held[j] {
				c.Set(i, j, 0)
			}
			c.Set(i, j, sigma*sigma*c.At(i, j))
		}
	}
	return c
}

func correlation(c *Matrix) *Matrix {
	k := c.Columns()
	out := NewMatrix(k, k)
	for i := range k {
		for j := range k {
			v := 0.0
			if d := math.Sqrt(c.At(i, i) * c.At(j, j)); d > 0 {
				v = math.Max(-1, math.Min(1, c.At(i, j)/d))
			} else if i == j {
				v = 1
			}
			out.Set(i, j, v)
		}
	}
	return out
}

// fitted is one parameter in its own unit.
func (f *fit) fitted(j int, variance, quantile float64, held bool) Fitted {
	p, u := &f.parameters[j], f.found.x[j]
	out := Fitted{Name: p.Name, Value: p.outer(u), Error: math.Sqrt(variance), Log: p.Log, Learnt: 1, AtBound: held}
	half := quantile * out.Error
	if math.IsNaN(half) || held {
		half = math.Inf(1)
	}
	out.Low, out.High = math.Max(p.Low, p.outer(u-half)), math.Min(p.High, p.outer(u+half))
	if p.Prior != nil {
		out.Learnt = math.Max(0, 1-out.Error/p.Prior.SD)
	}
	return out
}

// bands is the half width of the interval of each mean prediction: t sqrt(g' C g), g its gradient.
func (f *fit) bands(r *Result, quantile float64) {
	for i := range r.Band {
		variance := 0.0
		for a := range f.parameters {
			for b := range f.parameters {
				variance += r.jacobian.At(i, a) * r.Covariance.At(a, b) * r.jacobian.At(i, b)
			}
		}
		r.Band[i] = quantile * math.Sqrt(math.Max(0, variance)) / f.weight(i)
	}
}

// criteria are Akaike's with the correction for small samples, n ln(S/n) + 2K + 2K(K+1)/(n-K-1), and Schwarz's, n ln(S/n) + K ln n,
// K counting the noise. Source: Burnham and Anderson (2002), Model Selection and Multimodel Inference, 2nd ed., section 2.4. AICc is
// +Inf where there are too few data for it.
func criteria(sum float64, n, k int) (aicc, bic float64) {
	count, params := float64(n), float64(k+1)
	fit := count * math.Log(math.Max(sum, 1e-300)/count)
	bic = fit + params*math.Log(count)
	if count <= params+1 {
		return math.Inf(1), bic
	}
	return fit + 2*params + 2*params*(params+1)/(count-params-1), bic
}
