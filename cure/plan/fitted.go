package plan

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// What a trial tells it tells with an uncertainty, and of several numbers with a correlation: a higher multiplier goes with a
// lower diffusivity. The numbers of a fit therefore move together, along directions that vary independently of each other:
// with the standard errors s and the correlation matrix R = L L' (Cholesky), the numbers are p + s L z, the z being
// independent and of standard deviation 1. Each z is a variable; a number whose error is one of its logarithm moves by
// the factor exp(s L z).

// fittedPrefix begins the names of these variables: "fit:NAME:1", "fit:NAME:2", ...
const fittedPrefix = "fit:"

// furthest is how many standard deviations a fitted number may be moved.
const furthest = 6.0

// fitted lists the directions in which the numbers of each fit vary that still rest on it.
func fitted(j *job.Job, rules *job.Rules) []Variable {
	var vs []Variable
	resting := job.Resting(j)
	for i := range j.Fits {
		f := &j.Fits[i]
		var values []job.FittedValue
		for _, r := range resting {
			if r.Fit == f && r.Value.StandardError > 0 {
				values = append(values, r.Value)
			}
		}
		factor := cholesky(values, f.Correlations)
		for k := range values {
			vs = append(vs, direction(f.Name, k, values, factor, rules))
		}
	}
	return vs
}

// direction is the k-th way in which the numbers of a fit vary.
func direction(name string, k int, values []job.FittedValue, factor [][]float64, rules *job.Rules) Variable {
	label := words.Key("variables.fit.label", "name", name)
	if len(values) > 1 {
		label = words.Key("variables.fit.direction", "name", name, "number", k+1, "count", len(values))
	}
	sigma := job.Display{Symbol: "σ", Factor: 1, Digits: 2}
	return Variable{ID: fmt.Sprintf("%s%s:%d", fittedPrefix, name, k+1), Label: label,
		Help: words.Key("variables.fit.help"),
		Low:  -furthest, High: furthest, UsualLow: -2, UsualHigh: 2, Toward: Highest, Step: 0.5, Display: sigma, USDisplay: sigma,
		set: func(j *job.Job, z float64) {
			if z == 0 {
				return
			}
			for i := k; i < len(values); i++ {
				v := &values[i]
				now, ok := job.Number(j, v.Path)
				if !ok {
					continue
				}
				by := v.StandardError * factor[i][k] * z
				if v.Logarithmic {
					now *= math.Exp(by)
				} else {
					now += by
				}
				if f, known := rules.Field(v.Path); known {
					now = math.Min(math.Max(now, f.Low), f.High)
				}
				setNumber(j, v.Path, now)
			}
		}}
}

// cholesky is the lower factor of the correlation matrix of values; where rounding has left it short of definite, a direction
// that the others explain gets no spread of its own.
func cholesky(values []job.FittedValue, correlations []job.FitCorrelation) [][]float64 {
	n := len(values)
	r := func(a, b int) float64 {
		if a == b {
			return 1
		}
		for _, c := range correlations {
			if c.First == values[a].Path && c.Second == values[b].Path || c.First == values[b].Path && c.Second == values[a].Path {
				return c.Correlation
			}
		}
		return 0
	}
	l := make([][]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for k := 0; k <= i; k++ {
			rest := r(i, k)
			for m := range k {
				rest -= l[i][m] * l[k][m]
			}
			switch {
			case k == i:
				l[i][i] = math.Sqrt(math.Max(0, rest))
			case l[k][k] > 0:
				l[i][k] = rest / l[k][k]
			}
		}
	}
	return l
}
