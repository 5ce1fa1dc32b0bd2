// Package air holds moist air: the saturation line and latent heat of water, the state of a mixture of dry air and water
// vapour with its inverses, and the transport properties that heat and mass transfer need.
//
// Units are SI, temperatures kelvin, y is the mole fraction of vapour. The mixture is ideal (Dalton, Amagat), from dry air
// at y = 0 to pure steam at y = 1, for 273.15 to 523.15 K and 60 to 110 kPa; against real-gas tables (ASHRAE RP-1485) that
// costs less than 0.3 % of volume and enthalpy at 200 degC. What real gas matters, the 0.4 to 0.6 % by which air
// raises the vapour pressure over water, is the enhancement factor; State.Real switches it on.
//
// Enthalpies count from dry air at 273.15 K and from liquid water at the triple point.
//
// The functions of temperature alone are low-order polynomials fitted to the formulation that each one cites; the tests
// evaluate the formulation itself and hold the fit to the deviation stated. They are smooth, allocate nothing and stay
// finite for any trial temperature of an integrator: beyond the fitted range they go on as each comment says.
package air

// Gas constant and molar masses. CODATA 2018; IAPWS; Gatley, Herrmann and Kretzschmar 2008, "A twenty-first century molar
// mass for dry air", HVAC&R Research 14, 655.
const (
	GasConstant    = 8.314462618 // J/mol K
	WaterMolarMass = 18.015268e-3
	AirMolarMass   = 28.966e-3
	massRatio      = WaterMolarMass / AirMolarMass // 0.621945
)

// Limits of a State, accepted by the constructors.
const (
	LowTemperature  = 273.15 // K
	HighTemperature = 523.15 // K
	LowPressure     = 60e3   // Pa
	HighPressure    = 110e3  // Pa
)

// centred is the variable of all fits: 0 at 400 K, 1 at 600 K.
func centred(T float64) float64 { return (T - 400) * (1. / 200) }
