package air

import "math"

// bracketed finds the root of f between a and b, where f changes sign, to the last bits: Chandrupatla 1997, "A new hybrid
// quadratic/bisection algorithm", Adv. Eng. Software 28, 145. It never leaves the bracket; the loop bound is twice what
// bisection would need.
func bracketed(f func(float64) float64, a, b float64) float64 {
	fa, fb := f(a), f(b)
	c, fc := a, fa
	t := 0.5
	for range 120 {
		x := a + t*(b-a)
		fx := f(x)
		if (fx > 0) == (fa > 0) {
			c, fc = a, fa
		} else {
			c, b, fc, fb = b, a, fb, fa
		}
		a, fa = x, fx
		m, fm := a, fa
		if math.Abs(fb) < math.Abs(fa) {
			m, fm = b, fb
		}
		limit := 2e-16 * math.Abs(m) / math.Abs(b-a) * 2
		if fm == 0 || limit > 0.5 || math.IsNaN(limit) {
			return m
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		} else {
			t = 0.5
		}
		t = min(max(t, limit), 1-limit)
	}
	return a
}
