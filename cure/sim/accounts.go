package sim

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// accounts balances the air of each place that has a balance: the full room, the static oven, each zone of a tunnel.
func (r *run) accounts(flows []route.ZoneFlow) []result.Account {
	accounts := []result.Account{}
	zone := 0
	for i := range r.passages {
		st, p := &r.plan.Stages[i], &r.passages[i]
		if p.lasted == 0 {
			continue // the run ended before anything passed
		}
		switch around := st.Exposure.Around.(type) {
		case *route.Chamber:
			accounts = append(accounts, r.chamberAccount(st, p, around))
		case *route.Space:
			accounts = append(accounts, r.spaceAccount(st, p, around))
		case *route.Steady:
			if st.Length == 0 {
				continue
			}
			if zone < len(flows) && r.job.Tunnel.Zones[zone].Air != nil {
				accounts = append(accounts, r.zoneAccount(st, p, flows, zone))
			}
			zone++
		}
	}
	return accounts
}

// moisture fills in what an account says of the air.
func (r *run) moisture(a *result.Account, w float64, T float64) {
	a.HumidityRatio = w
	if s, err := air.FromHumidityRatio(T, r.job.Workshop.Pressure, w, r.job.Numerics.EnhancementFactor); err == nil {
		a.DewPoint = s.DewPoint()
	}
}

// term is a line of a balance.
func term(name string, v float64) result.Term { return result.Term{Name: name, Value: v} }

// chamberAccount is the static oven over the stay of one charge.
func (r *run) chamberAccount(st *route.Stage, p *passage, c *route.Chamber) result.Account {
	a := result.Account{Place: st.Name, Per: result.PerRun, Water: closed(result.Balance{}), Heat: closed(result.Balance{})}
	b := c.Book(r.ownBefore(st), p.own)
	fromAir, fromWalls := c.CoatedArea*p.fromAir(), c.CoatedArea*p.fromWalls()
	a.Heat = closed(result.Balance{In: b.Heater, Out: b.Drawn + b.Lost + b.Passed, Kept: b.AirKept + b.WallsKept, Terms: []result.Term{
		term("heater", b.Heater), term("to the load from the air", fromAir), term("to the load by radiation", fromWalls),
		term("to other loads", b.Drawn-fromAir-fromWalls),
		term("lost through the walls", b.Lost), term("carried off by exhaust", b.Passed), term("kept by the walls", b.WallsKept)}})
	if c.Balanced {
		evaporated := b.WaterPassed + b.WaterKept
		if len(c.Others) == 0 {
			evaporated = c.CoatedArea * p.water
		}
		a.Water = closed(result.Balance{In: evaporated, Out: b.WaterPassed, Kept: b.WaterKept, Terms: []result.Term{
			term("evaporated", evaporated), term("carried off by exhaust, less brought by make-up", b.WaterPassed)}})
	}
	r.moisture(&a, p.wettest, c.Air.T)
	a.Duty = b.Heater
	power, share := c.HeaterPower, b.Heater/p.lasted/c.HeaterPower
	a.Installed, a.Share = &power, &share
	r.flammable(&a, r.chargeVapour(p, c), c.Air.T)
	return a
}

// chargeVapour is the highest concentration of co-solvent vapour that a charge can raise in a static oven [kg/m3]: what
// leaves at the peak of drying into the exhaust, and never more than all of it in the chamber's air.
func (r *run) chargeVapour(p *passage, c *route.Chamber) float64 {
	loads := float64(1 + len(c.Others))
	total := loads * c.CoatedArea * r.coSolvent()
	volume := c.DryAir * (1 + c.Air.HumidityRatio()) / c.Air.Density()
	all := total / volume
	flow := (c.MakeUp + c.Door) * (1 + c.Air.HumidityRatio()) / c.Air.Density()
	water := r.start.Mass - r.state.Mass
	if flow <= 0 || water <= 0 {
		return all
	}
	return math.Min(all, total*p.peak/water/flow)
}

// spaceAccount is the full room over one stage.
func (r *run) spaceAccount(st *route.Stage, p *passage, s *route.Space) result.Account {
	a := result.Account{Place: st.Name, Per: result.PerRun, Water: closed(result.Balance{}), Heat: closed(result.Balance{})}
	b := s.Book(r.ownBefore(st), p.own)
	evaporated := s.CoatedArea * p.water
	a.Water = closed(result.Balance{In: evaporated, Out: b.Aired + b.Removed + b.Fogged, Kept: b.WaterKept, Terms: []result.Term{
		term("evaporated", evaporated), term("carried off by air changes", b.Aired), term("taken out by the dehumidifier", b.Removed),
		term("settled on the walls", b.Fogged), term("kept by the air", b.WaterKept)}})
	r.moisture(&a, p.wettest, s.Inside.State(st.Start).T)
	a.Duty = b.Heater
	return a
}

