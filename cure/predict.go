// Package cure computes the drying and cure of a sprayed film of water-borne dispersion adhesive, flocked or not, in a
// room overnight, in a static oven and in a tunnel oven: a job goes in, a result comes out.
//
// The physics lives in the sub-packages, each with one subject: air (moist air), transfer (heat and mass at a surface),
// film (water and heat in film and part), kinetics (crosslinking), ode (stiff integration), route (what surrounds the
// part over time), sim (one job along its routes). Package job holds the question, result the answer, report the words,
// material the generic records, api the same as bytes.
//
// Every function takes a speaker, which says the answer in a language and a system of units.
//
// Everything here is pure: the same job gives the same result, nothing is read, written, logged or timed.
package cure

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// Predict computes every route that the job has or, where some are named, those of them that it has. A job that validation
// refuses gives a fault.List with every fault; a route that could not be finished is part of the result, with a warning and
// what was found.
func Predict(say report.Speaker, j job.Job, routes ...result.Kind) (result.Result, error) {
	if err := job.Validate(j); err != nil {
		return result.Result{}, err
	}
	return Compute(say, j, routes...)
}

// Compute is Predict of a job that validation has accepted: one that job.Decode gave.
func Compute(say report.Speaker, j job.Job, routes ...result.Kind) (result.Result, error) {
	r, err := sim.Run(&j, routes...)
	if err != nil {
		return result.Result{}, err
	}
	say.Fill(&r)
	return r, nil
}

// Worded is an evaluation that says why a setting is refused as a reader knows it: by the label of the field, in the reader's units.
func Worded(say report.Speaker, evaluate plan.Evaluate) plan.Evaluate {
	return func(s plan.Study, trials []plan.Trial) ([]plan.Outcome, error) {
		outcomes, err := evaluate(s, trials)
		for i := range outcomes {
			if f := outcomes[i].Fault; f != nil {
				outcomes[i].Refused = say.Sentence(f)
			}
		}
		return outcomes, err
	}
}

// Aims settles a study and says what its route is and could be asked for.
func Aims(say report.Speaker, s plan.Study, evaluate plan.Evaluate) (plan.Study, plan.Aims, error) {
	s, err := s.Settle(Worded(say, evaluate))
	if err != nil {
		return s, plan.Aims{}, err
	}
	aims := s.Aims()
	say.FillAims(&aims)
	return s, aims, nil
}

// Limits says how far things can be pushed before something fails. tell takes what is known before the changes of plant and
// coat are looked at; nil where nobody watches.
func Limits(say report.Speaker, q plan.LimitsQuestion, evaluate plan.Evaluate, tell func([]plan.Limit)) ([]plan.Limit, error) {
	worded := func(limits []plan.Limit) []plan.Limit {
		for i := range limits {
			say.FillLimit(&limits[i])
		}
		return limits
	}
	early := func(soFar []plan.Limit) { tell(worded(soFar)) }
	if tell == nil {
		early = nil
	}
	limits, err := plan.FindLimits(q, Worded(say, evaluate), early)
	return worded(limits), err
}

// Window finds which settings of two variables are good. tell takes the picture as it fills in; nil where nobody watches.
func Window(say report.Speaker, q plan.WindowQuestion, evaluate plan.Evaluate, tell func(plan.Window)) (plan.Window, error) {
	filled := func(w plan.Window) {
		say.FillWindow(&w)
		tell(w)
	}
	if tell == nil {
		filled = nil
	}
	w, err := plan.FindWindow(q, Worded(say, evaluate), filled)
	if err == nil {
		say.FillWindow(&w)
	}
	return w, err
}

// Spread says how sure a setting is while inputs vary, and which of them decide. Tell, where it is not nil, takes what is
// known so far.
func Spread(say report.Speaker, q plan.SpreadQuestion, evaluate plan.Evaluate, tell func(plan.Spread)) (plan.Spread, error) {
	spread, err := plan.FindSpread(q, Worded(say, evaluate), func(s plan.Spread) {
		if tell != nil {
			say.FillSpread(&s)
			tell(s)
		}
	})
	if err == nil {
		say.FillSpread(&spread)
	}
	return spread, err
}

// Costs sets the cost of a day against its quantity for every route of a job. Tell, where it is not nil, takes what is known
// so far.
func Costs(say report.Speaker, q plan.CostQuestion, evaluate plan.Evaluate, tell func(plan.Costs)) (plan.Costs, error) {
	costs, err := plan.FindCosts(q, Worded(say, evaluate), func(c plan.Costs) {
		if tell != nil {
			say.FillCosts(&c)
			tell(c)
		}
	})
	if err == nil {
		say.FillCosts(&costs)
	}
	return costs, err
}

// Optimise looks for the settings that take least while they stay as sure as wanted. Tell, where it is not nil, takes what is
// known so far.
func Optimise(say report.Speaker, q plan.OptimiseQuestion, evaluate plan.Evaluate, tell func(plan.Optimum)) (plan.Optimum, error) {
	optimum, err := plan.FindOptimum(q, Worded(say, evaluate), func(a plan.Optimum) {
		if tell != nil {
			say.FillOptimum(&a)
			tell(a)
		}
	})
	if err == nil {
		say.FillOptimum(&optimum)
	}
	return optimum, err
}
