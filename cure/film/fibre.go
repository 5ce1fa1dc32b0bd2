package film

import "math"

// Regain returns Exposure.Regain [kg/m2] for a pile of the mass [kg/m2] whose fibre holds the regain [kg/kg] at 65 % relative
// humidity. The fibre's water is taken in proportion to the humidity up to 80 %, which polyamide follows within half a per
// cent of its mass (row T26 of the project's published values); above, it rises more steeply, to 1.2 times the line.
func Regain(mass, regain float64) float64 { return mass * regain / 0.65 }

// fibreActivity is the activity of the water [kg/m2] that the fibre holds. Water past saturation is dew on the fibre.
func (x *Exposure) fibreActivity(water float64) float64 {
	a, _ := saturating(water/x.Regain, corner)
	return a
}

// fibreWater inverts fibreActivity up to saturation.
func (x *Exposure) fibreWater(activity float64) float64 {
	past := math.Min(1, activity) - (1 - corner)
	if past <= 0 {
		return x.Regain * activity
	}
	return x.Regain * (1 - corner + 2*corner*(1-math.Sqrt(1-past/corner)))
}

// Flock puts the fibre on the film as it comes from the air c: at its temperature, at rest with its humidity. It returns the
// heat [J/m2] and the water [kg/m2] that the fibre brings along.
func (x *Exposure) Flock(st *State, c Climate) (heat, water float64) {
	water = x.fibreWater(c.Air.RelativeHumidity())
	heat = (x.PileCapacity + WaterHeatCapacity*water) * (c.Air.T - EnthalpyZero)
	st.Enthalpy += heat
	st.Fibre += water
	return heat, water
}
