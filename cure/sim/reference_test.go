package sim

import (
	"math"
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

func of(v float64) *float64 { return &v }

// acrylic is the adhesive of the reference jobs.
func acrylic() job.Adhesive {
	return job.Adhesive{Solids: 0.5, PolymerDensity: 1080, SolidsHeatCapacity: 1500, Conductivity: 0.3, Emissivity: 0.9,
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
			FibreDensity: 1140, FibreHeatCapacity: 1600, Emissivity: 0.9},
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
	j.Part = job.Part{Thickness: 1.5e-3, Density: 7850, HeatCapacity: 460, Conductivity: 50, BackEmissivity: 0.8,
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

// only runs a job with one route.
func only(t *testing.T, j job.Job) *result.Route {
	t.Helper()
	res, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	if r := &res.Routes[0]; r.Status.Complete {
		return r
	}
	t.Fatal(res.Routes[0].Warnings)
	return nil
}

// bare takes away what the reference figures were computed without: the pile's heat capacity and the enhancement factor.
func bare(j job.Job) job.Job {
	pile := *j.Pile
	pile.FibreHeatCapacity = 0
	j.Pile = &pile
	j.Numerics.EnhancementFactor = false
	return j
}

// Two independent solutions of the same equations that agree within 0.4 % gave these figures, rounded as printed here; the
// project holds itself to 2 %. They were computed without the pile's heat capacity and without the enhancement factor.
// The figures leave open the steel (7850 kg/m3, 460 J/(kg K) taken) and the emissivities (film and pile 0.9, ABS 0.9,
// oxidised steel 0.8 taken); each moves the marks by up to 2 %. With heat capacity and enhancement factor no mark
// moves by more than 0.8 %, which the log shows.
func TestReferenceJobs(t *testing.T) {
	const minute, hour = 60.0, 3600.0
	for _, c := range []struct {
		name  string
		job   job.Job
		entry float64
		want  map[result.MarkName]float64
	}{
		{"room", roomReference(), 0, map[result.MarkName]float64{result.Open: 5.4 * minute, result.Touch: 68 * minute,
			result.DryThrough: 74 * minute, result.TackFree: 19.2 * hour}},
		{"tunnel", tunnelReference(), 300, map[result.MarkName]float64{result.Touch: 78, result.DryThrough: 136, result.Cured: 435}},
	} {
		r, full := only(t, bare(c.job)), only(t, c.job)
		got, complete := times(r), times(full)
		for name, want := range c.want {
			ours := got[name] - c.entry
			t.Logf("%-6s %-11s %9.1f s, reference %9.1f (%+.2f %%); with pile capacity and enhancement factor %9.1f (%+.2f %%)", c.name,
				name, ours, want, 100*(ours/want-1), complete[name]-c.entry, 100*((complete[name]-c.entry)/want-1))
			if math.Abs(ours/want-1) > 0.02 {
				t.Errorf("%s: %s at %.4g s, reference %.4g", c.name, name, ours, want)
			}
		}
		if c.name == "room" {
			if days := got[result.Cured] / 86400; days < 9.8 || days > 10.6 {
				t.Errorf("cured after %.3g days, reference ten", days)
			}
			continue
		}
		// The peak is printed to 0.1 K and hangs on the steel's heat capacity: 0.15 K.
		if peak := slices.Max(r.Curves.PartBack) - 273.15; math.Abs(peak-139.4) > 0.15 {
			t.Errorf("steel peaks at %.2f degC, reference 139.4", peak)
		}
	}
}

// Common practice, no source: what a shop sees with 150 g/m2 of a room-curing adhesive at 20 degC, 50 % RH, and with the
// same film on 1.5 mm steel in a 120/140 degC tunnel.
func TestPlausibility(t *testing.T) {
	const minute, hour, day = 60.0, 3600.0, 86400.0
	room, tunnel := times(only(t, roomReference())), times(only(t, tunnelReference()))
	for _, c := range []struct {
		what      string
		got       float64
		low, high float64
	}{
		{"room, open", room[result.Open], 3 * minute, 30 * minute},
		{"room, touch", room[result.Touch], 1 * hour, 3 * hour},
		{"room, dry through", room[result.DryThrough], 1 * hour, 4 * hour},
		{"room, ready", room[result.Ready], 8 * hour, 24 * hour},
		{"room, cured", room[result.Cured], 2 * day, 14 * day},
		{"tunnel, dry through", tunnel[result.DryThrough] - 300, 1 * minute, 4 * minute},
		{"tunnel, cured", tunnel[result.Cured] - 300, 2 * minute, 15 * minute},
	} {
		if !(c.got >= c.low && c.got <= c.high) {
			t.Errorf("%s: %.4g s, practice %.4g to %.4g", c.what, c.got, c.low, c.high)
		}
	}
}
