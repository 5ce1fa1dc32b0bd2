package job

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
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
	// fastest rate constant [1/s] that still means something: cure within hundredths of a second.
	fastest = 100
)

// checkFilm demands what the film's equations rest on.
func (v *validator) checkFilm(j *Job) {
	const at = "film.adhesive"
	a := &j.Film.Adhesive
	if v.sound(at+".packing_fraction", at+".closing_fraction") && a.Closing < a.Packing+leastGap {
		v.conflict(at+".closing_fraction", words.Told("closing fraction {closing} is not above packing fraction {packing}",
			"closing", words.Figure(fault.Number(a.Closing)), "packing", words.Figure(fault.Number(a.Packing))),
			words.Told("Particles touch before the paths between them close: give a "+
				"closing fraction at least 0.01 above the packing fraction."))
	}
	if v.sound(at+".packing_fraction", at+".solids_fraction", at+".polymer_density_kg_per_m3") {
		polymer := a.Solids / a.PolymerDensity
		phi := polymer / (polymer + (1-a.Solids)/waterDensity)
		if phi >= packed*a.Packing {
			v.conflict(at+".solids_fraction", words.Told("polymer volume fraction {share} when sprayed, packed from {packed} on",
				"share", words.Figure(fault.Number(phi)), "packed", words.Figure(fault.Number(packed*a.Packing))),
				words.Told("So thick a dispersion is packed before it is sprayed: lower the solids or raise the packing fraction."))
		}
		solids := j.Film.WetCoat * a.Solids
		if layer := solids / (a.PolymerDensity * a.Packing); v.sound("film.wet_coat_kg_per_m2",
			"targets.open_layer_m") &&
			j.Targets.OpenLayer >= layer {
			v.conflict("targets.open_layer_m", words.Told("{layer} m, but the whole packed film has {whole} m",
				"layer", words.Figure(fault.Number(j.Targets.OpenLayer)), "whole", words.Figure(fault.Number(layer))), words.Told("Give a thinner layer or a heavier coat."))
		}
	}
	if v.sound(at+".capillary_diffusivity_m2_per_s", at+".dry_diffusivity_at_25C_m2_per_s") &&
		a.DryDiffusion >= a.CapillaryDiffusion {
		v.conflict(at+".dry_diffusivity_at_25C_m2_per_s", words.Told("{dry} m²/s is not below the wet film's {wet} m²/s",
			"dry", words.Figure(fault.Number(a.DryDiffusion)), "wet", words.Figure(fault.Number(a.CapillaryDiffusion))),
			words.Told("Water moves more slowly through the dry film than through the wet one."))
	}
	v.checkSorption(a)
	if c := a.CoSolvent; c != nil && v.sound(at+".solids_fraction", at+".co_solvent") && a.Solids+c.Fraction > 1 {
		v.conflict(at+".co_solvent.fraction_of_wet_coat", words.Told("{co_solvent} beside {solids} of solids",
			"co_solvent", words.Figure(fault.Number(c.Fraction)), "solids", words.Figure(fault.Number(a.Solids))), words.Told("Solids and co-solvent together are no more than the whole coat."))
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
			v.conflict(at+".sorption.chi", words.Told("with {chi} the film in saturated air holds more than {water} kg/kg, where its paths are open",
				"chi", words.Figure(fault.Number(s.Chi)), "water", words.Figure(fault.Number(closing))),
				words.Told("Give more than {least}, or a lower closing fraction.",
					"least", words.Figure(fault.Number(least))))
		}
		return
	}
	full := s.Monolayer * s.GABC * s.GABK / ((1 - s.GABK) * (1 - s.GABK + s.GABC*s.GABK))
	if full >= closing {
		v.conflict(at+".sorption",
			words.Told("the dry film would hold {full} kg/kg in saturated air, but its paths are open from {open} on",
				"full", words.Figure(fault.Number(full)), "open", words.Figure(fault.Number(closing))), words.Told("Lower the monolayer or K, or the closing fraction."))
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
		v.conflict(at+".vitrification.tg_cured_K", words.Told("{cured} K is not above the uncured film's {uncured} K",
			"cured", words.Figure(fault.Number(g.TgCured)), "uncured", words.Figure(fault.Number(g.TgUncured))), words.Told("Crosslinking raises the glass transition."))
	}
	pairs := slices.Clone(c.Schedule.Pairs)
	if len(pairs) > 0 && c.Autocatalysis != nil {
		v.conflict(at+".autocatalysis", words.Told("a schedule stands beside it"),
			words.Told("A schedule is read as a reaction of plain order: leave the schedule without pairs, or set autocatalysis to null."))
		return
	}
	slices.SortFunc(pairs, func(a, b SchedulePair) int { return cmpFloat(a.Temperature, b.Temperature) })
	for i := 1; i < len(pairs); i++ {
		cold, hot := pairs[i-1], pairs[i]
		if hot.Temperature-cold.Temperature < 0.1 || hot.Time >= cold.Time {
			v.conflict(at+".schedule.pairs", words.Told("{hot_time} s at {hot} K against {cold_time} s at {cold} K",
				"hot_time", words.Figure(fault.Number(hot.Time)), "hot", words.Figure(fault.Number(hot.Temperature)), "cold_time", words.Figure(fault.Number(cold.Time)), "cold", words.Figure(fault.Number(cold.Temperature))),
				words.Told("Each pair needs a temperature of its own, and a hotter one a shorter time."))
			return
		}
	}
	law, _, err := c.Law()
	if err != nil {
		v.conflict(at+".schedule.pairs", err.Error(), words.Told("Check the schedule against the data sheet."))
		return
	}
	// A schedule is read as the reaction alone, which a film at its glass transition no longer shows.
	if g := law.Vitrification; g != nil && len(pairs) > 0 && v.sound(at+".vitrification") {
		if tg, _ := g.GlassTransition(c.Schedule.Conversion); pairs[0].Temperature < tg {
			v.conflict(at+".schedule.pairs", words.Told("at {coldest} K the film is glassy before it reaches the schedule's conversion: its glass transition is then {transition} K",
				"coldest", words.Figure(fault.Number(pairs[0].Temperature)), "transition", words.Figure(fault.Number(tg))),
				words.Told("With vitrification give pairs above the glass transition only."))
			return
		}
	}
	energy := v.fields[at+".activation_energy_J_per_mol"]
	if law.E1 < energy.Low || law.E1 > energy.High {
		v.conflict(at+".schedule.pairs", words.Told("the pairs mean an activation energy of {energy} J/mol",
			"energy", words.Figure(fault.Number(law.E1))),
			words.Told("Cure reactions have {low} to {high} J/mol: check the times and temperatures.",
				"low", words.Figure(fault.Number(energy.Low)), "high", words.Figure(fault.Number(energy.High))))
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
