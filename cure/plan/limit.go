package plan

import (
	"cmp"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

// LimitsQuestion asks how far things can be pushed on a route.
type LimitsQuestion struct {
	Study  Study           `json:"study"`
	Limits []LimitQuestion `json:"limits"`
}

// LimitQuestion asks how far a variable can be pushed before something fails.
type LimitQuestion struct {
	Variable string    `json:"variable"`
	Toward   Direction `json:"toward"` // empty: the way that is worth pushing
	Wanted   *float64  `json:"wanted"` // a value to be judged besides; null: none
	Levers   bool      `json:"levers"` // also say what changes of plant and coat would buy
}

// Bound says what ends a limit.
type Bound string

// The bounds.
const (
	ByCriterion Bound = "criterion" // a criterion fails beyond it
	ByRange     Bound = "range"     // nothing fails up to the end of what validation accepts
	Nowhere     Bound = "nowhere"   // no setting of the variable is good
)

// Limit is how far a variable can be pushed.
type Limit struct {
	Route    result.Kind        `json:"route"`
	Goal     sim.Goal           `json:"goal"`
	Variable Variable           `json:"variable"`
	Toward   Direction          `json:"toward"`
	Bound    Bound              `json:"bound"`
	Value    *float64           `json:"value"` // good by itself; null: nowhere
	Binding  *result.Criterion  `json:"binding"`
	Refused  string             `json:"refused"`    // why validation accepts nothing beyond, where that is the bound
	Margins  []result.Criterion `json:"margins"`    // at the limit, or nearest to one; the tightest first
	Present  Standing           `json:"present"`    // the job as it is
	Wanted   *Standing          `json:"wanted"`     // null: not asked
	Beyond   *Standing          `json:"beyond"`     // 1 % or a tenth of a step past the limit
	Levers   []Gain             `json:"levers"`     // in the order of what they buy
	Complete bool               `json:"complete"`   // false: the levers are still being looked at
	Runs     int                `json:"runs"`       // how many settings were judged
	Text     string             `json:"text"`       // the answer in a sentence or two
	Shown    string             `json:"value_text"` // the limit in its display unit, rounded to the side on which it is good
	Answer   string             `json:"answer"`     // to what was wanted; empty where nothing was
}

// Standing is one setting and how it is judged.
type Standing struct {
	Text    string             `json:"text"` // the value in its display unit
	Value   float64            `json:"value"`
	Met     bool               `json:"met"`
	Refused string             `json:"refused"`
	Margins []result.Criterion `json:"margins"` // the tightest first
	Ready   *float64           `json:"ready_s"`
	Energy  *float64           `json:"energy_J_per_m2"`
	Cost    *float64           `json:"cost_per_m2"`
}

// Gain is what one change of plant or coat would buy.
type Gain struct {
	Name   string            `json:"name"`  // longer, hotter, exhaust, thinner, warmer, drier, airing, lighter, dwell
	Place  string            `json:"place"` // the zone
	Change float64           `json:"change"`
	Value  *float64          `json:"value"` // the limit then; null: none is good
	Gain   float64           `json:"gain"`  // in the variable's unit, better above zero
	Fails  *result.Criterion `json:"fails"` // what fails after the change, where no setting is good
	Text   string            `json:"text"`
}

// FindLimits answers the questions by searches on the real model, all side by side. A value that it returns has been judged
// good, and what binds has been seen to fail within a hundred-thousandth of it.
//
// What changes of plant and coat would buy takes most of the time; before it is looked for, tell gets what is known, with
// Complete false. A nil tell gets nothing.
//
// Errors: a route, goal or variable that the job does not have; what evaluate returns.
func FindLimits(q LimitsQuestion, evaluate Evaluate, tell func([]Limit)) ([]Limit, error) {
	study, err := q.Study.Settle(evaluate)
	if err != nil {
		return nil, err
	}
	finders := make([]finder, len(q.Limits))
	for i, ask := range q.Limits {
		v, err := study.Variable(ask.Variable)
		if err != nil {
			return nil, err
		}
		if ask.Toward == "" {
			ask.Toward = v.Toward
		}
		if ask.Toward != Highest && ask.Toward != Lowest {
			return nil, fault.New(fault.Choice, "toward", string(ask.Toward), words.Told("Ask for the highest or the lowest."))
		}
		finders[i] = finder{question: ask, v: v, limit: Limit{Route: study.Route, Goal: *study.Goal, Variable: v, Toward: ask.Toward,
			Margins: []result.Criterion{}, Levers: []Gain{}}}
	}
	c := crew{study, evaluate, finders}
	for _, step := range []func() error{c.find, c.look} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	if tell != nil {
		tell(c.limits(false))
	}
	if err := c.pull(); err != nil {
		return nil, err
	}
	return c.limits(true), nil
}

// limits are copies of what has been found.
func (c *crew) limits(complete bool) []Limit {
	limits := make([]Limit, len(c.finders))
	for i := range c.finders {
		limits[i] = c.finders[i].limit
		limits[i].Complete = complete
	}
	return limits
}

// conclude reads the end of a search.
func (l *Limit) conclude(s *search) {
	l.Runs, l.Present = s.runs, standing(s.v.Present, &s.first.outcome)
	nearest := s.first
	switch {
	case s.good == nil:
		l.Bound = Nowhere
	case s.bad == nil:
		l.Bound, nearest = ByRange, s.good
	default:
		l.Bound, nearest = ByCriterion, s.good
		if l.Refused = s.bad.outcome.Refused; l.Refused != "" {
			l.Bound = ByRange
		} else {
			binding := s.bad.outcome.Judgement.Criteria[s.bad.outcome.Judgement.Worst()]
			l.Binding = &binding
		}
	}
	if s.good != nil {
		value := s.v.value(s.good.u)
		l.Value = &value
	}
	l.Margins = tightest(nearest.outcome.Judgement.Criteria)
}

// finder looks for one limit, and for it again after each change.
type finder struct {
	question LimitQuestion
	v        Variable
	limit    Limit
}

// crew is all finders at work on one study.
type crew struct {
	study    Study
	evaluate Evaluate
	finders  []finder
}

// tolerances of a limit, as shares of the variable's step: a hundred-thousandth of a speed, a thousandth of a kelvin. What a
// change buys is told to three digits only.
const (
	limitTolerance = 1e-4
	gainTolerance  = 1e-2
	// tight is the least share of the binding criterion at a limit, where it does not jump. Where cure creeps towards its mark
	// in a cooling zone, the moment of the mark moves by per cents while the setting hardly does.
	tight = 1 - 2e-4
)

// find looks for the limits.
func (c *crew) find() error {
	searches := make([]*search, len(c.finders))
	for i := range c.finders {
		f := &c.finders[i]
		searches[i] = newSearch(&f.v, f.question.Toward, f.v.Present, limitTolerance*f.v.Step, tight)
	}
	err := beside(c.study, c.evaluate, searches, func(i int, value float64) Trial { return Trial{{c.finders[i].v.ID, value}} })
	for i, s := range searches {
		if err == nil {
			c.finders[i].limit.conclude(s)
		}
	}
	return err
}

// look judges what was wanted and a setting a little beyond each limit.
func (c *crew) look() error {
	var batch []Trial
	var into []**Standing
	var runs []*int
	add := func(f *finder, value float64, to **Standing) {
		batch, into, runs = append(batch, Trial{{f.v.ID, value}}), append(into, to), append(runs, &f.limit.Runs)
	}
	for i := range c.finders {
		f := &c.finders[i]
		if f.limit.Bound == ByCriterion {
			add(f, f.beyond(*f.limit.Value), &f.limit.Beyond)
		}
		if f.question.Wanted != nil {
			add(f, *f.question.Wanted, &f.limit.Wanted)
		}
	}
	if len(batch) == 0 {
		return nil
	}
	outcomes, err := c.evaluate(c.study, batch)
	if err != nil {
		return err
	}
	for i := range outcomes {
		st := standing(batch[i][0].Value, &outcomes[i])
		*into[i] = &st
		*runs[i]++
	}
	return nil
}

// beyond is a hundredth past a limit, or a tenth of a step where changes do not count as ratios.
func (f *finder) beyond(value float64) float64 {
	sign := 1.0
	if f.question.Toward == Lowest {
		sign = -1
	}
	return f.v.value(f.v.coordinate(value) + sign*0.1*f.v.Step)
}

// pull looks for the limits again after each change, at the tolerance that a gain is told to.
func (c *crew) pull() error {
	var pulls []pull
	var searches []*search
	for i := range c.finders {
		f := &c.finders[i]
		if !f.question.Levers || f.limit.Bound == ByRange {
			continue
		}
		start := f.v.Present
		if f.limit.Value != nil {
			start = *f.limit.Value
		}
		for _, l := range levers(c.study.Job, c.study.Route) {
			v, err := c.study.Variable(l.variable)
			if err != nil || l.variable == f.v.ID || f.v.ID == TunnelLength && l.name == "longer" {
				continue
			}
			if to := l.moved(v.Present); to >= v.Low && to <= v.High {
				pulls = append(pulls, pull{f, l, Setting{l.variable, to}, start})
				searches = append(searches, newSearch(&f.v, f.question.Toward, start, gainTolerance*f.v.Step, 1))
			}
		}
	}
	err := beside(c.study.coarse(), c.evaluate, searches, func(i int, value float64) Trial {
		return Trial{{pulls[i].finder.v.ID, value}, pulls[i].setting}
	})
	if err != nil {
		return err
	}
	for i, p := range pulls {
		l := &p.finder.limit
		l.Levers = append(l.Levers, p.gain(searches[i]))
		l.Runs += searches[i].runs
	}
	for i := range c.finders {
		slices.SortStableFunc(c.finders[i].limit.Levers, func(a, b Gain) int { return cmp.Compare(worth(b), worth(a)) })
	}
	return nil
}

// pull is one search after a change.
type pull struct {
	finder  *finder
	lever   lever
	setting Setting
	start   float64
}

func (p *pull) gain(s *search) Gain {
	g := Gain{Name: p.lever.name, Place: p.lever.place, Change: p.lever.change}
	if s.good != nil {
		value := p.finder.v.value(s.good.u)
		g.Value, g.Gain = &value, s.sign*(value-p.start)
	} else if o := &s.first.outcome.Judgement; o.Worst() >= 0 {
		fails := o.Criteria[o.Worst()]
		g.Fails = &fails
	}
	return g
}

// worth orders gains; a change after which no setting is good comes last.
func worth(g Gain) float64 {
	if g.Value == nil {
		return math.Inf(-1)
	}
	return g.Gain
}

func standing(value float64, o *Outcome) Standing {
	j := &o.Judgement
	return Standing{Value: value, Met: o.Met(), Refused: o.Refused, Margins: tightest(j.Criteria), Ready: j.Ready, Energy: j.Amounts.Energy, Cost: j.Amounts.Cost}
}

// tightest are the criteria in the order of their shares, those that no setting has come near left out.
func tightest(criteria []result.Criterion) []result.Criterion {
	sorted := []result.Criterion{}
	for _, c := range criteria {
		if c.Share > 0 {
			sorted = append(sorted, c)
		}
	}
	slices.SortStableFunc(sorted, func(a, b result.Criterion) int { return cmp.Compare(b.Share, a.Share) })
	return sorted
}
