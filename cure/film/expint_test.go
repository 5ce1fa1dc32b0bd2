package film

import (
	"math"
	"math/big"
	"testing"
)

// reference is x exp(-x) Ei(x) - 1 from the power series (Abramowitz and Stegun 1964, 5.1.10) with 400 bits, enough for
// the cancellation at x = 200.
func reference(x float64) float64 {
	const bits = 400
	f := func(v float64) *big.Float { return new(big.Float).SetPrec(bits).SetFloat64(v) }
	sum, term := f(0), f(1)
	for k := 1.0; k < 1200; k++ {
		term.Mul(term, new(big.Float).SetPrec(bits).Quo(f(x), f(k)))
		sum.Add(sum, new(big.Float).SetPrec(bits).Quo(term, f(k)))
	}
	// gamma + ln x is added in double precision: it is below 1e-16 of the sum where that matters, exact enough elsewhere.
	sum.Add(sum, f(0.57721566490153286+math.Log(x)))
	exp, e := f(1), f(1)
	for k := 1.0; k < 1200; k++ {
		e.Mul(e, new(big.Float).SetPrec(bits).Quo(f(x), f(k)))
		exp.Add(exp, e)
	}
	sum.Mul(sum, f(x)).Quo(sum, exp).Sub(sum, f(1))
	v, _ := sum.Float64()
	return v
}

func TestExponentialIntegral(t *testing.T) {
	// Abramowitz and Stegun (1964), tables 5.1 and 5.2: Ei(1) = 1.895117816, x exp(-x) Ei(x) at x = 10 is 1.131470205
	// (both from memory; printed to ten figures, hence 1e-9).
	for x, want := range map[float64]float64{1: math.Exp(-1)*1.895117816 - 1, 10: 1.131470205 - 1} {
		if got := eiRest(x); math.Abs(got-want) > 1e-9 {
			t.Errorf("eiRest(%g) = %.12g, table %.12g", x, got, want)
		}
	}
	for x := 0.01; x < 190; x *= 1.07 {
		// Below 1 the value itself runs through zero, so the bound is absolute there.
		got, want := eiRest(x), reference(x)
		if math.Abs(got-want) > 1e-12*math.Max(math.Abs(want), 1/x) {
			t.Errorf("eiRest(%g) = %.16g, want %.16g", x, got, want)
		}
	}
}
