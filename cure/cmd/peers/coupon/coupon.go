// Package coupon is the problem that our integrator and others solve side by side: one coated steel coupon in a hot
// parallel air flow, its film, its wall and its crosslinking, in the equations of package film as they stand. Others get
// the very same right-hand side, through a shared library.
package coupon

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/transfer"
)

// End is the time of the last state that is compared [s].
const End = 1800.0

// walls is the number of cells of the steel.
const walls = 8

// Marks are the names of the three moments that are compared: the mean water of the outer 5 % of the solids falls to
// 30 g/kg, that of the whole film to 20 g/kg, the least conversion rises to 0.95.
var Marks = [...]string{"touch", "dry", "cured"}

// thresholds of the marks.
const (
	touchWater = 0.03 // [kg/kg]
	dryWater   = 0.02 // [kg/kg]
	fullCure   = 0.95
)

// Coupon is the problem over one grid.
type Coupon struct {
	System *film.System
	start  []float64
	coat   film.Coat
	grid   film.Grid
	part   film.Part
	around film.Exposure
}

// steady is air that stays as it is.
type steady struct{ climate film.Climate }

func (s steady) States() int                                     { return 0 }
func (s steady) Scale(int) float64                               { return 1 }
func (s steady) Climate(float64, []float64) film.Climate         { return s.climate }
func (s steady) Rates(float64, []float64, film.Drawn, []float64) {}
func (s steady) Varies() bool                                    { return false }

// New lays the coupon out with so many film cells: 150 g/m2 of a dispersion of half solids on 1.5 mm of steel, from
// 20 degC into air of 110 degC and 20 g/kg at 3 m/s. The adhesive's numbers are those of the reference jobs in package sim.
func New(cells int) (*Coupon, error) {
	a, err := air.FromHumidityRatio(383.15, 101325, 0.02, true)
	if err != nil {
		return nil, err
	}
	c := &Coupon{
		coat: film.Coat{
			Solids: 0.075,
			Diffusion: film.Diffusion{PolymerDensity: 1080, ParticleDiameter: 200e-9, Packing: 0.64, Closing: 0.74,
				Capillary: 1e-9, Dry: 5e-12, Activation: 40e3},
			Isotherm: film.GAB{Monolayer: 0.015, C: 8, K: 0.85}, HeatCapacity: 1500, Conductivity: 0.3,
			Cure: &kinetics.Law{A1: 1.3e8, E1: 76e3, N: 1, HinderingWater: 0.1},
		},
		part: film.Part{Thickness: 1.5e-3, Density: 7850, HeatCapacity: 460, Conductivity: 50, Back: film.Exposed, Cells: walls},
	}
	c.grid = film.NewGrid(c.coat.Solids, cells)
	face := film.Face{Law: transfer.Parallel{Velocity: 3, Length: 0.2, Tripped: true}, Emissivity: 0.9, Factor: 1}
	c.around = film.Exposure{Around: steady{film.Climate{Air: a, Wall: a.T}}, Front: face, Back: face}
	c.System = film.NewSystem(&c.coat, &c.grid, &c.part, &c.around)
	state := film.NewState(&c.coat, &c.grid, &c.part, 1, 293.15)
	c.start = make([]float64, c.System.Dim())
	c.System.Pack(&state, nil, c.start)
	return c, nil
}

// Start returns the unknowns at time zero.
func (c *Coupon) Start() []float64 { return append([]float64(nil), c.start...) }

// Scale returns the range of each unknown, whose share is the absolute tolerance: the one that the product integrates
// with. Counts of heat, on which nothing depends, are +Inf.
func (c *Coupon) Scale() []float64 { return c.System.Tolerances(1) }

// Margins writes how far each mark is from its threshold: above zero before it, falling through zero.
func (c *Coupon) Margins(y, g []float64) {
	g[0] = c.System.OuterWater(y) - touchWater
	g[1] = c.System.MeanWater(y) - dryWater
	g[2] = fullCure - c.System.LeastConversion(y)
}

// Events are the marks for package ode; times receives when each is met.
func (c *Coupon) Events(times []float64) []ode.Event {
	events := make([]ode.Event, len(Marks))
	for i := range events {
		g := make([]float64, len(Marks))
		events[i] = ode.Event{Name: Marks[i], Dir: ode.Falling, Once: true,
			G:   func(_ float64, y []float64) float64 { c.Margins(y, g); return g[i] },
			Hit: func(t float64, _ []float64) { times[i] = t }}
	}
	return events
}

// Order returns the unknowns in an order in which neighbours depend on neighbours alone, but for the two of the film's
// temperature, which every cell feels: wall from back to front, enthalpy, mass, then water and conversion cell by cell from
// the surface down, the counts last. Positions are those of the state. Two unknowns that depend on one another stand no
// farther apart than Band.
func (c *Coupon) Order() []int {
	n := len(c.grid.Width)
	var order []int
	for i := walls - 1; i >= 0; i-- {
		order = append(order, i)
	}
	order = append(order, walls+n, walls+n+1)
	for i := n - 1; i >= 0; i-- {
		order = append(order, walls+i, walls+n+2+i)
	}
	for i := walls + 2*n + 2; i < len(c.start); i++ {
		order = append(order, i)
	}
	return order
}

// Band is the half-width of the Jacobian in the order of Order.
const Band = 3

// Error is the root mean square of a state's differences from another, each as a share of its range.
func (c *Coupon) Error(y, reference []float64) float64 {
	sum, n := 0.0, 0
	for i, s := range c.Scale() {
		if !math.IsInf(s, 1) {
			sum += (y[i] - reference[i]) / s * (y[i] - reference[i]) / s
			n++
		}
	}
	return math.Sqrt(sum / float64(n))
}
