package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
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
	// Stated flows are volumes at the make-up air's own state; its dry air and vapour are heated alike.
	makeUp := c.MakeUp * shop.Density() * shop.SpecificHeat()
	chamber := &Chamber{
		Air: state, CoatedArea: c.CoatedArea, HeaterPower: c.HeaterPower, Band: c.ProportionalBand,
		AirCapacity: c.AirVolume * state.Density() * state.SpecificHeat(),
		MakeUp:      makeUp, MakeUpAir: shop.T,
		WallCapacity: c.WallHeatCapacity, WallExchange: c.WallExchange, WallLoss: c.WallLoss, Room: shop.T,
	}
	stages := append(w.before(entry), Stage{
		Name: "Static oven", Kind: result.Oven, Start: entry, End: exit, Piled: w.pile != nil,
		Exposure: w.exposure(o.Transfer, chamber, true),
		Own:      []float64{or(c.AirAtLoading, o.SetPoint), or(c.WallAtLoading, o.SetPoint)},
	})
	return w.finish(Plan{Kind: result.StaticOven, Deadline: o.Deadline, Horizon: o.Horizon, HeatedEnd: exit, Exit: exit}, stages), nil
}

// tunnel passes the zones at the line speed, then rests in the workshop.
func (w *workshop) tunnel(t *job.Tunnel) (Plan, error) {
	stages := w.before(t.EnteredAfter)
	at, position, heatedEnd := t.EnteredAfter, 0.0, t.EnteredAfter
	for i := range t.Zones {
		z := &t.Zones[i]
		state, err := z.Humidity.State(z.AirTemperature, w.job.Workshop.Pressure, w.job.Numerics.EnhancementFactor)
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
			Exposure: w.exposure(z.Transfer, steady(state, z.WallTemperature), true),
			Position: position, Length: z.Length,
		})
		at, position = end, position+z.Length
	}
	return w.finish(Plan{Kind: result.Tunnel, Deadline: t.Deadline, Horizon: t.Horizon, HeatedEnd: heatedEnd, Exit: at}, stages), nil
}

// finish appends the rest in the workshop up to the horizon.
func (w *workshop) finish(p Plan, stages []Stage) Plan {
	p.Horizon = math.Max(p.Horizon, p.Exit)
	p.Stages = stages
	if p.Horizon > p.Exit {
		p.Stages = append(p.Stages, w.stay("Workshop, after the oven", result.Rest, p.Exit, p.Horizon, true))
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
