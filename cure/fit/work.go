package fit

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// work is one fit at work: the question, then what has been found.
type work struct {
	job      job.Job
	question Question
	data     *trial.Data
	table    map[string]job.Field

	unknowns []unknown
	found    estimate
	fit      result.Fit
	bootLow  []float64
	bootHigh []float64
	left     []unknown // what the criterion has left out
	runs     int       // of the model so far
}

// another counts further runs of the model. Errors: fault.Limit where the question allows no more.
func (w *work) another(runs int) error {
	if w.runs += runs; w.question.Runs == 0 || w.runs <= w.question.Runs {
		return nil
	}
	return fault.New(fault.Limit, "", words.Told("the fit needs more than {runs} runs of the model", "runs", w.question.Runs),
		words.Told("Ask for less at once: fewer numbers, coupons or resamplings."))
}

// estimate is the numbers told, in the order of the unknowns and in the search's scale.
type estimate struct {
	inner      []float64
	covariance *regress.Matrix
	quantile   float64 // half an interval in standard errors; +Inf where there is none
	held       []bool  // on a bound
	learnt     []float64
	converged  bool
}

// priced is a fit of one set of unknowns with what it costs.
type priced struct {
	unknowns []unknown
	result   *regress.Result
}

// options of the regression. The search ends where its next step would be a twentieth of a standard error: one more run of the film for
// digits that nobody can tell.
func (w *work) options() regress.Options {
	return regress.Options{Robust: !w.question.Plain && len(w.data.Lines) >= 8, Tolerance: 1e-2, Budget: 4000}
}

// take keeps a regression's result as the estimate.
func (w *work) take(unknowns []unknown, r *regress.Result) {
	n := len(unknowns)
	e := estimate{inner: make([]float64, n), covariance: r.Covariance, quantile: math.Inf(1), held: make([]bool, n),
		learnt: make([]float64, n), converged: r.Converged}
	for i, p := range r.Parameters {
		e.inner[i], e.held[i], e.learnt[i] = p.Value, p.AtBound, p.Learnt
		if p.Log {
			e.inner[i] = math.Log(p.Value)
		}
	}
	if r.Freedom >= 0.5 {
		e.quantile = regress.Quantile(0.95, math.Max(1, r.Freedom))
	}
	w.unknowns, w.found = unknowns, e
	w.fit.Freedom, w.fit.Scatter = r.Freedom, finiteOr(r.Sigma, 0)
	w.fit.AICc, w.fit.BIC = number(r.AICc), number(r.BIC)
}

// number is a pointer to a finite number, else nil: JSON has no infinity.
func number(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return &v
}

func finiteOr(v, otherwise float64) float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return otherwise
	}
	return v
}

// parameters of unknowns.
func parameters(unknowns []unknown) []regress.Parameter {
	var p []regress.Parameter
	for _, u := range unknowns {
		p = append(p, u.parameter)
	}
	return p
}

// resample checks the intervals by bootstrap, where it was asked for.
func (w *work) resample(m regress.Model, d regress.Data, unknowns []unknown, r *regress.Result) error {
	if w.question.Bootstrap == 0 || r.Freedom < 1 {
		return nil
	}
	var err error
	w.bootLow, w.bootHigh, err = regress.Bootstrap(m, d, parameters(unknowns), w.options(), r, w.question.Bootstrap,
		regress.NewRandom(w.question.Seed))
	return err
}

// fill writes the values of unknowns into a job.
func fill(j *job.Job, unknowns []unknown, values []float64) error {
	for i, u := range unknowns {
		for _, p := range u.paths {
			if err := job.SetNumber(j, p, values[i]); err != nil {
				return err
			}
		}
	}
	return nil
}

// candidates are the unknowns that the question names, or else those offered.
func (w *work) candidates(offered []unknown) (all []unknown, chosen bool, err error) {
	if len(w.question.Parameters) == 0 {
		return offered, false, nil
	}
	for _, path := range w.question.Parameters {
		u, ok := byPath(offered, path)
		if !ok {
			if u, err = w.unknownAt(path); err != nil {
				return nil, false, err
			}
		}
		all = append(all, u)
	}
	return all, true, nil
}

func byPath(all []unknown, path string) (unknown, bool) {
	for _, u := range all {
		for _, p := range u.paths {
			if p == path {
				return u, true
			}
		}
	}
	return unknown{}, false
}

// choose fits every set of the candidates that holds the first of them and keeps the one that the criterion likes best; with more than
// four it tries to leave out one after the other, as long as that helps. The first is the transfer multiplier: no law of heat
// transfer is trusted so far as to be left as it is. All sets start from what the whole set has found.
func (w *work) choose(candidates []unknown, try func(set []unknown) (*regress.Result, error)) (priced, error) {
	var best priced
	var cost float64
	attempt := func(set []unknown) error {
		r, err := try(set)
		if err != nil {
			return err
		}
		c := w.cost(r)
		w.fit.Choices = append(w.fit.Choices, result.FitChoice{Paths: pathsOf(set), AICc: number(r.AICc), BIC: r.BIC})
		// With so few data that the criterion has no value the smaller set counts, which is tried later.
		if best.result == nil || c < cost || math.IsInf(c, 1) && math.IsInf(cost, 1) {
			best, cost = priced{set, r}, c
		}
		return nil
	}
	n := len(candidates)
	if n <= 4 {
		for mask := 1<<n - 1; mask > 0; mask -= 2 {
			if mask == 1<<n-3 { // after the whole set
				for i := range candidates {
					candidates[i].parameter.Start = best.result.Parameters[i].Value
				}
			}
			var set []unknown
			for i, u := range candidates {
				if mask>>i&1 == 1 {
					set = append(set, u)
				}
			}
			if err := attempt(set); err != nil {
				return best, err
			}
		}
	} else if err := w.shrink(candidates, &best, attempt); err != nil {
		return best, err
	}
	for i := range w.fit.Choices {
		c := &w.fit.Choices[i]
		c.Chosen = equal(c.Paths, pathsOf(best.unknowns))
	}
	for _, u := range candidates {
		if _, there := byPath(best.unknowns, u.paths[0]); !there {
			w.left = append(w.left, u)
		}
	}
	return best, nil
}

// cost is the criterion's value of a fit; +Inf where there are too few data for it.
func (w *work) cost(r *regress.Result) float64 {
	if w.question.Criterion == "bic" {
		return r.BIC
	}
	return r.AICc
}

// shrink leaves out one unknown after the other.
func (w *work) shrink(candidates []unknown, best *priced, attempt func([]unknown) error) error {
	if err := attempt(candidates); err != nil {
		return err
	}
	for {
		from := best.unknowns
		for i := range from {
			if len(from) == 1 {
				return nil
			}
			rest := append(append([]unknown{}, from[:i]...), from[i+1:]...)
			if err := attempt(rest); err != nil {
				return err
			}
		}
		if len(best.unknowns) == len(from) {
			return nil
		}
	}
}

func pathsOf(set []unknown) []string {
	paths := []string{}
	for _, u := range set {
		if len(u.paths) > 0 {
			paths = append(paths, u.paths[0])
		}
	}
	return paths
}

func equal(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
