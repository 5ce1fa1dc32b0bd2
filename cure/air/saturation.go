package air

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// IAPWS-IF97, region 4: Wagner et al. 2000, "The IAPWS Industrial Formulation 1997 for the thermodynamic properties of
// water and steam", J. Eng. Gas Turbines Power 122, 150, table 34.
const (
	sat1  = 0.11670521452767e4
	sat2  = -0.72421316703206e6
	sat3  = -0.17073846940092e2
	sat4  = 0.12020824702470e5
	sat5  = -0.32325550322333e7
	sat6  = 0.14915108613530e2
	sat7  = -0.48232657361591e4
	sat8  = 0.40511340542057e6
	sat9  = -0.23855557567849
	sat10 = 0.65017534844798e3
)

// Where the equation hands over to its continuations, with value and slope there.
const (
	criticalTemperature = 647.096      // K
	criticalPressure    = 22.064e6     // Pa
	criticalSlope       = 268139.0     // Pa/K
	coldTemperature     = 233.15       // K
	coldPressure        = 18.956764359 // Pa
	coldExponent        = 24.115103    // d ln p / d ln T
)

// SaturationPressure is the vapour pressure of water in Pa at T in K, without air.
//
// IAPWS-IF97 region 4 (see above), valid 273.15 to 647.096 K, within 0.025 % of IAPWS-95. For trial states it goes on,
// rising throughout: down to 233.15 K by the same equation (supercooled water, within 0.1 % of Murphy and Koop 2005), below
// that as a power of T, above the critical point along the tangent. It is 0 for T <= 0.
//
// Worked value: 373.15 K gives 101 418 Pa.
func SaturationPressure(T float64) float64 {
	switch {
	case T > criticalTemperature:
		return criticalPressure + criticalSlope*(T-criticalTemperature)
	case T < coldTemperature:
		if T <= 0 {
			return 0
		}
		return coldPressure * num.Pow(T/coldTemperature, coldExponent)
	}
	t := T + sat9/(T-sat10)
	a := (t+sat1)*t + sat2
	b := (sat3*t+sat4)*t + sat5
	c := (sat6*t+sat7)*t + sat8
	r := 2 * c / (math.Sqrt(b*b-4*a*c) - b)
	r *= r
	return 1e6 * r * r
}

// SaturationTemperature is the inverse of SaturationPressure, its continuations included: the boiling point in K of water
// at p in Pa (IAPWS-IF97 region 4, backward equation 31). It is 0 for p <= 0.
func SaturationTemperature(p float64) float64 {
	switch {
	case p > criticalPressure:
		return criticalTemperature + (p-criticalPressure)/criticalSlope
	case p < coldPressure:
		if p <= 0 {
			return 0
		}
		return coldTemperature * num.Pow(p/coldPressure, 1/coldExponent)
	}
	r := math.Sqrt(math.Sqrt(p * 1e-6))
	e := (r+sat3)*r + sat6
	f := (sat1*r+sat4)*r + sat7
	g := (sat2*r+sat5)*r + sat8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	s := sat10 + d
	return (s - math.Sqrt(s*s-4*(sat9+sat10*d))) / 2
}

// Enhancement is the factor f by which air at the total pressure p in Pa raises the saturation vapour pressure at T in K.
//
//	ln f = alpha (1 - e/p) + beta (p/e - 1),  alpha and ln beta cubic in degrees Celsius
//
// Greenspan 1976, "Functional equations for the enhancement factors for CO2-free moist air", J. Res. Natl Bur. Stand. 80A,
// 41, with the ITS-90 coefficients of Hardy 1998, Third Int. Symp. on Humidity and Moisture. Range 0 to 100 degC, pressure
// to 2 MPa; 1.0057 at 80 degC and 101 325 Pa. It is 1 where water boils (e = p). Above boiling no saturated air exists: f
// leaves the join with the same slope, falls by at most 0.001 and comes back to 1. The cubics are held beyond -50 and 110
// degC, where only trial states come.
func Enhancement(T, p float64) float64 { return enhancement(T, p, SaturationPressure(T)) }

func enhancement(T, p, e float64) float64 {
	if !(e > 0) {
		return 1
	}
	t := min(max(T-273.15, -50), 110)
	alpha := 3.53624e-4 + t*(2.9328363e-5+t*(2.6168979e-7+t*8.5813609e-9))
	beta := num.Exp(-10.7588 + t*(6.3268134e-2+t*(-2.5368934e-4+t*6.3405286e-7)))
	x := e / p
	if x >= 1 {
		u := x - 1
		return 1 - (alpha+beta)*u/(1+100*u*u)
	}
	// Far below freezing p/e has no bound; 0.1 is never reached from 0 degC up.
	s := min((alpha+beta/x)*(1-x), 0.1)
	return 1 + s*(1+s*(1./2+s*(1./6))) // exp, to 4e-6 at the bound and to 1e-10 where the fit holds
}

// SaturatedFraction is the mole fraction of vapour over pure water at T in K in air of p in Pa, f p_sat/p. Above the
// boiling point it exceeds 1, which is no error: it is what a relative humidity or a water activity multiplies. The
// enhancement factor is left out unless real.
func SaturatedFraction(T, p float64, real bool) float64 {
	e := SaturationPressure(T)
	if real {
		return enhancement(T, p, e) * e / p
	}
	return e / p
}
