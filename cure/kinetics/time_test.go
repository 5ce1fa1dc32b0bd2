package kinetics

import (
	"math"
	"testing"
)

// senumYang is p(x), the temperature integral int exp(-u)/u^2 du from x to infinity, by the fourth-degree rational form
// of Senum and Yang (1977), Rational approximations of the integral of the Arrhenius function, J. Thermal Analysis 11,
// 445-447 (from memory); its published error is below 1e-6 for x above 20.
func senumYang(x float64) float64 {
	up := x * (x*(x*(x+18)+86) + 96)
	down := x * (x*(x*(x*(x+20)+120)+240) + 120)
	return math.Exp(-x) / x * up / down
}

// A film heated at a constant rate b from T0 to T1: int exp(-E/RT) dT = (E/R)(p(E/RT1) - p(E/RT0)).
func TestEquivalentTimeOfARamp(t *testing.T) {
	const t0, t1, heating = 293.15, 413.15, 0.5
	for _, e := range []float64{50e3, 76e3, 116e3} {
		const reference = 393.15
		closed := e / GasConstant * (senumYang(e/(GasConstant*t1)) - senumYang(e/(GasConstant*t0))) / heating *
			math.Exp(e/(GasConstant*reference))
		got := EquivalentTime([]Moment{{0, t0}, {(t1 - t0) / heating, t1}}, reference, e)
		near(t, "ramp", got, closed, 2e-6) // the rational form's own error at x = 15
	}
}

// Row K53: the same integral from the tabulated exponential integral, from a temperature so low that nothing is left of
// it up to T = 400 K where E/RT = x. Ten digits less the factor 20 that the difference loses: 1e-8.
func TestTemperatureIntegralMatchesK53(t *testing.T) {
	r := published(t, "K53")
	table := r.numbers(t, r.Outputs["x_exp_x_E1"])
	for i, x := range r.numbers(t, r.Inputs["x"]) {
		got := EquivalentTime([]Moment{{0, 100}, {300, 400}}, 400, x*GasConstant*400)
		below := EquivalentTime([]Moment{{0, 10}, {90, 100}}, 400, x*GasConstant*400)
		// int exp(-E/RT) dT = (E/R) p(x) = 400 exp(-x) (1 - x exp(x) E1(x)), and the reference takes exp(-x) out.
		near(t, "integral", got+below, 400*(1-table[i]), 1e-8)
	}
}

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

// Kissinger (1957), Reaction kinetics in differential thermal analysis, Analytical Chemistry 29, 1702-1706: on a ramp of
// rate b the rate of a first-order reaction peaks where E b/(R Tp^2) = A exp(-E/(R Tp)). The peak is searched on a marched
// solution; a step of 0.02 K places it within 0.01 K, which moves the two sides apart by E/(R Tp^2) 0.01 K = 6e-4.
func TestKissingerPeak(t *testing.T) {
	law := FromPair(393.15, 300, 0.95, 76e3, 1)
	for _, heating := range []float64{2.5 / 60, 10.0 / 60} {
		const steps = 10000
		end := 200 / heating
		h := end / steps
		var alpha, best, peak float64
		for i := range steps {
			s := float64(i) * h
			rate := law.Rate(293.15+heating*s, alpha, 0)
			if rate > best {
				best, peak = rate, 293.15+heating*s
			}
			// The linear equation's exact step with the rate constant in the middle of the step: second order.
			mid, _ := law.Constants(293.15 + heating*(s+h/2))
			alpha = 1 - (1-alpha)*math.Exp(-mid*h)
		}
		k, _ := law.Constants(peak)
		near(t, "Kissinger", law.E1*heating/(GasConstant*peak*peak), k, 1e-3)
	}
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
