package sim

import (
	"errors"
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/words"
)

// Goal is what a route has to achieve, besides that nothing spoils the part.
type Goal struct {
	AtExit     []result.MarkName `json:"at_exit"`     // must hold when the part leaves the oven
	ByDeadline bool              `json:"by_deadline"` // ready by the route's deadline
}

// DefaultGoal is what is usually asked of a route: a room is to be ready in time; what leaves an oven is to be tack-free and
// dry through, and cool where the tunnel ends in a cooling zone. A static oven's charge has its deadline besides.
func DefaultGoal(j *job.Job, kind result.Kind) Goal {
	switch kind {
	case result.Room:
		return Goal{AtExit: []result.MarkName{}, ByDeadline: true}
	case result.StaticOven:
		return Goal{AtExit: []result.MarkName{result.TackFree, result.DryThrough}, ByDeadline: j.StaticOven.Deadline > 0}
	}
	marks := []result.MarkName{result.TackFree, result.DryThrough}
	if t := j.Tunnel; t.Zones[len(t.Zones)-1].Kind == job.Cooling {
		marks = append(marks, result.Cool)
	}
	return Goal{AtExit: marks}
}

// Judge follows one route of a valid job for as long as its goal needs, and says how much of what each criterion allows is
// used. It computes what Run computes, with the same accuracy and less of it: no cured film weeks later where nobody asks.
// A route that cannot be followed to its end is judged as not met, by the criterion Computed.
//
// Errors: what makes the whole job impossible to compute; the route is not part of the job (fault.Missing).
func Judge(j *job.Job, kind result.Kind, g Goal) (result.Judgement, error) {
	alone, err := Alone(j, kind)
	if err != nil {
		return result.Judgement{}, err
	}
	b, err := newBench(&alone)
	if err != nil {
		return result.Judgement{}, err
	}
	plans, err := route.Plans(&alone)
	if err != nil {
		return result.Judgement{}, err
	}
	m := newJury(&alone, g)
	err = m.hear(b, plans[0])
	m.judgement.Spent = b.budget.taken()
	if err != nil {
		var numeric *fault.Fault
		if !errors.As(err, &numeric) {
			return result.Judgement{}, err
		}
		m.set(result.Computed, 2, "", "")
	}
	return m.judgement, nil
}

// Alone is the job with one route only.
//
// Errors: fault.Missing where the job has no such route.
func Alone(j *job.Job, kind result.Kind) (job.Job, error) {
	alone := *j
	alone.Room, alone.StaticOven, alone.Tunnel = nil, nil, nil
	switch {
	case kind == result.Room && j.Room != nil:
		alone.Room = j.Room
	case kind == result.StaticOven && j.StaticOven != nil:
		alone.StaticOven = j.StaticOven
	case kind == result.Tunnel && j.Tunnel != nil:
		alone.Tunnel = j.Tunnel
	default:
		return alone, fault.New(fault.Missing, string(kind), words.Told("the job does not compute this route"), words.Told("Add the route to the job, or ask for one that it has."))
	}
	return alone, nil
}

// jury gathers the criteria of one route.
type jury struct {
	job       *job.Job
	goal      Goal
	judgement result.Judgement
	place     map[result.CriterionName]int
}

// atExit are the criteria of marks, in the order in which they are listed.
var atExit = []struct {
	criterion result.CriterionName
	mark      result.MarkName
}{
	{result.TouchAtExit, result.Touch}, {result.TackFreeAtExit, result.TackFree}, {result.DryAtExit, result.DryThrough},
	{result.CuredAtExit, result.Cured}, {result.CoolAtExit, result.Cool},
}

// newJury lists the criteria of a goal. The list hangs on job and goal alone, so that judgements can be compared.
func newJury(j *job.Job, g Goal) *jury {
	m := &jury{job: j, goal: g, place: map[result.CriterionName]int{}}
	add := func(name result.CriterionName) {
		m.place[name] = len(m.judgement.Criteria)
		m.judgement.Criteria = append(m.judgement.Criteria, result.Criterion{Name: name})
	}
	for _, c := range atExit {
		if m.asks(c.mark) && j.Room == nil {
			add(c.criterion)
		}
	}
	if g.ByDeadline {
		add(result.ReadyInTime)
	}
	for _, name := range []result.CriterionName{result.NoBoiling, result.FilmFormed, result.PartSpared, result.NoDew} {
		add(name)
	}
	if j.Pile != nil {
		add(result.FlockedInTime)
	}
	if j.Room == nil {
		add(result.HeatEnough)
		add(result.NotFlammable)
	}
	add(result.Computed)
	return m
}

func (m *jury) asks(mark result.MarkName) bool {
	for _, a := range m.goal.AtExit {
		if a == mark {
			return true
		}
	}
	return false
}

// set raises the share of a criterion that is listed; the worst place and spot stay noted.
func (m *jury) set(name result.CriterionName, share float64, place, spot string) {
	i, listed := m.place[name]
	if !listed {
		return
	}
	// A share that is no number is one that could not be judged.
	if math.IsNaN(share) || share > worstShare {
		share = worstShare
	}
	if c := &m.judgement.Criteria[i]; share > c.Share {
		c.Share, c.Place, c.Spot = share, place, spot
	}
}

// worstShare keeps shares finite.
const worstShare = 1e6

