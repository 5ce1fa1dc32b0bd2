package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// staticOven loads the part, holds it for the dwell and puts it back into the workshop.
func (w *workshop) staticOven(o *job.StaticOven) (Plan, error) {
	entry, exit := o.LoadedAfter, o.LoadedAfter+o.Dwell
	state, err := o.Humidity.State(o.SetPoint, w.job.Workshop.Pressure, w.job.Numerics.EnhancementFactor)
	if err != nil {
		return Plan{}, err
	}
	shop := w.air.State(entry)
	c := o.Chamber
	// Stated flows are volumes at the make-up air's own state; exhaust is the remainder.
	perVolume := shop.Density() / (1 + shop.HumidityRatio())
	chamber := Chamber{
		Air: state, Balanced: c.VapourBalance, CoatedArea: c.CoatedArea, HeaterPower: c.HeaterPower, Band: c.ProportionalBand,
		DryAir:      c.AirVolume * state.Density() / (1 + state.HumidityRatio()),
		AirCapacity: c.AirVolume * state.Density() * state.SpecificHeat(),
		MakeUp:      c.MakeUp * perVolume, MakeUpAir: shop,
		WallCapacity: c.WallHeatCapacity, WallExchange: c.WallExchange, WallLoss: c.WallLoss, Room: shop.T,
	}
	stages := w.before(entry)
	loaded := entry
	if o.DoorOpen > 0 && o.DoorExchange > 0 && o.DoorOpen < o.Dwell {
		open := chamber
		open.Door = o.DoorExchange * perVolume
		stages = append(stages, w.inOven(words.Told("Static oven, door open"), entry, entry+o.DoorOpen, o, &open))
		loaded += o.DoorOpen
	}
	stages = append(stages, w.inOven(words.Told("Static oven"), loaded, exit, o, &chamber))
	for i := range stages {
		if stages[i].Start == entry {
			stages[i].Own = chamber.Start(or(c.AirAtLoading, o.SetPoint), or(c.WallAtLoading, o.SetPoint))
		}
	}
	return w.finish(Plan{Kind: result.StaticOven, Outside: shop, Entry: entry, Deadline: o.Deadline, Horizon: o.Horizon, HeatedEnd: exit, Exit: exit}, stages), nil
}

// inOven is a stage in the static oven.
func (w *workshop) inOven(name string, start, end float64, o *job.StaticOven, c *Chamber) Stage {
	return Stage{Name: name, Kind: result.Oven, Start: start, End: end, Piled: w.pile != nil, Exposure: w.exposure(o.Transfer, c, c.Air, true)}
}

// Tunnel lays out the tunnel alone with the humidity ratios [kg/kg] of its zones, as a balance has found them.
func Tunnel(j *job.Job, humidities []float64) (Plan, error) {
	w, err := newWorkshop(j)
	if err != nil {
		return Plan{}, err
	}
	return w.tunnel(j.Tunnel, humidities)
}

// tunnel passes the zones at the line speed, then rests in the workshop.
func (w *workshop) tunnel(t *job.Tunnel, humidities []float64) (Plan, error) {
	stages := w.before(t.EnteredAfter)
	at, position, heatedEnd := t.EnteredAfter, 0.0, t.EnteredAfter
	for i := range t.Zones {
		z := &t.Zones[i]
		state, err := air.FromHumidityRatio(z.AirTemperature, w.job.Workshop.Pressure, humidities[i], w.job.Numerics.EnhancementFactor)
		if err != nil {
			return Plan{}, err
		}
		end := at + z.Length/t.LineSpeed
		kind := result.HeatedZone
		if z.Kind == job.Cooling {
			kind = result.CoolingZone
		} else {
			heatedEnd = end
		}
		stages = append(stages, Stage{
			Name: z.Name, Kind: kind, Start: at, End: end, Piled: w.pile != nil,
			Exposure: w.zone(z, state),
			Position: position, Length: z.Length,
		})
		at, position = end, position+z.Length
	}
	return w.finish(Plan{Kind: result.Tunnel, Outside: w.air.State(t.EnteredAfter), Entry: t.EnteredAfter, Deadline: t.Deadline, Horizon: t.Horizon, HeatedEnd: heatedEnd, Exit: at}, stages), nil
}

// finish appends the rest in the workshop up to the horizon.
func (w *workshop) finish(p Plan, stages []Stage) Plan {
	p.Horizon = math.Max(p.Horizon, p.Exit)
	p.Stages = stages
	if p.Horizon > p.Exit {
		p.Stages = append(p.Stages, w.stay(words.Told("Workshop, after the oven"), result.Rest, p.Exit, p.Horizon, true))
	}
	return p
}

func steady(a air.State, wall *float64) *Steady {
	return &Steady{Air: a, Wall: or(wall, a.T)}
}

// or is the value, or what stands for it when it is left open.
func or(v *float64, otherwise float64) float64 {
	if v == nil {
		return otherwise
	}
	return *v
}

var _ film.Surroundings = (*Chamber)(nil)

// zone is what a part sees in a zone, the radiators included.
func (w *workshop) zone(z *job.Zone, state air.State) film.Exposure {
	x := w.exposure(z.Transfer, steady(state, z.WallTemperature), state, true)
	if r := z.Infrared; r != nil {
		absorbed := r.Flux * r.Absorptivity
		x.Front.Absorbed = absorbed
		if x.Front.Pile != nil {
			x.Front.Absorbed, x.Front.Passed = absorbed*(1-r.FilmShare), absorbed*r.FilmShare
		}
		x.Back.Absorbed = r.BackFlux * r.BackAbsorptivity
	}
	return x
}
