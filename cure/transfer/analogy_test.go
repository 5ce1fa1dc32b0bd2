package transfer_test

import (
	"math"
	"testing"

	. "github.com/drywright/drywright/cure/transfer"
)

// Ackermann and the Stefan logarithm stay smooth through their series and continuation, and finite at the extremes.
func TestHighFluxLimits(t *testing.T) {
	for _, c := range []float64{-1e-4, 1e-4} {
		inside, outside := Ackermann(c*(1-1e-9)), Ackermann(c*(1+1e-9))
		// expm1 near 1e-4 keeps 12 digits of the quotient.
		if math.Abs(inside-outside) > 1e-12 {
			t.Errorf("series and function meet at %g with %g", c, inside-outside)
		}
	}
	if v := Ackermann(800); v != 0 {
		t.Errorf("Ackermann(800) = %g", v)
	}
	if v := Ackermann(-800); v != 800 {
		t.Errorf("Ackermann(-800) = %g", v)
	}
	if v := Ackermann(0); v != 1 {
		t.Errorf("Ackermann(0) = %g", v)
	}
	const steamy = 1e-3
	below, slopeBelow := StefanLog(0.1, 1-steamy*(1+1e-6))
	above, slopeAbove := StefanLog(0.1, 1-steamy*(1-1e-6))
	// The two points lie 2e-6 of the logarithm apart.
	if d := above - below; d < 0 || d > 4e-6 || math.Abs(slopeAbove/slopeBelow-1) > 1e-5 {
		t.Errorf("the logarithm jumps: %g, slopes %g %g", d, slopeBelow, slopeAbove)
	}
	// The inverse is one on both sides of it; rounding of y by 1e-16 moves the force by a thousand times that.
	for _, y := range []float64{0, 0.4, 1 - 1.01*steamy, 1 - 0.99*steamy, 1, 1.2} {
		f, slope := Force(y)
		back, inverse := Fraction(f)
		if math.Abs(back-y) > 1e-15 || math.Abs(slope*inverse-1) > 1e-12 {
			t.Errorf("the force %g of %g is that of %g, slopes %g and %g", f, y, back, slope, inverse)
		}
	}
	if l, _ := StefanLog(1, 1); l != 0 {
		t.Errorf("steam over steam drives %g", l)
	}
	for _, ys := range []float64{0, 0.5, 1, 3} {
		if l, s := StefanLog(1, ys); math.IsNaN(l) || math.IsInf(l, 0) || !(s > 0) {
			t.Errorf("pure steam over %g: %g, %g", ys, l, s)
		}
	}
	if l, _ := StefanLog(0.3, 0.3); l != 0 {
		t.Errorf("no difference gives %g", l)
	}
	// The slope is the derivative.
	for _, ys := range []float64{0.01, 0.2, 0.7} {
		j, s := StefanFlux(0.02, 101325, 320, 0.05, ys)
		k, _ := StefanFlux(0.02, 101325, 320, 0.05, ys+1e-6)
		if math.Abs((k-j)/1e-6/s-1) > 1e-5 {
			t.Errorf("slope %g at %g", s, ys)
		}
	}
}
