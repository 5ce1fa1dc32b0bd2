package cure

import (
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
)

// Fit tells numbers of a job from a trial of the user's own, whose table is given as the bytes of a text. The outcome holds what to
// show, with its words, and what job.Adopt takes. Errors are a *fault.Fault or a fault.List: of the table (path "line 4"), of the
// question, of the job.
func Fit(say report.Speaker, j job.Job, table []byte, q fit.Question) (fit.Outcome, error) {
	o, err := fit.Run(j, table, q)
	if err != nil {
		return fit.Outcome{}, err
	}
	say.FillFit(&o.Fit)
	o.Adoption.Note = o.Fit.Text
	return o, nil
}

// TrialForms are what the kinds of trial want to know for a job, with their words: what a form asks before Fit.
func TrialForms(say report.Speaker, j job.Job) (result.TrialForms, error) {
	f, err := fit.Forms(j)
	if err != nil {
		return result.TrialForms{}, err
	}
	say.FillForms(&f)
	return f, nil
}
