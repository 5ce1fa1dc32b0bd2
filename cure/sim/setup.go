// Package sim runs a job: it lays the routes out, integrates film and part along each, and reads off marks, risks,
// balances and curves.
package sim

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/route"
)

// bench is what all routes of a job share: coat, grid, part, the state when spraying, the budget, and what the first run has found
// out about the beginning.
type bench struct {
	job    *job.Job
	coat   film.Coat
	grid   film.Grid
	part   film.Part
	start  film.State
	budget *budget
	first  *beginning
}

// newBench sets a job up, with a budget of its own.
func newBench(j *job.Job) (*bench, error) {
	a := &j.Film.Adhesive
	b := &bench{job: j, budget: newBudget(&j.Numerics), first: &beginning{}}
	solids := j.Film.WetCoat * a.Solids
	b.coat = film.Coat{
		Solids: solids,
		Diffusion: film.Diffusion{PolymerDensity: a.PolymerDensity, ParticleDiameter: a.ParticleDiameter,
			Packing: a.Packing, Closing: a.Closing, Capillary: a.CapillaryDiffusion, Dry: a.DryDiffusion,
			Activation: a.DiffusionActivation},
		Transport: transport(a), Isotherm: isotherm(a), HeatOfSorption: a.Sorption.HeatOfSorption,
		HeatCapacity: a.SolidsHeatCapacity, Conductivity: a.Conductivity,
	}
	if a.Crosslinking != nil {
		law, _, err := a.Crosslinking.Law()
		if err != nil {
			return nil, err
		}
		b.coat.Cure = &law
	}
	b.grid = film.NewGrid(solids, j.Numerics.FilmCells)
	p := &j.Part
	b.part = film.Part{Thickness: p.Thickness, Density: p.Density, HeatCapacity: p.HeatCapacity,
		Conductivity: p.Conductivity, Back: backs[p.Back], Cells: j.Numerics.PartCells}
	if c := p.Carrier; c != nil {
		b.part.Carrier = &film.Carrier{Capacity: c.Mass * c.HeatCapacity, Contact: c.Contact, AirSide: c.AirSide}
	}
	T := j.Workshop.Air[0].Temperature
	if p.StartTemperature != nil {
		T = *p.StartTemperature
	}
	b.start = film.NewState(&b.coat, &b.grid, &b.part, (1-a.Solids)/a.Solids, T)
	return b, nil
}

// transport is how the adhesive's water leaves the film.
func transport(a *job.Adhesive) film.Transport {
	if a.Transport.Mechanism == job.PorousSkin {
		return film.PorousSkin{Diffusivity: a.Transport.SkinDiffusion}
	}
	return film.LiquidDiffusion{}
}

// isotherm is the water that the adhesive's film holds.
func isotherm(a *job.Adhesive) film.Isotherm {
	s := &a.Sorption
	if s.Isotherm == job.IsothermFloryHuggins {
		return film.FloryHuggins{Chi: s.Chi, PolymerDensity: a.PolymerDensity}
	}
	return film.GAB{Monolayer: s.Monolayer, C: s.GABC, K: s.GABK}
}

var backs = map[job.Back]film.Back{
	job.BackExposed: film.Exposed, job.BackInsulated: film.Insulated, job.BackCoated: film.Mirrored}

// system builds the equations of one stage.
func (b *bench) system(s *route.Stage) *film.System {
	return film.NewSystem(&b.coat, &b.grid, &b.part, &s.Exposure)
}
