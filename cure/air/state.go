package air

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// State is moist air: temperature K, total pressure Pa and mole fraction of vapour, from 0 (dry) to 1 (pure steam). Real
// says whether saturation includes the enhancement factor. The zero value is no state.
type State struct {
	T, P, Y float64
	Real    bool
}

// VapourPressure is the partial pressure of the vapour, Pa.
func (s State) VapourPressure() float64 { return s.Y * s.P }

// HumidityRatio is kg of vapour per kg of dry air; +Inf for pure steam.
func (s State) HumidityRatio() float64 { return massRatio * s.Y / (1 - s.Y) }

// molarMass of the mixture, kg/mol.
func (s State) molarMass() float64 { return AirMolarMass + s.Y*(WaterMolarMass-AirMolarMass) }

// Density of the mixture, kg/m3, as an ideal gas.
func (s State) Density() float64 { return s.P * s.molarMass() / (GasConstant * s.T) }

// VapourDensity is kg of vapour per m3 of mixture (absolute humidity).
func (s State) VapourDensity() float64 { return s.Y * s.P * WaterMolarMass / (GasConstant * s.T) }

// SpecificVolume is m3 of mixture per kg of dry air; +Inf for pure steam.
func (s State) SpecificVolume() float64 {
	return GasConstant * s.T / (s.P * (1 - s.Y) * AirMolarMass)
}

// Enthalpy is J per kg of dry air, h_a + W h_v; +Inf for pure steam.
func (s State) Enthalpy() float64 {
	return DryAirEnthalpy(s.T) + s.HumidityRatio()*VapourEnthalpy(s.T)
}

// SpecificHeat is the isobaric heat capacity, J per kg of mixture and K.
func (s State) SpecificHeat() float64 {
	a, v := (1-s.Y)*AirMolarMass, s.Y*WaterMolarMass
	return (a*DryAirHeatCapacity(s.T) + v*VapourHeatCapacity(s.T)) / (a + v)
}

// SaturatedFraction is the mole fraction of vapour that saturates air of this temperature and pressure; above 1 past the
// boiling point.
func (s State) SaturatedFraction() float64 { return SaturatedFraction(s.T, s.P, s.Real) }

// RelativeHumidity is y over the saturated mole fraction. Past the boiling point it cannot reach 1 and says little: at
// 150 degC pure steam of 1 atm has 0.21.
func (s State) RelativeHumidity() float64 { return s.Y / s.SaturatedFraction() }

// DewPoint is the temperature in K at which a surface takes dew, f p_sat = y p. For bone-dry air it is 0 K; for
// pure steam the boiling point. Dew points below 0 degC are over supercooled water, not frost points.
func (s State) DewPoint() float64 {
	e := s.VapourPressure()
	t := SaturationTemperature(e)
	if !s.Real || t == 0 {
		return t
	}
	// f changes by less than 1e-4 per kelvin while ln p_sat changes by 0.03 to 0.1: each pass gains two and a half digits.
	for range 8 {
		next := SaturationTemperature(e / Enhancement(t, s.P))
		if math.Abs(next-t) < 1e-10*t {
			return next
		}
		t = next
	}
	return t
}

// WetBulb is the thermodynamic wet bulb (adiabatic saturation) in K: the temperature t at which adding water of t
// saturates the air at constant enthalpy, h(T) + (W_s(t) - W) h_w(t) = h_s(t). It is the definition of ASHRAE; a drying
// surface settles elsewhere (package transfer). Written in mole fractions the balance holds for pure steam too, whose wet
// bulb is the boiling point, and its root is bracketed between deep frost and boiling, whatever the dry bulb.
func (s State) WetBulb() float64 {
	const floor = 200 // K; bone-dry air of 0 degC has 262 K
	top := SaturationTemperature(s.P)
	if s.Y >= 1 {
		return top
	}
	t, err := num.Root(s.saturationBalance, floor, top, 1e-10)
	if err != nil {
		return math.NaN() // only a state that is not a number encloses no root
	}
	return t
}

// saturationBalance is the adiabatic-saturation balance times (1 - y)(1 - y_s); positive below the wet bulb.
func (s State) saturationBalance(t float64) float64 {
	ys := SaturatedFraction(t, s.P, s.Real)
	hw := LiquidEnthalpy(t)
	return (1-s.Y)*(1-ys)*(DryAirEnthalpy(s.T)-DryAirEnthalpy(t)) +
		massRatio*(s.Y*(1-ys)*(VapourEnthalpy(s.T)-hw)-ys*(1-s.Y)*(VapourEnthalpy(t)-hw))
}

// Transport is Mixture at this state.
func (s State) Transport() Props { return Mixture(s.T, s.P, s.Y) }
