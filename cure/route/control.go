package route

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// clampCorner is the half width over which the ends of a proportional band are rounded by parabolas: an integrator whose
// air rests right at a sharp corner would see another slope with every stage and creep.
const clampCorner = 0.05

// ramp is 0 below, x above, a parabola in the corner between.
func ramp(x float64) float64 {
	switch {
	case x <= -clampCorner:
		return 0
	case x >= clampCorner:
		return x
	}
	return (x + clampCorner) * (x + clampCorner) / (4 * clampCorner)
}

// clamp holds x between 0 and 1 with rounded corners.
func clamp(x float64) float64 { return ramp(x) - ramp(x-1) }

// unclamp is the x at which clamp gives y, for y in [0, 1].
func unclamp(y float64) float64 {
	switch {
	case y < clampCorner:
		return 2*math.Sqrt(clampCorner*math.Max(0, y)) - clampCorner
	case y > 1-clampCorner:
		return 1 - unclamp(1-y)
	}
	return y
}

// excess is max(x, 0) with its corner rounded over the width; far below the corner it vanishes exponentially.
func excess(x, width float64) float64 {
	if x > 30*width {
		return x
	}
	return width * math.Log1p(num.Exp(x/width))
}

// Sizes of states that matter, for their tolerances.
const (
	temperatureScale = 10.0 // K
	humidityScale    = 0.01 // kg/kg
)
