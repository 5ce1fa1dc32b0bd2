package regress

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Parameter is one unknown of a model.
type Parameter struct {
	Name      string
	Start     float64
	Low, High float64 // the search stays inside
	// Log searches in the logarithm, in which intervals are symmetric: for quantities above zero known to a factor.
	Log bool
	// Prior, where not nil, is what is known without the data. It counts as one more datum.
	Prior *Prior
	// Step is the increment of the differences that make the Jacobian, in the search's own scale; 0: a share of the
	// parameter that suits models without noise of their own.
	Step float64
}

// Prior is a normal distribution in the search's own scale (for Log: of the logarithm about ln Mean).
type Prior struct{ Mean, SD float64 }

// inner and outer pass between the parameter and the scale in which it is searched.
func (p *Parameter) inner(v float64) float64 {
	if p.Log {
		return math.Log(v)
	}
	return v
}

func (p *Parameter) outer(u float64) float64 {
	if p.Log {
		return math.Exp(u)
	}
	return u
}

// Model writes the predictions for parameters; an error is a point that cannot be computed, away from which the search turns.
type Model func(parameters, predictions []float64) error

// Data are measured values with their weights: 1/sigma up to a common factor, which the fit finds; nil: all alike.
type Data struct {
	Y      []float64
	Weight []float64
}

// Options say how to fit. The zero value is plain least squares.
type Options struct {
	Robust bool // Huber's loss instead of squares beyond two standard deviations
	// Tolerance ends the search where the next step would change the sum of squares by less than its square, as a share: with 40
	// data 1e-3 is a hundredth of a standard error. 0: 1e-10.
	Tolerance float64
	Central   bool    // differences to both sides
	Budget    int     // evaluations of the model at most; 0: 2000
	Level     float64 // of the intervals; 0: 0.95
	// Sigma, above zero, is the standard deviation of a datum of weight 1, known beforehand; 0: found from the residuals.
	Sigma float64
}

// Fitted is one parameter with what the data say of it.
type Fitted struct {
	Name      string
	Value     float64
	Low, High float64 // of the interval
	Error     float64 // standard error in the search's scale: of the logarithm for Log
	Log       bool
	// Learnt is the share of the prior's spread that the data took away: 0 nothing, 1 all; 1 without a prior.
	Learnt float64
	// AtBound is where a bound stopped the search: the interval is then none.
	AtBound bool
}

// Result is a fit.
type Result struct {
	Parameters  []Fitted
	Covariance  *Matrix // in the search's scale
	Correlation *Matrix
	Predicted   []float64
	Band        []float64 // half width of the interval of the mean prediction
	Residuals   []float64 // measured - predicted
	Weights     []float64 // 1, or less where the robust loss has counted a datum less
	Sigma       float64   // standard deviation of a datum of weight 1
	Freedom     float64   // data less parameters that the data tell
	Sum         float64   // of weighted squares, without priors
	AICc, BIC   float64
	Converged   bool
	Evaluations int

	inner    []float64
	jacobian *Matrix // of the weighted data, in the search's scale
}

const (
	// huber is where the robust loss turns from squares to straight lines, in standard deviations: 2 loses 1 % of efficiency on
	// normal noise, 1.345 would lose 5 % (Huber 1981, Robust Statistics, section 4; numbers from memory).
	huber = 2.0
	// madToSigma makes a standard deviation of the median absolute deviation of normal noise: 1/0.6745.
	madToSigma = 1.4826
	// rounds of reweighting at most; the weights settle in two to four.
	rounds  = 12
	settled = 0.03
)

// Fit finds the parameters at which the weighted squares of y - model, robust where asked, and the priors' together are least.
// Errors: fault.Conflict for fewer data than it takes, fault.Numeric where the model has no value at the start.
func Fit(m Model, d Data, parameters []Parameter, o Options) (*Result, error) {
	f, err := newFit(m, d, parameters, o)
	if err != nil {
		return nil, err
	}
	for range rounds {
		if err := f.settle(); err != nil {
			return nil, err
		}
		if !f.reweigh() {
			break
		}
	}
	return f.result(), nil
}

// fit is a fit at work.
type fit struct {
	model      Model
	data       Data
	parameters []Parameter
	options    Options
	priors     []int     // parameters that have one
	robust     []float64 // weights of the loss
	sigma      float64   // that the priors are measured in
	found      found
	outer      []float64 // scratch
	start      []float64
	spent      int
}

