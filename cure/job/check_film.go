package job

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/words"
)

const (
	boltzmann = 1.380649e-23 // J/K, CODATA 2018
	// waterDensity in the film [kg/m3], as in package film.
	waterDensity = 1000.0
	// packed is the share of the packing fraction from which a layer counts as packed (the mark "open").
	packed = 0.98
	// leastGap between packing and closing fraction leaves the wet, packed film a range of its own.
	leastGap = 0.01
	// waterIn is a field that tells water in the film as readers know it.
	waterIn = "targets.dry_water_kg_per_kg"
	// fastest rate constant [1/s] that still means something: cure within hundredths of a second.
	fastest = 100
)

// checkFilm demands what the film's equations rest on.
func (v *validator) checkFilm(j *Job) {
	const at = "film.adhesive"
	a := &j.Film.Adhesive
	if v.sound(at+".packing_fraction", at+".closing_fraction") && a.Closing < a.Packing+leastGap {
		v.conflict(at+".closing_fraction", words.Told("closing fraction {closing} is not above packing fraction {packing}",
			"closing", v.typed(a.Closing, at+".closing_fraction"), "packing", v.typed(a.Packing, at+".packing_fraction")),
			words.Told("Particles touch before the paths between them close: give a "+
				"closing fraction of {least} or more.", "least", v.typed(a.Packing+leastGap, at+".closing_fraction")))
	}
	if v.sound(at+".packing_fraction", at+".solids_fraction", at+".polymer_density_kg_per_m3") {
		polymer := a.Solids / a.PolymerDensity
		phi := polymer / (polymer + (1-a.Solids)/waterDensity)
		if phi >= packed*a.Packing {
			v.conflict(at+".solids_fraction", words.Told("polymer volume fraction {share} when sprayed, packed from {packed} on",
				"share", v.computed(phi, at+".packing_fraction"), "packed", v.computed(packed*a.Packing, at+".packing_fraction")),
				words.Told("So thick a dispersion is packed before it is sprayed: lower the solids or raise the packing fraction."))
		}
		solids := j.Film.WetCoat * a.Solids
		if layer := solids / (a.PolymerDensity * a.Packing); v.sound("film.wet_coat_kg_per_m2",
			"targets.open_layer_m") &&
			j.Targets.OpenLayer >= layer {
			v.conflict("targets.open_layer_m", words.Told("{layer}, but the whole packed film has {whole}",
				"layer", v.typed(j.Targets.OpenLayer, "targets.open_layer_m"), "whole", v.computed(layer, "targets.open_layer_m")), words.Told("Give a thinner layer or a heavier coat."))
		}
	}
	if v.sound(at+".capillary_diffusivity_m2_per_s", at+".dry_diffusivity_at_25C_m2_per_s") &&
		a.DryDiffusion >= a.CapillaryDiffusion {
		v.conflict(at+".dry_diffusivity_at_25C_m2_per_s", words.Told("{dry} is not below the wet film's {wet}",
			"dry", v.typed(a.DryDiffusion, at+".dry_diffusivity_at_25C_m2_per_s"), "wet", v.typed(a.CapillaryDiffusion, at+".capillary_diffusivity_m2_per_s")),
			words.Told("Water moves more slowly through the dry film than through the wet one."))
	}
	v.checkSorption(a)
	if c := a.CoSolvent; c != nil && v.sound(at+".solids_fraction", at+".co_solvent") && a.Solids+c.Fraction > 1 {
		v.conflict(at+".co_solvent.fraction_of_wet_coat", words.Told("{co_solvent} beside {solids} of solids",
			"co_solvent", v.typed(c.Fraction, at+".co_solvent.fraction_of_wet_coat"), "solids", v.typed(a.Solids, at+".solids_fraction")), words.Told("Solids and co-solvent together are no more than the whole coat."))
	}
}

