package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/air"
)

// Surface is one face of the part: what lies between the film and the air around it. All fields are needed but Pile (nil: a
// bare film); Factor multiplies h, 1 leaves it.
type Surface struct {
	Air          air.State
	Wall         float64 // K, of the walls that the face sees
	Law          Law
	Emissivity   float64 // of the bare film; a pile has its own
	Pile         *Pile
	Factor       float64
	AbsorbedFlux float64 // W/m2 of infrared, absorbed by the fibre tips or the bare film
	FilmAbsorbed float64 // W/m2 of infrared that passes the tips and is absorbed by the film itself
}

// Exchange is what passes the face at one film temperature and water activity.
type Exchange struct {
	Flux       float64 // vapour, kg/m2 s, positive while drying
	FilmHeat   float64 // W/m2 into the film, before the latent heat of Flux is taken from it
	Convected  float64 // W/m2 from the air to the tips (bare: the film), Ackermann included
	Radiated   float64 // W/m2 from the walls to the tips or the film
	Absorbed   float64 // W/m2 of infrared, AbsorbedFlux and FilmAbsorbed together
	VapourHeat float64 // W/m2 carried off by the vapour: Flux (h_v(T) + cp_v (Tip - T))
	H          float64 // W/m2 K, of the law times Factor, before Ackermann
	K          float64 // m/s, mass transfer coefficient that goes with H, without the pile
	Tip        float64 // K, of the fibre tips; bare: the film
}

// Prepared is a Surface at one film temperature, for several activities. It remembers the air film of the activity last asked
// for, because a search for the activity ends where the exchange is wanted.
type Prepared struct {
	s           *Surface
	temperature float64 // K, of the film
	full        float64 // mole fraction of vapour at activity 1
	cpVapour    float64
	wet         float64 // Stefan logarithm at activity 1 where dew would fall, else 0
	suction     float64 // how far below wet a law follows the logarithm
	blowing     float64 // how far above 0 the tips of a pile follow it
	dryTip      float64 // pile: tips without vapour flux, where the passes start
	dryShare    float64 // pile: share of the air film in the vapour resistance there
	pileHeat    float64 // pile: k_p/L
	latest      stream
	activity    float64 // of latest; NaN before the first
}

// Prepare works out what does not depend on the activity at the film temperature T in K.
func (s *Surface) Prepare(T float64) Prepared {
	p := Prepared{
		s:           s,
		temperature: T,
		full:        air.SaturatedFraction(T, s.Air.P, s.Air.Real),
		cpVapour:    air.VapourHeatCapacity((T + s.Air.T) / 2),
		activity:    math.NaN(),
	}
	p.prepareSuction()
	if s.Pile != nil {
		p.prepareTips()
	}
	return p
}

// SaturatedFraction is the mole fraction of vapour over the film at activity 1.
func (p *Prepared) SaturatedFraction() float64 { return p.full }

// Temperature is that of the film, K.
func (p *Prepared) Temperature() float64 { return p.temperature }

// Flux is the vapour flux j in kg/m2 s at water activity a, and its slope dj/da with the coefficients held: the true
// slope but for the change of properties and of buoyancy with the mole fraction. j itself freezes nothing: law and
// properties are taken at the mole fraction of this very activity, short of strong suction (see seen). It does not fall as a
// rises.
func (p *Prepared) Flux(a float64) (j, slope float64) {
	f := p.film(a)
	return f.j, f.slope
}

// stream is the state of the air film for one activity.
type stream struct {
	j, slope, h, k, tip float64
}

func (p *Prepared) film(a float64) stream {
	if a != p.activity {
		p.latest, p.activity = p.flow(a), a
	}
	return p.latest
}

// flow works the air film out for one activity.
func (p *Prepared) flow(a float64) stream {
	if p.s.Pile != nil {
		return p.tips(a)
	}
	s := p.s
	ys := a * p.full
	seen := p.seenFraction(ys)
	m := filmProps(s.Air, p.temperature, seen)
	h := s.Factor * coefficient(s.Law, s.Air, p.temperature, seen, m)
	k := MassCoefficient(h, m)
	j, slope := StefanFlux(k, s.Air.P, (p.temperature+s.Air.T)/2, s.Air.Y, ys)
	return stream{j: j, slope: slope * p.full, h: h, k: k, tip: p.temperature}
}

// Exchange at film temperature T in K and surface water activity a.
//
// Bare film: h from the law, k by Chilton and Colburn, j by Stefan flow from y_s = a f p_sat(T)/p, heat h phi/(e^phi - 1)
// (T_inf - T) plus radiation plus infrared. With a pile see Pile; FilmAbsorbed goes into the film past the tips. The account
//
//	Convected + Radiated + Absorbed = FilmHeat + Flux cp_v (Tip - T)
//
// holds to rounding, cp_v being that of vapour at the mean of film and air.
func (s *Surface) Exchange(T, a float64) Exchange {
	p := s.Prepare(T)
	return p.Exchange(a)
}

// Exchange is Surface.Exchange at the prepared temperature; its Flux is that of Prepared.Flux.
func (p *Prepared) Exchange(a float64) Exchange {
	f := p.film(a)
	p.settle(&f)
	return p.exchange(f)
}

// exchange is what passes the face with a settled stream.
func (p *Prepared) exchange(f stream) Exchange {
	s := p.s
	jcp := f.j * p.cpVapour
	e := Exchange{Flux: f.j, H: f.h, K: f.k, Tip: f.tip}
	e.Convected = highFlux(f.h, jcp) * (s.Air.T - f.tip)
	if s.Pile != nil {
		e.Radiated = Radiation(s.Pile.Emissivity, s.Wall, f.tip)
		e.FilmHeat = highFlux(p.pileHeat, jcp) * (f.tip - p.temperature)
	} else {
		e.Radiated = Radiation(s.Emissivity, s.Wall, p.temperature)
		e.FilmHeat = e.Convected + e.Radiated + s.AbsorbedFlux
	}
	e.Absorbed = s.AbsorbedFlux + s.FilmAbsorbed
	e.FilmHeat += s.FilmAbsorbed
	e.VapourHeat = f.j*air.VapourEnthalpy(p.temperature) + jcp*(f.tip-p.temperature)
	return e
}

// DryHeat is the heat in W/m2 that a bare face without water takes at T in K (the back of the part): convection with no
// vapour to move, radiation and infrared. Pile is not regarded, so that both absorbed fluxes count alike.
func (s *Surface) DryHeat(T float64) float64 {
	return s.DryCoefficient(T)*(s.Air.T-T) + Radiation(s.Emissivity, s.Wall, T) + s.AbsorbedFlux + s.FilmAbsorbed
}

// DryCoefficient is the convective h in W/m2 K of DryHeat.
func (s *Surface) DryCoefficient(T float64) float64 {
	return s.Factor * s.Law.Coefficient(s.Air, T, s.Air.Y)
}

// Check lists what of the law's state lies outside its published range at film temperature T and activity a.
func (s *Surface) Check(T, a float64) []Caution {
	p := s.Prepare(T)
	f := p.film(a)
	p.settle(&f)
	ys := a * p.full
	if s.Pile != nil {
		ys = p.tipFraction(f)
	}
	return s.Law.Check(s.Air, f.tip, ys)
}

// tipFraction is the mole fraction at the tips that the flux f leaves.
func (p *Prepared) tipFraction(f stream) float64 {
	a := p.s.Air
	g := conductance(f.k, a.P, (f.tip+a.T)/2)
	if g <= 0 {
		return a.Y
	}
	return downstream(a.Y, f.j/g)
}
