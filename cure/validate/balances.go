package validate

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
	"github.com/drywright/drywright/cure/route"
)

// balances are the accounts of air, water and heat in ovens and rooms, by the balances of the routes.
func balances() cases {
	return cases{"OVN-1": exhaustedOven, "OVN-3": heatSplit, "OVN-4": batchOven, "OVN-5": recirculatingDryer, "OVN-6": airedRoom,
		"CRP-11": continuousDryer}
}

// passed is the balance of a tunnel of one zone: temperature [K], exhaust [m3/s at the zone's state], what evaporates in it
// [kg/s], with workshop air of the temperature and humidity ratio given.
func passed(e *entry, T, exhaust, evaporated, shopT, shopW float64) route.ZoneFlow {
	j := job.Default()
	j.Numerics.EnhancementFactor = false
	j.Workshop.Air = []job.AirPoint{{Temperature: shopT, Humidity: job.Humidity{HumidityRatio: &shopW}}}
	zone := job.NewZone()
	zone.AirTemperature, zone.Air = T, &job.ZoneAir{Exhaust: exhaust}
	j.Tunnel = &job.Tunnel{Zones: []job.Zone{zone}, LineSpeed: 1}
	var flow route.ZoneFlow
	_, _, err := num.FixedPoint(func(w, out []float64) error {
		flows, err := route.ZoneFlows(&j, w, []float64{evaporated})
		if err != nil {
			return err
		}
		flow, out[0] = flows[0], flows[0].Humidity
		return nil
	}, []float64{shopW}, 1e-10, 0, 0.01, 60)
	if err != nil {
		e.fail(err.Error())
	}
	return flow
}

// exhaustedOven: what evaporates in an oven leaves with its exhaust; workshop air comes in for it.
func exhaustedOven(e *entry) {
	T, shop := e.kelvin("oven_T_C"), e.kelvin("makeup_T_C")
	water := e.one("evaporation_kg_per_h") / 3600
	f := passed(e, T, e.one("exhaust_m3_per_h_at_oven_T")/3600, water, shop, e.one("makeup_W"))
	inside := e.state(air.FromHumidityRatio(T, e.pressure(), f.Humidity, false))
	outside := e.state(air.FromHumidityRatio(shop, e.pressure(), e.one("makeup_W"), false))
	e.check("W_oven", f.Humidity)
	e.check("dry_air_kg_per_h", f.Fresh*3600)
	e.check("T_dp_C", inside.DewPoint()-zero)
	e.check("RH", inside.RelativeHumidity())
	e.check("T_wb_C", inside.WetBulb()-zero)
	e.check("makeup_m3_per_h", f.Fresh*3600*outside.SpecificVolume())
	e.check("heat_W", f.Fresh*(inside.Enthalpy()-outside.Enthalpy())-water*air.LiquidEnthalpy(e.kelvin("liquid_in_T_C")))
}

// heatSplit: what evaporation, parts and air take.
func heatSplit(e *entry) {
	T, cold := e.kelvin("oven_T_C"), e.kelvin("water_in_C")
	e.check("evaporation_W", e.one("evaporation_kg_per_h")/3600*(air.VapourEnthalpy(T)-air.LiquidEnthalpy(cold)))
	// A kilogram of steel on a square metre.
	const rho, thickness = 7850.0, 1 / 7850.0
	part := film.Part{Thickness: thickness, Density: rho, HeatCapacity: e.one("c"), Conductivity: 50, Cells: 2}
	at := func(key string) float64 {
		s := film.State{Part: []float64{e.kelvin(key), e.kelvin(key)}}
		return s.Heat(&part)
	}
	e.check("parts_W", e.one("steel_kg_per_h")/3600*(at("part_T_out_C")-at("part_T_in_C")))
	const humidity, flow = 0.0073, 207.79 // of the row's make-up air, as in OVN-1; flow in the output's name
	enthalpy := func(T float64) float64 {
		return e.state(air.FromHumidityRatio(T, atmosphere, humidity, false)).Enthalpy()
	}
	e.check("air_heating_W_at_207.79_kg_per_h", flow/3600*(enthalpy(T)-enthalpy(cold)))
}

