package validate

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// trade is what shops and handbooks of the trade say of coats, rooms and ovens, mostly as ranges.
func trade() cases {
	return cases{
		"T03": func(e *entry) {
			solids, rho := e.one("solids_mass_fraction"), e.one("polymer_density_kg_m3")
			var dry, water []float64
			for _, wet := range e.in("wet_g_m2") {
				coat := film.Coat{Solids: wet * 1e-3 * solids, Diffusion: film.Diffusion{PolymerDensity: rho}}
				grid := film.NewGrid(coat.Solids, 8)
				state := film.NewState(&coat, &grid, &film.Part{Cells: 1}, 1/solids-1, 293.15)
				dry = append(dry, coat.Thickness(0)*1e6)
				water = append(water, state.Mass*1e3)
			}
			e.check("dry_um", dry...)
			e.check("water_g_m2", water...)
		},
		"T16": func(e *entry) {
			e.check("cure_min", curedIn(e, "acrylic-methylol", e.kelvin("cure_C"), e.one("conversion"))/60)
		},
		"T17": overnight,
		"T22": func(e *entry) {
			j := job.Default()
			p := j.Workshop.Air[0]
			s, err := p.Humidity.State(p.Temperature, j.Workshop.Pressure, true)
			s = e.state(s, err)
			e.check("RH_pct", 100*s.RelativeHumidity())
			e.check("T_C", p.Temperature-zero)
		},
	}
}

// overnight is one flocked part of the default job, left in the room.
func overnight(e *entry) {
	j := job.Default()
	r, err := sim.Run(&j)
	if err != nil {
		e.fail(err.Error())
		return
	}
	at := map[result.MarkName]float64{}
	for _, m := range r.Routes[0].Marks {
		if m.Time != nil {
			at[m.Name] = *m.Time
		}
	}
	e.check("touch_h", at[result.Touch]/3600)
	e.check("handle_h", at[result.Ready]/3600)
	e.check("full_days", at[result.Cured]/86400)
}
