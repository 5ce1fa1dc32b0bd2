package material

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Adhesives are the kinds of dispersion adhesive, the soft acrylic of the default job first. Where diffusivities and sorption
// are typical from memory, a weight-loss trial is worth more than any record: dry through in an oven hangs on them.
func Adhesives() []Adhesive {
	return []Adhesive{
		acrylicSoft(), acrylicFirm(), acrylicMethylol(), polyurethaneIsocyanate(), polyurethaneAziridine(),
		polyurethaneCarbodiimide(), ethyleneVinylAcetate(), styreneButadiene(), styreneAcrylicFilled(),
	}
}

// kind starts a record from the default adhesive, whose numbers it keeps unless it sets its own.
func kind(id string) Adhesive {
	at := "materials.adhesive." + id + "."
	r := Adhesive{ID: id, Label: words.Key(at + "label"), Note: words.Key(at + "note"), Source: words.Key(at + "source"), Cautions: []Caution{}, Adhesive: job.Default().Film.Adhesive}
	r.Adhesive.Record, r.Adhesive.Transport.Reason = id, words.Key(at+"reason")
	return r
}

// cures sets the cure law from a schedule to 95 % conversion.
func (r *Adhesive) cures(order, energy, hinderingWater float64, pairs ...job.SchedulePair) {
	r.Adhesive.Crosslinking = &job.Crosslinking{
		Order: order, FrequencyFactor: job.Default().Film.Adhesive.Crosslinking.FrequencyFactor,
		ActivationEnergy: energy,
		Schedule:         job.Schedule{Conversion: 0.95, Pairs: pairs}, HinderingWater: &hinderingWater,
	}
}

// takesUp sets the GAB constants of the sorption isotherm.
func (r *Adhesive) takesUp(monolayer, c, k float64) {
	s := &r.Adhesive.Sorption
	s.Monolayer, s.GABC, s.GABK = monolayer, c, k
}

// diffuses lets the last water diffuse through closed polymer; the record's words say why.
func (r *Adhesive) diffuses() { r.Adhesive.Transport.Mechanism = job.LiquidDiffusion }

func pair(t, time float64) job.SchedulePair {
	return job.SchedulePair{Temperature: celsius(t), Time: time}
}

const (
	minute = 60.0
	day    = 86400.0
)

func acrylicSoft() Adhesive {
	r := kind("acrylic-soft")
	r.Cautions = []Caution{CoSolvent}
	return r
}

func acrylicFirm() Adhesive {
	r := kind("acrylic-firm")
	a := &r.Adhesive
	a.PolymerDensity, a.SolidsHeatCapacity = 1130, 1500
	a.FilmForming = celsius(14)
	a.DryDiffusion, a.DiffusionActivation = 2e-12, 50e3
	a.Sorption.Monolayer = 0.012
	a.CrackThickness = 300e-6
	r.diffuses()
	r.cures(1, 76e3, 0.1, pair(130, 4*minute))
	r.Cautions = []Caution{CoSolvent}
	return r
}

func acrylicMethylol() Adhesive {
	r := kind("acrylic-methylol")
	r.cures(1, 96e3, 0.05, pair(150, 3*minute))
	r.Cautions = []Caution{Formaldehyde, CoSolvent}
	return r
}

// polyurethane starts the three polyurethane dispersions, which differ in their crosslinker.
func polyurethane(id string) Adhesive {
	r := kind(id)
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.ParticleDiameter = 0.45, 1100, 150e-9
	a.DryDiffusion = 1.2e-11
	r.takesUp(0.02, 6, 0.86)
	r.diffuses()
	return r
}

func polyurethaneIsocyanate() Adhesive {
	r := polyurethane("pu-isocyanate")
	r.cures(2, 57e3, 0.2, pair(23, 7*day))
	r.Cautions = []Caution{Isocyanate, CoSolvent}
	return r
}

func polyurethaneAziridine() Adhesive {
	r := polyurethane("pu-aziridine")
	r.cures(1, 86e3, 0.1, pair(23, 2*day), pair(80, 10*minute))
	r.Cautions = []Caution{Aziridine, CoSolvent}
	return r
}

func polyurethaneCarbodiimide() Adhesive {
	r := polyurethane("pu-carbodiimide")
	r.cures(1, 87e3, 0.05, pair(23, 5*day), pair(100, 5*minute))
	r.Cautions = []Caution{Carbodiimide, CoSolvent}
	return r
}

func ethyleneVinylAcetate() Adhesive {
	r := kind("vinyl-acetate-ethylene")
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.ParticleDiameter = 0.55, 1110, 300e-9
	a.FilmForming = celsius(4)
	a.DryDiffusion = 8e-12
	r.takesUp(0.02, 6, 0.87)
	r.diffuses()
	a.Crosslinking = nil
	return r
}

func styreneButadiene() Adhesive {
	r := kind("styrene-butadiene")
	a := &r.Adhesive
	a.PolymerDensity, a.SolidsHeatCapacity, a.ParticleDiameter = 985, 1900, 180e-9
	a.DryDiffusion = 3e-12
	r.takesUp(0.006, 8, 0.88)
	r.diffuses()
	a.Crosslinking = nil
	return r
}

func styreneAcrylicFilled() Adhesive {
	r := kind("styrene-acrylic-filled")
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.SolidsHeatCapacity = 0.58, 1350, 1300
	a.Conductivity, a.ParticleDiameter = 0.45, 300e-9
	a.FilmForming = celsius(15)
	a.HealsWhenWarmed = false
	r.takesUp(0.008, 8, 0.85)
	a.CrackThickness = 300e-6
	a.Transport.Mechanism, a.Transport.SkinDiffusion = job.PorousSkin, 7e-7
	a.Crosslinking = nil
	return r
}
