package fit

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

const (
	// mostMoments is how many moments of a record drive a run; more are averaged in equal stretches.
	mostMoments = 1500
	// mostFitted is how many of them are fitted.
	mostFitted = 150
	// defaultReference is the temperature of equivalent times [K]: 120 degC, at which data sheets state schedules.
	defaultReference = 393.15
	// bareCoat stands for no coat where the heating of a bare part is fitted [kg/m2]: a gram, whose heat is a thousandth of the part's.
	bareCoat, bareSolids = 1e-3, 0.7
	// warmStart is how far the first reading may be from the run before it is said [K].
	warmStart = 3.0
)

// recorder reads what an oven recorder has written. It runs the film along the real curve, and from the part's own heating it
// tells the multiplier of the coefficient of the oven, or of each zone that the record covers.
func (w *work) recorder() error {
	kind, err := w.ovenRoute()
	if err != nil {
		return err
	}
	start := or(w.question.Start, w.entry(kind))
	rec := sim.Recording{Air: w.trace(trial.AirTemperature, start), Part: w.trace(trial.PartTemperature, start)}
	w.reach(kind, lastOf(rec))
	if err := w.recorded(kind, rec); err != nil {
		return err
	}
	w.fit.Axes = result.FitAxes{X: words.Told("time"), XUnit: "s", Y: words.Told("part temperature"), YUnit: "K"}
	if rec.Part == nil {
		w.note(words.Told("Without the part's temperature no coefficient can be fitted."))
		w.fit.Converged, w.found.converged = true, true
		return nil
	}
	return w.heating(kind, rec)
}

func (w *work) ovenRoute() (result.Kind, error) {
	if w.question.Route == "" {
		for _, k := range []result.Kind{result.Tunnel, result.StaticOven} {
			if k == result.Tunnel && w.job.Tunnel != nil || k == result.StaticOven && w.job.StaticOven != nil {
				w.question.Route = k
				break
			}
		}
	}
	return w.route()
}

// entry is when the part enters the oven, from spraying [s].
func (w *work) entry(kind result.Kind) float64 {
	switch kind {
	case result.StaticOven:
		return w.job.StaticOven.LoadedAfter
	case result.Tunnel:
		return w.job.Tunnel.EnteredAfter
	}
	return 0
}

// recorded runs the film along the record.
func (w *work) recorded(kind result.Kind, rec sim.Recording) error {
	if rec.Air == nil && rec.Part == nil {
		return fault.New(fault.Missing, "rows", "", words.Told("The record needs two readings or more."))
	}
	rt, err := sim.Recorded(&w.job, kind, rec)
	if err != nil {
		return err
	}
	r := &result.Recorded{Route: rt, Reference: or(w.question.Reference, defaultReference), Limit: or(w.question.Limit, w.job.Part.LimitTemperature),
		WhoseTemperature: "part"}
	seen := rec.Part
	if seen == nil {
		r.WhoseTemperature = "film"
		seen = &sim.Trace{}
		for i, t := range rt.Curves.Time {
			if t >= rec.Air.Time[0] {
				seen.Time, seen.Temperature = append(seen.Time, t), append(seen.Temperature, rt.Curves.FilmTemperature[i])
			}
		}
	}
	r.TimeAbove, r.Peak = above(seen, r.Limit)
	if x := w.job.Film.Adhesive.Crosslinking; x != nil {
		law, _, err := x.Law()
		if err != nil {
			return err
		}
		var history []kinetics.Moment
		for i, t := range seen.Time {
			history = append(history, kinetics.Moment{Time: t, T: seen.Temperature[i]})
		}
		r.EquivalentTime = number(kinetics.EquivalentTime(history, r.Reference, law.E1))
	}
	w.fit.Recorded = r
	return nil
}

