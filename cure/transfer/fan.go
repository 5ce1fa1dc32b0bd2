package transfer

import "math"

// FreeVelocity is the mean velocity in m/s of an air flow in m3/s, at the state of the air that flows, through a free
// cross-section in m2: the channel's less what racks and parts block.
func FreeVelocity(flow, section float64) float64 { return flow / section }

// NozzleCoefficient is the velocity that a nozzle reaches as a share of the ideal one: 0.95 to 0.99 for rounded and for
// sharp-edged ones, 0.97 for usual ones (handbook values, from memory). A sharp edge takes air, not speed: it narrows
// the jet, that of a slot to pi/(pi + 2) = 0.61 of the opening (Kirchhoff's free jet), which is then the width to
// compute with.
const NozzleCoefficient = 0.97

// JetVelocity is the exit velocity in m/s of air of density rho in kg/m3 from a box at the pressure dp in Pa above the
// oven.
//
//	v = 0.97 (2 dp/rho)^(1/2)
//
// Bernoulli without compressibility, which errs by 1 % at 3 kPa. dp >= 0. Worked value: without the coefficient, 1 inch
// of water (248.84 Pa) in air of 1.2014 kg/m3 gives 20.35 m/s, the 4005 ft/min of ventilation practice.
func JetVelocity(dp, rho float64) float64 { return NozzleCoefficient * math.Sqrt(2*dp/rho) }
