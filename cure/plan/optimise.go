package plan

import (
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// OptimiseQuestion asks for the settings that take least while they stay as sure as wanted.
type OptimiseQuestion struct {
	Study      Study       `json:"study"`
	Objective  Objective   `json:"objective"`
	Free       []Axis      `json:"free"`       // variables with the bounds that are allowed; Low and High both 0: where the trade usually is
	Tolerances []Tolerance `json:"tolerances"` // empty: DefaultTolerances
	Confidence float64     `json:"confidence"` // chance that every criterion is met; 0: 0.95
	Seed       int         `json:"seed"`       // of the spread that checks the answer; 0: 1
}

// Objective is what is to be least.
type Objective string

// The objectives, each for one square metre of coated faces.
const (
	LeastEnergy Objective = "energy"
	LeastCost   Objective = "cost" // of energy at the job's tariffs, and of the labour that its costs state
)

// Optimum is the best setting found. It comes as the search goes: the last one is Complete.
type Optimum struct {
	Route      result.Kind      `json:"route"`
	Goal       sim.Goal         `json:"goal"`
	Objective  Objective        `json:"objective"`
	Confidence float64          `json:"confidence"` // wanted
	Currency   string           `json:"currency"`
	Found      bool             `json:"found"`    // a setting that is as sure as wanted
	Settings   []OptimalSetting `json:"settings"` // of the free variables
	Present    Standing         `json:"present"`  // the job as it is; its value is 0
	Best       *Standing        `json:"best"`     // a plain run at the settings; null: none was good
	Before     *float64         `json:"before"`   // the objective at present, energy in J/m2 or cost per m2
	After      *float64         `json:"after"`
	Share      float64          `json:"share"`  // tightest at the settings, by the plain run
	Spread     *Spread          `json:"spread"` // at the settings; null: not yet, or none was good
	Path       []OptimalStep    `json:"path"`   // each improvement, in order
	Rounds     int              `json:"rounds"` // how often the reserve for the spread had to be corrected
	Complete   bool             `json:"complete"`
	Runs       int              `json:"runs"`
	Text       string           `json:"text"`
	Detail     string           `json:"detail"`
}

// OptimalSetting is the value of one free variable.
type OptimalSetting struct {
	Variable Variable `json:"variable"`
	Low      float64  `json:"low"` // bounds that were allowed
	High     float64  `json:"high"`
	Value    float64  `json:"value"`
	AtLow    bool     `json:"at_low"` // the bound keeps it from going on
	AtHigh   bool     `json:"at_high"`
	Text     string   `json:"text"`
}

// OptimalStep is one improvement on the way.
type OptimalStep struct {
	Run       int       `json:"run"`    // settings judged by then
	Values    []float64 `json:"values"` // of the free variables
	Objective float64   `json:"objective"`
	Share     float64   `json:"share"`    // tightest, of the plain run
	Reserved  float64   `json:"reserved"` // tightest with its reserve for the spread: good up to 1
}
