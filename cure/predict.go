// Package cure computes the drying and cure of a sprayed film of water-borne dispersion adhesive, flocked or not, in a
// room overnight, in a static oven and in a tunnel oven: a job goes in, a result comes out.
//
// The physics lives in the sub-packages, each with one subject: air (moist air), transfer (heat and mass at a surface),
// film (water and heat in film and part), kinetics (crosslinking), ode (stiff integration), route (what surrounds the
// part over time), sim (one job along its routes). Package job holds the question, result the answer, report the words,
// material the generic records, api the same as bytes.
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

// Predict computes every route that the job asks for. A job that validation refuses gives a fault.List with every
// fault; a route that could not be finished is part of the result, with a warning and what was found.
func Predict(j job.Job) (result.Result, error) {
	if err := job.Validate(j); err != nil {
		return result.Result{}, err
	}
	r, err := sim.Run(&j)
	if err != nil {
		return result.Result{}, err
	}
	report.Fill(&r)
	return r, nil
}

// Aims settles a study and says what its route is and could be asked for.
func Aims(s plan.Study) (plan.Study, plan.Aims, error) {
	s, err := s.Settle()
	if err != nil {
		return s, plan.Aims{}, err
	}
	aims := s.Aims()
	report.FillAims(&aims)
	return s, aims, nil
}

// Limits says how far things can be pushed before something fails. tell takes what is known before the changes of plant and
// coat are looked at; nil where nobody watches.
func Limits(q plan.LimitsQuestion, evaluate plan.Evaluate, tell func([]plan.Limit)) ([]plan.Limit, error) {
	worded := func(limits []plan.Limit) []plan.Limit {
		for i := range limits {
			report.FillLimit(&limits[i])
		}
		return limits
	}
	early := func(soFar []plan.Limit) { tell(worded(soFar)) }
	if tell == nil {
		early = nil
	}
	limits, err := plan.FindLimits(q, evaluate, early)
	return worded(limits), err
}

// Window finds which settings of two variables are good. tell takes the picture as it fills in; nil where nobody watches.
func Window(q plan.WindowQuestion, evaluate plan.Evaluate, tell func(plan.Window)) (plan.Window, error) {
	filled := func(w plan.Window) {
		report.FillWindow(&w)
		tell(w)
	}
	if tell == nil {
		filled = nil
	}
	w, err := plan.FindWindow(q, evaluate, filled)
	if err == nil {
		report.FillWindow(&w)
	}
	return w, err
}
