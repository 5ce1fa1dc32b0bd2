// Package sim runs a job: it lays the routes out, integrates film and part along each, and reads off marks, risks,
// balances and curves.
package sim

import (
	"math"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/route"
)

// bench is what all routes of a job share: coat, grid, part, the state when spraying.
type bench struct {
	job   *job.Job
	coat  film.Coat
	grid  film.Grid
	part  film.Part
	start film.State
}

func newBench(j *job.Job) (*bench, error) {
	a := &j.Film.Adhesive
	b := &bench{job: j}
	solids := j.Film.WetCoat * a.Solids
	b.coat = film.Coat{
		Solids: solids,
		Diffusion: film.Diffusion{PolymerDensity: a.PolymerDensity, ParticleDiameter: a.ParticleDiameter,
			Packing: a.Packing, Closing: a.Closing, Capillary: a.CapillaryDiffusion, Dry: a.DryDiffusion,
			Activation: a.DiffusionActivation},
		Isotherm:     film.GAB{Monolayer: a.Sorption.Monolayer, C: a.Sorption.GABC, K: a.Sorption.GABK},
		HeatCapacity: a.SolidsHeatCapacity, Conductivity: a.Conductivity,
	}
	if a.Crosslinking != nil {
		law, err := cureLaw(a.Crosslinking)
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

var backs = map[job.Back]film.Back{
	job.BackExposed: film.Exposed, job.BackInsulated: film.Insulated, job.BackCoated: film.Mirrored}

// cureLaw turns the job's crosslinking into a law: as it stands, from one pair, or fitted to a schedule.
func cureLaw(c *job.Crosslinking) (kinetics.Law, error) {
	law := kinetics.Law{A1: c.FrequencyFactor, E1: c.ActivationEnergy, N: c.Order, HinderingWater: math.Inf(1)}
	switch pairs := c.Schedule.Pairs; len(pairs) {
	case 0:
	case 1:
		law.A1 = kinetics.FromPair(pairs[0].Temperature, pairs[0].Time, c.Schedule.Conversion, c.ActivationEnergy, c.Order).A1
	default:
		fit := make([]kinetics.Pair, len(pairs))
		for i, p := range pairs {
			fit[i] = kinetics.Pair{T: p.Temperature, Time: p.Time}
		}
		a, e, _, err := kinetics.FitSchedule(fit, c.Schedule.Conversion, c.Order)
		if err != nil {
			return law, err
		}
		law.A1, law.E1 = a, e
	}
	if c.HinderingWater != nil {
		law.HinderingWater = *c.HinderingWater
	}
	if c.Autocatalysis != nil {
		law.A2, law.E2, law.M = c.Autocatalysis.FrequencyFactor, c.Autocatalysis.ActivationEnergy, c.Autocatalysis.Exponent
	}
	return law, nil
}

// system builds the equations of one stage.
func (b *bench) system(s *route.Stage) *film.System {
	return film.NewSystem(&b.coat, &b.grid, &b.part, &s.Exposure)
}
