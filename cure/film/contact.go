package film

import (
	"math"

	"github.com/drywright/drywright/cure/transfer"
)

// Contact is the film's surface at one moment, where its supply of water meets the air's demand.
type Contact struct {
	Activity  float64 // water activity of the surface [-]
	Flux      float64 // j, water leaving [kg/(m2 s)]
	Potential float64 // F at the surface, from which X_s follows [kg2/(m4 s)]
	Wet       bool    // the surface is wet: the air alone sets the rate
}

const (
	// newtonLimit bounds the searches of this package; one to five steps are usual.
	newtonLimit = 60
	// contactTolerance is the share of the flux by which demand and supply may differ where a search ends; what the tangents say of
	// the rest leaves about a tenth of it.
	contactTolerance = 1e-10
)

// surface is what a search for the contact works on.
type surface struct {
	iso    sorption
	pot    *Potential
	face   demand
	full   float64 // mole fraction of vapour at activity 1; above 1 when superheated
	supply float64 // F of the outermost cell
	half   float64 // its centre's distance from the surface [kg/m2]
}

// balance is what both sides say at the activity a: fluxes and their slopes in a.
type balance struct {
	a, demand, supply  float64
	byDemand, bySupply float64 // both above zero: demand rises, supply falls
}

func (b *balance) miss() float64  { return b.demand - b.supply }
func (b *balance) slope() float64 { return b.byDemand + b.bySupply }

// crossing is the flux where the tangents of both sides meet, which adds some digits to a root that is nearly found, and of two
// fluxes that agree takes the one that hangs less on the last digits of a.
func (b *balance) crossing() float64 { return (b.demand*b.bySupply + b.supply*b.byDemand) / b.slope() }

func (s *surface) balance(a float64) balance {
	b := balance{a: a}
	b.demand, b.byDemand = s.face.Flux(a)
	value, perWater := s.pot.ValueSlope(s.iso.Water(a))
	b.supply = (s.supply - value) / s.half
	b.bySupply = perWater * s.iso.Slope(a) / s.half
	return b
}

func (s *surface) contact(b *balance) Contact {
	j := b.crossing()
	return Contact{Activity: b.a, Flux: j, Potential: s.supply - j*s.half}
}

// meet finds the contact of a film whose outermost cell holds top [kg/kg], half [kg/m2] below the surface, with the
// air. The surface is wet when the film can supply what the air takes at activity 1. Else its activity is the one root
// of demand(a) = supply(a) between the film's own or the air's activity and 1.
//
// The search runs in w, transfer.Force of y_s, in which Stefan flow is a straight line even where the vapour next to the surface
// becomes pure steam. It starts at the activity expected, where that lies in the bracket; NaN expects nothing.
func meet(iso sorption, pot *Potential, face demand, airActivity, top, half, expected float64) Contact {
	s := surface{iso: iso, pot: pot, face: face, full: face.SaturatedFraction(), supply: pot.Value(top), half: half}
	own := iso.Activity(top)
	lo := math.Min(own, math.Min(1, airActivity))
	if !(expected >= lo) {
		expected = s.guess(lo, own, airActivity)
	}
	return s.search(lo, math.Min(expected, 1))
}

// search is Newton's method in w from the activity a, guarded by a bracket from lo to 1. The slope of demand holds the coefficients of
// transfer; what they add to it is taken from the last two points, whose chord is the mean slope between them. The upper end is looked
// at when the search comes to it, not before: most surfaces are far from wet.
func (s *surface) search(lo, a float64) Contact {
	w := func(a float64) float64 {
		f, _ := transfer.Force(a * s.full)
		return f
	}
	wLo, wHi, at := w(lo), w(1), w(a)
	rounding := 4e-15 * math.Abs(s.supply) / s.half
	enclosed := false // the upper end is known to lie above the root
	held := 1.0       // true slope over that with the coefficients held
	var b balance
	var before struct{ at, miss, slope float64 }
	before.slope = math.Inf(1) // nothing yet
	last := math.Inf(1)
	_, perW := transfer.Fraction(at)
	for range newtonLimit {
		b = s.balance(a)
		miss, slope := b.miss(), b.slope()*perW/s.full
		if a == 1 && miss <= 0 {
			return Contact{Activity: 1, Flux: b.demand, Potential: s.supply - b.demand*s.half, Wet: true}
		}
		if ratio := 2 * (miss - before.miss) / ((at - before.at) * (slope + before.slope)); ratio > 0.5 && ratio < 2 {
			held = ratio
		}
		if math.Abs(miss) <= contactTolerance*math.Abs(b.supply)+rounding {
			break
		}
		before.at, before.miss, before.slope = at, miss, slope
		if miss < 0 {
			wLo = at
		} else {
			wHi, enclosed = at, true
		}
		next := at - miss/(slope*held)
		switch {
		case !enclosed && !(next < wHi):
			at, a, last = wHi, 1, math.Abs(miss)
			_, perW = transfer.Fraction(at)
			continue
		case !(next > wLo && next < wHi) || math.Abs(miss) > 0.5*last:
			next = (wLo + wHi) / 2
		}
		if next == at {
			break
		}
		last = math.Abs(miss)
		at = next
		a, perW = transfer.Fraction(at)
		a /= s.full
	}
	b.byDemand += (held - 1) * b.slope()
	return s.contact(&b)
}

// guess takes both sides as linear, each through its own point of rest.
func (s *surface) guess(lo, own, airActivity float64) float64 {
	_, demand := s.face.Flux(lo)
	ease := s.pot.Slope(s.iso.Water(own)) * s.iso.Slope(own) / s.half
	a := (demand*airActivity + ease*own) / (demand + ease)
	if !(a >= lo && a <= 1) {
		return lo + (1-lo)/2
	}
	return a
}

// cross finds the contact of a front of the given activity below a dry layer whose conductance to vapour is g [kg/(m2 s)], as
// for Stefan flow: what crosses the layer is what the air takes from its top. The search runs in w, transfer.Force of the top, in
// which both are nearly straight lines.
func cross(face demand, activity, g, expected float64) Contact {
	full := face.SaturatedFraction()
	below, _ := transfer.Force(activity * full)
	above, _ := transfer.Force(face.Outside())
	lo, hi := math.Min(below, above), math.Max(below, above)
	at, last := below, math.Inf(1)
	if start, _ := transfer.Force(expected * full); start > lo && start < hi {
		at = start
	}
	var b balance
	for range newtonLimit {
		y, perW := transfer.Fraction(at)
		b = balance{a: y / full, supply: g * (below - at), bySupply: g * full / perW}
		b.demand, b.byDemand = face.Flux(b.a)
		miss := b.miss()
		// y is known to its last digit, its force to as much times the slope.
		rounding := 4e-16 * g * (math.Abs(at) + math.Abs(below) + 1/perW)
		if math.Abs(miss) <= contactTolerance*math.Abs(b.demand)+rounding {
			break
		}
		if miss < 0 {
			lo = at
		} else {
			hi = at
		}
		next := at - miss/(perW*b.slope()/full)
		if !(next > lo && next < hi) || math.Abs(miss) > 0.5*last {
			next = (lo + hi) / 2
		}
		if next == at {
			break
		}
		last = math.Abs(miss)
		at = next
	}
	return Contact{Activity: b.a, Flux: b.crossing()}
}
