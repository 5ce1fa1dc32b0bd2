package air

import (
	"github.com/drywright/drywright/cure/words"
	"math"

	"github.com/drywright/drywright/cure/fault"
)

// slack admits inputs that overshoot a limit by rounding only.
const slack = 1e-9

// The constructors below take temperature in K and pressure in Pa within the package's limits. Their errors are
// *fault.Fault of code Range with an empty path, for the caller to fill; the advice names the quantity. They refuse
// supersaturated air. real includes the enhancement factor.

// FromRelativeHumidity makes a State from a relative humidity in [0, 1]. Past the boiling point pure steam is reached
// before 1, and the range in the error ends there.
func FromRelativeHumidity(T, p, rh float64, real bool) (State, error) {
	if err := check(T, p); err != nil {
		return State{}, err
	}
	full := SaturatedFraction(T, p, real)
	advice := words.Told("Give a relative humidity between dry and saturated.")
	if full > 1 {
		advice = words.Told("Above the boiling point this relative humidity is more than pure steam; give a dew point or a humidity ratio.")
	}
	if f := within(rh, 0, min(1, 1/full), "1", advice); f != nil {
		return State{}, f
	}
	return state(T, p, rh*full, real), nil
}

// FromDewPoint makes a State from a dew point in K, up to the dry bulb or, past boiling, the boiling point; down to
// 173.15 K.
func FromDewPoint(T, p, dew float64, real bool) (State, error) {
	if err := check(T, p); err != nil {
		return State{}, err
	}
	const low = 173.15
	high := min(T, SaturationTemperature(p))
	if f := within(dew, low, high, "K", words.Told("Give a dew point at or below the air temperature and the boiling point.")); f != nil {
		return State{}, f
	}
	return state(T, p, SaturatedFraction(dew, p, real), real), nil
}

// FromHumidityRatio makes a State from kg of vapour per kg of dry air; past boiling up to 1e6, which is steam but for a
// part in a million. Pure steam itself is given by its dew point.
func FromHumidityRatio(T, p, ratio float64, real bool) (State, error) {
	if err := check(T, p); err != nil {
		return State{}, err
	}
	high := 1e6
	if y := SaturatedFraction(T, p, real); y < 1 {
		high = massRatio * y / (1 - y)
	}
	if f := within(ratio, 0, high, "kg/kg", words.Told("Give a humidity ratio between dry and saturated air.")); f != nil {
		return State{}, f
	}
	return state(T, p, ratio/(massRatio+ratio), real), nil
}

// FromVapourDensity makes a State from kg of vapour per m3 of moist air (absolute humidity).
func FromVapourDensity(T, p, density float64, real bool) (State, error) {
	if err := check(T, p); err != nil {
		return State{}, err
	}
	perFraction := p * WaterMolarMass / (GasConstant * T)
	high := perFraction * min(1, SaturatedFraction(T, p, real))
	if f := within(density, 0, high, "kg/m3", words.Told("Give a vapour density between dry and saturated air.")); f != nil {
		return State{}, f
	}
	return state(T, p, density/perFraction, real), nil
}

// FromWetBulb makes a State from a thermodynamic wet bulb in K, between that of bone-dry air and the dry bulb or, past
// boiling, the boiling point. The balance of State.WetBulb is linear in the mole fraction.
func FromWetBulb(T, p, wet float64, real bool) (State, error) {
	if err := check(T, p); err != nil {
		return State{}, err
	}
	low := State{T: T, P: p, Real: real}.WetBulb()
	high := min(T, SaturationTemperature(p))
	advice := words.Told("Give a wet bulb between that of bone-dry air and the air temperature or the boiling point.")
	if f := within(wet, low, high, "K", advice); f != nil {
		return State{}, f
	}
	ys := SaturatedFraction(wet, p, real)
	hw := LiquidEnthalpy(wet)
	gain := massRatio * ys * (VapourEnthalpy(wet) - hw)
	sensible := (1 - ys) * (DryAirEnthalpy(T) - DryAirEnthalpy(wet))
	vapour := massRatio * (1 - ys) * (VapourEnthalpy(T) - hw)
	return state(T, p, (gain-sensible)/(vapour-sensible+gain), real), nil
}

// state trims what slack let through.
func state(T, p, y float64, real bool) State {
	return State{T: T, P: p, Y: min(max(y, 0), 1), Real: real}
}

func check(T, p float64) error {
	if f := within(T, LowTemperature, HighTemperature, "K", words.Told("Give an air temperature from {low} to {high}.", "low", kelvins(LowTemperature), "high", kelvins(HighTemperature))); f != nil {
		return f
	}
	if f := within(p, LowPressure, HighPressure, "Pa", words.Told("Give an air pressure from {low} to {high}.", "low", pascals(LowPressure), "high", pascals(HighPressure))); f != nil {
		return f
	}
	return nil
}

func kelvins(t float64) words.Amount { return words.Amount{Value: t, Unit: "K"} }
func pascals(p float64) words.Amount { return words.Amount{Value: p, Unit: "Pa"} }

// within complains of a value outside [low, high] or not a number.
func within(v, low, high float64, unit, advice string) *fault.Fault {
	margin := slack * max(math.Abs(low), math.Abs(v))
	if v >= low-margin && v <= high*(1+slack) {
		return nil
	}
	return fault.OutOfRange("", v, low, high, unit, advice)
}
