package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
)

// Reading is the film and part at one moment, derived from the unknowns.
type Reading struct {
	MeanWater, OuterWater, InnerWater float64 // [kg/kg]
	SurfaceWater                      float64 // X_s [kg/kg]
	SurfaceWet                        bool
	SurfaceActivity                   float64 // of the water at the surface; with the film's temperature it gives the vapour there
	MeanConversion, OuterConversion   float64
	LeastConversion                   float64
	Film                              float64 // temperature of film and front face [K]
	BackFace                          float64 // [K]
	Hottest                           float64 // of all of the part [K]
	Flux                              float64 // leaving the film [kg/(m2 s)]
	Given                             float64 // given to the air, the fibre's share counted [kg/(m2 s)]
	FibreWater                        float64 // [kg/m2]
	Thickness                         float64 // [m]
	Coefficient                       float64 // h of the coated side [W/(m2 K)]
	MassCoefficient                   float64 // k, the pile in series [m/s]
	Exchange                          float64 // of coated side, back and carrier with the air, for their temperatures as they are [W/(m2 K)]
	Tip                               float64 // temperature at the tips of the pile, the film's without one [K]
	Climate                           Climate
	Equilibrium                       float64 // X_eq at p_v/p_sat(T_air), at most that of activity 1 [kg/kg]
}

// Water returns the water contents of the cells, the part's side first; valid until the next call.
func (s *System) Water(y []float64) []float64 { return s.water.cells(s.unknowns(y), y[s.iMass()]) }

// Conversion returns the conversions among the unknowns; empty without a crosslinker.
func (s *System) Conversion(y []float64) []float64 { return y[s.iConversion():s.iLedger()] }

// MeanWater returns the film's mean water content [kg/kg].
func (s *System) MeanWater(y []float64) float64 { return s.grid.Mean(s.Water(y), 0) }

// OuterWater returns the mean water content over the outer share of the solids [kg/kg].
func (s *System) OuterWater(y []float64) float64 { return s.grid.Mean(s.Water(y), s.grid.Outer) }

// OuterConversion returns the mean conversion over the outer share of the solids.
func (s *System) OuterConversion(y []float64) float64 {
	return s.grid.Mean(s.Conversion(y), s.grid.Outer)
}

// LeastConversion returns the lowest conversion of all cells.
func (s *System) LeastConversion(y []float64) float64 {
	least := math.Inf(1)
	for _, a := range s.Conversion(y) {
		if a < least {
			least = a
		}
	}
	return least
}

// Equilibrium returns the water content at rest with the air of the moment [kg/kg], judged at the air's temperature.
func (s *System) Equilibrium(c Climate) float64 {
	if c != s.restClimate { // asked for at every look at every condition, mostly in the same air
		s.restClimate, s.rest = c, s.coat.sorption(c.Air.T).Water(math.Min(1, c.Air.RelativeHumidity()))
	}
	return s.rest
}

// Climate returns the surroundings at time t for the unknowns.
func (s *System) Climate(t float64, y []float64) Climate {
	return s.exposure.Around.Climate(t, s.Own(y))
}

// Hottest returns the highest temperature of film, part and its back face [K].
func (s *System) Hottest(t float64, y []float64) float64 {
	hot := math.Max(s.Temperature(y), s.back(t, y).Temperature)
	for _, T := range y[:s.walls] {
		hot = math.Max(hot, T)
	}
	return hot
}

// Below reports whether film, part and back face are below a temperature [K], as far as that can be told without the back's balance:
// false says nothing.
func (s *System) Below(limit, t float64, y []float64) bool {
	if !(s.Temperature(y) < limit) {
		return false
	}
	for _, T := range y[:s.walls] {
		if !(T < limit) {
			return false
		}
	}
	if s.part.Back == Exposed {
		c := s.Climate(t, y)
		if !(c.Air.T < limit && c.Wall < limit) || s.exposure.Back.Absorbed > 0 {
			return false
		}
	}
	return !s.carrier || y[s.iCarrier()] < limit
}

func (s *System) back(t float64, y []float64) BackFace {
	in := s.input(t, y)
	switch {
	case s.part.Back != Exposed && !s.carrier:
		return BackFace{Temperature: in.last}
	case s.borderAt.same(&in):
		return s.border.back
	}
	return backFace(s.part, &s.exposure.Back, s.Climate(t, y), in.last, in.carrier)
}

