package plan

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

const (
	usualConfidence = 0.95
	leastConfidence = 0.5
	mostConfidence  = 0.995
	mostFree        = 6
	mostRounds      = 6  // of reserve, search and check
	checkRows       = 16 // of the spreads that check: 256 samples
	scouts          = 16 // settings judged all over the allowed box before the search
)

// FindOptimum looks for the settings that take least while the chance that every criterion is met is as high as wanted.
//
// In the search the spread stands as a reserve: each share has to stay below 1 by beta times its standard deviation, which is
// that of the tolerances through the slopes of the share (first-order second-moment method), with beta the quantile of the
// normal distribution for the confidence. Where the slopes to both sides differ the steeper one counts, unless the share passes 1
// there, beyond which it counts on another scale. This is right as far
// as shares are straight, and if one criterion alone binds; so each result is sampled, and beta corrected by what the sample
// says, up to four times. What is returned as found has been judged good by a plain run, and sampled to be as sure as wanted.
//
// The search starts at the best of the present setting and sixteen spread over the bounds, and again at the best of those far
// from it, since hot and short can be as good as cool and long; the better end goes on. From a setting that is not good it finds
// a good one first, since violation costs more than anything.
//
// Tell, where it is not nil, takes what is known after each improvement.
//
// Errors: a route, goal or variable that the job does not have; bounds the wrong way round; an objective that the model does
// not balance (fault.Missing); what evaluate returns.
func FindOptimum(q OptimiseQuestion, evaluate Evaluate, tell func(Optimum)) (Optimum, error) {
	study, err := q.Study.Settle(evaluate)
	if err != nil {
		return Optimum{}, err
	}
	if len(q.Tolerances) == 0 {
		if q.Tolerances, err = DefaultTolerances(study.Job, study.Route); err != nil {
			return Optimum{}, err
		}
	}
	k, err := newSeeker(q, study, evaluate, tell)
	if err != nil {
		return Optimum{}, err
	}
	starts, err := k.scout()
	if err != nil {
		return Optimum{}, err
	}
	if err := k.rounds(starts); err != nil {
		return Optimum{}, err
	}
	k.answer.Complete, k.answer.Runs = true, k.runs
	return k.answer, nil
}

// seeker looks for one optimum.
type seeker struct {
	study      Study
	evaluate   Evaluate
	tell       func(Optimum)
	tolerances []Tolerance
	free       []Variable
	seed       int
	scale      float64 // of the objective
	runs       int
	best       *Spread // of the answer
	unmoved    []bool  // criteria that nothing free moves: no reserve for them can be won, only more for the others
	aside      bool    // steps are not told: they may come to nothing
	steps      []OptimalStep
	answer     Optimum
}

func newSeeker(q OptimiseQuestion, study Study, evaluate Evaluate, tell func(Optimum)) (*seeker, error) {
	if q.Confidence == 0 {
		q.Confidence = usualConfidence
	}
	if q.Objective == "" {
		q.Objective = LeastEnergy
	}
	k := &seeker{study: study, evaluate: evaluate, tell: tell, tolerances: q.Tolerances, seed: max(1, q.Seed)}
	k.answer = Optimum{Route: study.Route, Goal: *study.Goal, Objective: q.Objective, Confidence: q.Confidence,
		Settings: []OptimalSetting{}, Path: []OptimalStep{}}
	if t := study.Job.Tariffs; t != nil {
		k.answer.Currency = t.Currency
	}
	switch {
	case q.Objective != LeastEnergy && q.Objective != LeastCost:
		return nil, fault.New(fault.Choice, "objective", string(q.Objective), words.Told("Ask for the least energy or the least cost."))
	case q.Objective == LeastCost && study.Job.Tariffs == nil:
		return nil, fault.New(fault.Missing, "tariffs", "", words.Told("Say what energy costs, or ask for the least energy."))
	case !(q.Confidence >= leastConfidence && q.Confidence <= mostConfidence):
		return nil, fault.OutOfRange("confidence", q.Confidence, leastConfidence, mostConfidence, "", words.Told("Ask for 0.9 to 0.99."))
	case len(q.Free) < 1 || len(q.Free) > mostFree:
		return nil, fault.OutOfRange("free", float64(len(q.Free)), 1, mostFree, "", words.Told("Name what may be changed."))
	}
	for _, axis := range q.Free {
		v, err := study.Variable(axis.Variable)
		if err != nil {
			return nil, err
		}
		if axis.Low == 0 && axis.High == 0 {
			axis.Low, axis.High = v.UsualLow, v.UsualHigh
		}
		if !(axis.Low < axis.High) || axis.Low < v.Low || axis.High > v.High {
			return nil, fault.New(fault.Conflict, "free", words.Told("{id} from {low} to {high}", "id", v.ID, "low", words.Figure(fault.Number(axis.Low)), "high", words.Figure(fault.Number(axis.High))),
				words.Told("Give bounds that rise, within {low} to {high} {unit}.", "low", words.Figure(fault.Number(v.Low)), "high", words.Figure(fault.Number(v.High)), "unit", v.Unit))
		}
		k.free = append(k.free, v)
		k.answer.Settings = append(k.answer.Settings, OptimalSetting{Variable: v, Low: axis.Low, High: axis.High, Value: v.Present})
	}
	_, err := toleratedVariables(study, q.Tolerances)
	return k, err
}

