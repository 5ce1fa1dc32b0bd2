package job

import (
	"fmt"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
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
		v.conflict(at+".closing_fraction", fmt.Sprintf("closing fraction %s is not above packing fraction %s",
			fault.Number(a.Closing), fault.Number(a.Packing)),
			"Particles touch before the paths between them close: give a "+
				"closing fraction at least 0.01 above the packing fraction.")
	}
	if v.sound(at+".packing_fraction", at+".solids_fraction", at+".polymer_density_kg_per_m3") {
		polymer := a.Solids / a.PolymerDensity
		phi := polymer / (polymer + (1-a.Solids)/waterDensity)
		if phi >= packed*a.Packing {
			v.conflict(at+".solids_fraction", fmt.Sprintf("polymer volume fraction %s when sprayed, packed from %s on",
				fault.Number(phi), fault.Number(packed*a.Packing)),
				"So thick a dispersion is packed before it is sprayed: lower the solids or raise the packing fraction.")
		}
		solids := j.Film.WetCoat * a.Solids
		if layer := solids / (a.PolymerDensity * a.Packing); v.sound("film.wet_coat_kg_per_m2",
			"targets.open_layer_m") &&
			j.Targets.OpenLayer >= layer {
			v.conflict("targets.open_layer_m", fmt.Sprintf("%s m, but the whole packed film has %s m",
				fault.Number(j.Targets.OpenLayer), fault.Number(layer)), "Give a thinner layer or a heavier coat.")
		}
	}
	if v.sound(at+".capillary_diffusivity_m2_per_s", at+".dry_diffusivity_at_25C_m2_per_s") &&
		a.DryDiffusion >= a.CapillaryDiffusion {
		v.conflict(at+".dry_diffusivity_at_25C_m2_per_s", fmt.Sprintf("%s m²/s is not below the wet film's %s m²/s",
			fault.Number(a.DryDiffusion), fault.Number(a.CapillaryDiffusion)),
			"Water moves more slowly through the dry film than through the wet one.")
	}
	v.checkSorption(a)
	if c := a.CoSolvent; c != nil && v.sound(at+".solids_fraction", at+".co_solvent") && a.Solids+c.Fraction > 1 {
		v.conflict(at+".co_solvent.fraction_of_wet_coat", fmt.Sprintf("%s beside %s of solids", fault.Number(c.Fraction),
			fault.Number(a.Solids)), "Solids and co-solvent together are no more than the whole coat.")
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
			v.conflict(at+".sorption.chi", fmt.Sprintf("with %s the film in saturated air holds more than %s kg/kg, where its "+
				"paths are open", fault.Number(s.Chi), fault.Number(closing)),
				fmt.Sprintf("Give more than %s, or a lower closing fraction.", fault.Number(least)))
		}
		return
	}
	full := s.Monolayer * s.GABC * s.GABK / ((1 - s.GABK) * (1 - s.GABK + s.GABC*s.GABK))
	if full >= closing {
		v.conflict(at+".sorption",
			fmt.Sprintf("the dry film would hold %s kg/kg in saturated air, but its paths are open from %s on",
				fault.Number(full), fault.Number(closing)), "Lower the monolayer or K, or the closing fraction.")
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
		v.conflict(at+".vitrification.tg_cured_K", fmt.Sprintf("%s K is not above the uncured film's %s K",
			fault.Number(g.TgCured), fault.Number(g.TgUncured)), "Crosslinking raises the glass transition.")
	}
	pairs := slices.Clone(c.Schedule.Pairs)
	if len(pairs) > 0 && c.Autocatalysis != nil {
		v.conflict(at+".autocatalysis", "a schedule stands beside it",
			"A schedule is read as a reaction of plain order: leave the schedule without pairs, or set autocatalysis to null.")
		return
	}
	slices.SortFunc(pairs, func(a, b SchedulePair) int { return cmpFloat(a.Temperature, b.Temperature) })
	for i := 1; i < len(pairs); i++ {
		cold, hot := pairs[i-1], pairs[i]
		if hot.Temperature-cold.Temperature < 0.1 || hot.Time >= cold.Time {
			v.conflict(at+".schedule.pairs", fmt.Sprintf("%s s at %s K against %s s at %s K", fault.Number(hot.Time),
				fault.Number(hot.Temperature), fault.Number(cold.Time), fault.Number(cold.Temperature)),
				"Each pair needs a temperature of its own, and a hotter one a shorter time.")
			return
		}
	}
	law, _, err := c.Law()
	if err != nil {
		v.conflict(at+".schedule.pairs", err.Error(), "Check the schedule against the data sheet.")
		return
	}
	// A schedule is read as the reaction alone, which a film at its glass transition no longer shows.
	if g := law.Vitrification; g != nil && len(pairs) > 0 && v.sound(at+".vitrification") {
		if tg, _ := g.GlassTransition(c.Schedule.Conversion); pairs[0].Temperature < tg {
			v.conflict(at+".schedule.pairs", fmt.Sprintf("at %s K the film is glassy before it reaches the schedule's conversion: its "+
				"glass transition is then %s K", fault.Number(pairs[0].Temperature), fault.Number(tg)),
				"With vitrification give pairs above the glass transition only.")
			return
		}
	}
	energy := v.fields[at+".activation_energy_J_per_mol"]
	if law.E1 < energy.Low || law.E1 > energy.High {
		v.conflict(at+".schedule.pairs", fmt.Sprintf("the pairs mean an activation energy of %s J/mol",
			fault.Number(law.E1)),
			fmt.Sprintf("Cure reactions have %s to %s J/mol: check the times and temperatures.",
				fault.Number(energy.Low),
				fault.Number(energy.High)))
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
