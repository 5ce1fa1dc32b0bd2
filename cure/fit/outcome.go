package fit

import (
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// outcome puts the numbers into the documents.
func (w *work) outcome(table []byte) Outcome {
	f := &w.fit
	f.Version, f.Kind, f.Count, f.Converged = result.Version, string(w.question.Kind), len(f.Points), w.found.converged
	f.Parameters, f.Correlations, f.Doubts = []result.FitParameter{}, []result.FitCorrelation{}, []result.FitDoubt{}
	stamp := digest(table)
	for _, before := range w.job.Fits {
		if before.Digest == stamp {
			w.note(words.Told("The job has adopted a fit of these very data, “{name}”: drop it first, or they count twice.", "name", before.Name))
		}
	}
	f.Notes = append([]string{}, w.data.Notes...)
	if f.Choices == nil {
		f.Choices = []result.FitChoice{}
	}
	if f.Points == nil {
		f.Points = []result.FitPoint{}
	}
	if f.Curves == nil {
		f.Curves = []result.FitCurve{}
	}
	q := &w.question
	a := job.Fit{Name: q.Name, Kind: job.FitKind(q.Kind), Date: q.Date, Data: q.Data, Digest: stamp, Points: f.Count,
		Values: []job.FittedValue{}, Correlations: []job.FitCorrelation{}, Before: []job.FitBefore{}}
	if a.Name == "" {
		a.Name = "Fit of " + string(q.Kind) + " data"
	}
	for i := range w.unknowns {
		if len(w.unknowns[i].paths) > 0 {
			w.parameter(i, &a)
		}
	}
	w.doubts()
	return Outcome{Fit: *f, Adoption: a}
}

// parameter reports unknown i.
func (w *work) parameter(i int, a *job.Fit) {
	u, e := &w.unknowns[i], &w.found
	d := u.field.Display
	p := result.FitParameter{Path: u.paths[0], Label: u.field.Label, Value: w.outer(i, e.inner[i]), StandardError: finiteOr(math.Sqrt(e.covariance.At(i, i)), 0),
		Logarithmic: u.parameter.Log, Before: u.before, Learnt: e.learnt[i], Symbol: d.Symbol, Factor: d.Factor, Offset: d.Offset}
	if half := e.quantile * p.StandardError; !e.held[i] && !math.IsInf(half, 0) && !math.IsNaN(half) {
		low, high := math.Max(u.parameter.Low, w.outer(i, e.inner[i]-half)), math.Min(u.parameter.High, w.outer(i, e.inner[i]+half))
		p.Low, p.High = number(math.Min(low, p.Value)), number(math.Max(high, p.Value))
	}
	if w.bootLow != nil {
		p.BootstrapLow, p.BootstrapHigh = number(w.bootLow[i]), number(w.bootHigh[i])
	}
	w.fit.Parameters = append(w.fit.Parameters, p)
	for _, path := range u.paths {
		a.Values = append(a.Values, job.FittedValue{Path: path, Value: p.Value, Low: p.Low, High: p.High, StandardError: p.StandardError,
			Logarithmic: p.Logarithmic})
	}
	for _, path := range u.paths[1:] { // one number in several places
		a.Correlations = append(a.Correlations, job.FitCorrelation{First: u.paths[0], Second: path, Correlation: 1})
	}
	for k := range i {
		if len(w.unknowns[k].paths) == 0 {
			continue
		}
		c := w.correlation(k, i)
		w.fit.Correlations = append(w.fit.Correlations, result.FitCorrelation{First: w.unknowns[k].paths[0], Second: p.Path, Value: c})
		a.Correlations = append(a.Correlations, job.FitCorrelation{First: w.unknowns[k].paths[0], Second: p.Path, Correlation: c})
	}
}

func (w *work) correlation(i, k int) float64 {
	c := w.found.covariance
	d := math.Sqrt(c.At(i, i) * c.At(k, k))
	if !(d > 0) {
		return 0
	}
	return math.Max(-1, math.Min(1, c.At(i, k)/d))
}

const (
	// idle is the share learnt below which a number is said to rest on what was there before.
	idle = 0.3
	// married is the correlation from which on two numbers are told only together.
	married = 0.97
	// strayed is how far bootstrap and Jacobian may differ, as a share of the interval, before the model is called bent.
	strayed = 0.35
)

// doubts says what the trial cannot tell.
func (w *work) doubts() {
	f := &w.fit
	labels := map[string]string{}
	for _, u := range append(w.left, w.unknowns...) {
		if len(u.paths) > 0 {
			labels[u.paths[0]] = u.field.Label
		}
	}
	add := func(code string, value float64, paths ...string) {
		d := result.FitDoubt{Code: code, Paths: append([]string{}, paths...), Labels: []string{}, Value: value}
		for _, p := range paths {
			d.Labels = append(d.Labels, labels[p])
		}
		f.Doubts = append(f.Doubts, d)
	}
	for _, u := range w.left {
		add("left", u.before, u.paths[0])
	}
	if w.found.quantile > 1e6 && len(f.Parameters) > 0 {
		add("few", float64(f.Count))
	}
	for i, n := 0, 0; i < len(w.unknowns); i++ {
		u := &w.unknowns[i]
		if len(u.paths) == 0 {
			continue
		}
		p := &f.Parameters[n]
		n++
		switch {
		case w.found.held[i]:
			add("bound", p.Value, p.Path)
		case u.parameter.Prior != nil && p.Learnt < idle:
			add("prior", p.Learnt, p.Path)
		case p.Low != nil:
			width := *p.High - *p.Low
			if p.Logarithmic {
				if width = math.Log(*p.High / *p.Low); width > u.wide {
					add("wide", math.Exp(width), p.Path)
				}
			} else if width > u.wide {
				add("wide", width, p.Path)
			}
		}
		if p.BootstrapLow != nil && p.Low != nil && !w.found.held[i] {
			inner := func(v float64) float64 {
				if p.Logarithmic {
					return math.Log(v)
				}
				return v
			}
			width := inner(*p.High) - inner(*p.Low)
			off := math.Max(math.Abs(inner(*p.BootstrapLow)-inner(*p.Low)), math.Abs(inner(*p.BootstrapHigh)-inner(*p.High)))
			if width > 0 && off > strayed*width {
				add("bent", off/width, p.Path)
			}
		}
	}
	for _, c := range f.Correlations {
		if math.Abs(c.Value) > married && c.First != frequency { // the factor only stands for the rate at the tests' temperature
			add("together", c.Value, c.First, c.Second)
		}
	}
	outliers := 0
	for _, p := range f.Points {
		if p.Weight < 0.5 {
			outliers++
		}
	}
	if outliers > 0 {
		add("outliers", float64(outliers))
	}
	if share, yes := astray(f.Points); yes && w.question.Kind == trial.Weight {
		add("astray", share)
	}
}

// note adds a remark on how the data were taken.
func (w *work) note(text string) {
	w.data.Notes = append(w.data.Notes, text)
}

// nuisance is an unknown that is measured beside.
func nuisance(name string, start, low, high float64, log bool) unknown {
	return unknown{parameter: regress.Parameter{Name: name, Start: start, Low: low, High: high, Log: log}}
}
