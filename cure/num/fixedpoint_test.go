package num

import (
	"math"
	"testing"
)

// A linear map with a known fixed point, one eigenvalue of which makes the plain iteration diverge.
func TestFixedPoint(t *testing.T) {
	want := []float64{0.03, 0.07, 0.01}
	g := func(x, out []float64) error {
		d := [3]float64{x[0] - want[0], x[1] - want[1], x[2] - want[2]}
		out[0] = want[0] - 1.4*d[0] + 0.1*d[1]
		out[1] = want[1] + 0.3*d[0] - 0.6*d[1] + 0.2*d[2]
		out[2] = want[2] + 0.5*d[2] + 2*d[0]*d[0]
		return nil
	}
	x := []float64{0.01, 0.01, 0.02}
	image, count, err := FixedPoint(g, x, 1e-12, 0, 0.01, 40)
	if err != nil {
		t.Fatal(err)
	}
	for i := range want {
		if math.Abs(image[i]-want[i]) > 1e-11 {
			t.Errorf("component %d: %g, want %g after %d evaluations", i, image[i], want[i], count)
		}
	}
	if count > 20 {
		t.Errorf("%d evaluations", count)
	}
	if _, _, err := FixedPoint(func(x, out []float64) error { out[0] = x[0] + 1; return nil }, []float64{0}, 1e-9, 0, 1, 15); err == nil {
		t.Error("a map without a fixed point converged")
	}
}

// A map that jumps by 1e-6 at its fixed point, as a run does whose steps change, has none. The search ends beside it, and goes on in vain
// where it is not told of the noise.
func TestFixedPointOfANoisyMap(t *testing.T) {
	const jump = 1e-6
	g := func(x, out []float64) error {
		out[0] = 0.03 - 0.4*(x[0]-0.03) - math.Copysign(jump/2, x[0]-0.03)
		return nil
	}
	image, count, err := FixedPoint(g, []float64{0.01}, 1e-12, 4*jump, 1, 60)
	if err != nil || count > 12 || math.Abs(image[0]-0.03) > 2*jump {
		t.Errorf("%g after %d evaluations: %v", image[0], count, err)
	}
	if _, _, err := FixedPoint(g, []float64{0.01}, 1e-12, 0, 1, 60); err == nil {
		t.Error("found a fixed point where there is none")
	}
}
