// Package derive works out numbers of a job that people lack from what they can measure: a coat weight from a wet-film comb, solids from
// a dried sample, humidity from a wet bulb. Each helper is a pure function with its equation, source and ranges; Helpers lists
// what a form needs to ask for them, Work carries one out.
//
// # Adding a helper
//
// A file with its function, its entry in helpers, a worked example in derive_test.go. Its words are told in English beside the code
// and translated by the language files.
package derive

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// Kind names a helper.
type Kind string

// The kinds of helper.
const (
	Comb       Kind = "comb"
	Sprayed    Kind = "sprayed"
	Dried      Kind = "dried_sample"
	Flow       Kind = "fan_flow"
	WetBulb    Kind = "wet_bulb"
	DewPoint   Kind = "dew_point"
	Weighed    Kind = "weighed_part"
	AddOn      Kind = "fibre_add_on"
	FibreCount Kind = "fibre_count"
)

// Helper is one way to work a number out. Title says from what, Procedure how to measure it, Caution what spoils it.
type Helper struct {
	Kind      Kind    `json:"kind"`
	For       []Place `json:"for"`
	Title     string  `json:"title"`
	Procedure string  `json:"procedure"`
	Equation  string  `json:"equation"`
	Source    string  `json:"source"`
	Caution   string  `json:"caution"`
	Inputs    []Input `json:"inputs"`
}

// Place is a field that a helper serves, as a pattern, and for inputs that stand in the job where: a pattern each, empty for none.
type Place struct {
	Path string   `json:"path"`
	From []string `json:"from"` // in the order of the inputs
}

// Input is one number that a helper asks for, in SI; Low..High is what it accepts.
type Input struct {
	Name      string      `json:"name"`
	Symbol    string      `json:"symbol"` // in the equation
	Label     string      `json:"label"`
	Display   job.Display `json:"display"`
	USDisplay job.Display `json:"us_display"`
	Low       float64     `json:"low"`
	High      float64     `json:"high"`
	Default   *float64    `json:"default"` // null: none is usual
}

// Question asks a helper for the value of a field: Path as a pattern, Inputs by name in SI.
type Question struct {
	Kind   Kind               `json:"kind"`
	Path   string             `json:"path"`
	Inputs map[string]float64 `json:"inputs"`
}

// Answer is the value in SI with what was worked out on the way. Outside: the field does not accept it.
type Answer struct {
	Value   float64 `json:"value"`
	Outside bool    `json:"outside"`
	Steps   []Step  `json:"steps"`
}

// Step is a number on the way.
type Step struct {
	Symbol    string      `json:"symbol"`
	Label     string      `json:"label"`
	Value     float64     `json:"value"`
	Display   job.Display `json:"display"`
	USDisplay job.Display `json:"us_display"`
}

// entry is a helper with what carries it out: x are its inputs in order, at the pattern of the field.
type entry struct {
	Helper
	work func(x []float64, at string) (value float64, steps []Step, err error)
}

// Helpers lists all helpers.
func Helpers() []Helper {
	entries := entries()
	all := make([]Helper, len(entries))
	for i, e := range entries {
		all[i] = e.Helper
	}
	return all
}

// Work answers a question. Errors are *fault.Fault or lists of them: an unknown kind or field, inputs that are missing, outside of
// their ranges ("inputs.mass_kg") or contradict each other.
func Work(q Question) (Answer, error) {
	for _, e := range entries() {
		if e.Kind == q.Kind {
			return e.answer(q)
		}
	}
	return Answer{}, fault.New(fault.Choice, "kind", words.Told("{kind} is no helper", "kind", string(q.Kind)), words.Told("Ask for a kind of the list."))
}

func (e *entry) answer(q Question) (Answer, error) {
	field, known := job.NewRules().Field(q.Path)
	if !known || !e.serves(q.Path) {
		return Answer{}, fault.New(fault.Choice, "path", words.Told("{path} is no field of this helper", "path", q.Path), words.Told("Ask for a field of the list."))
	}
	var list fault.List
	x := make([]float64, len(e.Inputs))
	for i, in := range e.Inputs {
		v, given := q.Inputs[in.Name]
		switch at := "inputs." + in.Name; {
		case !given:
			list = append(list, fault.New(fault.Missing, at, "", words.Told("Give this number.")))
		case math.IsNaN(v) || v < in.Low || v > in.High:
			list = append(list, fault.OutOfRange(at, v, in.Low, in.High, in.Display.Dimension.SI(), words.Told("Check the number and its unit.")))
		}
		x[i] = v
	}
	if len(list) > 0 {
		return Answer{}, list
	}
	value, steps, err := e.work(x, q.Path)
	if err != nil {
		return Answer{}, err
	}
	if steps == nil {
		steps = []Step{}
	}
	return Answer{Value: value, Outside: value < field.Low || value > field.High, Steps: steps}, nil
}

func (e *entry) serves(path string) bool {
	for _, p := range e.For {
		if p.Path == path {
			return true
		}
	}
	return false
}

// contradiction is a fault about an input that cannot be beside the others.
func contradiction(name, got, advice string) error {
	return fault.New(fault.Conflict, "inputs."+name, words.Told(got), words.Told(advice))
}

// shown is a unit of the table as a display.
func shown(d unit.Dimension, symbol string) job.Display {
	u, _ := unit.Get(d, symbol) // a test asks for every one
	return job.Display{Dimension: d, Symbol: symbol, Factor: u.Factor(), Offset: -u.Zero, Digits: 4}
}

// ask is an input that must be given.
func ask(name, symbol, label string, d unit.Dimension, si, us string, low, high float64) Input {
	return Input{Name: name, Symbol: symbol, Label: words.Told(label), Display: shown(d, si), USDisplay: shown(d, us), Low: low, High: high}
}

// usually is an input with a value that is usual.
func (in Input) usually(v float64) Input {
	in.Default = &v
	return in
}

// step is a number on the way.
func step(symbol, label string, value float64, d unit.Dimension, si, us string) Step {
	return Step{symbol, words.Told(label), value, shown(d, si), shown(d, us)}
}

// at is the one field of a helper, with where its inputs stand.
func at(path string, from ...string) []Place { return []Place{{path, from}} }

// ending lists the fields whose pattern ends in one of the given ways.
func ending(ends ...string) []string {
	var list []string
	for _, f := range job.Fields() {
		for _, end := range ends {
			if strings.HasSuffix(f.Path, end) {
				list = append(list, f.Path)
			}
		}
	}
	return list
}