func newFit(m Model, d Data, parameters []Parameter, o Options) (*fit, error) {
	if o.Tolerance == 0 {
		o.Tolerance = 1e-10
	}
	if o.Budget == 0 {
		o.Budget = 2000
	}
	if o.Level == 0 {
		o.Level = 0.95
	}
	f := &fit{model: m, data: d, parameters: parameters, options: o, outer: make([]float64, len(parameters)), sigma: o.Sigma}
	for i, p := range parameters {
		if p.Prior != nil {
			f.priors = append(f.priors, i)
		}
		f.start = append(f.start, p.inner(p.Start))
	}
	f.robust = make([]float64, len(d.Y))
	for i := range f.robust {
		f.robust[i] = 1
	}
	if n := len(d.Y) + len(f.priors); n < len(parameters) || len(parameters) == 0 || len(d.Y) == 0 {
		return nil, fault.New(fault.Conflict, "rows", words.Told("{count} data for {count2} parameters", "count", len(d.Y), "count2", len(parameters)),
			words.Told("Measure more, or fit fewer parameters."))
	}
	return f, nil
}

// weight of datum i without the loss.
func (f *fit) weight(i int) float64 {
	if f.data.Weight == nil {
		return 1
	}
	return f.data.Weight[i]
}

// residuals writes those of the data, then those of the priors: (u - mean)/sd times sigma, so that all are in one measure.
func (f *fit) residuals(u, r []float64) error {
	for i := range u {
		f.outer[i] = f.parameters[i].outer(u[i])
	}
	n := len(f.data.Y)
	if err := f.model(f.outer, r[:n]); err != nil {
		return err
	}
	for i, y := range f.data.Y {
		r[i] = (r[i] - y) * f.weight(i) * math.Sqrt(f.robust[i])
	}
	for k, i := range f.priors {
		p := f.parameters[i].Prior
		r[n+k] = f.sigma * (u[i] - p.inner(&f.parameters[i])) / p.SD
	}
	return nil
}

func (p *Prior) inner(of *Parameter) float64 { return of.inner(p.Mean) }

// settle searches from where the fit stands.
func (f *fit) settle() error {
	p := problem{rows: len(f.data.Y) + len(f.priors), residuals: f.residuals, tolerance: f.options.Tolerance,
		budget: f.options.Budget - f.spent, central: f.options.Central}
	for i := range f.parameters {
		q := &f.parameters[i]
		low, high := q.Low, q.High
		if q.Log {
			low, high = math.Log(low), math.Log(high)
		}
		p.low, p.high, p.step = append(p.low, low), append(p.high, high), append(p.step, q.Step)
	}
	found, err := search(p, f.start)
	f.spent += found.evaluations
	if err != nil {
		return err
	}
	f.found, f.start = found, slices.Clone(found.x)
	return nil
}

// reweigh renews the weights of the loss and the sigma of the priors; it reports whether they moved enough for another round.
func (f *fit) reweigh() bool {
	n := len(f.data.Y)
	plain := make([]float64, n) // weighted residuals without the loss
	for i := range plain {
		plain[i] = f.found.r[i] / math.Sqrt(f.robust[i])
	}
	again := false
	sigma := f.options.Sigma
	if sigma == 0 {
		sigma = f.spread(plain)
	}
	if len(f.priors) > 0 && math.Abs(sigma-f.sigma) > settled*sigma {
		again = true
	}
	f.sigma = sigma
	if f.options.Robust && sigma > 0 {
		for i, r := range plain {
			w := 1.0
			if a := math.Abs(r) / sigma; a > huber {
				w = huber / a
			}
			if math.Abs(w-f.robust[i]) > settled {
				again = true
			}
			f.robust[i] = w
		}
	}
	return again
}

// spread is the standard deviation of residuals: robust ones from their median, which an outlier does not move.
func (f *fit) spread(r []float64) float64 {
	freedom := math.Max(1, float64(len(r)-len(f.parameters)+len(f.priors)))
	plain := math.Sqrt(dot(r, r) / freedom)
	if !f.options.Robust || len(r) < 8 {
		return plain
	}
	size := make([]float64, len(r))
	for i, v := range r {
		size[i] = math.Abs(v)
	}
	slices.Sort(size)
	// Fitted residuals are smaller than the noise by the root of the freedom's share.
	mad := madToSigma * median(size) * math.Sqrt(float64(len(r))/freedom)
	return math.Min(plain, math.Max(mad, 0.3*plain/math.Sqrt(float64(len(r)))))
}

func median(sorted []float64) float64 {
	n := len(sorted)
	if n%2 == 1 {
		return sorted[n/2]
	}
	return (sorted[n/2-1] + sorted[n/2]) / 2
}
