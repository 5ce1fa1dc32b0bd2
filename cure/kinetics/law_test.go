package kinetics

import (
	"math"
	"math/rand/v2"
	"testing"
)

// near fails unless got is within rel of want, relatively.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g within %g", what, got, want, rel)
	}
}

// march integrates d alpha/dt = rate with the classical fourth-order Runge-Kutta method, independent of the solver
// that the film uses.
func march(l Law, temperature func(float64) float64, end float64, steps int) float64 {
	f := func(time, alpha float64) float64 { return l.Rate(temperature(time), alpha, 0) }
	h, alpha := end/float64(steps), 0.0
	for i := range steps {
		s := float64(i) * h
		k1 := f(s, alpha)
		k2 := f(s+h/2, alpha+h/2*k1)
		k3 := f(s+h/2, alpha+h/2*k2)
		k4 := f(s+h, alpha+h*k3)
		alpha += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
	}
	return alpha
}

func constant(v float64) func(float64) float64 { return func(float64) float64 { return v } }

// Integrated rate laws of elementary kinetics: n = 1: 1 - exp(-kt); n = 2: kt/(1 + kt); n = 1.5: 1 - (1 + kt/2)^-2.
// 400 steps of a fourth-order method over three time constants are good to (3/400)^4 = 3e-9, hence 1e-8.
func TestIsothermalClosedForms(t *testing.T) {
	const temperature, end = 390.0, 600.0
	for _, c := range []struct {
		order  float64
		closed func(kt float64) float64
	}{
		{1, func(kt float64) float64 { return 1 - math.Exp(-kt) }},
		{2, func(kt float64) float64 { return kt / (1 + kt) }},
		{1.5, func(kt float64) float64 { return 1 - math.Pow(1+kt/2, -2) }},
	} {
		law := FromPair(temperature, end, 0.9, 76e3, c.order)
		k, _ := law.Constants(temperature)
		alpha := march(law, constant(temperature), end, 400)
		near(t, "marched", alpha, c.closed(k*end), 1e-8)
		near(t, "pair met", alpha, 0.9, 1e-8)
		near(t, "IsothermalTime", law.IsothermalTime(temperature, 0.9), end, 1e-12)
	}
}

// The autocatalytic law with n = m = 1 is the logistic equation: alpha = k1 (E - 1)/(k1 E + k2), E = exp((k1 + k2) t).
func TestAutocatalysisIsLogistic(t *testing.T) {
	law := Law{A1: 1e5, E1: 60e3, N: 1, A2: 4e7, E2: 62e3, M: 1, HinderingWater: math.Inf(1)}
	const temperature = 380.0
	k1, k2 := law.Constants(temperature)
	for _, c := range []float64{0.001, 0.5, 0.99} {
		time := math.Log((k1+k2*c)/(k1*(1-c))) / (k1 + k2)
		near(t, "IsothermalTime", law.IsothermalTime(temperature, c), time, 1e-10)
		near(t, "marched", march(law, constant(temperature), time, 2000), c, 1e-8)
	}
}

// Half of the rate is left at X_g, all of it without water, a fifth at 2 X_g.
func TestHindrance(t *testing.T) {
	law := FromPair(393.15, 300, 0.95, 76e3, 1)
	free := law.Rate(393.15, 0.2, 5)
	law.HinderingWater = 0.1
	for x, share := range map[float64]float64{0: 1, 0.1: 0.5, 0.2: 0.2, -0.1: 0.5} {
		near(t, "share", law.Rate(393.15, 0.2, x)/free, share, 1e-14)
	}
}

// randomLaw draws a law of the breadth that a job may hold.
func randomLaw(r *rand.Rand) Law {
	l := Law{A1: math.Pow(10, 4*r.Float64()), E1: 5e4 * r.Float64(), N: 0.5 + 2.5*r.Float64(), M: 0.1 + 2*r.Float64(),
		HinderingWater: math.Inf(1)}
	if r.IntN(2) == 0 {
		l.A2, l.E2 = math.Pow(10, 4*r.Float64()), 5e4*r.Float64()
	}
	if r.IntN(2) == 0 {
		l.HinderingWater = 0.01 + r.Float64()
	}
	if r.IntN(3) == 0 {
		l.N = float64(1 + r.IntN(2))
	}
	return l
}

