package ode

import "math"

// tolerances is the weighted root mean square norm: ||e||^2 = mean over the counted components of
// (e_i / (AbsTol_i + RelTol max(|y0_i|, |y1_i|)))^2. A local error of norm 1 is just tolerated.
type tolerances struct {
	rel   float64
	abs   []float64
	share float64 // 1 / number of counted components
}

func newTolerances(rel float64, abs []float64) tolerances {
	counted := 0
	for _, a := range abs {
		if !math.IsInf(a, 1) {
			counted++
		}
	}
	return tolerances{rel, append([]float64(nil), abs...), 1 / float64(counted)}
}

// norm measures e against the states y0 and y1. A component left out has an infinite divisor: it adds nothing, yet makes
// the norm NaN when it is itself not finite, so that no such number passes unseen.
func (tl *tolerances) norm(e, y0, y1 []float64) float64 {
	abs, y0, y1 := tl.abs[:len(e)], y0[:len(e)], y1[:len(e)]
	sum := 0.0
	for i, v := range e {
		size := math.Abs(y0[i])
		if a := math.Abs(y1[i]); a > size {
			size = a
		}
		v /= abs[i] + tl.rel*size
		sum += v * v
	}
	return math.Sqrt(sum * tl.share)
}

// finite reports whether every number of x is finite: 0 v is 0 for those and NaN for the others.
func finite(x []float64) bool {
	sum := 0.0
	for _, v := range x {
		sum += 0 * v
	}
	return sum == 0
}

// firstNonFinite returns the index of the first number that is not finite, or -1.
func firstNonFinite(x []float64) int {
	for i, v := range x {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return i
		}
	}
	return -1
}

// combine adds sum_j coef_j u_(index_j) to dst, four terms to a pass, because reading and writing dst is what costs.
func combine(dst []float64, u [][]float64, index []int, coef []float64) {
	j := 0
	for ; j+3 < len(index); j += 4 {
		a, b, c, d := coef[j], coef[j+1], coef[j+2], coef[j+3]
		p, q := u[index[j]][:len(dst)], u[index[j+1]][:len(dst)]
		r, s := u[index[j+2]][:len(dst)], u[index[j+3]][:len(dst)]
		for i := range dst {
			dst[i] += a*p[i] + b*q[i] + c*r[i] + d*s[i]
		}
	}
	if j+1 < len(index) {
		a, b := coef[j], coef[j+1]
		p, q := u[index[j]][:len(dst)], u[index[j+1]][:len(dst)]
		for i := range dst {
			dst[i] += a*p[i] + b*q[i]
		}
		j += 2
	}
	if j < len(index) {
		a, p := coef[j], u[index[j]][:len(dst)]
		for i := range dst {
			dst[i] += a * p[i]
		}
	}
}
