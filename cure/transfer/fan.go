package transfer

import (
	"math"
	"strconv"
)

// FreeVelocity is the mean velocity in m/s of an air flow in m3/s through a free cross-section in m2.
func FreeVelocity(flow, section float64) float64 { return flow / section }

// NozzleCoefficient is the share of the ideal velocity that a sharp-edged slot or drilled nozzle reaches in its jet, 0.95 to
// 0.99 for rounded, about 0.97 for usual ones (handbook values, from memory).
const NozzleCoefficient = 0.97

// JetVelocity is the exit velocity in m/s of air of density rho in kg/m3 from a box at the pressure dp in Pa above the oven:
//
//	v = 0.97 sqrt(2 dp/rho)   (Bernoulli; below 10 kPa air is as good as incompressible)
func JetVelocity(dp, rho float64) float64 { return NozzleCoefficient * math.Sqrt(2*dp/rho) }

// short prints three significant digits, for messages.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }
