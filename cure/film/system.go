package film

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/transfer"
)

// System is film, part, carrier and the states of the surroundings over one stage, in the form that package ode
// integrates. The unknowns stand in the order of num.Arrow:
//
//	band    part temperatures (film's side first), then the unknowns of the film's water (with liquid diffusion the cells'
//	        water contents, the part's side first): neighbours only
//	border  enthalpy H and water mass M of the film, the fibre's water, the carrier's temperature, the surroundings' own states
//	        but counts
//	tail    the surroundings' counts, conversions, then the counts of the Ledger: nothing depends on them
//
// The film's temperature is no state; it follows from H, M and the fibre's water, whose heat H counts.
type System struct {
	coat     *Coat
	grid     *Grid
	part     *Part
	exposure *Exposure

	water              water
	walls, waters, own int // part cells, unknowns of the water, states of the surroundings
	counts             int // how many of those states, the last ones, are counts
	fibre, carrier     bool
	conversions        int

	fixedCapacity float64 // of solids and pile [J/(m2 K)]

	arrow           *num.Arrow
	shift           float64   // of the factorisation that stands
	perBorder       []float64 // derivatives of the film's temperature by the leading border unknowns
	front           transfer.Surface
	prepared        transfer.Prepared
	climate         Climate // of front and prepared
	moist           transfer.Moist
	border, perturb boundary
	borderAt        boundaryInput // where border and baseRates stand
	borderClimate   Climate
	forecast        forecast
	rest            float64 // X_eq in restClimate
	restClimate     Climate
	kinetics        kinetics.Isothermal
	ownRates        []float64
	baseRates       []float64
}

// NewSystem joins the parts of one stage.
func NewSystem(coat *Coat, grid *Grid, part *Part, exposure *Exposure) *System {
	s := &System{coat: coat, grid: grid, part: part, exposure: exposure, water: coat.transport().water(coat, grid),
		walls: part.Cells, own: exposure.Around.States(), carrier: part.Carrier != nil}
	s.waters = s.water.unknowns()
	for s.counts < s.own && math.IsInf(exposure.Around.Scale(s.own-1-s.counts), 1) {
		s.counts++
	}
	if coat.Cure != nil {
		s.conversions = len(grid.Width)
	}
	s.fixedCapacity = coat.Solids*coat.HeatCapacity + exposure.PileCapacity
	s.fibre = exposure.Regain > 0 && exposure.Front.Pile != nil
	s.perBorder = make([]float64, 2)
	if s.fibre {
		s.perBorder = make([]float64, 3)
	}
	s.ownRates, s.baseRates = make([]float64, s.own), make([]float64, s.own)
	s.borderAt = boundaryInput{t: math.NaN(), own: make([]float64, s.own)}
	s.forecast = forecast{activity: math.NaN(), at: boundaryInput{own: make([]float64, s.own)}, byOwn: make([]float64, s.own)}
	s.arrow = num.NewArrow(s.walls+s.waters, s.borders(), s.counts+s.conversions+ledgerSize, s.tailPattern())
	return s
}

// Positions of the unknowns.
func (s *System) iWater() int   { return s.walls }
func (s *System) iBorder() int  { return s.walls + s.waters }
func (s *System) iMass() int    { return s.iBorder() + 1 }
func (s *System) iFibre() int   { return s.iBorder() + 2 }
func (s *System) iCarrier() int { return s.iBorder() + len(s.perBorder) }
func (s *System) iOwn() int {
	if s.carrier {
		return s.iCarrier() + 1
	}
	return s.iCarrier()
}
func (s *System) iTail() int       { return s.iOwn() + s.own - s.counts }
func (s *System) iConversion() int { return s.iTail() + s.counts }
func (s *System) iLedger() int     { return s.iConversion() + s.conversions }
func (s *System) borders() int     { return s.iTail() - s.iBorder() }

// Dim implements ode.System.
func (s *System) Dim() int { return s.iLedger() + ledgerSize }

// Pack writes a state and the surroundings' own states as unknowns.
func (s *System) Pack(st *State, own, y []float64) {
	copy(y, st.Part)
	s.water.pack(st, s.unknowns(y))
	y[s.iBorder()], y[s.iMass()] = st.Enthalpy, st.Mass
	if s.fibre {
		y[s.iFibre()] = st.Fibre
	}
	if s.carrier {
		y[s.iCarrier()] = st.Carrier
	}
	copy(s.Own(y), own)
	copy(y[s.iConversion():], st.Conversion)
	l := y[s.iLedger():]
	l[0], l[1], l[2] = st.Ledger.Convected, st.Ledger.Radiated, st.Ledger.Vapour
	l[3], l[4], l[5], l[6] = st.Ledger.BackConvected, st.Ledger.BackRadiated, st.Ledger.Carried, st.Ledger.Warmed
}

// Unpack reads a state back.
func (s *System) Unpack(y []float64, st *State) {
	copy(st.Part, y[:s.walls])
	s.water.unpack(s.unknowns(y), y[s.iMass()], st)
	st.Enthalpy, st.Mass = y[s.iBorder()], y[s.iMass()]
	if s.fibre {
		st.Fibre = y[s.iFibre()]
	}
	if s.carrier {
		st.Carrier = y[s.iCarrier()]
	}
	copy(st.Conversion, s.Conversion(y))
	l := y[s.iLedger():]
	st.Ledger = Ledger{Convected: l[0], Radiated: l[1], Vapour: l[2], BackConvected: l[3], BackRadiated: l[4], Carried: l[5],
		Warmed: l[6]}
}

// unknowns returns those of the film's water.
func (s *System) unknowns(y []float64) []float64 { return y[s.iWater():s.iBorder()] }

// Own returns the surroundings' own states among the unknowns.
func (s *System) Own(y []float64) []float64 { return y[s.iOwn():s.iConversion()] }

// held is all water that film and fibre hold [kg/m2].
func (s *System) held(y []float64) float64 {
	if s.fibre {
		return y[s.iMass()] + y[s.iFibre()]
	}
	return y[s.iMass()]
}

// capacity is the heat capacity of film and pile holding the water mass [J/(m2 K)].
func (s *System) capacity(mass float64) float64 { return s.fixedCapacity + WaterHeatCapacity*mass }

// Temperature returns the film's temperature [K].
func (s *System) Temperature(y []float64) float64 {
	bound, _ := s.coat.binding(y[s.iMass()])
	return EnthalpyZero + (y[s.iBorder()]+bound)/s.capacity(s.held(y))
}

// boundary is everything that crosses the system's boundary at one moment, per square metre of coated face.
type boundary struct {
	contact  Contact
	drift    float64 // of the water's last unknown, beside what the flux does to it
	given    float64 // vapour to the air: the flux, and what the fibre gives [kg/(m2 s)]
	film     float64 // heat into the film, latent heat and departing water paid [W/m2]
	back     BackFace
	carrier  float64 // air into the carrier [W/m2]
	ledger   [ledgerSize]float64
	exchange transfer.Exchange
}

// boundaryInput is all that the boundary depends on.
type boundaryInput struct {
	t, film, last, carrier float64 // last: the last part cell
	water, mass, fibre     float64 // water: the last unknown of the film's water
	own                    []float64
}

// same reports whether two inputs are equal.
func (in *boundaryInput) same(o *boundaryInput) bool {
	return in.t == o.t && in.film == o.film && in.last == o.last && in.carrier == o.carrier && in.water == o.water &&
		in.mass == o.mass && in.fibre == o.fibre && slices.Equal(in.own, o.own)
}

// set makes in a copy of o that shares nothing with it.
func (in *boundaryInput) set(o *boundaryInput) {
	own := in.own
	*in = *o
	in.own = own
	copy(own, o.own)
}

// forecast is the activity of the surface where the last Jacobian was taken, and its derivatives by the inputs that move it:
// where the next search starts. A stage of a step lies so near that one or two Newton steps are left.
type forecast struct {
	at                                       boundaryInput
	activity                                 float64 // NaN before the first Jacobian
	byTime, byFilm, byWater, byMass, byFibre float64
	byOwn                                    []float64
}

// of returns the activity expected at the inputs; NaN where nothing is known.
func (f *forecast) of(in *boundaryInput) float64 {
	a := f.activity + f.byTime*(in.t-f.at.t) + f.byFilm*(in.film-f.at.film) + f.byWater*(in.water-f.at.water) +
		f.byMass*(in.mass-f.at.mass) + f.byFibre*(in.fibre-f.at.fibre)
	for i, by := range f.byOwn {
		a += by * (in.own[i] - f.at.own[i])
	}
	return a
}

// meetBorder brings s.border, and the rates of the surroundings with it, to the inputs. The same moment is asked for up to four
// times: at the end of a step, by its observer, by the Jacobian of the next.
func (s *System) meetBorder(in *boundaryInput) *boundary {
	if !s.borderAt.same(in) {
		s.borderAt.set(in)
		s.borderClimate = s.exposure.Around.Climate(in.t, in.own)
		s.boundFront(in, s.borderClimate, &s.border)
		s.boundRest(in, s.borderClimate, &s.border, s.baseRates)
	}
	return &s.border
}

// boundFront is the coated face's part of the boundary.
func (s *System) boundFront(in *boundaryInput, climate Climate, b *boundary) {
	if climate != s.climate || in.film != s.prepared.Temperature() {
		s.climate = climate
		s.front = s.exposure.Front.surface(climate)
		s.prepared = s.front.Prepare(in.film)
	}
	expected := s.forecast.of(in)
	if s.fibre {
		s.boundMoist(in, climate.Air, expected, b)
		return
	}
	b.contact, b.drift = s.water.contact(in.film, in.water, in.mass, climate.Air, &s.prepared, expected)
	b.exchange = s.prepared.Exchange(b.contact.Activity)
	b.given = b.contact.Flux
}

// boundRest is what there is besides: back, carrier, accounts, surroundings.
func (s *System) boundRest(in *boundaryInput, climate Climate, b *boundary, rates []float64) {
	j := b.given
	leaving := j * vapourEnthalpy(in.film)
	b.film = b.exchange.FilmHeat - leaving
	b.back = BackFace{Temperature: in.last}
	if s.part.Back == Exposed || s.carrier {
		b.back = backFace(s.part, &s.exposure.Back, climate, in.last, in.carrier)
	}
	b.carrier = 0
	if s.carrier {
		b.carrier = s.part.Carrier.AirSide * (climate.Air.T - in.carrier)
	}
	warming := j * air.VapourHeatCapacity((in.film+climate.Air.T)/2) * (climate.Air.T - b.exchange.Tip)
	lamps, backLamps := s.exposure.Front.Absorbed+s.exposure.Front.Passed, 0.0
	if s.part.Back == Exposed {
		backLamps = s.exposure.Back.Absorbed
	}
	radiated := b.exchange.Radiated + lamps
	// The vapour's enthalpy at the tips is what makes the front's account exact: in = into the film + out.
	b.ledger = [ledgerSize]float64{b.exchange.Convected, radiated,
		b.exchange.Convected + radiated - b.film, b.back.Convected, b.back.Radiated, b.carrier, warming}
	if s.own > 0 {
		s.exposure.Around.Rates(in.t, in.own, Drawn{
			FromAir:   b.exchange.Convected + warming + b.back.Convected + b.carrier,
			FromWalls: b.exchange.Radiated + b.back.Radiated - backLamps,
			Vapour:    j,
		}, rates)
	}
}

// boundMoist is boundFront where the fibre holds moisture: the film sees the fibre's air. The fibre is as
// warm as the film, whose enthalpy counts it and pays for its evaporation: the tips' own temperature, which jumps from
// zone to zone, would make its water flash.
func (s *System) boundMoist(in *boundaryInput, a air.State, expected float64, b *boundary) {
	y := s.exposure.fibreActivity(in.fibre) * s.prepared.SaturatedFraction()
	s.moist = s.prepared.Hold(y)
	b.contact, b.drift = s.water.contact(in.film, in.water, in.mass, a, &s.moist, expected)
	b.exchange = s.moist.Exchange(b.contact.Activity)
	b.given = s.moist.Given()
}

// input collects what the boundary depends on from the unknowns.
func (s *System) input(t float64, y []float64) boundaryInput {
	in := boundaryInput{t: t, film: s.Temperature(y), water: y[s.iBorder()-1], mass: y[s.iMass()], last: y[s.walls-1], own: s.Own(y)}
	if s.fibre {
		in.fibre = y[s.iFibre()]
	}
	if s.carrier {
		in.carrier = y[s.iCarrier()]
	}
	return in
}

// Derivative implements ode.System.
func (s *System) Derivative(t float64, y, dydt []float64) {
	in := s.input(t, y)
	b := s.meetBorder(&in)
	copy(s.Own(dydt), s.baseRates)
	s.water.rates(in.film, s.unknowns(y), b.contact.Flux, b.drift, s.unknowns(dydt))

	capacity, conduct := s.part.cellCapacity(), s.part.cellConductance()
	wall := y[:s.walls]
	enter := 2 * conduct * (in.film - wall[0])
	dydt[s.iBorder()] = b.film - enter
	dydt[s.iMass()] = -b.contact.Flux
	if s.fibre {
		dydt[s.iFibre()] = b.contact.Flux - b.given
	}
	for i := range wall {
		leave := -(b.back.Convected + b.back.Radiated + b.back.Contact)
		if i+1 < len(wall) {
			leave = conduct * (wall[i] - wall[i+1])
		}
		dydt[i] = (enter - leave) / capacity
		enter = leave
	}
	if s.carrier {
		dydt[s.iCarrier()] = (b.carrier - b.back.Contact) / s.part.Carrier.Capacity
	}

	if s.conversions > 0 {
		s.cure(y, in.film, s.Conversion(dydt))
	}
	copy(dydt[s.iLedger():], b.ledger[:])
}

// cure writes the rates of the conversions at the film's temperature.
func (s *System) cure(y []float64, film float64, out []float64) {
	s.kinetics = s.coat.Cure.At(film)
	alpha, water := s.Conversion(y), s.Water(y)
	for i := range out {
		out[i], _, _ = s.kinetics.Rate(alpha[i], water[i])
	}
}

// conversionSlack is how far rounding may carry a conversion past its ends.
const conversionSlack = 1e-12

// Admissible implements ode.Admissible: neither film nor fibre holds negative water, no conversion passes its ends. Below zero the
// fibre's air would be drier than dry and draw from the film water that it does not hold.
func (s *System) Admissible(_ float64, y []float64) bool {
	if !s.water.admissible(s.unknowns(y), y[s.iMass()]) || s.fibre && !(y[s.iFibre()] >= 0) {
		return false
	}
	for _, alpha := range s.Conversion(y) {
		if !(alpha >= -conversionSlack && alpha <= 1+conversionSlack) {
			return false
		}
	}
	return !math.IsNaN(s.Temperature(y))
}

// Bound puts a state that was interpolated between two admissible ones back inside the bounds of Admissible; it may have
// left them by as much as the integrator's tolerance.
func (s *System) Bound(y []float64) {
	s.water.bound(s.unknowns(y), &y[s.iMass()])
	if s.fibre {
		y[s.iFibre()] = math.Max(0, y[s.iFibre()])
	}
	for i, alpha := range s.Conversion(y) {
		s.Conversion(y)[i] = math.Max(0, math.Min(1, alpha))
	}
}
