package sim

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/transfer"
	"github.com/drywright/drywright/cure/words"
)

// run is one part on its way along one route.
type run struct {
	*bench
	plan       route.Plan
	trial      bool // nothing is wanted but what each stage evaporates: no conditions, no curves
	state      film.State
	met        [conditions]met
	unformed   bool // the film closed below its MFFT
	stage      int
	passages   []passage // one a stage
	own        []float64 // states of the surroundings where the run stands
	fibre      float64   // heat that the fibre brought along [J/m2]
	fibreWater float64   // and water [kg/m2]
	stats      ode.Stats
	step       float64              // last good step, tried first in the next stage
	enough     func(t float64) bool // ends a run that need not go on; nil: when nothing new can come
	lacking    [conditions]float64  // how far each condition was from coming true at the end
	end        struct {
		time    float64
		reading film.Reading
	}
	exit struct {
		seen    bool
		reading film.Reading
		lacking [conditions]float64
	}
	recorder
	watcher
}

// settle is how long past its last mark a finished run goes on, as a share of the time so far: enough for the curves to
// show where they lead.
const settle = 0.15

// newRun starts a part along a plan. Carriers of a tunnel may come back warm from their last round.
func (b *bench) newRun(p route.Plan) *run {
	own := *b
	if t := b.job.Tunnel; p.Kind == result.Tunnel && t.CarrierReturn != nil {
		own.start.Carrier = *t.CarrierReturn
	}
	r := &run{bench: &own, plan: p, state: own.start}
	r.state.Water = slices.Clone(own.start.Water)
	r.state.Conversion = slices.Clone(own.start.Conversion)
	r.state.Part = slices.Clone(own.start.Part)
	return r
}

// follow integrates the part along its plan. An error is a run that ended early; what was found up to there stands.
func (r *run) follow() error {
	piled := false
	for i := range r.plan.Stages {
		st := &r.plan.Stages[i]
		r.stage = i
		if st.Piled && !piled {
			r.flock(i)
			piled = true
		}
		goOn, err := r.pass(st)
		if err != nil || !goOn {
			return err
		}
	}
	return nil
}

// flock puts the fibre on: it brings its heat and its water along, at rest with the air in which the part has been so far.
func (r *run) flock(stage int) {
	st := &r.plan.Stages[stage]
	own := r.startOwn(st)
	at := st.Start
	if stage > 0 {
		st, own = &r.plan.Stages[stage-1], r.own
	}
	r.fibre, r.fibreWater = r.plan.Stages[stage].Exposure.Flock(&r.state, st.Exposure.Around.Climate(at, own))
}

// startOwn are the surroundings' own states where a stage starts.
func (r *run) startOwn(st *route.Stage) []float64 {
	if st.Own != nil {
		return st.Own
	}
	return r.own
}

// pass integrates one stage, from stop to stop.
func (r *run) pass(st *route.Stage) (goOn bool, err error) {
	s := r.system(st)
	y := make([]float64, s.Dim())
	s.Pack(&r.state, r.startOwn(st), y)
	before := r.state
	if !r.trial {
		r.begin(s, st, y)
	}
	at, goOn, err := r.integrate(s, st, y)
	s.Unpack(y, &r.state)
	r.own = slices.Clone(s.Own(y))
	r.passages = append(r.passages, passage{water: before.Held() - r.state.Held(), ledger: less(r.state.Ledger, before.Ledger), own: r.own,
		lasted: at - st.Start, wettest: r.wettest, peak: r.peak})
	last := slices.Clone(y)
	s.Bound(last)
	r.end.time, r.end.reading, r.lacking = at, s.Read(at, last), r.lack(s, at, last)
	if err != nil {
		return false, r.failed(at, err)
	}
	if at == r.plan.Exit {
		r.exit.seen, r.exit.reading, r.exit.lacking = true, r.end.reading, r.lacking
		r.profile(s, at, last, "exit")
	}
	return goOn, nil
}

// integrate takes the state y through a stage, and says how far it came and whether the run goes on.
func (r *run) integrate(s *film.System, st *route.Stage, y []float64) (at float64, goOn bool, err error) {
	at = st.Start
	solver, err := r.stepper(s, st)
	if err != nil {
		return at, false, err
	}
	defer func() {
		r.pay(s, solver.Stats())
		r.count(solver.Stats())
	}()
	for _, to := range append(append([]float64(nil), st.Stops...), st.End) {
		events := r.events(s, r.stage, at, y)
		if r.step > 0 {
			solver.SetInitialStep(math.Min(r.step, to-at))
		}
		goOn = true
		end, err := solver.Integrate(at, to, y, events, func(step *ode.Step) bool {
			if !r.trial {
				r.observe(s, step)
				goOn = !r.finished(step.T1)
			}
			return goOn
		})
		at = end.T
		if err != nil {
			return at, false, err
		}
		r.step = solver.SuggestedStep()
		if r.met[drenched].done {
			r.caution(transfer.Caution{Code: "film.drenched", Text: words.Told("In {name} the film takes up so much dew that it would be washed off; the run ends there.", "name", st.Name)})
			goOn = false
		}
		if !goOn {
			break
		}
	}
	return at, goOn, nil
}

// finished reports whether nothing new can come: all marks reached, out of the oven, and some time on.
func (r *run) finished(t float64) bool {
	if r.enough != nil {
		return r.enough(t)
	}
	if r.plan.Exit > t || !r.complete() {
		return false
	}
	last := math.Max(r.met[fullCure].time, r.plan.Deadline)
	for i := range r.met {
		last = math.Max(last, r.met[i].time)
	}
	return t >= (1+settle)*last
}

// count adds a stage's work to the run's.
func (r *run) count(s ode.Stats) {
	r.stats.Steps += s.Steps
	r.stats.Rejected += s.Rejected
	r.stats.Derivatives += s.Derivatives
	r.stats.Jacobians += s.Jacobians
	r.stats.Factorisations += s.Factorisations
}

// failed says where a run ended early.
func (r *run) failed(t float64, err error) error {
	return fault.New(fault.Numeric, string(r.plan.Kind), words.Told("the run ended {time} after spraying: {err}", "time", words.Amount{Value: t, Unit: "s"}, "err", fault.Say(r.budget.said(err))),
		words.Told("Raise numerics.step_budget or loosen numerics.relative_tolerance; if that does not help, look for an input at the end of its range."))
}

// status says how the run went.
func (r *run) status(complete bool) result.Status {
	return result.Status{Complete: complete, Steps: r.stats.Steps, Rejected: r.stats.Rejected,
		Derivatives: r.stats.Derivatives, Jacobians: r.stats.Jacobians, Factorisations: r.stats.Factorisations}
}
