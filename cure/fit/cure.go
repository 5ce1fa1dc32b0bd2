package fit

import (
	"fmt"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// cureTests are the rows of cure tests: time held, temperature at the end, and at the start where the test was a ramp.
type cureTests struct {
	time, end, start []float64
	outcome          []float64 // conversion, or 1 passed and 0 failed
	reference        float64   // temperature at which the rate is searched [K]
}

// dose is the time at the reference temperature that does what test i does, for the activation energy e: the equivalent time.
func (c *cureTests) dose(i int, e float64) float64 {
	return kinetics.EquivalentTime([]kinetics.Moment{{Time: 0, T: c.start[i]}, {Time: c.time[i], T: c.end[i]}}, c.reference, e)
}

// conversion is what order n has reached after the dose k t: the inverse of kinetics.OrderIntegral, in the form that passes into
// 1 - exp(-kt) as n nears 1.
func conversion(kt, n float64) float64 {
	if n == 1 {
		return -math.Expm1(-kt)
	}
	left := (n-1)*kt + 1
	if left <= 0 { // below order 1 all has reacted in a finite time
		return 1
	}
	return -math.Expm1(-math.Log(left) / (n - 1))
}

// cure fits rate and activation energy, and the order where conversions tell it, to tests of a dry film. The search runs in the rate
// constant at the tests' mean temperature, which the tests tell almost apart from the activation energy; the frequency factor
// A = k exp(E/(R T)) follows, with the covariance carried over.
func (w *work) cure() error {
	c := &cureTests{time: w.data.Numbers[trial.Time], end: w.data.Numbers[trial.Temperature], start: w.data.Numbers[trial.Start]}
	passed := w.data.Numbers[trial.Passed]
	if c.outcome = w.data.Numbers[trial.Conversion]; c.outcome == nil {
		c.outcome = passed
	} else if passed != nil {
		return fault.New(fault.Conflict, "columns", words.Told("conversions and verdicts in one table"), words.Told("Fit them apart."))
	}
	if c.start == nil {
		c.start = c.end
	}
	c.start = slices.Clone(c.start)
	for i, v := range c.start {
		if math.IsNaN(v) {
			c.start[i] = c.end[i]
		}
		c.reference += 1 / c.end[i]
		if c.time[i] <= 0 {
			return fault.OutOfRange(fmt.Sprintf("line %d", w.data.Lines[i]), c.time[i], 0, 1e9, "s", words.Told("A test takes some time."))
		}
	}
	c.reference = float64(len(c.end)) / c.reference
	if w.job.Film.Adhesive.Crosslinking == nil {
		w.job.Film.Adhesive.Crosslinking = job.Default().Film.Adhesive.Crosslinking
		w.note("The job has no crosslinker; the fit starts from the model adhesive's.")
	}
	x := w.job.Film.Adhesive.Crosslinking
	if x.Autocatalysis != nil {
		return fault.New(fault.Conflict, "film.adhesive.crosslinking.autocatalysis", "is given", words.Told("Cure tests are fitted to plain order n: take it out first."))
	}
	law, _, err := x.Law()
	if err != nil {
		return err
	}
	x.FrequencyFactor, x.ActivationEnergy = law.A1, law.E1 // what a schedule means
	all, err := w.rateUnknowns(c, law)
	if err != nil {
		return err
	}
	w.fit.Axes = result.FitAxes{X: "time", XUnit: "s", Y: "conversion", YUnit: "1"}
	if passed != nil && w.data.Numbers[trial.Conversion] == nil {
		return w.passFail(c, all[:2])
	}
	return w.conversions(c, all)
}

// rateUnknowns are the rate constant at the reference temperature (reported as frequency factor), the activation energy, the order.
func (w *work) rateUnknowns(c *cureTests, law kinetics.Law) ([]unknown, error) {
	var all []unknown
	for _, path := range []string{frequency, activation, order} {
		u, err := w.unknownAt(path)
		if err != nil {
			return nil, err
		}
		all = append(all, u)
	}
	k, _ := law.Constants(c.reference)
	all[0].parameter = regress.Parameter{Name: frequency, Start: k, Low: 1e-14, High: 1e3, Log: true}
	all[0].wide = math.Inf(1) // judged by the times that it gives, together with the activation energy
	if !w.question.Free {
		all[0].parameter.Prior = &regress.Prior{Mean: k, SD: 2} // data sheets and tests differ by a factor of seven either way at most
	}
	return all, nil
}

// rates reads rate constant, activation energy and order out of the parameters of a set of unknowns; what is not among them is the job's.
func (w *work) rates(set []unknown, p []float64) (k, e, n float64) {
	x := w.job.Film.Adhesive.Crosslinking
	e, n = x.ActivationEnergy, x.Order
	for i, u := range set {
		switch u.paths[0] {
		case frequency:
			k = p[i]
		case activation:
			e = p[i]
		case order:
			n = p[i]
		}
	}
	return k, e, n
}

// conversions fits measured conversions.
func (w *work) conversions(c *cureTests, all []unknown) error {
	d := regress.Data{Y: c.outcome}
	model := func(set []unknown) regress.Model {
		return func(p, out []float64) error {
			k, e, n := w.rates(set, p)
			for i := range out {
				out[i] = conversion(k*c.dose(i, e), n)
			}
			return nil
		}
	}
	try := func(set []unknown) (*regress.Result, error) {
		o := w.options()
		o.Central, o.Tolerance = true, 1e-8
		return regress.Fit(model(set), d, parameters(set), o)
	}
	sets := [][]unknown{all[:2], all}
	if len(c.time) < 4 {
		sets = sets[:1]
	}
	if len(w.question.Parameters) > 0 {
		set := []unknown{all[0]}
		for _, u := range all[1:] {
			if slices.Contains(w.question.Parameters, u.paths[0]) {
				set = append(set, u)
			}
		}
		sets = [][]unknown{set}
	}
	var best priced
	for _, set := range sets {
		r, err := try(set)
		if err != nil {
			return err
		}
		w.fit.Choices = append(w.fit.Choices, result.FitChoice{Paths: pathsOf(set), AICc: number(r.AICc), BIC: r.BIC})
		if best.result == nil || w.cost(r) < w.cost(best.result) {
			best = priced{set, r}
		}
	}
	for i := range w.fit.Choices {
		w.fit.Choices[i].Chosen = equal(w.fit.Choices[i].Paths, pathsOf(best.unknowns))
	}
	w.take(best.unknowns, best.result)
	for i, y := range c.outcome {
		w.fit.Points = append(w.fit.Points, result.FitPoint{Series: c.series(i), Line: w.data.Lines[i], X: c.time[i], Y: y,
			Predicted: best.result.Predicted[i], Residual: best.result.Residuals[i], Weight: best.result.Weights[i]})
	}
	if err := w.resample(model(best.unknowns), d, best.unknowns, best.result); err != nil {
		return err
	}
	w.drawCure(c, best.unknowns)
	w.toFrequency(c)
	return nil
}

// series names the conditions of test i.
func (c *cureTests) series(i int) string {
	celsius := func(k float64) string { return fmt.Sprintf("%.4g °C", k-273.15) }
	if c.start[i] != c.end[i] {
		return celsius(c.start[i]) + " to " + celsius(c.end[i])
	}
	return celsius(c.end[i])
}

// drawCure draws conversion over time at each temperature that was held.
func (w *work) drawCure(c *cureTests, set []unknown) {
	drawn := map[string]bool{}
	for i := range c.time {
		name := c.series(i)
		if drawn[name] || c.start[i] != c.end[i] || len(drawn) == 12 {
			continue
		}
		drawn[name] = true
		longest := 0.0
		for k := range c.time {
			if c.series(k) == name {
				longest = math.Max(longest, c.time[k])
			}
		}
		var x []float64
		for s := range 41 {
			x = append(x, 1.2*longest*float64(s)/40)
		}
		T := c.end[i]
		w.curve(name, x, func(p []float64) ([]float64, error) {
			k, e, n := w.rates(set, p)
			k *= math.Exp(-e / kinetics.GasConstant * (1/T - 1/c.reference))
			out := make([]float64, len(x))
			for s, t := range x {
				out[s] = conversion(k*t, n)
			}
			return out, nil
		})
	}
}

// cureTime is what the fit comes to at the tests' mean temperature, where its rate is known best: frequency factor and activation
// energy have wide intervals that go together, the time has not.
func (w *work) cureTime(c *cureTests) {
	n := w.job.Film.Adhesive.Crosslinking.Order
	for i, u := range w.unknowns {
		if u.paths[0] == order {
			n = w.found.inner[i]
		}
	}
	full := w.job.Targets.FullConversion
	dose := kinetics.OrderIntegral(full, n)
	t := &result.FitTime{Temperature: c.reference, Conversion: full, Time: dose * math.Exp(-w.found.inner[0])}
	if half := w.found.quantile * math.Sqrt(w.found.covariance.At(0, 0)); half < 50 {
		t.Low, t.High = number(t.Time*math.Exp(-half)), number(t.Time*math.Exp(half))
	}
	w.fit.CureTime = t
}

// toFrequency turns the rate constant at the reference temperature into the frequency factor: ln A = ln k + E/(R T).
func (w *work) toFrequency(c *cureTests) {
	c1 := 0.0 // d ln A/dE
	energy := w.job.Film.Adhesive.Crosslinking.ActivationEnergy / (kinetics.GasConstant * c.reference)
	at := -1
	for i, u := range w.unknowns {
		if u.paths[0] == activation {
			at, c1 = i, 1/(kinetics.GasConstant*c.reference)
			energy = w.found.inner[i] * c1
		}
	}
	w.cureTime(c)
	w.found.inner[0] += energy
	if v := w.found.covariance; at >= 0 {
		v.Set(0, 0, v.At(0, 0)+2*c1*v.At(0, at)+c1*c1*v.At(at, at))
		for i := 1; i < len(w.unknowns); i++ {
			cross := v.At(0, i) + c1*v.At(at, i)
			v.Set(0, i, cross)
			v.Set(i, 0, cross)
		}
	}
	p := &w.unknowns[0].parameter
	p.Low, p.High = w.unknowns[0].field.Low, w.unknowns[0].field.High
	if w.bootLow != nil { // resampled rates say nothing of the factor alone
		w.bootLow[0], w.bootHigh[0] = math.NaN(), math.NaN()
	}
}
