package material

import "github.com/drywright/drywright/cure/job"

// Adhesives are the kinds of dispersion adhesive, the soft acrylic of the default job first. Where diffusivities and sorption
// are typical from memory, a weight-loss trial is worth more than any record: dry through in an oven hangs on them.
func Adhesives() []Adhesive {
	return []Adhesive{
		acrylicSoft(), acrylicFirm(), acrylicMethylol(), polyurethaneIsocyanate(), polyurethaneAziridine(),
		polyurethaneCarbodiimide(), ethyleneVinylAcetate(), styreneButadiene(), styreneAcrylicFilled(),
	}
}

// kind starts a record from the default adhesive, whose numbers it keeps unless it sets its own.
func kind(id, label string) Adhesive {
	r := Adhesive{ID: id, Label: label, Cautions: []Caution{}, Adhesive: job.Default().Film.Adhesive}
	r.Adhesive.Record = id
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

// diffuses says why the last water has to diffuse through closed polymer.
func (r *Adhesive) diffuses(reason string) {
	r.Adhesive.Transport.Mechanism, r.Adhesive.Transport.Reason = job.LiquidDiffusion, reason
}

func pair(t, time float64) job.SchedulePair {
	return job.SchedulePair{Temperature: celsius(t), Time: time}
}

const (
	minute = 60.0
	day    = 86400.0
)

func acrylicSoft() Adhesive {
	r := kind("acrylic-soft", "Acrylic, soft, self-crosslinking")
	r.Note = "Soft particles that fuse as the water leaves; groups built into the polymer then crosslink, within minutes when " +
		"hot and over days in a room."
	r.Source = fromMemory + "; activation energy between those of urethanes and melamine resins"
	r.Cautions = []Caution{CoSolvent}
	return r
}

func acrylicFirm() Adhesive {
	r := kind("acrylic-firm", "Acrylic, firm, self-crosslinking")
	a := &r.Adhesive
	a.PolymerDensity, a.SolidsHeatCapacity = 1130, 1500
	a.FilmForming = celsius(14)
	a.DryDiffusion, a.DiffusionActivation = 2e-12, 50e3
	a.Sorption.Monolayer = 0.012
	a.CrackThickness = 300e-6
	r.diffuses("Firm particles still flow together above their film-forming temperature and close the film; where it dries colder " +
		"than that, pores stay and a porous skin is nearer to the truth.")
	r.cures(1, 76e3, 0.1, pair(130, 4*minute))
	r.Note = "A harder film that stands rubbing sooner. In a cold room it dries to powder, so it wants a warm room or an oven."
	r.Source = fromMemory
	r.Cautions = []Caution{CoSolvent}
	return r
}

func acrylicMethylol() Adhesive {
	r := kind("acrylic-methylol", "Acrylic with N-methylol groups, heat-curing")
	r.cures(1, 96e3, 0.05, pair(150, 3*minute))
	r.Note = "N-methylol groups condense with an acid catalyst and split off water, methanol and formaldehyde. Needs an oven; in " +
		"a room it dries and stays tacky for weeks."
	r.Source = "schedule 150 °C, 3 min from related N-methylol finishes (J. Appl. Polymer Science 75, 2000, 390-395); no " +
		"published activation energy was found for such a latex, 96 kJ/mol is that of a melamine resin with acid (Meijer 1986, " +
		"J. Polymer Science A 24, 2199-2208); other numbers " + fromMemory
	r.Cautions = []Caution{Formaldehyde, CoSolvent}
	return r
}

// polyurethane starts the three polyurethane dispersions, which differ in their crosslinker.
func polyurethane(id, label string) Adhesive {
	r := kind(id, label)
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.ParticleDiameter = 0.45, 1100, 150e-9
	a.DryDiffusion = 1.2e-11
	r.takesUp(0.02, 6, 0.86)
	r.diffuses("Soft, swollen particles flow together early; the hydrophilic groups that keep them dispersed also lead the last " +
		"water through the closed polymer.")
	return r
}

func polyurethaneIsocyanate() Adhesive {
	r := polyurethane("pu-isocyanate", "Polyurethane with isocyanate crosslinker")
	r.cures(2, 57e3, 0.2, pair(23, 7*day))
	r.Note = "Two parts, mixed before use: the isocyanate reacts at room temperature, tack goes within hours and full cure takes a " +
		"week. While the film is wet water takes part of the isocyanate, and late in the cure coalescence limits it."
	r.Source = "activation energy 57 kJ/mol and second order: HTPB with IPDI, uncatalysed (abstract 543, Polymer (Korea)); full " +
		"cure in 3 to 7 days in a room: " + commonPractice + "; other numbers " + fromMemory
	r.Cautions = []Caution{Isocyanate, CoSolvent}
	return r
}

func polyurethaneAziridine() Adhesive {
	r := polyurethane("pu-aziridine", "Polyurethane with aziridine crosslinker")
	r.cures(1, 86e3, 0.1, pair(23, 2*day), pair(80, 10*minute))
	r.Note = "Two parts: aziridine opens on the carboxyl groups of the polymer as the film dries, in days in a room or minutes " +
		"in a mild oven."
	r.Source = "schedule: ambient 1 to 3 days, 60 to 100 °C 5 to 15 min (" + commonPractice +
		"); no published Arrhenius pair was " +
		"found, both constants are fitted to that schedule; other numbers " + fromMemory
	r.Cautions = []Caution{Aziridine, CoSolvent}
	return r
}

func polyurethaneCarbodiimide() Adhesive {
	r := polyurethane("pu-carbodiimide", "Polyurethane with carbodiimide crosslinker")
	r.cures(1, 87e3, 0.05, pair(23, 5*day), pair(100, 5*minute))
	r.Note = "Carbodiimide hardly reacts while the film is wet; it crosslinks the carboxyl groups as the water leaves, in minutes " +
		"when hot, in several days in a room."
	r.Source = "80 to 120 °C a few minutes or several days ambient (" + fromMemory +
		"); no published Arrhenius pair was found, both " +
		"constants are fitted to that schedule; other numbers " + fromMemory
	r.Cautions = []Caution{Carbodiimide, CoSolvent}
	return r
}

func ethyleneVinylAcetate() Adhesive {
	r := kind("vinyl-acetate-ethylene", "Vinyl acetate-ethylene, no crosslinker")
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.ParticleDiameter = 0.55, 1110, 300e-9
	a.FilmForming = celsius(4)
	a.DryDiffusion = 8e-12
	r.takesUp(0.02, 6, 0.87)
	r.diffuses("Soft particles with a water-loving shell flow together as they pack, so that the last water has to diffuse through " +
		"closed polymer.")
	a.Crosslinking = nil
	r.Note = "Only dries: strength comes from the fused film alone. It softens when warm and swells when wet; for paper and wood."
	r.Source = "film-forming temperature 0 to 5 °C, density 1050 to 1170 kg/m³ (" + commonPractice +
		"); other numbers " + fromMemory
	return r
}

func styreneButadiene() Adhesive {
	r := kind("styrene-butadiene", "Styrene-butadiene, no crosslinker")
	a := &r.Adhesive
	a.PolymerDensity, a.SolidsHeatCapacity, a.ParticleDiameter = 985, 1900, 180e-9
	a.DryDiffusion = 3e-12
	r.takesUp(0.006, 8, 0.88)
	r.diffuses("Soft rubbery particles flow together as they pack, and the water-repelling polymer lets the last water through only " +
		"by diffusion.")
	a.Crosslinking = nil
	r.Note = "Only dries: a tough film that takes up little water. It yellows in light and with heat."
	r.Source = "film-forming temperature 0 to 5 °C, density 940 to 1020 kg/m³ (" + commonPractice +
		"); other numbers " + fromMemory
	return r
}

func styreneAcrylicFilled() Adhesive {
	r := kind("styrene-acrylic-filled", "Styrene-acrylic, filled and hard, no crosslinker")
	a := &r.Adhesive
	a.Solids, a.PolymerDensity, a.SolidsHeatCapacity = 0.58, 1350, 1300
	a.Conductivity, a.ParticleDiameter = 0.45, 300e-9
	a.FilmForming = celsius(15)
	a.HealsWhenWarmed = false
	r.takesUp(0.008, 8, 0.85)
	a.CrackThickness = 300e-6
	a.Transport = job.Transport{Mechanism: job.PorousSkin, SkinDiffusion: 7e-7,
		Reason: "Hard particles and filler keep pores open behind the drying front, and the last water leaves through them as vapour " +
			"(Kiil 2006: this law fits dispersion films with one diffusivity, whatever their thickness and particle size)."}
	a.Crosslinking = nil
	r.Note = "Only dries: cheap and stiff, for board and wood. Its last water hangs on the humidity of the room more than on " +
		"warmth."
	r.Source = "diffusivity of vapour in the skin and closing fraction: Kiil (2006), Progress in Organic Coatings 57, 236-250; " +
		"other numbers " + fromMemory
	return r
}