// zoneAccount is one zone of the tunnel in steady running.
func (r *run) zoneAccount(st *route.Stage, p *passage, flows []route.ZoneFlow, zone int) result.Account {
	t, f := r.job.Tunnel, &flows[zone]
	z := &t.Zones[zone]
	a := result.Account{Place: st.Name, Per: result.PerSecond}
	area := t.CoatedPerLength * t.LineSpeed
	outside := r.plan.Outside
	climate := st.Exposure.Around.Climate(st.Start, nil)
	neighbour := func(i int) float64 {
		if i < 0 || i >= len(flows) {
			return 0
		}
		return flows[i].Humidity
	}
	w := f.Humidity
	evaporated := area * p.water
	fresh, before, after := f.Fresh*outside.HumidityRatio(), f.Before*neighbour(zone-1), f.After*neighbour(zone+1)
	a.Water = closed(result.Balance{In: evaporated + fresh + before + after, Out: f.Out() * w, Terms: []result.Term{
		term("evaporated", evaporated), term("brought by fresh air", fresh), term("leaked in from neighbours", before+after),
		term("carried off by exhaust", f.Exhaust*w), term("leaked out", (f.ToBefore+f.ToAfter+f.Surplus)*w)}})

	// Air that comes in is brought to the zone's temperature; what leaves is at it. Enthalpies are of dry air with its vapour.
	rise := func(flow float64, from air.State) float64 {
		to := from
		to.T = climate.Air.T
		return flow * (to.Enthalpy() - from.Enthalpy())
	}
	source := func(i int) air.State {
		s := climate.Air
		if i < 0 || i >= len(t.Zones) {
			return s
		}
		if v, err := air.FromHumidityRatio(t.Zones[i].AirTemperature, s.P, flows[i].Humidity, s.Real); err == nil {
			return v
		}
		return s
	}
	load, walls := area*p.fromAir(), area*p.fromWalls()
	heated := rise(f.Fresh, outside)
	leaked := rise(f.Before, source(zone-1)) + rise(f.After, source(zone+1))
	lost := z.Air.WallLoss * (climate.Wall - outside.T)
	duty := load + walls + heated + leaked + lost
	a.Heat = closed(result.Balance{In: duty, Out: load + walls + heated + leaked + lost, Terms: []result.Term{
		term("to parts, carriers and water from the air", load), term("to parts by radiation of the walls", walls),
		term("to warm fresh air", heated), term("to warm air from neighbours", leaked), term("lost through the walls", lost)}})
	r.moisture(&a, w, climate.Air.T)
	a.Duty = duty
	if z.Air.HeaterPower > 0 && z.Kind == job.Heated {
		power, share := z.Air.HeaterPower, duty/z.Air.HeaterPower
		a.Installed, a.Share = &power, &share
	}
	share := 0.0
	if total := r.evaporatedInZones(); total > 0 {
		share = p.water / total
	}
	exhaust := f.Out() * (1 + w) / climate.Air.Density()
	if exhaust > 0 {
		r.flammable(&a, area*r.coSolvent()*math.Max(0, share)/exhaust, climate.Air.T)
	}
	return a
}

// evaporatedInZones is the water that leaves the film in all zones of the tunnel [kg/m2].
func (r *run) evaporatedInZones() float64 {
	total := 0.0
	for i := range r.passages {
		if r.plan.Stages[i].Length > 0 {
			total += math.Max(0, r.passages[i].water)
		}
	}
	return total
}

// coSolvent is what else evaporates [kg/m2].
func (r *run) coSolvent() float64 {
	if c := r.job.Film.Adhesive.CoSolvent; c != nil {
		return r.job.Film.WetCoat * c.Fraction
	}
	return 0
}

// flammable compares the concentration of co-solvent vapour [kg/m3] at the temperature T [K] with its lower flammable limit.
// The co-solvent is taken to leave as the water does. The limit falls as the air gets hotter: LFL(T) = LFL(20 degC)
// (1 - 0.00078 (T - 293 K)) as a share of the volume (NFPA 86 lists the correction as a table; coefficient of Zabetakis 1965,
// from memory), times 293 K/T for the thinner gas.
func (r *run) flammable(a *result.Account, concentration, T float64) {
	c := r.job.Film.Adhesive.CoSolvent
	if c == nil {
		return
	}
	limit := c.LFL * math.Max(0.1, 1-0.00078*(T-293.15)) * 293.15 / T
	share := concentration / limit
	a.Flammable = &share
}

// ownBefore are the states of the surroundings where a stage starts.
func (r *run) ownBefore(st *route.Stage) []float64 {
	if st.Own != nil {
		return st.Own
	}
	for i := range r.plan.Stages {
		if &r.plan.Stages[i] == st && i > 0 && i <= len(r.passages) {
			return r.passages[i-1].own
		}
	}
	return nil
}

var _ film.Surroundings = (*route.Space)(nil)
