package air

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Chart is the frame of a moist-air chart for one total pressure P in Pa: temperature in K from Low to High against humidity
// ratio in kg/kg of dry air from 0 to Most. Limits are those of a State; Most is above 0 and finite. Its lines are the ones
// of a printed psychrometric chart, found by the equations of this package, so that a state and the lines around it agree.
type Chart struct {
	P         float64
	Low, High float64
	Most      float64
	Real      bool // includes the enhancement factor
}

// Line is a line of a chart: humidity ratios in kg/kg of dry air at rising temperatures in K. It holds no point outside
// the frame; straight between its points it is within 0.3 % of the frame's height of what it stands for.
type Line struct {
	T []float64
	W []float64
}

// Points of the lines. Saturation bends by a factor of two in 10 K, a wet-bulb line hardly at all.
const (
	bentPoints     = 48
	straightPoints = 7
)

// RelativeHumidity is the line on which the relative humidity is rh, above 0 and at most 1; 1 is the saturation line. It
// ends at the frame's top or right border; it is empty where it does not enter the frame.
func (c Chart) RelativeHumidity(rh float64) Line {
	top := c.Most / (massRatio + c.Most) // as a mole fraction
	over := func(T float64) float64 { return rh*SaturatedFraction(T, c.P, c.Real) - top }
	end := c.High
	if over(c.Low) >= 0 {
		return Line{}
	}
	if over(c.High) > 0 {
		if T, err := num.Root(over, c.Low, c.High, 1e-9); err == nil {
			end = T
		}
	}
	return c.line(c.Low, end, bentPoints, func(T float64) float64 { return rh * SaturatedFraction(T, c.P, c.Real) })
}

// WetBulb is the line of all states whose thermodynamic wet bulb is wet in K (State.WetBulb), from saturation to bone-dry air
// or the frame's right border. It is empty where it begins outside the frame or at the boiling point.
func (c Chart) WetBulb(wet float64) Line {
	ys := SaturatedFraction(wet, c.P, c.Real)
	if !(wet >= c.Low && wet < c.High) || ys >= 1 || (State{Y: ys}).HumidityRatio() > c.Most {
		return Line{}
	}
	dry := func(T float64) float64 { return State{T: T, P: c.P, Real: c.Real}.saturationBalance(wet) }
	end := c.High
	if dry(c.High) > 0 { // bone-dry air of this wet bulb lies inside the frame
		if T, err := num.Root(dry, wet, c.High, 1e-9); err == nil {
			end = T
		}
	}
	return c.line(wet, end, straightPoints, func(T float64) float64 {
		// The balance is linear in the mole fraction, as in FromWetBulb.
		at := func(y float64) float64 { return State{T: T, P: c.P, Y: y, Real: c.Real}.saturationBalance(wet) }
		at0, at1 := at(0), at(1)
		return math.Max(0, at0/(at0-at1))
	})
}

// line samples a mole fraction over evenly spread temperatures.
func (c Chart) line(from, to float64, points int, fraction func(T float64) float64) Line {
	l := Line{T: make([]float64, points), W: make([]float64, points)}
	for i := range points {
		T := from + (to-from)*float64(i)/float64(points-1)
		l.T[i] = T
		l.W[i] = math.Min(c.Most, State{Y: fraction(T)}.HumidityRatio())
	}
	return l
}
