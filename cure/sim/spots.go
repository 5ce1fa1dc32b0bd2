package sim

import (
	"slices"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// spots judges a route at every named spot of the part: with the spot's coat and its share of the coefficient, in the
// air that the run of the open face has found.
func (r *run) spots(open result.Mark, nominal *result.Route) ([]result.SpotAnswer, error) {
	answers := []result.SpotAnswer{}
	for _, s := range r.job.Part.Spots {
		spot, err := r.atSpot(s)
		if err != nil {
			return nil, err
		}
		if err := spot.follow(); err != nil {
			return nil, err
		}
		rt := spot.report(open)
		answers = append(answers, result.SpotAnswer{Name: s.Name, Answer: rt.Answer, Marks: rt.Marks, Risks: rt.Risks})
	}
	if w := worstSpot(nominal, answers); w >= 0 {
		answers[w].Worst = true
	}
	return answers, nil
}

// atSpot is a run like this one at a spot of the part.
func (r *run) atSpot(s job.Spot) (*run, error) {
	j := *r.job
	j.Film.WetCoat *= s.CoatFactor
	b, err := newBench(&j)
	if err != nil {
		return nil, err
	}
	b.budget = r.budget
	plan, err := r.planAt(s)
	if err != nil {
		return nil, err
	}
	return b.newRun(plan), nil
}

// planAt is the plan as a spot sees it.
func (r *run) planAt(s job.Spot) (route.Plan, error) {
	plan := r.plan
	plan.Stages = slices.Clone(plan.Stages)
	latest := r.climates[0]
	for i := range plan.Stages {
		st := &plan.Stages[i]
		st.Exposure.Front.Factor *= s.TransferFactor
		if st.Exposure.Around.States() == 0 {
			continue
		}
		times, climates := r.history(st.Start, st.End)
		if len(times) == 0 { // the open face was through before: the air that it last saw stays
			times, climates = []float64{st.Start}, []film.Climate{latest}
		}
		latest = climates[len(climates)-1]
		replay, err := route.NewReplay(times, climates)
		if err != nil {
			return plan, err
		}
		st.Exposure.Around, st.Own = replay, nil
	}
	return plan, nil
}

// history are the climates recorded between two moments, each moment once.
func (r *run) history(start, end float64) (times []float64, climates []film.Climate) {
	for i, t := range r.curves.Time {
		if t < start || t > end {
			continue
		}
		// Two points stand at a seam: the second is this stage's where it starts, the first where it ends.
		if n := len(times); n > 0 && t <= times[n-1] {
			if t == start {
				climates[n-1] = r.climates[i]
			}
			continue
		}
		times, climates = append(times, t), append(climates, r.climates[i])
	}
	return times, climates
}

// worstSpot is the spot that is ready last, or never; -1 is the open face. A danger makes a spot worse than one without.
func worstSpot(open *result.Route, spots []result.SpotAnswer) int {
	place, ready, danger := -1, open.Answer.Ready, endangered(open.Risks)
	for i := range spots {
		s := &spots[i]
		d := endangered(s.Risks)
		if d && !danger || d == danger && after(s.Answer.Ready, ready) {
			place, ready, danger = i, s.Answer.Ready, d
		}
	}
	return place
}

func endangered(risks []result.Risk) bool {
	return slices.ContainsFunc(risks, func(r result.Risk) bool { return r.Severity == result.Danger })
}

// after reports whether a is later than b, nil being never.
func after(a, b *float64) bool {
	switch {
	case b == nil:
		return false
	case a == nil:
		return true
	}
	return *a > *b
}
