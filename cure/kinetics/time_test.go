package kinetics

import (
	"math"
	"testing"
)

// The conversion after any history is that of the equivalent time held at the reference temperature: marched by
// Runge-Kutta on a ramp and a hold against the closed form. 4000 steps leave 1e-9; 1e-7 leaves room for the corner.
func TestEquivalentTimeGivesTheConversion(t *testing.T) {
	law := FromPair(393.15, 300, 0.95, 76e3, 1.5)
	history := []Moment{{0, 293.15}, {240, 403.15}, {400, 403.15}}
	temperature := func(s float64) float64 {
		if s < 240 {
			return 293.15 + 110*s/240
		}
		return 403.15
	}
	alpha := march(law, temperature, 400, 4000)
	k, _ := law.Constants(393.15)
	kt := k * EquivalentTime(history, 393.15, law.E1)
	near(t, "conversion", alpha, 1-math.Pow(1+kt/2, -2), 1e-7)
}

// A history at the reference temperature counts as it stands, pieces add up, and hotter counts for more.
func TestEquivalentTimeProperties(t *testing.T) {
	flat := []Moment{{0, 393.15}, {100, 393.15}, {300, 393.15}}
	near(t, "flat", EquivalentTime(flat, 393.15, 76e3), 300, 1e-12)
	if got := EquivalentTime(flat[:1], 393.15, 76e3); got != 0 {
		t.Errorf("one point: %g", got)
	}
	whole := EquivalentTime([]Moment{{0, 300}, {100, 400}}, 350, 76e3)
	parts := EquivalentTime([]Moment{{0, 300}, {37, 337}}, 350, 76e3) + EquivalentTime([]Moment{{37, 337}, {100, 400}},
		350, 76e3)
	near(t, "parts", parts, whole, 1e-12)
	step := EquivalentTime([]Moment{{0, 300}, {10, 300}, {10, 350}, {20, 350}}, 350, 76e3)
	near(t, "jump", step, 10+10*math.Exp(-76e3/GasConstant*(1/300.0-1/350.0)), 1e-12)
	last := 0.0
	for _, top := range []float64{320, 360, 400, 440} {
		got := EquivalentTime([]Moment{{0, 300}, {100, top}}, 350, 76e3)
		if got <= last {
			t.Errorf("top %g: %g is not above %g", top, got, last)
		}
		last = got
	}
}

// IsothermalTime never starts without k1, needs no time for nothing, and grows with the conversion.
func TestIsothermalTimeProperties(t *testing.T) {
	law := Law{E1: 60e3, N: 1, A2: 1e6, E2: 60e3, M: 0.5, HinderingWater: math.Inf(1)}
	if got := law.IsothermalTime(400, 0.5); !math.IsInf(got, 1) {
		t.Errorf("a law without k1 started: %g", got)
	}
	law.A1 = 1e2
	last := 0.0
	for _, c := range []float64{0, 1e-6, 0.1, 0.5, 0.9, 0.999} {
		got := law.IsothermalTime(400, c)
		if c == 0 && got != 0 || c > 0 && !(got > last) {
			t.Errorf("conversion %g: %g s after %g s", c, got, last)
		}
		last = got
	}
	// With k1 = k2 (n = m = 1) the time is ln((1 + c)/(1 - c))/(2 k): an independent closed form.
	even := Law{A1: 1e-3, N: 1, A2: 1e-3, M: 1, HinderingWater: math.Inf(1)}
	near(t, "even", even.IsothermalTime(400, 0.9), math.Log(19)/2e-3, 1e-11)
}
