package film

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/transfer"
)

// still is air that may run up or down in temperature at a constant rate.
type still struct {
	air  air.State
	ramp float64 // K/s
}

func (s *still) States() int       { return 0 }
func (s *still) Scale(int) float64 { return 1 }
func (s *still) Climate(t float64, _ []float64) Climate {
	a := s.air
	a.T += s.ramp * t
	return Climate{Air: a, Wall: a.T}
}
func (s *still) Rates(float64, []float64, Drawn, []float64) {}
func (s *still) Varies() bool                               { return s.ramp != 0 }

// rig is a coat on a part in the air, ready to run.
type rig struct {
	coat     Coat
	grid     Grid
	part     Part
	exposure Exposure
	state    State
}

// newRig starts a coat of water content x at temperature T [K]; h on both faces, no radiation.
func newRig(coat Coat, part Part, cells int, x, T float64, around Surroundings, h float64) *rig {
	r := &rig{coat: coat, grid: NewGrid(coat.Solids, cells), part: part}
	face := Face{Law: transfer.Given{H: h}, Factor: 1}
	r.exposure = Exposure{Around: around, Front: face, Back: face}
	r.state = NewState(&r.coat, &r.grid, &r.part, x, T)
	return r
}

// run integrates to time end and returns the system with its unknowns there; stop, when given, ends the run early.
func (r *rig) run(t *testing.T, end float64, stop *ode.Event) (*System, float64, []float64) {
	t.Helper()
	s := NewSystem(&r.coat, &r.grid, &r.part, &r.exposure)
	y := make([]float64, s.Dim())
	s.Pack(&r.state, nil, y)
	const tol = 1e-7 // an order of magnitude below the tightest bound of these tests
	solver, err := ode.NewSolver(s, ode.Options{RelTol: tol, AbsTol: s.Tolerances(tol)})
	if err != nil {
		t.Fatal(err)
	}
	var events []ode.Event
	if stop != nil {
		stop.Terminal = true
		events = append(events, *stop)
	}
	e, err := solver.Integrate(0, end, y, events, nil)
	if err != nil {
		t.Fatal(err)
	}
	return s, e.T, y
}

// dryAir is air with next to no vapour.
func dryAir(T float64) air.State { return air.State{T: T, P: 101325} }

// acrylic is a film of the typical adhesive, 75 g/m2 dry.
func acrylic() Coat {
	return Coat{Solids: 0.075, Diffusion: typical(), Isotherm: GAB{Monolayer: 0.015, C: 8, K: 0.85}, HeatCapacity: 1500, Conductivity: 0.3}
}

// foil is a part that weighs next to nothing.
func foil(back Back) Part {
	return Part{Thickness: 1e-5, Density: 1000, HeatCapacity: 1000, Conductivity: 10, Back: back, Cells: 2}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.7g, want %.7g within %.2g", what, got, want, tol)
	}
}

func relative(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	near(t, what, got, want, tol*math.Abs(want))
}
