package job

import (
	"bytes"
	"encoding/json"
)

// Encode writes a job as an indented JSON document that ends in a newline; the same job gives the same bytes, and Decode
// returns the job. Every field is written, so that later changes of a default do not change the job. The error is that
// of a number which is not finite; a job that validates gives none.
func Encode(j Job) ([]byte, error) {
	if c := j.Film.Adhesive.Crosslinking; c != nil && c.Schedule.Pairs == nil {
		with := *c
		with.Schedule.Pairs = []SchedulePair{} // an empty list, not null
		j.Film.Adhesive.Crosslinking = &with
	}
	if j.Part.Spots == nil {
		j.Part.Spots = []Spot{}
	}
	j.Fits = withLists(j.Fits)
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(j); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// withLists returns the fits with empty lists instead of null ones.
func withLists(fits []Fit) []Fit {
	out := make([]Fit, len(fits))
	for i, f := range fits {
		f.Values = append([]FittedValue{}, f.Values...)
		f.Correlations = append([]FitCorrelation{}, f.Correlations...)
		f.Before = append([]FitBefore{}, f.Before...)
		out[i] = f
	}
	return out
}
