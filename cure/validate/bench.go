package validate

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/transfer"
)

// stillAir is air and walls that stay as they are, or warm at a constant rate.
type stillAir struct {
	air  air.State
	wall float64 // [K]
	ramp float64 // of air and walls [K/s]
}

func (s *stillAir) States() int { return 0 }
func (s *stillAir) Climate(t float64, _ []float64) film.Climate {
	a := s.air
	a.T += s.ramp * t
	return film.Climate{Air: a, Wall: s.wall + s.ramp*t}
}
func (s *stillAir) Rates(float64, []float64, film.Drawn, []float64) {}
func (s *stillAir) Varies() bool                                    { return s.ramp != 0 }
func (s *stillAir) Scale(int) float64                               { return 1 }

// bench is a coat on a part in air, run by the film's own system and integrator.
type bench struct {
	coat   film.Coat
	part   film.Part
	cells  int     // of the film
	water  float64 // X at the start [kg/kg]
	start  float64 // temperature of film and part at the start [K]
	around stillAir
	front  film.Face
	back   film.Face
	// tolerance of the integrator; 0: tight.
	tolerance float64
}

// tight is the integrator's tolerance here: an order of magnitude below the tightest row of most runs.
const tight = 1e-7

// moment is the bench at one time of a run.
type moment struct {
	*film.System
	time  float64
	y     []float64
	cells int // of the part
}

// run integrates for a time [s], or up to where stop turns from negative to positive, when given.
func (b *bench) run(e *entry, end float64, stop func(m moment) float64) (moment, bool) {
	grid := film.NewGrid(b.coat.Solids, b.cells)
	state := film.NewState(&b.coat, &grid, &b.part, b.water, b.start)
	exposure := film.Exposure{Around: &b.around, Front: b.front, Back: b.back}
	m := moment{System: film.NewSystem(&b.coat, &grid, &b.part, &exposure), cells: b.part.Cells}
	m.y = make([]float64, m.Dim())
	m.Pack(&state, nil, m.y)
	tolerance := b.tolerance
	if tolerance == 0 {
		tolerance = tight
	}
	solver, err := ode.NewSolver(m, ode.Options{RelTol: tolerance, AbsTol: m.Tolerances(tolerance)})
	if err != nil {
		e.fail(err.Error())
		return m, false
	}
	var events []ode.Event
	if stop != nil {
		events = []ode.Event{{Dir: ode.Rising, Terminal: true, G: func(t float64, y []float64) float64 {
			return stop(moment{m.System, t, y, m.cells})
		}}}
	}
	reached, err := solver.Integrate(0, end, m.y, events, nil)
	if err != nil {
		e.fail(err.Error())
		return m, false
	}
	if stop != nil && reached.Reason != ode.Terminated {
		e.fail("the run ended before what was waited for")
		return m, false
	}
	m.time = reached.T
	return m, true
}

// film is the temperature of film and front face [K].
func (m moment) film() float64 { return m.Read(m.time, m.y).Film }

// wall returns the part's temperatures, the film's side first [K].
func (m moment) wall() []float64 {
	s := film.State{Part: make([]float64, m.cells)}
	m.Unpack(m.y, &s)
	return s.Part
}

// given is a face with a stated coefficient [W/(m2 K)] and no radiation.
func given(h float64) film.Face { return film.Face{Law: transfer.Given{H: h}, Factor: 1} }

// dryAir is air without vapour at T [K].
func dryAir(T float64) air.State { return air.State{T: T, P: atmosphere} }

// softIsotherm is that of a soft acrylic, as the records have it.
func softIsotherm() film.Isotherm { return film.GAB{Monolayer: 0.015, C: 8, K: 0.85} }

// noFilm is a coat so thin that only the part counts.
func noFilm() film.Coat {
	return film.Coat{Solids: 1e-6, Diffusion: fineParticles(), Isotherm: softIsotherm(), HeatCapacity: 1500, Conductivity: 0.3}
}

// fineParticles diffuse so fast that the surface of a wet film stays wet for long.
func fineParticles() film.Diffusion {
	return film.Diffusion{PolymerDensity: 1080, ParticleDiameter: 2e-9, Packing: 0.64, Closing: 0.74, Capillary: 1e-8, Dry: 1e-8}
}

// foil is a part that weighs next to nothing.
func foil(back film.Back) film.Part {
	return film.Part{Thickness: 1e-5, Density: 1000, HeatCapacity: 1000, Conductivity: 10, Back: back, Cells: 2}
}

// wetShare is the share of its water that a wet film loses before its plateau is read: temperatures have settled by
// then, the surface is still wet.
const wetShare = 0.25

// plateau dries a wet film on a foil or another part and reads it in the constant-rate period.
func plateau(e *entry, face film.Face, around stillAir, part film.Part, back film.Face) film.Reading {
	coat := film.Coat{Solids: 0.05, Diffusion: fineParticles(), Isotherm: softIsotherm(), HeatCapacity: 1500, Conductivity: 0.3}
	b := bench{coat: coat, part: part, cells: 24, water: 4, start: around.air.WetBulb(), around: around, front: face, back: back}
	m, ok := b.run(e, 30*86400, func(m moment) float64 { return (1-wetShare)*b.water - m.MeanWater(m.y) })
	if !ok {
		return film.Reading{Film: math.NaN(), Flux: math.NaN()}
	}
	r := m.Read(m.time, m.y)
	if !r.SurfaceWet {
		e.fail("the surface is no longer wet")
	}
	return r
}

// sealed is the plateau of a film on an insulated foil, in air whose walls are as warm as itself, at a stated coefficient.
func sealed(e *entry, a air.State, h float64) film.Reading {
	return plateau(e, given(h), stillAir{air: a, wall: a.T}, foil(film.Insulated), film.Face{})
}

// root bisects f, which falls from positive to negative between lo and hi.
func root(lo, hi float64, f func(float64) float64) float64 {
	for range 60 {
		mid := (lo + hi) / 2
		if f(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
