package kinetics

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"github.com/drywright/drywright/cure/num"
)

// Moment is one point of a temperature history: Time [s], temperature T [K].
type Moment struct{ Time, T float64 }

// gaussPoints per panel keep a panel over which the integrand changes by a factor of e^2 or less exact to 1e-13.
const gaussPoints = 10

// EquivalentTime is how long [s] the film would have to be held at the reference temperature [K] for what the history
// did to it: the integral of exp(-(E/R)(1/T - 1/T_ref)) dt. The points are joined linearly, their times must not fall;
// fewer than two points give 0. It holds for any reaction with one activation energy e [J/mol], whatever its order
// (the conversion depends on the history through this integral alone).
func EquivalentTime(history []Moment, reference, e float64) float64 {
	var sum float64
	for i := 1; i < len(history); i++ {
		a, b := history[i-1], history[i]
		length := b.Time - a.Time
		if length == 0 {
			continue
		}
		speedUp := func(s float64) float64 {
			t := a.T + (b.T-a.T)*s
			return num.Exp(-e / GasConstant * (1/t - 1/reference))
		}
		swing := math.Abs(e / GasConstant * (1/a.T - 1/b.T))
		sum += length * panels(speedUp, 0, 1, swing/2)
	}
	return sum
}

// IsothermalTime is how long [s] a dry film takes from conversion 0 to c, 0 <= c < 1, at temperature t [K]; +Inf when
// the law does not start (A1 = 0). With k2 = 0 and no vitrification it is G(c)/k1; else the rate is integrated over the
// logit of the conversion, in which the integrand is smooth even where k1 is tiny against k2.
func (l Law) IsothermalTime(t, c float64) float64 {
	k1, k2 := l.Constants(t)
	if c == 0 {
		return 0
	}
	if k1 == 0 {
		return math.Inf(1)
	}
	v := l.Vitrification
	if k2 == 0 && v == nil {
		return OrderIntegral(c, l.N) / k1
	}
	perLogit := func(z float64) float64 {
		alpha, left := 1/(1+num.Exp(-z)), 1/(1+num.Exp(z))
		slow := 1 / (k1 + k2*num.Pow(alpha, l.M))
		if v != nil {
			k, _, _ := v.Diffusion(t, alpha)
			slow += 1 / k
		}
		return alpha * num.Pow(left, 1-l.N) * slow
	}
	end := num.Log(c / (1 - c))
	start := math.Min(end, 0) - 40 // e^-40 of the first time constant is left out
	least := end - start
	if v != nil {
		least *= 1 + v.steepness() // powers of e by which diffusion may slow down within one unit of the logit
	}
	return panels(perLogit, start, end, least)
}

// panels integrates f over [a, b] with Gauss-Legendre rules on a number of equal panels, at least the one given.
func panels(f func(float64) float64, a, b, least float64) float64 {
	n := int(math.Ceil(math.Max(least, 1)))
	width := (b - a) / float64(n)
	var sum float64
	for i := range n {
		left := a + float64(i)*width
		sum += quad.Fixed(f, left, left+width, gaussPoints, quad.Legendre{}, 0)
	}
	return sum
}
