package film

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

const (
	// vapourConstant is R/M_w of water [J/(kg K)].
	vapourConstant = gasConstant / 0.01801528
	// sorptionReference is the temperature at which an isotherm stands [K].
	sorptionReference = 298.15
	// releaseShare is the share of an isotherm below saturation in which a cold film's water loses its binding.
	releaseShare = 0.05
	// releaseEdge is the activity at 298.15 K where that begins, and releaseBend the half width over which it does.
	releaseEdge = 1 - releaseShare
	releaseBend = 0.02
	// corner is how far on both sides of saturation the passage is rounded, as a share of the water there: an integrator would
	// feel the corner.
	corner = 0.2
)

// sorption is the coat's isotherm at one temperature. The activity that belongs to a water content follows the
// temperature by Clausius and Clapeyron, the heat of sorption q [J/kg] coming on top of that of evaporation:
//
//	a(X, T) = f a(X, 298.15 K),  f = exp(-(q M/R)(1/T - 1/298.15 K)),  a <= 1
//
// so that a warm film (f > 1) holds less water at the same activity. In a cold one (f < 1) the last water below saturation
// has to come back to activity 1, since free water is never bound: over the last twentieth of the isotherm a rises
// linearly from f a to 1, and a parabola leads into that line.
//
// Source: the isosteric heat, e.g. Rizvi (2005), Thermodynamic properties of foods in dehydration, in Engineering
// Properties of Foods, 3rd ed., section on moisture sorption (from memory).
type sorption struct {
	isotherm Isotherm
	factor   float64 // f; 1 exactly where q is zero
}

// sorption prepares the coat's isotherm for the temperature T [K].
func (c *Coat) sorption(T float64) sorption {
	s := sorption{isotherm: c.Isotherm, factor: 1}
	if c.HeatOfSorption != 0 {
		s.factor = num.Exp(-c.HeatOfSorption / vapourConstant * (1/T - 1/sorptionReference))
	}
	return s
}

// release is what a cold film's activity has above f r [-], r being that at 298.15 K.
func (s sorption) release(r float64) float64 {
	rise := (1 - s.factor) / releaseShare
	switch past := r - releaseEdge; {
	case s.factor >= 1 || past <= -releaseBend:
		return 0
	case past >= releaseBend:
		return rise * past
	default:
		return rise * (past + releaseBend) * (past + releaseBend) / (4 * releaseBend)
	}
}

// standing returns the activity r at 298.15 K that belongs to a at the temperature, at most 1, and dr/da.
func (s sorption) standing(a float64) (r, slope float64) {
	f, rise := s.factor, (1-s.factor)/releaseShare
	switch {
	case f >= 1 || a <= f*(releaseEdge-releaseBend):
		return a / f, 1 / f
	case a >= f*(releaseEdge+releaseBend)+rise*releaseBend:
		return math.Min(1, (a+rise*releaseEdge)/(f+rise)), 1 / (f + rise)
	default: // the root of release's parabola
		above := a - f*(releaseEdge-releaseBend)
		root := math.Sqrt(f*f + rise/releaseBend*above)
		return releaseEdge - releaseBend + 2*above/(f+root), 1 / root
	}
}

// Water returns X_eq [kg/kg] at the water activity a in [0, 1].
func (s sorption) Water(a float64) float64 {
	if s.factor == 1 {
		return s.isotherm.Water(a)
	}
	r, _ := s.standing(a)
	return s.isotherm.Water(r)
}

// Slope returns dX_eq/da [kg/kg].
func (s sorption) Slope(a float64) float64 {
	if s.factor == 1 {
		return s.isotherm.Slope(a)
	}
	r, slope := s.standing(a)
	return s.isotherm.Slope(r) * slope
}

// Activity returns a at the water content x [kg/kg]; 1 above Water(1).
func (s sorption) Activity(x float64) float64 {
	r := s.isotherm.Activity(x)
	if s.factor == 1 {
		return r
	}
	return math.Min(1, s.factor*r+s.release(r))
}

// bound returns the water [kg/m2] of a film holding the mass [kg/m2] that is bound by the heat of sorption, and its
// derivative in the mass. Bound is what the isotherm holds at 25 degC and saturation: below it all water, above it no more.
//
// The film's enthalpy counts bound water lower by q, which makes its heat of sorption a function of state: whatever path
// the film takes, the last water costs h_fg + q. It goes by the film's mean water, not cell by cell: the film has one
// temperature, and its surface may count as dry some seconds before this does.
func (c *Coat) bound(mass float64) (water, slope float64) {
	most := c.Solids * c.Isotherm.Water(1)
	share, slope := saturating(mass/most, corner)
	return most * share, slope
}

// saturating is min(1, z), its corner rounded by a parabola over a width on both sides, and its slope.
func saturating(z, width float64) (share, slope float64) {
	switch past := z - (1 - width); {
	case past <= 0:
		return z, 1
	case past >= 2*width:
		return 1, 0
	default:
		return z - past*past/(4*width), 1 - past/(2*width)
	}
}

// binding is the heat [J/m2] that has to be paid to free the water bound in a film of the mass [kg/m2], and its
// derivative in the mass [J/kg].
func (c *Coat) binding(mass float64) (heat, slope float64) {
	if c.HeatOfSorption == 0 {
		return 0, 0
	}
	water, slope := c.bound(mass)
	return c.HeatOfSorption * water, c.HeatOfSorption * slope
}
