package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
)

// Regain returns Exposure.Regain [kg/m2] for a pile of the mass [kg/m2] whose fibre holds the regain [kg/kg] at 65 % relative
// humidity. The fibre's water is taken in proportion to the humidity; polyamide follows that line within half a per cent
// of its mass up to 80 % (row T26 of the project's published values), and holds more than it above.
func Regain(mass, regain float64) float64 { return mass * regain / 0.65 }

// Flock puts the fibre on the film as it comes from the air c: at its temperature, at rest with its humidity. It returns the
// heat [J/m2] and the water [kg/m2] that the fibre brings along.
func (x *Exposure) Flock(st *State, c Climate) (heat, water float64) {
	water = x.Regain * math.Min(1, c.Air.RelativeHumidity())
	heat = (x.PileCapacity + WaterHeatCapacity*water) * (c.Air.T - EnthalpyZero)
	st.Enthalpy += heat
	st.Fibre += water
	return heat, water
}

// fibreFraction is the mole fraction of vapour in the air at rest with fibre that holds the water [kg/m2], at the temperature
// T [K]. Water past saturation is dew on the fibre.
func (x *Exposure) fibreFraction(water, T float64, a air.State) float64 {
	return math.Min(1, water/x.Regain) * air.SaturatedFraction(T, a.P, a.Real)
}
