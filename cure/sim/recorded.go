package sim

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/transfer"
	"github.com/drywright/drywright/cure/words"
)

// Recording is what a recorder that went through the oven has written: the air, the part, or both.
type Recording struct {
	Air, Part *Trace // nil: not recorded
}

// ends are the first and the last moment of the recording.
func (r *Recording) ends() (first, last float64) {
	first, last = math.Inf(1), math.Inf(-1)
	for _, t := range []*Trace{r.Air, r.Part} {
		if t != nil {
			first, last = math.Min(first, t.Time[0]), math.Max(last, t.Time[len(t.Time)-1])
		}
	}
	return first, last
}

const (
	// tie is the emissivity by which the part's back is bound to the recorded temperature, through the walls' radiation: at 100 degC
	// a conductance of 1e5 W/(m2 K), so that the strongest evaporation of an oven holds the film a hundredth of a kelvin below.
	tie = 1e4
	// The part that is bound is a thin, conducting sheet: what is recorded already holds the real one's inertia.
	sheetThickness, sheetConductivity, sheetCapacity = 1e-4, 1e3, 1e6 // m, W/(m K), J/(m3 K)
)

// Recorded follows the film of a job along a recorded run of one of its routes: air movement, humidity and stages are the
// route's, temperatures those of the recording, which also ends the run (the route's exit). A recorded part binds the film to its
// temperature, before its first reading too; else the part follows the recorded air by the route's coefficients.
//
// Errors: fault.Missing without a recording or where the job lacks the route, fault.Conflict where it covers none of the route,
// fault.Numeric for a run that ends early.
func Recorded(j *job.Job, kind result.Kind, rec Recording) (result.Route, error) {
	if rec.Air == nil && rec.Part == nil {
		return result.Route{}, fault.New(fault.Missing, "trace", "", words.Told("Give the recorded air, the part, or both."))
	}
	b, err := newBench(j)
	if err != nil {
		return result.Route{}, err
	}
	plan, err := planOf(j, kind)
	if err != nil {
		return result.Route{}, err
	}
	first, last := rec.ends()
	if first < 0 || first >= plan.Horizon || last > plan.Horizon {
		return result.Route{}, fault.New(fault.Conflict, "trace", words.Told("{first} to {last} after spraying", "first", words.Figure(fault.Number(first)), "last", words.Amount{Value: last, Unit: "s"}),
			words.Told("The recording must lie within the route, whose horizon is {horizon}.", "horizon", words.Amount{Value: plan.Horizon, Unit: "s"}))
	}
	if rec.Air != nil {
		if err := plan.drive(b, rec.Air); err != nil {
			return result.Route{}, err
		}
	}
	plan.end(last)
	if rec.Part != nil {
		if err := plan.bind(b, rec.Part); err != nil {
			return result.Route{}, err
		}
	}
	open, err := b.openTime()
	if err != nil {
		return result.Route{}, err
	}
	r := b.newRun(plan.Plan)
	if err := r.follow(); err != nil {
		return result.Route{}, err
	}
	rt := r.report(open)
	rt.Accounts = []result.Account{}
	return rt, nil
}

// end cuts the plan off where the recording ends, and calls that the exit.
func (p *planned) end(last float64) {
	p.Stages = slices.Clone(p.Stages)
	for i := range p.Stages {
		st := &p.Stages[i]
		if st.End >= last {
			st.End = last
			p.Stages = p.Stages[:i+1]
			break
		}
	}
	p.Horizon, p.Exit, p.HeatedEnd, p.Deadline = last, last, last, last
}

// bind ties the part to a recorded temperature.
func (p *planned) bind(b *bench, part *Trace) error {
	b.part = film.Part{Thickness: sheetThickness, Density: sheetCapacity / 1e3, HeatCapacity: 1e3, Conductivity: sheetConductivity,
		Back: film.Exposed, Cells: 2}
	b.start = film.NewState(&b.coat, &b.grid, &b.part, (1-b.job.Film.Adhesive.Solids)/b.job.Film.Adhesive.Solids, part.Temperature[0])
	for i := range p.Stages {
		st := &p.Stages[i]
		around, own := st.Exposure.Around, st.Own
		if own == nil && around.States() > 0 {
			own = make([]float64, around.States())
		}
		times := append([]float64{st.Start}, between(part.Time, st.Start, st.End)...)
		if st.End > st.Start {
			times = append(times, st.End)
		}
		var climates []film.Climate
		for _, t := range times {
			c := around.Climate(t, own)
			c.Wall = part.at(t)
			if around.States() > 0 && len(own) > 0 { // a chamber or a full room without its own record: its air is as warm as the part
				c = around.Climate(st.Start, own)
				c.Air.T, c.Wall = part.at(t), part.at(t)
			}
			climates = append(climates, c)
		}
		replay, err := route.NewReplay(times, climates)
		if err != nil {
			return err
		}
		x := &st.Exposure
		x.Around, st.Own, st.Stops = replay, nil, nil
		x.Back = film.Face{Law: transfer.Given{H: 0}, Emissivity: tie, Factor: 1}
		x.Front.Emissivity, x.Front.Absorbed, x.Front.Passed = 0, 0, 0
		if x.Front.Pile != nil {
			pile := *x.Front.Pile
			pile.Emissivity = 0
			x.Front.Pile = &pile
		}
	}
	return nil
}

// at is the recorded temperature at a moment.
func (t *Trace) at(time float64) float64 {
	i, found := slices.BinarySearch(t.Time, time)
	switch {
	case found:
		return t.Temperature[i]
	case i == 0:
		return t.Temperature[0]
	case i == len(t.Time):
		return t.Temperature[i-1]
	}
	share := (time - t.Time[i-1]) / (t.Time[i] - t.Time[i-1])
	return t.Temperature[i-1] + share*(t.Temperature[i]-t.Temperature[i-1])
}

// between returns those of the rising moments that lie inside an interval.
func between(times []float64, start, end float64) []float64 {
	var inside []float64
	for _, t := range times {
		if t > start && t < end {
			inside = append(inside, t)
		}
	}
	return inside
}
