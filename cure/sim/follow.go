package sim

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/words"
)

// Sample is a coupon at one moment.
type Sample struct {
	Mass  float64 // of coat, fibre and all their water on one square metre of coated face [kg/m2]
	Film  float64 // temperature of the film [K]
	Back  float64 // temperature of the part's back face [K]
	Given float64 // water given to the air [kg/(m2 s)]
	H     float64 // coefficient of heat transfer at the coated face [W/(m2 K)]
}

// Trace is a temperature that an instrument has recorded, joined by straight lines and held beyond its ends.
type Trace struct {
	Time        []float64 // from spraying, rising [s]
	Temperature []float64 // [K]
}

// Follow runs one coupon of a job along one of its routes up to the last of the times, without marks, risks or curves, and reads
// it at each of them (rising, from spraying [s], at most the route's horizon). With a trace the air of the route follows it where
// the trace has points, its humidity staying what the route says; air is nil otherwise. Zones count with the humidity as
// given: a coupon in a tunnel does not load its air.
//
// Errors: fault.Missing where the job lacks the route, fault.Range for times outside of it, fault.Numeric for a run that ends
// early.
func Follow(j *job.Job, kind result.Kind, times []float64, air *Trace) ([]Sample, error) {
	if len(times) == 0 {
		return nil, fault.New(fault.Missing, "times", "", words.Told("Give at least one time."))
	}
	b, err := newBench(j)
	if err != nil {
		return nil, err
	}
	b.coat.Cure = nil // nothing depends on conversion, and it is not read
	b.start.Conversion = nil
	plan, err := planOf(j, kind)
	if err != nil {
		return nil, err
	}
	if last := times[len(times)-1]; times[0] < 0 || last > plan.Horizon {
		return nil, fault.OutOfRange("times", last, 0, plan.Horizon, "s", words.Told("Lengthen the route's horizon, or leave later rows out."))
	}
	if air != nil {
		if err := plan.drive(b, air); err != nil {
			return nil, err
		}
	}
	f := follower{run: b.newRun(plan.Plan), times: times, out: make([]Sample, 0, len(times))}
	err = f.follow()
	return f.out, err
}

// planned is a plan to be driven by a trace.
type planned struct{ route.Plan }

// planOf lays one route out, the others left aside.
func planOf(j *job.Job, kind result.Kind) (planned, error) {
	alone := *j
	alone.Room, alone.StaticOven, alone.Tunnel = nil, nil, nil
	switch kind {
	case result.Room:
		alone.Room = j.Room
	case result.StaticOven:
		alone.StaticOven = j.StaticOven
	case result.Tunnel:
		alone.Tunnel = j.Tunnel
	}
	plans, err := route.Plans(&alone)
	if err != nil {
		return planned{}, err
	}
	if len(plans) == 0 {
		return planned{}, fault.New(fault.Missing, string(kind), "", words.Told("The job lacks this route: add it, or name another."))
	}
	return planned{plans[0]}, nil
}

// drive puts the recorded air into the stages that the trace covers.
func (p *planned) drive(b *bench, air *Trace) error {
	p.Stages = slices.Clone(p.Stages)
	for i := range p.Stages {
		st := &p.Stages[i]
		if st.End <= air.Time[0] || st.Start >= air.Time[len(air.Time)-1] {
			continue
		}
		around, own := st.Exposure.Around, st.Own
		if own == nil && around.States() > 0 {
			own = make([]float64, around.States()) // a chamber that goes on; its own states are not read below
		}
		was := around.Climate(st.Start, own)
		var times []float64
		var climates []film.Climate
		for k, t := range air.Time {
			c := was
			c.Air.T = air.Temperature[k]
			if was.Wall == was.Air.T {
				c.Wall = c.Air.T
			}
			times, climates = append(times, t), append(climates, c)
		}
		replay, err := route.NewReplay(times, climates)
		if err != nil {
			return err
		}
		st.Exposure.Around, st.Own = replay, nil
		st.Stops = nil // the integrator finds the small kinks of a record by itself
	}
	return nil
}

// follower reads a run at given times.
type follower struct {
	*run
	times []float64
	out   []Sample
	next  int
	piled bool
	fibre float64 // dry fibre on the film [kg/m2]
}

// follow integrates up to the last time.
func (f *follower) follow() error {
	last := f.times[len(f.times)-1]
	for i := range f.plan.Stages {
		st := &f.plan.Stages[i]
		f.stage = i
		if st.Start > last {
			break
		}
		if st.Piled && !f.piled {
			f.flock(i)
			f.piled = true
			p := f.job.Pile
			f.fibre = (1 - p.Porosity) * p.Length * p.FibreDensity
		}
		if err := f.through(st, math.Min(st.End, last)); err != nil {
			return err
		}
	}
	return nil
}

// through integrates one stage up to its end, or the last time.
func (f *follower) through(st *route.Stage, end float64) error {
	s := f.system(st)
	y := make([]float64, s.Dim())
	s.Pack(&f.state, f.startOwn(st), y)
	if st.Start == 0 {
		f.read(s, 0, y)
	}
	solver, err := f.stepper(s, st)
	if err != nil {
		return f.failed(st.Start, err)
	}
	defer func() { f.pay(s, solver.Stats()) }()
	inside := make([]float64, s.Dim())
	from := st.Start
	for _, to := range append(append([]float64(nil), st.Stops...), end) {
		if to > end || to <= from {
			continue
		}
		if f.step > 0 {
			solver.SetInitialStep(math.Min(f.step, to-from))
		}
		done, err := solver.Integrate(from, to, y, nil, func(step *ode.Step) bool {
			for f.next < len(f.times) && f.times[f.next] <= step.T1 {
				step.At(f.times[f.next], inside)
				f.read(s, f.times[f.next], inside)
			}
			return true
		})
		if err != nil {
			return f.failed(done.T, err)
		}
		from, f.step = to, solver.SuggestedStep()
	}
	s.Unpack(y, &f.state)
	f.own = slices.Clone(s.Own(y))
	return nil
}

// read takes one sample, and more where several are wanted at the same moment.
func (f *follower) read(s *film.System, t float64, y []float64) {
	for f.next < len(f.times) && f.times[f.next] == t {
		s.Bound(y)
		r := s.Read(t, y)
		f.out = append(f.out, Sample{Mass: f.coat.Solids*(1+r.MeanWater) + f.fibre + r.FibreWater, Film: r.Film, Back: r.BackFace, Given: r.Given, H: r.Coefficient})
		f.next++
	}
}
