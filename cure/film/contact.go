package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/transfer"
)

// Contact is the film's surface at one moment, where its supply of water meets the air's demand.
type Contact struct {
	Activity  float64 // water activity of the surface [-]
	Flux      float64 // j, water leaving [kg/(m2 s)]
	Potential float64 // F at the surface, from which X_s follows [kg2/(m4 s)]
	Wet       bool    // the surface is wet: the air alone sets the rate
}

// newtonLimit bounds the search for the surface activity; four or five steps are usual.
const newtonLimit = 60

// meet finds the contact of a film whose outermost cell holds top [kg/kg], half [kg/m2] below the surface, with the
// air: the surface is wet when the film can supply what the air takes at activity 1, else its activity is the root of
// air(a) = supply(a). Air's demand and the film's lack of supply both rise with a and are convex, so Newton's method
// comes down on the root from above; a bracket guards it.
func meet(coat *Coat, pot *Potential, face *transfer.Prepared, airActivity, top, half float64) Contact {
	supply := pot.Value(top)
	saturated := coat.Isotherm.Water(1)
	wetFlux, _ := face.Flux(1)
	if wetFlux <= (supply-pot.Value(saturated))/half {
		return Contact{Activity: 1, Flux: wetFlux, Potential: supply - wetFlux*half, Wet: true}
	}
	own := coat.Isotherm.Activity(top)
	lo, hi := math.Min(own, math.Min(1, airActivity)), 1.0
	// First guess: both sides linear, each through its own point of rest.
	demand := wetFlux / math.Max(1-airActivity, 1e-3)
	ease := pot.Slope(top) * coat.Isotherm.Slope(own) / half
	a := own
	if demand > 0 {
		a = (demand*airActivity + ease*own) / (demand + ease)
	}
	if !(a > lo && a < hi) {
		a = (lo + hi) / 2
	}
	var before, missBefore float64
	for i := range newtonLimit {
		x := coat.Isotherm.Water(a)
		j, dj := face.Flux(a)
		miss := j - (supply-pot.Value(x))/half
		if miss < 0 {
			lo = a
		} else {
			hi = a
		}
		slope := dj + pot.Slope(x)*coat.Isotherm.Slope(a)/half
		if i > 0 {
			// dj holds the coefficients; the chord knows that they move with the activity too.
			if chord := (miss - missBefore) / (a - before); chord > 0 {
				slope = chord
			}
		}
		before, missBefore = a, miss
		next := a - miss/slope
		if !(next >= lo && next <= hi) {
			next = (lo + hi) / 2
		}
		a = next
		// The chord method multiplies its last two errors: a step below 1e-7 leaves about 1e-12.
		if math.Abs(a-before) <= 1e-7*math.Abs(a) {
			break
		}
	}
	j, _ := face.Flux(a)
	return Contact{Activity: a, Flux: j, Potential: supply - j*half}
}

// airActivity is the water activity of a film at temperature T [K] that is at rest with the air.
func airActivity(a air.State, T float64) float64 {
	return a.Y / air.SaturatedFraction(T, a.P, a.Real)
}