// trial is the setting at unit coordinates.
func (k *seeker) trial(u []float64) Trial {
	var t Trial
	for j := range u {
		v, s := &k.free[j], &k.answer.Settings[j]
		low, high := v.coordinate(s.Low), v.coordinate(s.High)
		t = append(t, Setting{v.ID, math.Min(math.Max(v.value(low+u[j]*(high-low)), s.Low), s.High)})
	}
	return t
}

// land judges settings.
func (k *seeker) land(points [][]float64) ([]landing, error) {
	if len(points) == 0 {
		return nil, nil
	}
	trials := make([]Trial, len(points))
	for i, u := range points {
		trials[i] = k.trial(u)
	}
	outcomes, err := k.evaluate(k.study, trials)
	if err != nil {
		return nil, err
	}
	k.runs += len(outcomes)
	landed := make([]landing, len(points))
	for i := range landed {
		landed[i] = landing{u: points[i], outcome: outcomes[i], value: math.Inf(1)}
		if outcomes[i].Refused != "" {
			continue
		}
		for c := range outcomes[i].Judgement.Criteria {
			landed[i].shares = append(landed[i].shares, math.Min(shareCap, outcomes[i].Judgement.Criteria[c].Share))
		}
		if v := k.objective(&outcomes[i]); v != nil {
			landed[i].value = *v / k.scale
		}
	}
	return landed, nil
}

func (k *seeker) objective(o *Outcome) *float64 {
	a := &o.Judgement.Amounts
	if k.answer.Objective == LeastEnergy || a.Cost == nil {
		return a.Energy
	}
	cost := *a.Cost + k.handling(a.Throughput, a.Cycle)
	return &cost
}

// handling is the labour of a square metre, as far as the job states it: who attends while an oven runs, and the work of each
// charge. Throughput is in m2/h, cycle in seconds.
func (k *seeker) handling(throughput, cycle *float64) float64 {
	c := k.study.Job.Costs
	if c == nil || c.Wage == nil || throughput == nil || *throughput <= 0 {
		return 0
	}
	oven, perHour := &c.Tunnel, 0.0
	if k.study.Route == result.StaticOven {
		oven = &c.StaticOven
		if oven.Labour != nil && cycle != nil {
			perHour += *oven.Labour / *cycle // hours of work in each hour
		}
	}
	if oven.Persons != nil {
		perHour += *oven.Persons
	}
	return perHour * *c.Wage / *throughput
}