// hear follows the plan at the open face and at every spot.
func (m *jury) hear(b *bench, p route.Plan) error {
	// The marks that have not come by the exit are judged by the film there; nothing after it matters but the deadline.
	open := result.Mark{Name: result.Open}
	if m.job.Pile != nil {
		var err error
		if open, err = b.openTime(); err != nil {
			return err
		}
		if open.Time != nil && *open.Time > 0 {
			m.set(result.FlockedInTime, m.job.Pile.AppliedAfter / *open.Time, "", "")
		}
	}
	p, humidities, err := b.prepared(p)
	if err != nil {
		return err
	}
	r := b.newRun(p)
	if err := m.follow(r, ""); err != nil {
		return err
	}
	var flows []route.ZoneFlow
	if humidities != nil {
		if flows, err = r.zoneFlows(humidities); err != nil {
			return err
		}
	}
	accounts := r.accounts(flows)
	m.judgement.Amounts = r.amounts(accounts)
	for i := range accounts {
		if s := accounts[i].Share; s != nil {
			m.set(result.HeatEnough, *s, accounts[i].Place, "")
		}
		if s := accounts[i].Flammable; s != nil {
			m.set(result.NotFlammable, *s/flammableShare, accounts[i].Place, "")
		}
	}
	for _, s := range m.job.Part.Spots {
		spot, err := r.atSpot(s)
		if err != nil {
			return err
		}
		if err := m.follow(spot, s.Name); err != nil {
			return err
		}
	}
	return nil
}

// follow runs one face and takes its shares.
func (m *jury) follow(r *run, spot string) error {
	exit := r.plan.Exit
	if !m.goal.ByDeadline && !math.IsNaN(exit) && !r.dewsAfter() {
		r.plan = r.plan.Until(exit)
	}
	r.enough = func(t float64) bool {
		if t < exit || m.goal.ByDeadline && t < r.plan.Deadline {
			return false
		}
		_, ready := r.latest(r.needs(result.Ready))
		return ready || !m.goal.ByDeadline
	}
	if err := r.follow(); err != nil {
		return err
	}
	m.addStatus(r)
	if r.met[drenched].done {
		m.set(result.NoDew, r.dew.worst/m.job.Targets.DewRunOff, "", spot)
		m.set(result.Computed, 2, "", spot)
		return nil
	}
	m.marks(r, spot)
	m.risks(r, spot)
	return nil
}

// dewsAfter reports whether the workshop's air could condense on a part that leaves the oven as cold as its coldest zone:
// only then does anything after the exit endanger the part.
func (r *run) dewsAfter() bool {
	if r.plan.Kind != result.Tunnel {
		return false
	}
	coldest := math.Inf(1)
	for _, z := range r.job.Tunnel.Zones {
		coldest = math.Min(coldest, z.AirTemperature)
	}
	return r.plan.Outside.DewPoint() >= coldest
}

// marks takes the shares of the marks: of the time in the oven, and of the time to the deadline.
func (m *jury) marks(r *run, spot string) {
	for _, c := range atExit {
		if !m.asks(c.mark) {
			continue
		}
		needs := r.needs(c.mark)
		last, all := r.latest(needs)
		share := 1 + r.lacks(needs, r.plan.Exit, r.exit.lacking)
		if time := r.met[last].time; all && time <= r.plan.Exit {
			share = math.Max(0, (time-r.plan.Entry)/(r.plan.Exit-r.plan.Entry))
		}
		m.set(c.criterion, share, "", spot)
	}
	needs := r.needs(result.Ready)
	last, ready := r.latest(needs)
	if ready {
		time := r.met[last].time
		if was := m.judgement.Ready; spot == "" || was != nil && *was < time {
			m.judgement.Ready = &time
		}
	} else {
		m.judgement.Ready = nil
	}
	if !m.goal.ByDeadline {
		return
	}
	if ready {
		m.set(result.ReadyInTime, r.met[last].time/r.plan.Deadline, "", spot)
		return
	}
	m.set(result.ReadyInTime, math.Max(1, r.end.time/r.plan.Deadline)+r.lacks(needs, r.end.time, r.lacking), "", spot)
}

// risks takes the shares of what may spoil the part.
func (m *jury) risks(r *run, spot string) {
	target, a, start := &m.job.Targets, &m.job.Film.Adhesive, r.start.Part[0]
	happened := func(c condition, share float64) float64 {
		if r.met[c].done {
			return math.Max(share, math.Nextafter(1, 2)) // between two steps it was worse than at either
		}
		return math.Min(share, 1)
	}
	m.set(result.NoBoiling, happened(boiling, r.boil.worst/m.job.Workshop.Pressure), "", spot)
	m.set(result.PartSpared, happened(overLimit, (r.hot.worst-start)/(m.job.Part.LimitTemperature-start)), "", spot)
	m.set(result.NoDew, r.dew.worst/target.DewRunOff, "", spot)
	if c := &r.met[closing]; c.done {
		// A film that warms up and heals is as good as one that closed at its film-forming temperature.
		share := 1 + (a.FilmForming-c.reading.Film)/formingRange
		if r.met[filmWarm].done {
			share = math.Min(share, 1)
		}
		m.set(result.FilmFormed, math.Max(0, share), "", spot)
	}
}

func (m *jury) addStatus(r *run) {
	s, t := &m.judgement.Status, r.status(true)
	s.Complete = true
	s.Steps += t.Steps
	s.Rejected += t.Rejected
	s.Derivatives += t.Derivatives
	s.Jacobians += t.Jacobians
	s.Factorisations += t.Factorisations
}
