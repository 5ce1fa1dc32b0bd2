package num

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
)

// Simplex minimises c·x under a·x = b, x >= 0, for a few dozen unknowns, from a basis that the caller knows: basic[i] is the
// column that stands for row i, such that the solution of the basic columns alone is not negative. It overwrites a and b and
// returns x.
//
// The method is the simplex on a full tableau (Dantzig 1951) with Bland's rule (1977), which cannot cycle. Gonum's solver does the
// same with LAPACK, which would add a seventh to what the browser loads; the tests compare with it.
//
// Errors (fault.Numeric): the basis is singular or not feasible, or the least is unbounded.
func Simplex(c []float64, a [][]float64, b []float64, basic []int) ([]float64, error) {
	failed := func(got string) error {
		return fault.New(fault.Numeric, "simplex", got, "A linear program needs a feasible basis and bounds.")
	}
	for i, k := range basic {
		if math.Abs(a[i][k]) < tiny {
			return nil, failed("the basis is singular")
		}
		pivot(a, b, i, k)
	}
	for i := range b {
		if b[i] < -tiny {
			return nil, failed("the basis is not feasible")
		}
	}
	for {
		enter := entering(c, a, basic)
		if enter < 0 {
			break
		}
		leave := -1
		for i := range a {
			if a[i][enter] <= tiny {
				continue
			}
			if leave < 0 {
				leave = i
				continue
			}
			here, best := b[i]*a[leave][enter], b[leave]*a[i][enter]
			if here < best || here == best && basic[i] < basic[leave] {
				leave = i
			}
		}
		if leave < 0 {
			return nil, failed("the least is unbounded")
		}
		pivot(a, b, leave, enter)
		basic[leave] = enter
	}
	x := make([]float64, len(c))
	for i, k := range basic {
		x[k] = math.Max(0, b[i]) // below zero by rounding alone
	}
	return x, nil
}

// tiny is what counts as zero among coefficients of the order of one.
const tiny = 1e-11

// entering is the first column whose increase lowers the cost; -1: none.
func entering(c []float64, a [][]float64, basic []int) int {
	for k := range c {
		reduced, size := c[k], math.Abs(c[k])
		for i, basis := range basic {
			reduced -= c[basis] * a[i][k]
			size = math.Max(size, math.Abs(c[basis]))
		}
		if reduced < -tiny*math.Max(1, size) {
			return k
		}
	}
	return -1
}

// pivot makes column k the one of row i: one there, zero in all other rows.
func pivot(a [][]float64, b []float64, i, k int) {
	scale := 1 / a[i][k]
	for j := range a[i] {
		a[i][j] *= scale
	}
	a[i][k] = 1
	b[i] *= scale
	for r := range a {
		if f := a[r][k]; r != i && f != 0 {
			for j := range a[r] {
				a[r][j] -= f * a[i][j]
			}
			a[r][k] = 0
			b[r] -= f * b[i]
		}
	}
}
