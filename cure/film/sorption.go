package film

import "math"

// Isotherm is the water that the film holds at 25 degC at rest with air of a given water activity, and its inverse. Other
// kinds are further types with these methods; trial states ask slightly outside the ranges, where they go on smoothly.
type Isotherm interface {
	// Water returns X_eq [kg/kg] at the water activity a in [0, 1].
	Water(a float64) float64
	// Slope returns dX_eq/da [kg/kg].
	Slope(a float64) float64
	// Activity returns a at the water content x [kg/kg]; 1 above Water(1).
	Activity(x float64) float64
}

// GAB is the isotherm of Guggenheim, Anderson and de Boer,
//
//	X = X_m C K a / ((1 - K a)(1 - K a + C K a)),  0 < K < 1
//
// Source: van den Berg and Bruin (1981), in Water Activity: Influences on Food Quality, eq. 12 (number from memory).
type GAB struct {
	Monolayer float64 // X_m [kg/kg]
	C, K      float64 // [-]
}

// Water implements Isotherm.
func (g GAB) Water(a float64) float64 {
	ka := g.K * a
	return g.Monolayer * g.C * ka / ((1 - ka) * (1 - ka + g.C*ka))
}

// Slope implements Isotherm.
func (g GAB) Slope(a float64) float64 {
	ka := g.K * a
	d := (1 - ka) * (1 - ka + g.C*ka)
	return g.Monolayer * g.C * g.K * (1 + (g.C-1)*ka*ka) / (d * d)
}

// Activity implements Isotherm: the root in (0, 1) of the quadratic in K a,
// (C-1) X z^2 + (X_m C - X (C-2)) z - X = 0, in the form that does not cancel.
// It goes on as an odd function for the slightly negative water of a trial state.
func (g GAB) Activity(x float64) float64 {
	if x < 0 {
		return -g.Activity(-x)
	}
	if x >= g.Water(1) {
		return 1
	}
	qa := (g.C - 1) * x
	qb := g.Monolayer*g.C - x*(g.C-2)
	z := 2 * x / (qb + math.Sqrt(qb*qb+4*qa*x))
	return z / g.K
}
