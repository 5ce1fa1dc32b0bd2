package regress

import (
	"math"
	"slices"
)

// Bootstrap refits resampled data and returns for each parameter the interval that holds the level's share of the refits
// (percentiles). It checks the intervals of the Jacobian, which trust that the model is straight over them.
//
// Residuals are resampled, each freed of the pull that its own datum had (divided by sqrt(1 - leverage)) and centred.
// Source: Efron and Tibshirani (1993), An Introduction to the Bootstrap, section 9.4; Davison and Hinkley (1997), Bootstrap Methods and
// their Application, eq. 6.9 (numbers from memory). The refits keep the Jacobian of the fit and take its Gauss-Newton steps in the true
// model (three, of which each brings the error down by the model's bend), which costs three evaluations instead of a search.
func Bootstrap(m Model, d Data, parameters []Parameter, o Options, r *Result, times int, random *Random) (low, high []float64, err error) {
	f, err := newFit(m, d, parameters, o)
	if err != nil {
		return nil, nil, err
	}
	n, k := len(d.Y), len(parameters)
	f.sigma = r.Sigma
	held := make([]bool, k)
	for j := range held {
		held[j] = r.Parameters[j].AtBound
	}
	whole := NewMatrix(n+len(f.priors), k)
	for i := range n {
		for j := range k {
			whole.Set(i, j, r.jacobian.At(i, j))
		}
	}
	for p, j := range f.priors {
		whole.Set(n+p, j, r.Sigma/parameters[j].Prior.SD)
	}
	inverse := Invert(normal(whole, n+len(f.priors), held))
	pool := f.pool(r, inverse)
	f.data.Y = make([]float64, n)
	res := make([]float64, n+len(f.priors))
	draws := make([][]float64, k)
	for range times {
		for i := range f.data.Y {
			f.data.Y[i] = r.Predicted[i] + pool[random.Below(n)]/f.weight(i)
		}
		u := slices.Clone(r.inner)
		usable := true
		for range 3 {
			if err := f.residuals(u, res); err != nil {
				usable = false
				break
			}
			f.newton(u, res, whole, inverse, held)
		}
		if !usable {
			continue
		}
		for j := range draws {
			draws[j] = append(draws[j], parameters[j].outer(u[j]))
		}
	}
	level := f.options.Level
	for j := range draws {
		slices.Sort(draws[j])
		low, high = append(low, percentile(draws[j], (1-level)/2)), append(high, percentile(draws[j], (1+level)/2))
	}
	return low, high, nil
}

// newton takes one Gauss-Newton step with a fixed Jacobian, inside the bounds.
func (f *fit) newton(u, res []float64, whole *Matrix, inverse *Matrix, held []bool) {
	k := len(u)
	gradient := make([]float64, k)
	for i, v := range res {
		for j := range gradient {
			gradient[j] += whole.At(i, j) * v
		}
	}
	for a := range u {
		if held[a] {
			continue
		}
		for b := range gradient {
			if !held[b] {
				u[a] -= inverse.At(a, b) * gradient[b]
			}
		}
		p := &f.parameters[a]
		u[a] = math.Max(p.inner(p.Low), math.Min(p.inner(p.High), u[a]))
	}
}

// pool is what residuals are drawn from, weighted; the robust loss has cut outliers down to its bound.
func (f *fit) pool(r *Result, inverse *Matrix) []float64 {
	n, k := len(r.Residuals), len(f.parameters)
	pool := make([]float64, n)
	mean := 0.0
	for i := range pool {
		leverage := 0.0
		for a := range k {
			for b := range k {
				leverage += r.jacobian.At(i, a) * inverse.At(a, b) * r.jacobian.At(i, b)
			}
		}
		pool[i] = r.Residuals[i] * f.weight(i) * r.Weights[i] / math.Sqrt(math.Max(0.05, 1-leverage))
		mean += pool[i] / float64(n)
	}
	for i := range pool {
		pool[i] -= mean
	}
	return pool
}

// percentile of sorted draws, between two of them by straight lines.
func percentile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := share * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