// scout judges the present setting and a few all over the box, and returns the best to start from, without any reserve, and the
// best of those that are far from it.
func (k *seeker) scout() ([]landing, error) {
	outcomes, err := k.evaluate(k.study, []Trial{{}})
	if err != nil {
		return nil, err
	}
	k.runs++
	k.answer.Present = standing(0, &outcomes[0])
	k.answer.Before = k.objective(&outcomes[0])
	if k.answer.Before == nil || *k.answer.Before <= 0 {
		return nil, fault.New(fault.Missing, "objective", words.Told("the model balances no energy on this route"),
			words.Told("Give the tunnel's zones their air, or the room its volume and heating; a static oven has its balance."))
	}
	k.scale = *k.answer.Before
	sequence, err := num.ScrambledSobol(len(k.free), uint64(k.seed), 0)
	if err != nil {
		return nil, err
	}
	points := [][]float64{k.presentPoint()}
	for range scouts {
		u := make([]float64, len(k.free))
		sequence.Next(u)
		points = append(points, u)
	}
	landed, err := k.land(points)
	if err != nil {
		return nil, err
	}
	best, none := 0, make([]float64, len(outcomes[0].Judgement.Criteria))
	k.unmoved = unmoved(landed, len(none))
	for i := range landed {
		if landed[i].merit(none) < landed[best].merit(none) {
			best = i
		}
	}
	if math.IsInf(landed[best].merit(none), 1) {
		return nil, fault.New(fault.Conflict, "free", words.Told("no setting within the bounds can be computed: {refused}", "refused", landed[0].outcome.Refused), words.Told("Move the bounds."))
	}
	k.improved(&landed[best], none)
	starts, other := []landing{landed[best]}, -1
	for i := range landed {
		if apart(landed[i].u, landed[best].u) > farApart && (other < 0 || landed[i].merit(none) < landed[other].merit(none)) {
			other = i
		}
	}
	if other >= 0 && !math.IsInf(landed[other].merit(none), 1) {
		starts = append(starts, landed[other])
	}
	return starts, nil
}

// unmoved tells the criteria whose share is the same in every setting that was computed.
func unmoved(landed []landing, criteria int) []bool {
	same := make([]bool, criteria)
	for c := range same {
		least, most := math.Inf(1), math.Inf(-1)
		for i := range landed {
			if landed[i].shares != nil {
				least, most = math.Min(least, landed[i].shares[c]), math.Max(most, landed[i].shares[c])
			}
		}
		same[c] = most-least < 1e-6 // runs of the same film in the same air differ by rounding only
	}
	return same
}

// farApart is the distance of two starts, as a share of the range of the input in which they differ most.
const farApart = 0.4

func apart(a, b []float64) float64 {
	d := 0.0
	for j := range a {
		d = math.Max(d, math.Abs(a[j]-b[j]))
	}
	return d
}

// presentPoint is the job's own setting in unit coordinates, moved inside the bounds.
func (k *seeker) presentPoint() []float64 {
	u := make([]float64, len(k.free))
	for j := range u {
		v, s := &k.free[j], &k.answer.Settings[j]
		low, high := v.coordinate(s.Low), v.coordinate(s.High)
		u[j] = math.Min(1, math.Max(0, (v.coordinate(math.Min(math.Max(v.Present, s.Low), s.High))-low)/(high-low)))
	}
	return u
}

// improved notes a step and tells of it.
func (k *seeker) improved(at *landing, reserve []float64) {
	step := OptimalStep{Run: k.runs, Objective: at.value * k.scale, Values: []float64{}}
	for _, s := range k.trial(at.u) {
		step.Values = append(step.Values, s.Value)
	}
	for i, s := range at.shares {
		step.Share, step.Reserved = math.Max(step.Share, s), math.Max(step.Reserved, s+reserve[i])
	}
	if k.aside {
		k.steps = append(k.steps, step)
		return
	}
	k.answer.Path = append(k.answer.Path, step)
	if k.best == nil { // what has been sampled gives way to what has been sampled too
		k.settle(at)
	}
	k.say()
}

func (k *seeker) say() {
	if k.tell == nil {
		return
	}
	a := k.answer
	a.Runs = k.runs
	a.Path = append([]OptimalStep(nil), a.Path...)
	a.Settings = append([]OptimalSetting(nil), a.Settings...)
	k.tell(a)
}

// settle makes a landing the answer so far.
func (k *seeker) settle(at *landing) {
	a := &k.answer
	a.Share = 0
	for _, s := range at.shares {
		a.Share = math.Max(a.Share, s)
	}
	after := at.value * k.scale
	st := standing(0, &at.outcome)
	a.After, a.Best = &after, &st
	for j, x := range k.trial(at.u) {
		s := &a.Settings[j]
		const edge = 1e-3 // of the range
		s.Value, s.AtLow, s.AtHigh = x.Value, at.u[j] < edge, at.u[j] > 1-edge
	}
}
