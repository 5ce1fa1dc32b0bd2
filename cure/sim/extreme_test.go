package sim

import (
	"math"
	"testing"
)

// The peak of exp(-x^2/2) is 1 at 0, wherever the looks fall. Looks half a width apart miss it by up to 3 %, the parabola by
// 0.4 % of this curve.
func TestPeakBetweenLooks(t *testing.T) {
	for _, offset := range []float64{0, 0.05, 0.1, 0.2, 0.25, 0.3, 0.45} {
		var e extreme
		highest := 0.0
		for x := -3 + offset; x < 3; x += 0.5 {
			v := math.Exp(-x * x / 2)
			highest = math.Max(highest, v)
			e.see(x, v, 0.99)
		}
		if math.Abs(e.worst-1) > 5e-3 {
			t.Errorf("looks from %g on: worst %.5f, want 1 (highest look %.5f)", offset, e.worst, highest)
		}
		if !e.passed || math.Abs(e.start) > 0.3 {
			t.Errorf("looks from %g on: passed %v at %g", offset, e.passed, e.start)
		}
	}
}

// A jump is no peak to be rounded: what lies before it and after it are two curves.
func TestNoPeakAcrossAJump(t *testing.T) {
	var e extreme
	for _, l := range []look{{0, 0}, {1, 5}, {1, 1}, {2, 0}} {
		e.see(l.t, l.value, 9)
	}
	if e.worst != 5 || e.passed {
		t.Errorf("worst %g, passed %v; want 5 and no", e.worst, e.passed)
	}
}

// A straight rise has no peak, nor has a flat.
func TestNoPeakOnAStraightLine(t *testing.T) {
	for _, looks := range [][3]look{{{0, 0}, {1, 1}, {2, 2}}, {{0, 1}, {1, 1}, {2, 1}}, {{0, 2}, {1, 1}, {2, 3}}} {
		if top, peaks := peak(looks[0], looks[1], looks[2]); peaks {
			t.Errorf("%v: a peak at %v", looks, top)
		}
	}
}
