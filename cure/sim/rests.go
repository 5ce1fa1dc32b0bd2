package sim

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// rests lists the numbers of the job that a trial has told.
func rests(j *job.Job) []result.FromTrial {
	all := []result.FromTrial{}
	for _, r := range job.Resting(j) {
		d := r.Field.Display
		all = append(all, result.FromTrial{Path: r.Path, Label: r.Field.Label, Fit: r.Fit.Name, Kind: string(r.Fit.Kind), Date: r.Fit.Date,
			Value: r.Value.Value, Low: r.Value.Low, High: r.Value.High, Symbol: d.Symbol, Factor: d.Factor, Offset: d.Offset})
	}
	return all
}
