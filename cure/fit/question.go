package fit

import (
	"fmt"
	"hash/fnv"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// Question is what is asked of a trial. Numbers are SI; null or empty means the default that stands beside the field.
type Question struct {
	Kind trial.Kind `json:"kind"`
	// Columns overrule what was recognised in the table.
	Columns []trial.Choice `json:"columns,omitempty"`
	// Parameters to fit, as paths of the job; empty: those that the kind of trial can tell, chosen by the criterion.
	Parameters []string `json:"parameters,omitempty"`
	Criterion  string   `json:"criterion,omitempty"` // aicc (default) or bic
	// Route along which the trial was made (weight, recorder); empty: the first that the job has.
	Route result.Kind `json:"route,omitempty"`
	// Start is when the table's time zero was, from spraying [s]; default: 0 for a weighing, the oven's entry for a recorder.
	Start *float64 `json:"start_s,omitempty"`
	// Area is the coated area of one coupon [m2] (weight); default: that of the job's part.
	Area *float64 `json:"area_m2,omitempty"`
	// Tare is what the scale shows with the bare coupon [kg]; default: unknown, the losses alone count.
	Tare *float64 `json:"tare_kg,omitempty"`
	// Isotherm to fit (sorption): gab or flory_huggins; empty: chosen by the criterion.
	Isotherm job.IsothermKind `json:"isotherm,omitempty"`
	// Threshold is the conversion that a passed test proves; default: the job's full conversion.
	Threshold *float64 `json:"threshold,omitempty"`
	// Repeatability is the standard deviation of such a test in the logarithm of time; default 0.15.
	Repeatability *float64 `json:"repeatability,omitempty"`
	// Reference and Limit are the temperatures [K] of equivalent time and of time above (recorder); defaults 393.15 and the part's limit.
	Reference *float64 `json:"reference_K,omitempty"`
	Limit     *float64 `json:"limit_K,omitempty"`
	// Bare says that the recorded part carries no wet coat while its heating is fitted.
	Bare bool `json:"bare,omitempty"`
	// Plain switches the protection against outliers off, Free the pull towards what the job had.
	Plain bool `json:"plain,omitempty"`
	Free  bool `json:"free,omitempty"`
	// Bootstrap is how many resamplings check the intervals; 0: none. Seed fixes them.
	Bootstrap int    `json:"bootstrap,omitempty"`
	Seed      uint64 `json:"seed,omitempty"`

	// Runs is how many runs of the model the fit may take; 0: as many as it needs. It belongs to whoever carries the fit out.
	Runs int `json:"-"`

	Name string `json:"name,omitempty"` // of the fit, when it is adopted
	Date string `json:"date,omitempty"` // of the trial
	Data string `json:"data,omitempty"` // file name or a few words
}

// Outcome is the answer: what to show, and what to adopt.
type Outcome struct {
	Fit      result.Fit `json:"fit"`
	Adoption job.Fit    `json:"adoption"`
}

// mostResamplings bounds the bootstrap: more only sharpens the noise of a percentile.
const mostResamplings = 2000

// Run reads the table and fits the job to it. Errors are *fault.Fault or fault.List: of the table (path "line 4"), of the question (its
// field), or of the model.
func Run(j job.Job, table []byte, q Question) (Outcome, error) {
	t, err := trial.Read(table)
	if err != nil {
		return Outcome{}, err
	}
	if err := q.check(); err != nil {
		return Outcome{}, err
	}
	d, err := t.Use(q.Kind, q.Columns)
	if err != nil {
		return Outcome{}, err
	}
	if err := job.Validate(j); err != nil {
		return Outcome{}, err
	}
	w := &work{job: job.Clone(j), question: q, data: d}
	err = kinds()[q.Kind](w)
	if over := w.another(0); over != nil { // a search takes a run that failed for a bad place, and goes on
		err = over
	}
	if err != nil {
		return Outcome{}, err
	}
	return w.outcome(table), nil
}

// kinds lists the kinds of trial.
func kinds() map[trial.Kind]func(*work) error {
	return map[trial.Kind]func(*work) error{
		trial.Weight: (*work).weight, trial.Recorder: (*work).recorder, trial.Cure: (*work).cure, trial.Sorption: (*work).sorption,
	}
}

func (q *Question) check() error {
	if kinds()[q.Kind] == nil {
		return fault.New(fault.Choice, "kind", words.Told("{kind} is no kind of trial", "kind", strconv.Quote(string(q.Kind))), words.Told("Give weight, recorder, cure or sorption."))
	}
	if q.Criterion != "" && q.Criterion != "aicc" && q.Criterion != "bic" {
		return fault.New(fault.Choice, "criterion", fmt.Sprintf("%q", q.Criterion), words.Told("Give aicc or bic."))
	}
	if q.Bootstrap < 0 || q.Bootstrap > mostResamplings {
		return fault.OutOfRange("bootstrap", float64(q.Bootstrap), 0, mostResamplings, "", words.Told("A few hundred resamplings are enough."))
	}
	if len(q.Parameters) > 12 {
		return fault.New(fault.Limit, "parameters", fmt.Sprintf("%d", len(q.Parameters)), words.Told("Fit at most 12 numbers at once."))
	}
	for _, n := range numbers() {
		if v := n.at(q); v != nil && !(*v >= n.low && *v <= n.high) {
			return fault.OutOfRange(n.name, *v, n.low, n.high, n.dimension.SI(), words.Told("Check the number and its unit."))
		}
	}
	return nil
}

// or is the number that a pointer holds, or the default.
func or(v *float64, otherwise float64) float64 {
	if v != nil {
		return *v
	}
	return otherwise
}

// digest is the fingerprint of the data.
func digest(table []byte) string {
	h := fnv.New64a()
	h.Write(table)
	return fmt.Sprintf("%016x", h.Sum64())
}
