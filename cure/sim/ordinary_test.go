package sim

import (
	"sync"

	"pgregory.net/rapid"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/material"
	"github.com/drywright/drywright/cure/result"
)

// demo and records are made once: making them takes as long as a run.
var (
	demo    = sync.OnceValue(job.Demo)
	records = sync.OnceValue(material.Adhesives)
)

// ordinary draws a job as workshops have them: a record for the adhesive, sheet of metal, plastic or board, a pile or none, one
// route with one state of air. What it draws shrinks to thin coats on thin aluminium in the room.
func ordinary(t *rapid.T, kinds ...result.Kind) job.Job {
	j := job.Clone(demo())
	adhesives := records()
	j.Film.Adhesive = adhesives[rapid.IntRange(0, len(adhesives)-1).Draw(t, "adhesive")].Adhesive
	j.Film.WetCoat = rapid.Float64Range(0.06, 0.3).Draw(t, "wet coat")
	p := &j.Part
	p.Thickness = rapid.Float64Range(0.5e-3, 8e-3).Draw(t, "part")
	switch rapid.IntRange(0, 2).Draw(t, "material") {
	case 1:
		p.Density, p.HeatCapacity, p.Conductivity, p.BackEmissivity = 1050, 1400, 0.2, 0.9 // plastic
	case 2:
		p.Density, p.HeatCapacity, p.Conductivity, p.BackEmissivity = 700, 1600, 0.17, 0.9 // board
	}
	p.Back = rapid.SampledFrom([]job.Back{job.BackExposed, job.BackInsulated}).Draw(t, "back")
	if rapid.Bool().Draw(t, "bare") {
		j.Pile = nil
	}
	workshop := &j.Workshop
	workshop.Air = workshop.Air[:1]
	workshop.Air[0].Temperature = rapid.Float64Range(283, 308).Draw(t, "workshop")
	workshop.Air[0].Humidity = job.Humidity{RelativeHumidity: of(rapid.Float64Range(0.15, 0.85).Draw(t, "humidity"))}
	workshop.Transfer = law(t)
	kind := rapid.SampledFrom(kinds).Draw(t, "route")
	hot := rapid.Float64Range(323, 403).Draw(t, "oven")
	moist := job.Humidity{HumidityRatio: of(rapid.Float64Range(0.005, 0.06).Draw(t, "oven humidity"))}
	if kind == result.Room {
		j.StaticOven, j.Tunnel = nil, nil
	}
	if kind == result.StaticOven {
		j.Room, j.Tunnel = nil, nil
		j.StaticOven.SetPoint, j.StaticOven.Humidity, j.StaticOven.Transfer = hot, moist, law(t)
	}
	if kind == result.Tunnel {
		j.Room, j.StaticOven = nil, nil
		z := &j.Tunnel.Zones[0]
		z.AirTemperature, z.Humidity, z.Transfer = hot, moist, law(t)
		j.Tunnel.Zones[1].AirTemperature = hot + 20
	}
	j.Tariffs, j.Costs = nil, nil
	return j
}

// law draws a law of transfer that moves air.
func law(t *rapid.T) job.Transfer {
	l := demo().Workshop.Transfer
	l.Kind = rapid.SampledFrom([]job.TransferKind{job.Given, job.ParallelFlow, job.Combined}).Draw(t, "law")
	l.Coefficient = rapid.Float64Range(6, 40).Draw(t, "coefficient")
	l.Velocity = rapid.Float64Range(0.2, 4).Draw(t, "air speed")
	return l
}
