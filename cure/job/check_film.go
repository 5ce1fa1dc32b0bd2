package job

import (
	"fmt"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/kinetics"
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
	if v.sound(at+".sorption", at+".polymer_density_kg_per_m3", at+".closing_fraction") {
		s := a.Sorption
		full := s.Monolayer * s.GABC * s.GABK / ((1 - s.GABK) * (1 - s.GABK + s.GABC*s.GABK))
		closing := waterDensity / a.PolymerDensity * (1/a.Closing - 1)
		if full >= closing {
			v.conflict(at+".sorption",
				fmt.Sprintf("the dry film would hold %s kg/kg in saturated air, but its paths are open from %s on",
					fault.Number(full), fault.Number(closing)), "Lower the monolayer or K, or the closing fraction.")
		}
	}
}

// checkCrosslinking demands a schedule that one reaction can follow.
func (v *validator) checkCrosslinking(j *Job) {
	c := j.Film.Adhesive.Crosslinking
	const at = "film.adhesive.crosslinking"
	if c == nil || !v.sound(at) {
		return
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
	energy := v.fields[at+".activation_energy_J_per_mol"]
	if law.E1 < energy.Low || law.E1 > energy.High {
		v.conflict(at+".schedule.pairs", fmt.Sprintf("the pairs mean an activation energy of %s J/mol",
			fault.Number(law.E1)),
			fmt.Sprintf("Cure reactions have %s to %s J/mol: check the times and temperatures.",
				fault.Number(energy.Low),
				fault.Number(energy.High)))
	}
}

// checkHottest demands that film and cure stay meaningful at the highest temperature that the job can reach.
func (v *validator) checkHottest(j *Job) {
	if !v.sound("workshop", "static_oven", "tunnel", "part.start_temperature_K") {
		return
	}
	t := hottest(j)
	const at = "film.adhesive"
	a := &j.Film.Adhesive
	if v.sound(at+".capillary_diffusivity_m2_per_s", at+".particle_diameter_m") {
		particles := boltzmann * t / (3 * math.Pi * air.WaterViscosity(t) * a.ParticleDiameter)
		if particles >= a.CapillaryDiffusion {
			v.conflict(at+".capillary_diffusivity_m2_per_s",
				fmt.Sprintf("%s m²/s is not above the particles' own %s m²/s at %s K",
					fault.Number(a.CapillaryDiffusion), fault.Number(particles), fault.Number(t)),
				"Water moves faster than the particles do: raise this diffusivity or the particle diameter.")
		}
	}
	if c := a.Crosslinking; c != nil && v.sound(at+".crosslinking") {
		if law, _, err := c.Law(); err == nil {
			v.checkSpeed(law, t, *c)
		}
	}
}

func (v *validator) checkSpeed(law kinetics.Law, t float64, c Crosslinking) {
	const at = "film.adhesive.crosslinking."
	k1, k2 := law.Constants(t)
	first := at + "schedule.pairs"
	if len(c.Schedule.Pairs) == 0 {
		first = at + "frequency_factor_per_s"
	}
	for _, k := range []struct {
		path string
		rate float64
	}{{first, k1}, {at + "autocatalysis.frequency_factor_per_s", k2}} {
		if !(k.rate <= fastest) {
			v.conflict(k.path, fmt.Sprintf("a rate constant of %s per second at %s K", fault.Number(k.rate),
				fault.Number(t)),
				"The film would cure in an instant: check frequency factor, activation energy and schedule.")
		}
	}
}

// hottest is the highest temperature of air, walls and part [K].
func hottest(j *Job) float64 {
	t := 0.0
	see := func(values ...*float64) {
		for _, v := range values {
			if v != nil {
				t = max(t, *v)
			}
		}
	}
	see(j.Part.StartTemperature, j.Workshop.WallTemperature)
	for i := range j.Workshop.Air {
		see(&j.Workshop.Air[i].Temperature)
	}
	if o := j.StaticOven; o != nil {
		see(&o.SetPoint, o.Chamber.AirAtLoading, o.Chamber.WallAtLoading)
	}
	if o := j.Tunnel; o != nil {
		for i := range o.Zones {
			see(&o.Zones[i].AirTemperature, o.Zones[i].WallTemperature)
		}
	}
	return t
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
