package sim

import (
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

func of(v float64) *float64 { return &v }

// acrylic is the adhesive of the reference jobs.
func acrylic() job.Adhesive {
	return job.Adhesive{Solids: 0.5, PolymerDensity: 1080, SolidsHeatCapacity: 1500, Conductivity: 0.3, Emissivity: 0.95,
		ParticleDiameter: 200e-9, Packing: 0.64, Closing: 0.74, CapillaryDiffusion: 1e-9, DryDiffusion: 5e-12,
		DiffusionActivation: 40e3, Sorption: job.Sorption{Monolayer: 0.015, GABC: 8, GABK: 0.85},
		FilmForming: 275.15, CrackThickness: 400e-6,
		Crosslinking: &job.Crosslinking{Order: 1, ActivationEnergy: 76e3, HinderingWater: of(0.1),
			Schedule: job.Schedule{Conversion: 0.95, Pairs: []job.SchedulePair{{Temperature: 393.15, Time: 300}}}}}
}

// base is the part of the reference jobs that both share.
func base() job.Job {
	return job.Job{Version: 1, Film: job.Film{WetCoat: 0.150, Adhesive: acrylic()},
		Pile: &job.Pile{AppliedAfter: 300, Length: 0.8e-3, Porosity: 0.93, Tortuosity: 1.1, Conductivity: 0.035,
			FibreDensity: 1140, FibreHeatCapacity: 1600, Emissivity: 0.95},
		Workshop: job.Workshop{Pressure: 101325,
			Air:      []job.AirPoint{{Temperature: 293.15, Humidity: job.Humidity{RelativeHumidity: of(0.5)}}},
			Transfer: job.Transfer{Kind: job.Given, Coefficient: 3.5}},
		Targets: job.Targets{TouchWater: 0.03, DryWater: 0.02, TackConversion: 0.2, FullConversion: 0.95,
			HandlingTemperature: 313.15, OpenLayer: 5e-6, SkinNumber: 10, DewRunOff: 0.03, NearSaturation: 0.9},
		Numerics: job.Numerics{FilmCells: 32, PartCells: 8, RelativeTolerance: 1e-5, EnhancementFactor: true, StepBudget: 20000}}
}

// roomReference: one 3 mm ABS part in still air at 20 degC, 50 % RH.
func roomReference() job.Job {
	j := base()
	j.Part = job.Part{Thickness: 3e-3, Density: 1040, HeatCapacity: 1300, Conductivity: 0.25, BackEmissivity: 0.9,
		Back: job.BackExposed, Orientation: job.Vertical, Length: 0.2, LimitTemperature: 343.15}
	j.Room = &job.Room{Deadline: 50400, Horizon: 14 * 86400}
	return j
}

// tunnelReference: 1.5 mm steel, 5 min at 120 degC, then 5 min at 140 degC, 20 g/kg.
func tunnelReference() job.Job {
	j := base()
	j.Part = job.Part{Thickness: 1.5e-3, Density: 7800, HeatCapacity: 450, Conductivity: 50, BackEmissivity: 0.9,
		Back: job.BackExposed, Orientation: job.Vertical, Length: 0.2, LimitTemperature: 473.15}
	zone := func(name string, T float64) job.Zone {
		return job.Zone{Name: name, Kind: job.Heated, Length: 5, AirTemperature: T, Humidity: job.Humidity{HumidityRatio: of(0.02)},
			Transfer: job.Transfer{Kind: job.Given, Coefficient: 35}}
	}
	j.Tunnel = &job.Tunnel{EnteredAfter: 300, LineSpeed: 1. / 60, Zones: []job.Zone{zone("first", 393.15), zone("second", 413.15)},
		Deadline: 3600, Horizon: 86400}
	return j
}

// times collects the marks of a route.
func times(r *result.Route) map[result.MarkName]float64 {
	m := map[result.MarkName]float64{}
	for _, k := range r.Marks {
		if k.Time != nil {
			m[k.Name] = *k.Time
		}
	}
	return m
}

func TestReferenceJobs(t *testing.T) {
	for name, j := range map[string]job.Job{"room": roomReference(), "tunnel": tunnelReference()} {
		res, err := Run(&j)
		if err != nil {
			t.Fatal(err)
		}
		r := &res.Routes[0]
		t.Log(name, times(r), r.Status)
		t.Log(r.Balances.Water.Relative, r.Balances.Heat.Relative, r.Risks, r.Warnings, r.Answer)
		hot := 0.0
		for _, T := range r.Curves.PartBack {
			hot = max(hot, T)
		}
		t.Log("peak", hot-273.15, "points", len(r.Curves.Time))
	}
}
