package sim

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
)

// condition is one thing that becomes true in the course of a run and stays noted: margin(t, y) falls to zero.
// The marks are made of conditions, each judged by itself, so that "never before" is a maximum of times.
type condition int

const (
	touchDry   condition = iota // outer water near equilibrium
	tackCure                    // outer conversion at the tack threshold
	meanDry                     // mean water near equilibrium
	closing                     // mean polymer fraction passes phi_c: the film forms, or not
	filmWarm                    // film above the MFFT, watched only when it closed below
	fullCure                    // least conversion at the full threshold
	handCool                    // whole part below the handling temperature, after the last heat
	boiling                     // water at the part boils under a closed surface
	overLimit                   // part above its limit temperature
	drenched                    // so much dew that the film is washed off: the run ends
	conditions                  // how many there are
)

// drenchingDew is the dew at which a run ends [kg/m2]. A vertical face holds about a twentieth of it; walls colder than
// the dew point would let it grow for ever.
const drenchingDew = 1.0

// met is when a condition came true, and the film then.
type met struct {
	done    bool
	time    float64
	reading film.Reading
	boiled  bool // boiling had come true before
}

// margin returns the function that is positive until the condition holds; nil where it is not watched in this stage.
func (r *run) margin(c condition, s *film.System, stage int) func(t float64, y []float64) float64 {
	target, a := &r.job.Targets, &r.job.Film.Adhesive
	crosslinks := r.coat.Cure != nil
	switch c {
	case touchDry:
		return func(t float64, y []float64) float64 {
			return s.OuterWater(y) - s.Equilibrium(s.Climate(t, y)) - target.TouchWater
		}
	case meanDry:
		return func(t float64, y []float64) float64 {
			return s.MeanWater(y) - s.Equilibrium(s.Climate(t, y)) - target.DryWater
		}
	case closing:
		limit := r.coat.Diffusion.Water(a.Closing)
		return func(_ float64, y []float64) float64 { return s.MeanWater(y) - limit }
	case filmWarm:
		if !r.met[closing].done || !r.unformed || !a.HealsWhenWarmed {
			return nil
		}
		return func(_ float64, y []float64) float64 { return a.FilmForming - s.Temperature(y) }
	case tackCure:
		if crosslinks {
			return func(_ float64, y []float64) float64 { return target.TackConversion - s.OuterConversion(y) }
		}
	case fullCure:
		if crosslinks {
			return func(_ float64, y []float64) float64 { return target.FullConversion - s.LeastConversion(y) }
		}
	case handCool:
		if r.plan.Stages[stage].Start >= r.plan.HeatedEnd {
			return func(t float64, y []float64) float64 { return s.Hottest(t, y) - target.HandlingTemperature }
		}
	case boiling:
		closed := r.coat.Diffusion.Water(a.Closing)
		ambient := r.job.Workshop.Pressure
		return func(t float64, y []float64) float64 { return ambient - s.BoilingPressure(t, y, closed) }
	case overLimit:
		limit := r.job.Part.LimitTemperature
		return func(t float64, y []float64) float64 {
			if s.Below(limit, t, y) {
				return limit // far or near does not matter
			}
			return limit - s.Hottest(t, y)
		}
	case drenched:
		return func(_ float64, y []float64) float64 {
			return r.start.Mass + drenchingDew - s.MeanWater(y)*r.grid.Solids
		}
	}
	return nil
}

// events lists the conditions still to be met as crossings, and notes at once those that hold where the stage starts:
// the equilibrium jumps from zone to zone.
func (r *run) events(s *film.System, stage int, t float64, y []float64) []ode.Event {
	var events []ode.Event
	for c := condition(0); c < conditions; c++ {
		if r.met[c].done || r.trial && c != drenched {
			continue
		}
		g := r.margin(c, s, stage)
		if g == nil {
			continue
		}
		if g(t, y) <= 0 {
			r.note(c, s, t, y)
			continue
		}
		events = append(events, ode.Event{Dir: ode.Falling, Once: true, Terminal: c == drenched, G: g,
			Hit: func(t float64, y []float64) { r.note(c, s, t, y) }})
	}
	return events
}

// note records that a condition came true.
func (r *run) note(c condition, s *film.System, t float64, y []float64) {
	y = slices.Clone(y)
	s.Bound(y)
	reading := s.Read(t, y)
	r.met[c] = met{done: true, time: t, reading: reading, boiled: r.met[boiling].done && c != boiling}
	if c == closing && reading.Film < r.job.Film.Adhesive.FilmForming {
		r.unformed = true
	}
	switch c {
	case touchDry:
		r.profile(s, t, y, result.Touch)
	case meanDry:
		r.profile(s, t, y, result.DryThrough)
	}
}

// needs says which conditions make a mark; their latest time is the mark's.
func (r *run) needs(m result.MarkName) []condition {
	dry := []condition{meanDry, closing}
	if r.unformed {
		dry = append(dry, filmWarm)
	}
	tack := []condition{touchDry}
	if r.coat.Cure != nil {
		tack = append(tack, tackCure)
	}
	switch m {
	case result.Touch:
		return tack[:1]
	case result.TackFree:
		return tack
	case result.DryThrough:
		return dry
	case result.Cured:
		if r.coat.Cure != nil {
			dry = append(dry, fullCure)
		}
		return dry
	case result.Cool:
		return []condition{handCool}
	default:
		return append(append(tack, dry...), handCool)
	}
}

// latest returns the condition that comes last among those needed, and whether all have come.
func (r *run) latest(needs []condition) (condition, bool) {
	last, all := needs[0], true
	for _, c := range needs {
		all = all && r.met[c].done
		if r.met[c].time > r.met[last].time {
			last = c
		}
	}
	return last, all
}

// mark makes one mark of the conditions it needs.
func (r *run) mark(name result.MarkName) result.Mark {
	needs := r.needs(name)
	last, all := r.latest(needs)
	m := result.Mark{Name: name}
	if !all {
		m.State = state(r.end.time, r.end.reading)
		if exit := r.plan.Exit; !math.IsNaN(exit) {
			held := false
			m.AtExit = &held
		}
		return m
	}
	hit := &r.met[last]
	time := hit.time
	m.Time, m.State, m.AfterBoiling = &time, state(hit.time, hit.reading), hit.boiled
	if exit := r.plan.Exit; !math.IsNaN(exit) {
		held := time <= exit
		m.AtExit = &held
	}
	return m
}

// complete reports whether every mark has been reached.
func (r *run) complete() bool {
	_, all := r.latest(r.needs(result.Cured))
	if !all {
		return false
	}
	_, all = r.latest(r.needs(result.Ready))
	return all
}

// state turns a reading into the document's form.
func state(t float64, r film.Reading) result.State {
	return result.State{Time: t, MeanWater: r.MeanWater, OuterWater: r.OuterWater, SurfaceWater: r.SurfaceWater,
		Equilibrium: r.Equilibrium, MeanConversion: r.MeanConversion, LeastConversion: r.LeastConversion,
		FilmTemperature: r.Film, PartHottest: r.Hottest, AirTemperature: r.Climate.Air.T, Flux: r.Flux}
}