// checkSorption demands that the film in saturated air holds less water than its paths need to be open: it would never be
// called dry otherwise. A heat of sorption does not matter here: free water is never bound, so that it makes a warm film
// hold less, and a cold one no more than the isotherm does in saturated air.
func (v *validator) checkSorption(a *Adhesive) {
	const at = "film.adhesive"
	if !v.sound(at+".sorption", at+".polymer_density_kg_per_m3", at+".closing_fraction") {
		return
	}
	s := a.Sorption
	closing := waterDensity / a.PolymerDensity * (1/a.Closing - 1)
	if s.Isotherm == IsothermFloryHuggins {
		// ln a = ln(1 - phi) + phi + chi phi^2 is above zero at the closing fraction where saturation lies beyond it.
		c := a.Closing
		if least := (-math.Log(1-c) - c) / (c * c); s.Chi <= least {
			v.conflict(at+".sorption.chi", words.Told("with {chi} the film in saturated air holds more than {water}, where its paths are open",
				"chi", v.typed(s.Chi, at+".sorption.chi"), "water", v.computed(closing, waterIn)),
				words.Told("Give more than {least}, or a lower closing fraction.",
					"least", v.computed(least, at+".sorption.chi")))
		}
		return
	}
	full := s.Monolayer * s.GABC * s.GABK / ((1 - s.GABK) * (1 - s.GABK + s.GABC*s.GABK))
	if full >= closing {
		v.conflict(at+".sorption",
			words.Told("the dry film would hold {full} in saturated air, but its paths are open from {open} on",
				"full", v.computed(full, waterIn), "open", v.computed(closing, waterIn)), words.Told("Lower the monolayer or K, or the closing fraction."))
	}
}

// checkCrosslinking demands a schedule that one reaction can follow.
func (v *validator) checkCrosslinking(j *Job) {
	c := j.Film.Adhesive.Crosslinking
	const at = "film.adhesive.crosslinking"
	if c == nil || !v.sound(at) {
		return
	}
	if g := c.Vitrification; g != nil && g.TgCured <= g.TgUncured {
		v.conflict(at+".vitrification.tg_cured_K", words.Told("{cured} is not above the uncured film's {uncured}",
			"cured", degrees(g.TgCured), "uncured", degrees(g.TgUncured)), words.Told("Crosslinking raises the glass transition."))
	}
	pairs := slices.Clone(c.Schedule.Pairs)
	if len(pairs) > 0 && c.Autocatalysis != nil {
		v.conflict(at+".autocatalysis", words.Told("a schedule stands beside it"),
			words.Told("A schedule is read as a reaction of plain order: leave the schedule without pairs, or autocatalysis out."))
		return
	}
	slices.SortFunc(pairs, func(a, b SchedulePair) int { return cmpFloat(a.Temperature, b.Temperature) })
	for i := 1; i < len(pairs); i++ {
		cold, hot := pairs[i-1], pairs[i]
		if hot.Temperature-cold.Temperature < 0.1 || hot.Time >= cold.Time {
			v.conflict(at+".schedule.pairs", words.Told("{hot_time} at {hot} against {cold_time} at {cold}",
				"hot_time", lasting(hot.Time), "hot", degrees(hot.Temperature), "cold_time", lasting(cold.Time), "cold", degrees(cold.Temperature)),
				words.Told("Each pair needs a temperature of its own, and a hotter one a shorter time."))
			return
		}
	}
	law, _, err := c.Law()
	if err != nil {
		v.conflict(at+".schedule.pairs", whatOf(err), words.Told("Check the schedule against the data sheet."))
		return
	}
	// A schedule is read as the reaction alone, which a film at its glass transition no longer shows.
	if g := law.Vitrification; g != nil && len(pairs) > 0 && v.sound(at+".vitrification") {
		if tg, _ := g.GlassTransition(c.Schedule.Conversion); pairs[0].Temperature < tg {
			v.conflict(at+".schedule.pairs", words.Told("at {coldest} the film is glassy before it reaches the schedule's conversion: its glass transition is then {transition}",
				"coldest", degrees(pairs[0].Temperature), "transition", degrees(tg)),
				words.Told("With vitrification give pairs above the glass transition only."))
			return
		}
	}
	energy := v.fields[at+".activation_energy_J_per_mol"]
	if law.E1 < energy.Low || law.E1 > energy.High {
		v.conflict(at+".schedule.pairs", words.Told("the pairs mean an activation energy of {energy}",
			"energy", v.computed(law.E1, at+".activation_energy_J_per_mol")),
			words.Told("Cure reactions have {low} to {high}: check the times and temperatures.",
				"low", v.typed(energy.Low, energy.Path), "high", v.typed(energy.High, energy.Path)))
	}
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
