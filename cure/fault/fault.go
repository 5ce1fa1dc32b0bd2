// Package fault holds the one error value of the core: a complaint about one input that names the field, the value, the
// allowed range and what to do. What is said may be a text on its way (package words), so that a reader gets it in another language.
package fault

import (
	"errors"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/words"
)

// Code is the stable name of a kind of fault; the page and the service key their own words on it.
type Code string

// The kinds of fault.
const (
	Missing  Code = "missing"  // a required value is absent
	Type     Code = "type"     // the value is of another JSON type
	Unknown  Code = "unknown"  // the document has a field that the job does not know
	Range    Code = "range"    // a number lies outside the accepted range
	Choice   Code = "choice"   // a text is none of the accepted words
	Conflict Code = "conflict" // two values contradict each other
	Version  Code = "version"  // the document is of a version that this build does not read
	Syntax   Code = "syntax"   // the text is not JSON
	Limit    Code = "limit"    // a list or a run is larger than allowed
	Numeric  Code = "numeric"  // the run ended without an answer (step budget, no convergence)
)

// Fault is one complaint. Path is the JSON path ("tunnel.zones[1].length_m"); Got the offending value as text; Low and
// High the accepted range where the code is Range; Unit the unit of the three; Advice what to do, a whole sentence.
type Fault struct {
	Code   Code    `json:"code"`
	Path   string  `json:"path"`
	Got    string  `json:"got"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Unit   string  `json:"unit"`
	Advice string  `json:"advice"`
}

// Error renders the fault as one line, in English and SI.
func (f *Fault) Error() string { return words.English(f.Sentence()) }

// Sentence is the fault as one line that begins with its path, as a text on its way (see package words).
func (f *Fault) Sentence() string {
	if f.Path == "" {
		return f.Said()
	}
	return f.Path + ": " + f.Said()
}

// Said is the fault without its place: what was found and what to do. Numbers are amounts, told in the unit of their field.
func (f *Fault) Said() string {
	said := f.Got
	switch f.Code {
	case Range:
		got, err := strconv.ParseFloat(f.Got, 64)
		if err != nil {
			break
		}
		amount := func(v float64) words.Amount { return words.Amount{Value: v, Of: f.Path, Unit: f.Unit} }
		switch {
		case got < f.Low:
			said = words.Told("{got} is less than {low}", "got", amount(got), "low", amount(f.Low))
		case got > f.High:
			said = words.Told("{got} is more than {high}", "got", amount(got), "high", amount(f.High))
		default: // no number, or one that is only rounded into the range
			said = words.Told("{got} is outside {low} to {high}", "got", amount(got), "low", amount(f.Low), "high", amount(f.High))
		}
	case Missing:
		said = words.Told("is missing")
	}
	if f.Advice != "" {
		said += ". " + f.Advice
	}
	return said
}

// Say is what an error says, as a text on its way: the sentence of a fault, else the error's own words.
func Say(err error) string {
	var one *Fault
	var list List
	switch {
	case errors.As(err, &one):
		return one.Sentence()
	case errors.As(err, &list):
		lines := make([]string, len(list))
		for i, f := range list {
			lines[i] = f.Sentence()
		}
		return strings.Join(lines, "\n")
	}
	return err.Error()
}

// OutOfRange complains of a number outside [low, high].
func OutOfRange(path string, got, low, high float64, unit, advice string) *Fault {
	return &Fault{Code: Range, Path: path, Got: Number(got), Low: low, High: high, Unit: unit, Advice: advice}
}

// New complains of anything else; got says what was found.
func New(code Code, path, got, advice string) *Fault {
	return &Fault{Code: code, Path: path, Got: got, Advice: advice}
}

// Number prints a number with at most six significant digits, for messages only.
func Number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// List is every fault of one document; it is an error when it holds any.
type List []*Fault

// Error renders one fault a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// OrNil returns the list as an error, or nil when it is empty.
func (l List) OrNil() error {
	if len(l) == 0 {
		return nil
	}
	return l
}
