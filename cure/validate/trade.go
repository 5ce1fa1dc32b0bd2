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
		"T17": overnight, "TRD-OPEN": overnight, "TRD-STEEL": steelInTunnel,
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

// marks runs a job and returns the times of its first route's marks [s].
func marks(e *entry, j *job.Job) map[result.MarkName]float64 {
	at := map[result.MarkName]float64{}
	r, err := sim.Run(j)
	if err != nil {
		e.fail(err.Error())
		return at
	}
	for _, m := range r.Routes[0].Marks {
		if m.Time != nil {
			at[m.Name] = *m.Time
		}
	}
	return at
}

// overnight is one flocked part of the default job, left in the room.
func overnight(e *entry) {
	j := job.Default()
	at := marks(e, &j)
	if e.ID == "TRD-OPEN" {
		e.check("open_min", at[result.Open]/60)
		return
	}
	e.check("touch_h", at[result.Touch]/3600)
	e.check("handle_h", at[result.Ready]/3600)
	e.check("full_days", at[result.Cured]/86400)
}

// steelInTunnel is the default job's film on steel sheet in a tunnel of two zones, times from the entry.
func steelInTunnel(e *entry) {
	j := job.Default()
	record := part(e, "steel")
	j.Part.Density, j.Part.HeatCapacity, j.Part.Conductivity = record.Density, record.HeatCapacity, record.Conductivity
	j.Part.BackEmissivity, j.Part.LimitTemperature, j.Part.Thickness = record.BackEmissivity, record.LimitTemperature, e.one("thickness_m")
	j.Room, j.Tunnel = nil, job.NewTunnel()
	j.Tunnel.LineSpeed, j.Tunnel.Zones = 1.0/60, nil
	w := e.one("W")
	for i, T := range e.kelvins("T_C") {
		zone := job.NewZone()
		zone.AirTemperature, zone.Length = T, e.in("minutes")[i]
		zone.Humidity, zone.Transfer = job.Humidity{HumidityRatio: &w}, job.Transfer{Kind: job.Given, Coefficient: e.one("h_W_per_m2K")}
		j.Tunnel.Zones = append(j.Tunnel.Zones, zone)
	}
	at := marks(e, &j)
	e.check("dry_min", (at[result.DryThrough]-j.Tunnel.EnteredAfter)/60)
	e.check("cured_min", (at[result.Cured]-j.Tunnel.EnteredAfter)/60)
}
