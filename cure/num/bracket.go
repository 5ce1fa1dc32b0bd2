package num

import "math"

// Bracket is a search for a change of sign that is asked for its next point and told the value there, so that many
// searches can go on side by side. The method is that of [Enclose], which is one Bracket followed to its end.
type Bracket struct {
	a, b, fa, fb  float64
	tol, half, k1 float64
	rising        bool
}

// NewBracket starts a search in [lo, hi], where the function has the values flo and fhi of opposite sign or zero, for a
// bracket no wider than tol > 0.
//
// Errors (fault.Numeric): the ends do not enclose a change of sign, or a value is not a number.
func NewBracket(lo, flo, hi, fhi, tol float64) (Bracket, error) {
	s := Bracket{a: lo, b: hi, fa: flo, fb: fhi}
	switch {
	case !(lo <= hi) || math.IsInf(lo, 0) || math.IsInf(hi, 0) || !(tol > 0):
		return s, badBracket(lo, hi, "is no interval with a tolerance above zero")
	case math.IsNaN(flo) || math.IsNaN(fhi):
		return s, badBracket(lo, hi, "has an end where the function is not a number")
	case flo == 0:
		s.b, s.fb = lo, flo
	case fhi == 0:
		s.a, s.fa = hi, fhi
	case (flo > 0) == (fhi > 0):
		return s, badBracket(lo, hi, "encloses no change of sign")
	}
	// A bracket cannot be narrower than neighbouring numbers.
	s.tol = math.Max(tol, 2*ulp(math.Max(math.Abs(lo), math.Abs(hi))))
	s.rising = s.fb > 0
	s.k1 = 0.2 / (hi - lo)
	// half is the radius that minmax bisection would have left at this count; n0 = 1 doubles it once. It is a trifle
	// smaller, so that rounding does not leave the last bracket just wider than tol.
	s.half = 0.99999 * s.tol * math.Exp2(math.Max(0, math.Ceil(Log((hi-lo)/s.tol)/math.Ln2)))
	return s, nil
}

// Done reports whether the bracket is narrow enough.
func (s *Bracket) Done() bool { return s.b-s.a <= s.tol }

// Ends are the present bracket and the values at its ends: a <= b, f(a) of the sign of flo, f(b) of that of fhi or zero.
func (s *Bracket) Ends() (a, fa, b, fb float64) { return s.a, s.fa, s.b, s.fb }

// Next is the point whose value the search wants, strictly inside the bracket.
func (s *Bracket) Next() float64 {
	mid := s.a + 0.5*(s.b-s.a)
	return itp(s.a, s.fa, s.b, s.fb, mid, s.k1, 0.5*s.tol, s.half-0.5*(s.b-s.a))
}

// Tell gives the value at the point that Next named.
//
// Errors (fault.Numeric): the value is not a number.
func (s *Bracket) Tell(x, fx float64) error {
	s.half *= 0.5
	switch {
	case math.IsNaN(fx):
		return badBracket(s.a, s.b, "holds a point where the function is not a number")
	case fx == 0:
		s.a, s.b, s.fa, s.fb = x, x, 0, 0
	case (fx > 0) == s.rising:
		s.b, s.fb = x, fx
	default:
		s.a, s.fa = x, fx
	}
	return nil
}
