package num

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

func TestRootPublished(t *testing.T) {
	for _, c := range []struct {
		name   string
		f      func(float64) float64
		lo, hi float64
		want   float64
	}{
		// OEIS A003957, decimal expansion of the root of cos x = x.
		{"cosine", func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.7390851332151606},
		// OEIS A007493, real root of x^3 - 2x - 5, the cubic on which Newton and Wallis showed the method.
		{"cubic", func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 2.0945514815423265},
		// OEIS A030178, the omega constant: x e^x = 1.
		{"omega", func(x float64) float64 { return x*math.Exp(x) - 1 }, 0, 1, 0.5671432904097838},
	} {
		got, err := Root(c.f, c.lo, c.hi, 1e-15)
		// The tolerance asked for.
		if err != nil || math.Abs(got-c.want) > 1e-15 {
			t.Errorf("%s: got %.17g (%v), want %.17g", c.name, got, err, c.want)
		}
	}
}

// TestEncloseCost: never more than one evaluation beyond bisection on hostile functions, far fewer on smooth ones.
func TestEncloseCost(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		most int
	}{
		{"smooth", func(x float64) float64 { return math.Exp(x) - 1.7 }, 10},
		{"flat", func(x float64) float64 { return math.Pow(x-0.3, 9) }, 35},
		{"jump", func(x float64) float64 { return math.Copysign(1, x-0.7123) }, 35},
		{"lopsided", func(x float64) float64 { return math.Exp(40*x) - 2 }, 35},
		{"infinite", func(x float64) float64 { return math.Tan(math.Pi * (x - 0.5)) }, 35},
	} {
		calls := 0
		g := func(x float64) float64 { calls++; return c.f(x) }
		const tol = 1e-10 // bisection of [0, 1] needs 34 halvings
		a, b, err := Enclose(g, 0, c.f(0), 1, c.f(1), tol)
		if err != nil || b-a > tol || calls > c.most {
			t.Errorf("%s: [%v, %v] after %d calls (most %d): %v", c.name, a, b, calls, c.most, err)
		}
		if fa, fb := c.f(a), c.f(b); fa > 0 || fb < 0 {
			t.Errorf("%s: ends on the wrong sides: %v, %v", c.name, fa, fb)
		}
	}
}

// TestEncloseRandom: for any cubic and bracket with a change of sign, the bracket shrinks to the tolerance around a root.
func TestEncloseRandom(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		p, q, r := rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()
		scale := math.Pow(10, 6*rng.Float64()-3)
		f := func(x float64) float64 { x /= scale; return ((x+p)*x+q)*x + r }
		lo := scale * (4*rng.Float64() - 6)
		hi := lo + scale*(1+8*rng.Float64())
		if (f(lo) > 0) == (f(hi) > 0) {
			continue
		}
		tol := scale * math.Pow(10, -12*rng.Float64())
		a, b, err := Enclose(f, lo, f(lo), hi, f(hi), tol)
		if err != nil || !(b-a <= math.Max(tol, 8*ulp(math.Abs(hi)+math.Abs(lo)))) || a < lo || b > hi || f(a)*f(b) > 0 {
			t.Fatalf("[%g, %g] from [%g, %g], tolerance %g: %v", a, b, lo, hi, tol, err)
		}
	}
}

func TestRootRefuses(t *testing.T) {
	square := func(x float64) float64 { return x*x + 1 }
	hole := func(x float64) float64 {
		if x > 0.2 && x < 0.9 {
			return math.NaN()
		}
		return x - 0.5
	}
	identity := func(x float64) float64 { return x }
	for name, run := range map[string]func() (float64, error){
		"no change of sign": func() (float64, error) { return Root(square, -1, 1, 1e-9) },
		"NaN inside":        func() (float64, error) { return Root(hole, 0, 1, 1e-9) },
		"NaN end":           func() (float64, error) { return Root(identity, math.NaN(), 1, 1e-9) },
		"infinite end":      func() (float64, error) { return Root(identity, -1, math.Inf(1), 1e-9) },
		"reversed":          func() (float64, error) { return Root(identity, 1, -1, 1e-9) },
		"no tolerance":      func() (float64, error) { return Root(identity, -1, 1, 0) },
	} {
		x, err := run()
		var f *fault.Fault
		if !errors.As(err, &f) || f.Code != fault.Numeric || !math.IsNaN(x) {
			t.Errorf("%s: got %v, %v", name, x, err)
		}
	}
	for _, end := range []float64{-1, 1} { // a root at an end needs no search
		if x, err := Root(func(x float64) float64 { return x - end }, -1, 1, 1e-9); err != nil || x != end {
			t.Errorf("root at %v: %v, %v", end, x, err)
		}
	}
}
