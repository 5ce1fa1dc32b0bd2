package film

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// FloryHuggins is the isotherm of a polymer that mixes with water,
//
//	ln a = ln phi + (1 - phi) + chi (1 - phi)^2
//
// phi being the water's volume fraction; of its two branches the polymer-rich one, up to where a reaches 1. chi must be
// above 1/2: below, polymer and water mix in every proportion and a film at rest with saturated air does not exist.
//
// Source: Flory (1953), Principles of Polymer Chemistry, chapter XII, eq. 30, for a polymer of long chains.
type FloryHuggins struct {
	Chi            float64 // interaction with water [-], above 1/2
	PolymerDensity float64 // rho_p [kg/m3]
}

// fraction returns the water's volume fraction at the water content x [kg/kg].
func (f FloryHuggins) fraction(x float64) float64 {
	v := x * f.PolymerDensity / WaterDensity
	return v / (1 + v)
}

// at returns phi at the activity a in (0, 1]. The search runs in ln phi, in which the curve is concave up to its top: from the
// line of small phi, which lies below the curve, Newton's steps climb to the root and never pass it.
func (f FloryHuggins) at(a float64) float64 {
	target := num.Log(a)
	u := target - 1 - f.Chi
	phi := num.Exp(u)
	for range newtonLimit {
		dry := 1 - phi
		miss := target - u - dry*(1+f.Chi*dry)
		slope := dry * (1 - 2*f.Chi*phi)
		if !(slope > 0) {
			break
		}
		step := miss / slope
		u += step
		phi = num.Exp(u)
		if step < 1e-15*math.Max(1, math.Abs(u)) {
			break
		}
	}
	return phi
}

// Water implements Isotherm. For the slightly negative activity of a trial state it goes on as Henry's line.
func (f FloryHuggins) Water(a float64) float64 {
	if a <= 0 {
		return a * f.Slope(0)
	}
	phi := f.at(a)
	return phi / (1 - phi) * WaterDensity / f.PolymerDensity
}

// Slope implements Isotherm.
func (f FloryHuggins) Slope(a float64) float64 {
	perFraction := WaterDensity / f.PolymerDensity
	if a <= 0 {
		return num.Exp(-1-f.Chi) * perFraction
	}
	phi := f.at(a)
	dry := 1 - phi
	// dX/dphi over da/dphi = a dry (1 - 2 chi phi)/phi.
	return perFraction / (dry * dry) * phi / (a * dry * (1 - 2*f.Chi*phi))
}

// Activity implements Isotherm, in closed form below saturation.
func (f FloryHuggins) Activity(x float64) float64 {
	if x < 0 {
		return -f.Activity(-x)
	}
	phi := f.fraction(x)
	dry := 1 - phi
	if 2*f.Chi*phi >= 1 {
		return 1 // past the curve's top, hence past saturation
	}
	return math.Min(1, phi*num.Exp(dry*(1+f.Chi*dry)))
}