// heating fits the multipliers to the recorded part.
func (w *work) heating(kind result.Kind, rec sim.Recording) error {
	if w.question.Bare {
		w.job.Film.WetCoat, w.job.Film.Adhesive.Solids, w.job.Pile = bareCoat, bareSolids, nil
		w.job.Part.StartTemperature = &rec.Part.Temperature[0]
	}
	part := thin(rec.Part, min(len(rec.Part.Time), mostFitted))
	offered, err := w.zoneUnknowns(kind, part)
	if err != nil {
		return err
	}
	set, _, err := w.candidates(offered)
	if err != nil {
		return err
	}
	d := regress.Data{Y: part.Temperature}
	model := func(p, out []float64) error {
		temperatures, err := w.backs(kind, set, p, part.Time, rec.Air)
		copy(out, temperatures)
		return err
	}
	r, err := regress.Fit(model, d, parameters(set), w.options())
	if err != nil {
		return err
	}
	w.take(set, r)
	for i, y := range d.Y {
		w.fit.Points = append(w.fit.Points, result.FitPoint{X: part.Time[i], Y: y, Predicted: r.Predicted[i], Residual: r.Residuals[i], Weight: r.Weights[i]})
	}
	if off := r.Residuals[0]; math.Abs(off) > warmStart {
		w.note(words.Told("At its first reading the part is {off} K from what the job says of the time before: check the part's start temperature and when the record begins.", "off", words.Figure(fmt.Sprintf("%+.1f", off))))
	}
	if err := w.coefficients(kind, set, r, part, rec.Air); err != nil {
		return err
	}
	w.curve("", part.Time, func(p []float64) ([]float64, error) { return w.backs(kind, set, p, part.Time, rec.Air) })
	return w.resample(model, d, set, r)
}

// coefficients notes what the fitted multipliers come to: the mean coefficient at the coated face while the part is in each place.
func (w *work) coefficients(kind result.Kind, set []unknown, r *regress.Result, part *sim.Trace, air *sim.Trace) error {
	var p []float64
	for _, q := range r.Parameters {
		p = append(p, q.Value)
	}
	j := job.Clone(w.job)
	if err := fill(&j, set, p); err != nil {
		return err
	}
	samples, err := sim.Follow(&j, kind, part.Time, air)
	if err != nil {
		return err
	}
	mean := func(name string, from, to float64) {
		sum, n := 0.0, 0
		for i, t := range part.Time {
			if t >= from && t < to {
				sum, n = sum+samples[i].H, n+1
			}
		}
		if n > 0 {
			w.note(words.Told("{name}: {sum} W/(m²·K) at the coated face, on the mean of the record.", "name", name, "sum", words.Figure(fmt.Sprintf("%.3g", sum/float64(n)))))
		}
	}
	if kind != result.Tunnel {
		mean("Oven", math.Inf(-1), math.Inf(1))
		return nil
	}
	at := j.Tunnel.EnteredAfter
	for _, z := range j.Tunnel.Zones {
		end := at + z.Length/j.Tunnel.LineSpeed
		mean(z.Name, at, end)
		at = end
	}
	return nil
}

// backs follows the part and returns the temperature of its back, where a recorder's sensor sits.
func (w *work) backs(kind result.Kind, set []unknown, p, times []float64, air *sim.Trace) ([]float64, error) {
	if err := w.another(1); err != nil {
		return nil, err
	}
	j := job.Clone(w.job)
	if err := fill(&j, set, p); err != nil {
		return nil, err
	}
	samples, err := sim.Follow(&j, kind, times, air)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(samples))
	for i, s := range samples {
		out[i] = s.Back
	}
	return out, nil
}

// zoneUnknowns are the multipliers of the places that the record covers.
func (w *work) zoneUnknowns(kind result.Kind, part *sim.Trace) ([]unknown, error) {
	var paths, names []string
	if kind != result.Tunnel {
		paths, names = w.multipliers(kind), []string{""}
	} else {
		at := w.job.Tunnel.EnteredAfter
		first, last := part.Time[0], part.Time[len(part.Time)-1]
		for i, z := range w.job.Tunnel.Zones {
			end := at + z.Length/w.job.Tunnel.LineSpeed
			if at < last && end > first {
				paths, names = append(paths, fmt.Sprintf("tunnel.zones[%d].%s", i, multiplier)), append(names, z.Name)
			}
			at = end
		}
	}
	if len(paths) == 0 {
		return nil, fault.New(fault.Conflict, "start_s", words.Told("the record covers no zone"), words.Told("State when the record begins, counted from spraying."))
	}
	var all []unknown
	for i, path := range paths {
		u, err := w.unknownAt(path)
		if err != nil {
			return nil, err
		}
		u.parameter.Step = filmStep
		if names[i] != "" {
			u.field.Label = words.Key("fit.label_of_zone", "label", u.field.Label, "zone", names[i])
		}
		all = append(all, u)
	}
	return all, nil
}
