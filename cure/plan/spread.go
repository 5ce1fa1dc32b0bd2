package plan

import (
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// SpreadQuestion asks how sure a setting is while inputs vary by what is usual or stated.
type SpreadQuestion struct {
	Study      Study       `json:"study"`
	Tolerances []Tolerance `json:"tolerances"` // empty: DefaultTolerances
	Rows       int         `json:"rows"`       // of one replicate, a power of two from 4 to 4096; 0: 8
	Replicates int         `json:"replicates"` // 4 to 64; 0: 8
	Seed       int         `json:"seed"`       // the same seed gives the same samples; 0: 1
}

// Tolerance is how much an input varies from part to part, day to day, or against what is believed of it.
type Tolerance struct {
	Variable string  `json:"variable"`
	Shape    Shape   `json:"shape"`
	Width    float64 `json:"width"`    // standard deviation of a normal spread, half the width of a uniform one; SI
	Relative bool    `json:"relative"` // Width is a share of the present value
}

// Shape is how values lie around the present one.
type Shape string

// The shapes.
const (
	Normal  Shape = "normal"
	Uniform Shape = "uniform" // anywhere within the half width, nowhere outside
)

// Spread is how sure a setting is, and which inputs decide. It comes from coarse to fine: the last one is Complete.
type Spread struct {
	Route      result.Kind       `json:"route"`
	Goal       sim.Goal          `json:"goal"`
	Chance     Chance            `json:"chance"`     // that every criterion is met
	Criteria   []CriterionChance `json:"criteria"`   // the least sure first
	Influences []Influence       `json:"influences"` // one for each tolerance, the strongest first
	Present    Standing          `json:"present"`    // the job as it is
	Shares     []float64         `json:"shares"`     // of the tightest criterion in each sample, rising, 2 at most; for a picture
	Ready      []float64         `json:"ready_s"`    // in the samples that got ready, rising
	Late       int               `json:"late"`       // samples that did not get ready while they were followed
	Samples    int               `json:"samples"`    // behind the chances
	Refused    int               `json:"refused"`    // of them with values that validation does not accept, counted as not met
	Planned    int               `json:"planned"`    // settings to be judged in all
	Complete   bool              `json:"complete"`
	Runs       int               `json:"runs"`   // settings judged so far
	Text       string            `json:"text"`   // the answer in a sentence or two
	Detail     string            `json:"detail"` // how it was sampled
}

// Chance is a probability estimated from samples.
type Chance struct {
	Value float64 `json:"value"`
	Error float64 `json:"error"` // standard error
	Low   float64 `json:"low"`   // of an interval that holds the truth 95 times out of 100
	High  float64 `json:"high"`
}

// CriterionChance is the chance that one criterion is met.
type CriterionChance struct {
	Name   result.CriterionName `json:"name"`
	Chance Chance               `json:"chance"`
	Text   string               `json:"text"`
}

// Influence is how much of the spread of an outcome comes from one input. Indices are shares of the variance.
type Influence struct {
	Variable  Variable  `json:"variable"`
	Tolerance Tolerance `json:"tolerance"`
	Share     Index     `json:"share"`   // of the tightest criterion's share
	Ready     *Index    `json:"ready_s"` // of the time until ready; null: some samples never got ready
	Text      string    `json:"text"`
}

// Index holds the variance-based indices of one input for one outcome, each with its standard error. They can fall a little
// outside 0..1 by that error.
type Index struct {
	First      float64 `json:"first"` // what the variance would lose on average if the input were known
	FirstError float64 `json:"first_error"`
	Total      float64 `json:"total"` // what would be left if all others were known: with everything the input takes part in
	TotalError float64 `json:"total_error"`
}