// followed integrates the own states of surroundings from which the parts draw nothing but to which they give vapour
// [kg/(m2 s)], up to the time end, or to where the humidity passes stop, and returns the time and the humidity. The
// humidity's place among the states is given.
func followed(e *entry, around film.Surroundings, own []float64, place int, vapour, end, stop float64) (at, humidity float64) {
	y := append([]float64(nil), own...)
	rates := func(t float64, y, f []float64) { around.Rates(t, y, film.Drawn{Vapour: vapour}, f) }
	system := dense.New(len(y), rates, func(t float64, y []float64, j *mat.Dense) {
		const step = 1e-7
		base, moved := make([]float64, len(y)), make([]float64, len(y))
		rates(t, y, base)
		for c := range y {
			kept, by := y[c], step*(1+math.Abs(y[c]))
			y[c] += by
			rates(t, y, moved)
			y[c] = kept
			for r := range y {
				j.Set(r, c, (moved[r]-base[r])/by)
			}
		}
	})
	tolerance := make([]float64, len(y))
	for i := range tolerance {
		tolerance[i] = 1e-8 * around.Scale(i)
	}
	solver, err := ode.NewSolver(system, ode.Options{RelTol: 1e-8, AbsTol: tolerance})
	if err != nil {
		e.fail(err.Error())
		return math.NaN(), math.NaN()
	}
	passing := []ode.Event{{Dir: ode.Rising, Terminal: true, G: func(_ float64, y []float64) float64 { return y[place] - stop }}}
	reached, err := solver.Integrate(0, end, y, passing, nil)
	if err != nil {
		e.fail(err.Error())
		return math.NaN(), math.NaN()
	}
	return reached.T, y[place]
}

// chamberHumidity is the place of the humidity among the states of an oven's chamber: air, wall, humidity.
const chamberHumidity = 2

// batchOven: the humidity of a well-mixed oven into which water evaporates evenly.
func batchOven(e *entry) {
	T := 393.15
	in := e.state(air.FromHumidityRatio(T, atmosphere, e.one("W_in"), false))
	oven := &route.Chamber{Air: in, Balanced: true, CoatedArea: 1, HeaterPower: 1e4, Band: 10, DryAir: e.one("dry_air_in_oven_kg"),
		AirCapacity: 2e3, MakeUp: e.one("exhaust_dry_air_kg_per_h") / 3600, MakeUpAir: in, WallCapacity: 1e5, Room: 293.15}
	vapour := e.one("evaporation_kg_per_h") / 3600
	after := func(time, stop float64) (float64, float64) {
		return followed(e, oven, oven.Start(T, T), chamberHumidity, vapour, time, stop)
	}
	e.check("W", each(e.in("t_s"), func(t float64) float64 { _, w := after(t, 1); return w })...)
	_, steady := after(1e5, 1)
	e.check("W_steady", steady)
	tau, _ := after(1e5, e.one("W_0")+(steady-e.one("W_0"))*(1-1/math.E))
	e.check("tau_s", tau)
}

// recirculatingDryer: air over trays, some of it let out at the humidity with which it comes to them.
func recirculatingDryer(e *entry) {
	T, p, water := e.kelvin("T_C"), atmosphere, e.one("evaporation_kg_per_s")
	in := e.state(air.FromHumidityRatio(T, p, e.one("Y_oven_in"), false))
	over := e.one("u_m_per_s") * e.one("free_area_m2") / in.SpecificVolume()
	e.check("Y_out", e.one("Y_oven_in")+water/over)
	// The exhaust that holds the humidity.
	exhaust := root(1e-3, 10, func(v float64) float64 {
		return passed(e, T, v, water, 293.15, e.one("Y_fresh")).Humidity - e.one("Y_oven_in")
	})
	fresh := passed(e, T, exhaust, water, 293.15, e.one("Y_fresh")).Fresh
	e.check("fresh_air_kg_per_s", fresh)
	e.check("recycle_percent", 100*over/(over+fresh))
}

