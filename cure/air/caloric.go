package air

// Coefficients of the fits in centred temperature; the comments at the functions give source and deviation.
const (
	airHeat0, airHeat1, airHeat2, airHeat3             = 1014.1886, 24.036377, 15.564881, -2.1120298
	vapourHeat0, vapourHeat1, vapourHeat2, vapourHeat3 = 1901.816, 93.818648, 33.169863, -12.960921
)

// Enthalpy references in the same variable: dry air 0 at 273.15 K; vapour at the triple point, ideal-gas limit of
// IAPWS-95, 2 501 461 J/kg above the liquid.
const (
	xIce    = (273.15 - 400) / 200
	xTriple = (273.16 - 400) / 200

	airHeatIce       = xIce * (airHeat0 + xIce*(airHeat1/2+xIce*(airHeat2/3+xIce*airHeat3/4)))
	vapourHeatTriple = xTriple * (vapourHeat0 + xTriple*(vapourHeat1/2+
		xTriple*(vapourHeat2/3+xTriple*vapourHeat3/4)))
	vapourEnthalpyTriple = 2501460.9
)

// DryAirHeatCapacity is the isobaric heat capacity of dry air at atmospheric pressure, J/kg K.
//
// Cubic fit within 0.007 % (273 to 523 K; 0.3 % from 200 to 700 K) of Lemmon, Jacobsen, Penoncello and Friend 2000,
// "Thermodynamic properties of air and mixtures of nitrogen, argon, and oxygen", J. Phys. Chem. Ref. Data 29, 331.
func DryAirHeatCapacity(T float64) float64 {
	x := centred(T)
	return airHeat0 + x*(airHeat1+x*(airHeat2+x*airHeat3))
}

// DryAirEnthalpy is the integral of DryAirHeatCapacity from 273.15 K, J/kg.
func DryAirEnthalpy(T float64) float64 {
	x := centred(T)
	return 200 * (x*(airHeat0+x*(airHeat1/2+x*(airHeat2/3+x*(airHeat3/4)))) - airHeatIce)
}

// VapourHeatCapacity is the isobaric heat capacity of water vapour at low pressure, J/kg K.
//
// Cubic fit within 0.007 % (273 to 523 K; 0.4 % from 200 to 700 K) of the ideal-gas part of IAPWS-95: Wagner and Pruss
// 2002, J. Phys. Chem. Ref. Data 31, 387, equation 6.5 and table 6.1.
func VapourHeatCapacity(T float64) float64 {
	x := centred(T)
	return vapourHeat0 + x*(vapourHeat1+x*(vapourHeat2+x*vapourHeat3))
}

// VapourEnthalpy is the enthalpy of water vapour at low pressure above liquid water at the triple point, J/kg: the
// integral of VapourHeatCapacity. It is the ideal-gas value, right for vapour in oven air; saturated steam of 1 bar holds
// 0.5 % less.
func VapourEnthalpy(T float64) float64 {
	x := centred(T)
	return vapourEnthalpyTriple +
		200*(x*(vapourHeat0+x*(vapourHeat1/2+x*(vapourHeat2/3+x*(vapourHeat3/4))))-vapourHeatTriple)
}

// LiquidEnthalpy is the enthalpy of saturated liquid water above the triple point, J/kg: (T - 273.16 K) times a quintic,
// within 0.07 % of IAPWS-IF97 region 1 from 274 to 540 K (the mean heat capacity has its dip there); worked value 373.15 K,
// 419.1 kJ/kg. Below it goes on smoothly (supercooled water).
func LiquidEnthalpy(T float64) float64 {
	x := centred(T)
	return (T - 273.16) * (4202.0665 + x*(97.153534+x*(146.916+x*(54.856046+x*(141.73305-x*85.461226)))))
}

// Range of the latent heat's polynomial and the slope of its tangents beyond.
const (
	latentLow, latentHigh = 250, 540 // K
)

// LatentHeat is the heat of evaporation of water at T in K, J/kg: the difference of the saturated enthalpies.
//
// Quintic within 0.013 % of IAPWS-IF97 regions 1 and 2 from 273.15 to 540 K; worked value 373.15 K, 2 256.5 kJ/kg. Below
// 250 and above 540 K it goes on along the tangent, down to 0 K and up to where it would reach zero, and stays 0 there.
func LatentHeat(T float64) float64 {
	if T < latentLow || T > latentHigh {
		e := min(max(T, latentLow), latentHigh)
		h, slope := latentFit(e)
		return max(h+slope*(T-e), 0)
	}
	h, _ := latentFit(T)
	return h
}

func latentFit(T float64) (h, slope float64) {
	const a0, a1, a2, a3, a4, a5 = 2182690.7, -573021.84, -190216.05, -139670.98, -47512.609, -34556.764
	x := centred(T)
	h = a0 + x*(a1+x*(a2+x*(a3+x*(a4+x*a5))))
	return h, (a1 + x*(2*a2+x*(3*a3+x*(4*a4+x*5*a5)))) * (1. / 200)
}
