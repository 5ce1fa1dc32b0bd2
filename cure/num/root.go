package num

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
)

// Root returns a point of [lo, hi] where f changes sign, to within tol in the argument (tol > 0; a width below two units
// in the last place is taken as two such units). Of the two ends of the final bracket it returns the one with the
// smaller |f|. The method is that of [Enclose].
//
// Errors (fault.Numeric): the ends do not enclose a change of sign, or f returns NaN.
func Root(f func(float64) float64, lo, hi, tol float64) (float64, error) {
	a, b, fa, fb, err := enclose(f, lo, f(lo), hi, f(hi), tol)
	if err != nil {
		return math.NaN(), err
	}
	if math.Abs(fa) < math.Abs(fb) {
		return a, nil
	}
	return b, nil
}

// Enclose shrinks the bracket [lo, hi], where f has the values flo and fhi of opposite sign (or zero), until it is no
// wider than tol, and returns its ends a <= b: f(a) has the sign of flo, f(b) that of fhi or is zero. Callers that must
// stand on a known side of the root take that end.
//
// The method is ITP (Oliveira and Takahashi 2021, An enhancement of the bisection method average performance preserving
// minmax optimality, ACM Trans. Math. Softw. 47, 5) with k1 = 0.2/(hi-lo), k2 = 2, n0 = 1: superlinear on smooth
// functions, and never more than one evaluation beyond bisection.
//
// Errors (fault.Numeric): the ends do not enclose a change of sign, or f returns NaN.
func Enclose(f func(float64) float64, lo, flo, hi, fhi, tol float64) (a, b float64, err error) {
	a, b, _, _, err = enclose(f, lo, flo, hi, fhi, tol)
	return a, b, err
}

func enclose(f func(float64) float64, lo, flo, hi, fhi, tol float64) (a, b, fa, fb float64, err error) {
	s, err := NewBracket(lo, flo, hi, fhi, tol)
	for err == nil && !s.Done() {
		x := s.Next()
		err = s.Tell(x, f(x))
	}
	return s.a, s.b, s.fa, s.fb, err
}

// itp is one interpolate-truncate-project point strictly inside (a, b). eps is half the tolerance, radius the reach
// around the midpoint that keeps the minmax count.
func itp(a, fa, b, fb, mid, k1, eps, radius float64) float64 {
	x := (fb*a - fa*b) / (fb - fa)
	if !(x > a && x < b) { // overflow or an infinite end value: bisect
		return mid
	}
	toward := math.Copysign(1, mid-x)
	// The truncation never falls below half the tolerance, so that the point steps over the root and both ends move.
	shift := math.Max(k1*(b-a)*(b-a), 0.9*eps)
	if shift <= math.Abs(mid-x) {
		x += toward * shift
	} else {
		x = mid
	}
	if math.Abs(x-mid) > radius {
		x = mid - toward*math.Max(radius, 0)
	}
	if !(x > a && x < b) {
		return mid
	}
	return x
}

// ulp is the distance from x >= 0 to the next larger number.
func ulp(x float64) float64 { return math.Nextafter(x, math.Inf(1)) - x }

func badBracket(a, b float64, what string) error {
	return fault.New(fault.Numeric, "root", "the bracket "+fault.Number(a)+" to "+fault.Number(b)+" "+what,
		"Widen the bracket or check the input that shapes the function.")
}