// spaceHumidity is the place of the humidity among the states of a room.
const spaceHumidity = 0

// airedRoom: a room of drying parts at rest with its air changes.
func airedRoom(e *entry) {
	T, w := e.kelvin("T_C"), e.one("W_in")
	j := job.Default()
	j.Numerics.EnhancementFactor = false
	point := job.AirPoint{Temperature: T, Humidity: job.Humidity{HumidityRatio: &w}}
	j.Workshop.Air = []job.AirPoint{point}
	j.Workshop.Space = &job.Space{Volume: e.one("room_m3"), CoatedArea: 1, AirChanges: e.one("ACH_per_h") / 3600,
		Outside: []job.AirPoint{point}, WallExchange: 100, WallCapacity: 1e6, WallLoss: 10}
	plans, err := route.Plans(&j)
	if err != nil {
		e.fail(err.Error())
		return
	}
	stage := plans[0].Stages[0]
	room := stage.Exposure.Around
	_, steady := followed(e, room, stage.Own, spaceHumidity, e.one("evaporation_kg_per_h")/3600, 1e6, 1)
	s := e.state(air.FromHumidityRatio(T, j.Workshop.Pressure, steady, false))
	e.check("W_room", steady)
	e.check("RH", s.RelativeHumidity())
	e.check("T_dp_C", s.DewPoint()-zero)
	// What the air changes carry off is linear in the humidity: followed up to saturation, where fog begins, from below.
	carried := func(at float64) float64 {
		own, f := append([]float64(nil), stage.Own...), make([]float64, len(stage.Own))
		own[spaceHumidity] = at
		room.Rates(0, own, film.Drawn{}, f)
		quiet := f[spaceHumidity]
		room.Rates(0, own, film.Drawn{Vapour: 1}, f)
		return -quiet / (f[spaceHumidity] - quiet) // kg/s that hold it there
	}
	full := saturatedRatio(T, j.Workshop.Pressure, false)
	slope := carried(w+0.001) / 0.001
	e.check("max_evaporation_kg_per_h_at_saturation", slope*(full-w)*3600)
}

// continuousDryer: hot air gives what damp solids and their water take up.
func continuousDryer(e *entry) {
	const perHour = 1.0 / 3600
	solids := e.one("dry_solid_kg_h") * perHour
	coat := film.Coat{Solids: 1, Diffusion: fineParticles(), HeatCapacity: e.one("cp_solid"), Isotherm: softIsotherm()}
	grid := film.NewGrid(coat.Solids, 8)
	none := film.Part{Cells: 1}
	enthalpy := func(x, T float64) float64 { s := film.NewState(&coat, &grid, &none, x, T); return s.Enthalpy }
	taken := enthalpy(e.one("X_out"), e.kelvin("T_solid_out_C")) - enthalpy(e.one("X_in"), e.kelvin("T_solid_in_C"))
	in := e.state(air.FromHumidityRatio(e.kelvin("T_air_in_C"), atmosphere, e.one("W_in"), false))
	leaving := func(dry float64) air.State {
		w := e.one("W_in") + solids*(e.one("X_in")-e.one("X_out"))/dry
		return e.state(air.FromHumidityRatio(e.kelvin("T_air_out_C"), atmosphere, w, false))
	}
	dry := root(0.1, 2, func(g float64) float64 { return solids*taken - g*(in.Enthalpy()-leaving(g).Enthalpy()) })
	e.check("dry_air_kg_h", dry/perHour)
	e.check("W_out", leaving(dry).HumidityRatio())
}