// Read derives everything that is reported from the unknowns at time t.
func (s *System) Read(t float64, y []float64) Reading {
	in := s.input(t, y)
	b, c := s.meetBorder(&in), s.borderClimate
	r := Reading{
		MeanWater: s.MeanWater(y), OuterWater: s.OuterWater(y), InnerWater: s.Water(y)[0],
		SurfaceWater: s.water.surface(in.film, in.water, in.mass, b.contact), SurfaceWet: b.contact.Wet, SurfaceActivity: b.contact.Activity,
		Film: in.film, BackFace: b.back.Temperature, Hottest: s.Hottest(t, y), Flux: b.contact.Flux,
		Given: b.given, FibreWater: in.fibre,
		Thickness: s.coat.Thickness(s.MeanWater(y)), Climate: c, Equilibrium: s.Equilibrium(c),
		Coefficient: b.exchange.H, MassCoefficient: b.exchange.K, Tip: b.exchange.Tip,
	}
	if r.Exchange = b.exchange.H + b.back.Coefficient; s.carrier {
		r.Exchange += s.part.Carrier.AirSide
	}
	if s.conversions > 0 {
		r.MeanConversion, r.OuterConversion = s.grid.Mean(s.Conversion(y), 0), s.OuterConversion(y)
		r.LeastConversion = s.LeastConversion(y)
	}
	return r
}

// PackedLayer returns the thickness [m] of the layer at the surface in which particles touch (phi >= 0.98 phi_m): the
// layer that keeps fibres out.
func (s *System) PackedLayer(t float64, y []float64) float64 {
	in := s.input(t, y)
	return s.water.packed(in.film, s.unknowns(y), in.mass, s.meetBorder(&in).contact)
}

// BoilingPressure returns the vapour pressure of the water at the part's side [Pa] while the surface above it is closed
// (X_s at or below closed [kg/kg]), and 0 while it is open: open water boils off freely, water under a skin blisters.
func (s *System) BoilingPressure(t float64, y []float64, closed float64) float64 {
	a := s.Climate(t, y).Air
	film := s.Temperature(y)
	p := a.P * air.SaturatedFraction(film, a.P, a.Real) * s.coat.sorption(film).Activity(s.Water(y)[0])
	if p < a.P {
		return p // far from boiling; whether the surface is closed does not matter
	}
	in := s.input(t, y)
	if !s.water.closed(in.film, s.meetBorder(&in).contact, closed) {
		return 0
	}
	return p
}

// little is the water content [kg/kg] in saturated air from which on a film counts as taking up water.
const little = 0.01

// Tolerances returns the absolute tolerance of each unknown for a relative tolerance: about the range through which it runs,
// times it. Marks hang on differences fifty times smaller (thresholds of 0.02 kg/kg), yet errors of single cells cancel in
// the sums of which marks are made: tighter weights take half as many steps again and move no mark by more than 6e-5 at
// 1e-5. A film that takes up hardly any water runs through the activities of its surface within what it holds in saturated air;
// where that is less than a hundredth, water counts by it. Else the integrator would take a dry hot film for a boiling one at every
// step, within its tolerance and for ever. The ledger is left out of the error norm; it follows from the rest.
func (s *System) Tolerances(relative float64) []float64 {
	const (
		conversion  = 1.0
		temperature = 300.0 // K
	)
	water := math.Min(1, s.coat.Isotherm.Water(1)/little) // kg/kg
	tol := make([]float64, s.Dim())
	for i := range tol {
		switch {
		case i >= s.iOwn() && i < s.iConversion():
			tol[i] = relative * s.exposure.Around.Scale(i-s.iOwn())
		case i < s.iWater() || s.carrier && i == s.iCarrier():
			tol[i] = relative * temperature
		case i < s.iBorder():
			tol[i] = relative * water
		case i == s.iBorder():
			tol[i] = relative * temperature * s.fixedCapacity
		case i == s.iMass():
			tol[i] = relative * water * s.grid.Solids
		case s.fibre && i == s.iFibre():
			tol[i] = relative * s.exposure.Regain
		case i < s.iLedger():
			tol[i] = relative * conversion
		default:
			tol[i] = math.Inf(1)
		}
	}
	return tol
}
