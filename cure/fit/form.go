package fit

import (
	"github.com/drywright/drywright/cure/words"
	"slices"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/unit"
)

// numberOf is one number of a question: where it stands, its range in SI, the unit that a workshop reads it in, and what is taken where it is
// left empty (nil: a word says what).
type numberOf struct {
	name      string
	at        func(*Question) *float64
	low, high float64
	dimension unit.Dimension
	symbol    string
	kinds     []trial.Kind
	otherwise func(*job.Job) *float64
}

// numbers lists the numbers of a question.
func numbers() []numberOf {
	fixed := func(v float64) func(*job.Job) *float64 { return func(*job.Job) *float64 { return &v } }
	weight, recorder, cure := []trial.Kind{trial.Weight}, []trial.Kind{trial.Recorder}, []trial.Kind{trial.Cure}
	return []numberOf{
		{"area_m2", func(q *Question) *float64 { return q.Area }, 1e-6, 100, unit.Area, "cm²", weight,
			func(j *job.Job) *float64 { return j.Part.CoatedArea }},
		{"tare_kg", func(q *Question) *float64 { return q.Tare }, 0, 1000, unit.Mass, "g", weight, nil},
		{"start_s", func(q *Question) *float64 { return q.Start }, 0, 1e7, unit.Duration, "min", []trial.Kind{trial.Weight, trial.Recorder}, nil},
		{"reference_K", func(q *Question) *float64 { return q.Reference }, 250, 600, unit.Temperature, "°C", recorder, fixed(defaultReference)},
		{"limit_K", func(q *Question) *float64 { return q.Limit }, 250, 600, unit.Temperature, "°C", recorder,
			func(j *job.Job) *float64 { return &j.Part.LimitTemperature }},
		{"threshold", func(q *Question) *float64 { return q.Threshold }, 0.01, 0.999, unit.Share, "%", cure,
			func(j *job.Job) *float64 { return &j.Targets.FullConversion }},
		{"repeatability", func(q *Question) *float64 { return q.Repeatability }, 0.01, 2, unit.Share, "%", cure, fixed(repeatability)},
	}
}

// Forms are what the kinds of trial want to know for a job.
func Forms(j job.Job) (result.TrialForms, error) {
	out := result.TrialForms{MostBytes: trial.MaxBytes, Quantities: []result.TrialQuantity{}}
	for _, q := range trial.Quantities() {
		out.Quantities = append(out.Quantities, result.TrialQuantity{Name: string(q), Units: q.Units()})
	}
	for _, kind := range []trial.Kind{trial.Weight, trial.Recorder, trial.Cure, trial.Sorption} {
		f := result.TrialForm{Kind: string(kind), Routes: []result.Kind{}, Quantities: []string{}, Numbers: []result.TrialNumber{},
			Parameters: []result.TrialParameter{}, Isotherms: []result.TrialWord{}, Bare: kind == trial.Recorder}
		for _, q := range kind.Quantities() {
			f.Quantities = append(f.Quantities, string(q))
		}
		for _, n := range numbers() {
			if slices.Contains(n.kinds, kind) {
				f.Numbers = append(f.Numbers, n.asked(&j))
			}
		}
		if kind == trial.Sorption {
			for _, i := range isotherms() {
				f.Isotherms = append(f.Isotherms, result.TrialWord{Value: string(i.kind)})
			}
		}
		w := &work{job: job.Clone(j)}
		for _, route := range w.places(kind) {
			if route != "" {
				f.Routes = append(f.Routes, route)
			}
			told, err := w.offered(kind, route)
			if err != nil {
				return out, err
			}
			f.Parameters = append(f.Parameters, told...)
		}
		out.Kinds = append(out.Kinds, f)
	}
	return out, nil
}

// asked is the number as a form asks for it.
func (n numberOf) asked(j *job.Job) result.TrialNumber {
	u, _ := unit.Get(n.dimension, n.symbol)
	out := result.TrialNumber{Name: n.name, Low: n.low, High: n.high, Dimension: string(n.dimension), Symbol: n.symbol, Factor: u.Factor(), Offset: -u.Zero}
	if n.otherwise != nil {
		out.Default = n.otherwise(j)
	}
	return out
}

// places are the routes along which a trial may have been made, the one first that is taken when none is named; the empty one where
// the place does not matter.
func (w *work) places(kind trial.Kind) []result.Kind {
	has := map[result.Kind]bool{result.Room: w.job.Room != nil, result.StaticOven: w.job.StaticOven != nil, result.Tunnel: w.job.Tunnel != nil}
	order := []result.Kind{result.Room, result.StaticOven, result.Tunnel}
	switch kind {
	case trial.Recorder:
		order = []result.Kind{result.Tunnel, result.StaticOven, result.Room}
	case trial.Cure, trial.Sorption:
		return []result.Kind{""}
	}
	return slices.DeleteFunc(order, func(k result.Kind) bool { return !has[k] })
}

// offered are the numbers of the job that a trial along a route can tell.
func (w *work) offered(kind trial.Kind, route result.Kind) ([]result.TrialParameter, error) {
	var all []unknown
	var err error
	switch kind {
	case trial.Weight:
		all, err = w.dryingUnknowns(route)
	case trial.Recorder:
		for i, path := range w.multipliers(route) {
			u, e := w.unknownAt(path)
			if e != nil {
				return nil, e
			}
			if route == result.Tunnel {
				u.field.Label = words.Key("fit.label_of_zone", "label", u.field.Label, "zone", w.job.Tunnel.Zones[i].Name)
			}
			all = append(all, u)
		}
	}
	if err != nil {
		return nil, err
	}
	var out []result.TrialParameter
	for _, u := range all {
		d := u.field.Display
		out = append(out, result.TrialParameter{Path: u.paths[0], Label: u.field.Label, Route: route, Value: u.before, Symbol: d.Symbol,
			Factor: d.Factor, Offset: d.Offset})
	}
	return out, nil
}