// The analytic derivatives against central differences, also in trial states outside [0, 1] and below X = 0. A step
// of 1e-5 leaves 1e-10 of truncation and 1e-11 of rounding, magnified where a power bends sharply: hence 1e-5 of scale.
func TestDerivatives(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 3000 {
		l := randomLaw(r)
		temperature, alpha, x := 290+150*r.Float64(), -0.05+1.1*r.Float64(), -0.05+r.Float64()
		if math.Abs(alpha) < 1e-3 || math.Abs(1-alpha) < 1e-3 {
			continue // the tails have a kink each, tested below
		}
		k1, k2 := l.Constants(temperature)
		rate, dAlpha, dX := l.RateAt(k1, k2, alpha, x)
		const h = 1e-5
		scale := math.Abs(k1) + math.Abs(k2) + math.Abs(dAlpha) + math.Abs(dX)
		if d := (l.Rate(temperature, alpha+h, x) - l.Rate(temperature, alpha-h, x)) / (2 * h); math.Abs(d-dAlpha) > 1e-5*scale {
			t.Fatalf("%+v alpha=%g x=%g: d/dalpha %g, differences %g", l, alpha, x, dAlpha, d)
		}
		if d := (l.Rate(temperature, alpha, x+h) - l.Rate(temperature, alpha, x-h)) / (2 * h); math.Abs(d-dX) > 1e-5*scale {
			t.Fatalf("%+v alpha=%g x=%g: d/dx %g, differences %g", l, alpha, x, dX, d)
		}
		dk1, dk2 := l.ConstantsSlope(temperature)
		slope, _, _ := l.RateAt(dk1, dk2, alpha, x)
		d := (l.Rate(temperature+1e-3, alpha, x) - l.Rate(temperature-1e-3, alpha, x)) / 2e-3
		if math.Abs(d-slope) > 1e-6*math.Abs(slope)+1e-9*math.Abs(rate) {
			t.Fatalf("%+v: d/dT %g, differences %g", l, slope, d)
		}
	}
}

// Outside [0, 1] the rate stays finite, is continuous at both ends and pulls back.
func TestTrialStatesAreSafe(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		l := randomLaw(r)
		temperature := 290 + 150*r.Float64()
		k1, k2 := l.Constants(temperature)
		for _, alpha := range []float64{-0.1, -1e-9, 0, 1e-9, 1 - 1e-9, 1, 1 + 1e-9, 1.1} {
			rate, dAlpha, dX := l.RateAt(k1, k2, alpha, -0.01)
			for _, v := range []float64{rate, dAlpha, dX} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%+v at alpha %g: %g %g %g", l, alpha, rate, dAlpha, dX)
				}
			}
			if alpha > 1 && rate > 0 || alpha < 0 && rate < 0 {
				t.Fatalf("%+v: rate %g leads away from [0, 1] at %g", l, rate, alpha)
			}
		}
		for _, end := range []float64{0, 1, 1 - unreactedTail, reactedTail} {
			below, _, _ := l.RateAt(k1, k2, end-1e-13, 0)
			above, _, _ := l.RateAt(k1, k2, end+1e-13, 0)
			if math.Abs(above-below) > 1e-4*(k1+k2) { // the chord of alpha^0.1 rises by 1e-13 1e-8^-0.9 = 1.6e-6
				t.Fatalf("%+v: jump at %g from %g to %g", l, end, below, above)
			}
		}
	}
}

func BenchmarkRateAt(b *testing.B) {
	for name, law := range map[string]Law{
		"order=1":   {A1: 1e8, E1: 76e3, N: 1, HinderingWater: 0.1},
		"order=1.5": {A1: 1e8, E1: 76e3, N: 1.5, HinderingWater: 0.1},
		"kamal":     {A1: 1e8, E1: 76e3, N: 1.5, A2: 1e8, E2: 76e3, M: 0.7, HinderingWater: 0.1},
	} {
		b.Run(name, func(b *testing.B) {
			k1, k2 := law.Constants(390)
			var sum float64
			for i := range b.N {
				r, _, _ := law.RateAt(k1, k2, float64(i&255)/256, 0.05)
				sum += r
			}
			if math.IsNaN(sum) {
				b.Fatal(sum)
			}
		})
	}
}
