package api

import (
	"encoding/json"

	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
)

// Version is the version of requests and responses.
const Version = 1

// MaxRequest is the largest request that is read, in bytes. A job of the largest accepted lists takes a hundredth of it.
const MaxRequest = 2 << 20

// Op says what is asked for.
type Op string

// The operations.
const (
	Describe Op = "describe" // the catalogue: everything a form needs before there is a job
	Predict  Op = "predict"  // the result for the job
	Check    Op = "check"    // the faults of the job; the job completed by the defaults when it has none
	Demo     Op = "demo"     // the demo job
	Schema   Op = "schema"   // the JSON Schema of the job

	Variables Op = "variables" // what can be turned on a route of the job, and what the route is asked for
	Trials    Op = "trials"    // settings of a route, judged
	Limits    Op = "limits"    // how far things can be pushed
	Window    Op = "window"    // which settings of two variables are good
	Apply     Op = "apply"     // the job with settings made
	Spread    Op = "spread"    // how sure a setting is
	Costs     Op = "costs"     // what a day costs on each route, over its quantity
	Optimise  Op = "optimise"  // the settings that take least

	Tolerances Op = "tolerances" // what usually varies on a route, and by how much

	MoistAir Op = "moist_air" // a route on a moist-air chart

	TrialForms Op = "trial_forms" // what the kinds of trial want to know, for the job

	ReadTable Op = "read_table" // what a table of a trial was recognised as, to be shown before it is used
	FitTrial  Op = "fit"        // the numbers that a trial tells
	Adopt     Op = "adopt"      // the job with a fit adopted
	Drop      Op = "drop"       // the job without the fit of a name

	Derive Op = "derive" // a number that people lack, worked out by a helper of the catalogue from what they can measure
)

// Request is one question. Job is the job document of every operation but describe, demo and schema; what it leaves out is
// taken from the defaults. Of the others the request holds the one that its operation asks for.
type Request struct {
	Op      Op                   `json:"op"`
	Job     json.RawMessage      `json:"job,omitempty"`
	Routes  []result.Kind        `json:"routes,omitempty"`  // of predict: those of the job's routes that are wanted; none stands for all
	Study   *plan.Study          `json:"study,omitempty"`   // of variables, tolerances and apply
	Setting plan.Trial           `json:"setting,omitempty"` // of apply
	Trials  *TrialSet            `json:"trials,omitempty"`
	Limits  *plan.LimitsQuestion `json:"limits,omitempty"`
	Window  *plan.WindowQuestion `json:"window,omitempty"`

	Spread   *plan.SpreadQuestion   `json:"spread,omitempty"`
	Costs    *plan.CostQuestion     `json:"costs,omitempty"`
	Optimise *plan.OptimiseQuestion `json:"optimise,omitempty"`

	MoistAir *MoistAirQuestion `json:"moist_air,omitempty"`

	// Units in which texts give their numbers: "si", which counts where none is given, or "us".
	Units report.Units `json:"units,omitempty"`

	// Table is the text of a trial's table (read_table, fit), Trial the question asked of it; read_table takes kind and columns of it.
	Table string        `json:"table,omitempty"`
	Trial *fit.Question `json:"trial,omitempty"`
	// Derive asks a helper for the value of a field.
	Derive *derive.Question `json:"derive,omitempty"`
	// Adoption is what a fit offered to adopt, Name the fit to drop.
	Adoption *job.Fit `json:"adoption,omitempty"`
	Name     string   `json:"name,omitempty"`

	say   report.Speaker // for the answer
	rules *job.Rules     // for the job
}

// TrialSet is a batch of settings to be judged.
type TrialSet struct {
	Study  plan.Study   `json:"study"`
	Trials []plan.Trial `json:"trials"`
}

// Response is the answer to one request. OK tells whether the operation was carried out; after Message it holds the one
// field that was asked for.
type Response struct {
	OK        bool            `json:"ok"`
	Version   int             `json:"version"`
	Faults    []Fault         `json:"faults"`
	Message   string          `json:"message"`
	Result    *result.Result  `json:"result,omitempty"`
	Catalogue *Catalogue      `json:"catalogue,omitempty"`
	Job       *job.Job        `json:"job,omitempty"`
	Schema    json.RawMessage `json:"schema,omitempty"`
	Variables []plan.Variable `json:"variables,omitempty"`
	Aims      *plan.Aims      `json:"aims,omitempty"`
	Outcomes  []plan.Outcome  `json:"outcomes,omitempty"`
	Limits    []plan.Limit    `json:"limits,omitempty"`
	Window    *plan.Window    `json:"window,omitempty"`
	Spread    *plan.Spread    `json:"spread,omitempty"`

	Tolerances []plan.Tolerance `json:"tolerances,omitempty"`
	Varied     []plan.Variable  `json:"varied,omitempty"` // what the tolerances are of, in their order
	Costs      *plan.Costs      `json:"costs,omitempty"`
	Optimum    *plan.Optimum    `json:"optimum,omitempty"`

	MoistAir *result.MoistAir `json:"moist_air,omitempty"`

	Derived *derive.Answer `json:"derived,omitempty"`

	Forms   *result.TrialForms `json:"forms,omitempty"` // of trial_forms
	Table   *Table             `json:"table,omitempty"`
	Outcome *fit.Outcome       `json:"outcome,omitempty"` // of fit
}

// Fault is one complaint with its sentence.
type Fault struct {
	fault.Fault
	Text string `json:"text"`
}
