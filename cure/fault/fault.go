// Package fault holds the one error value of the core: a complaint about one input that names the field, the value, the
// allowed range and what to do. It formats nothing but its own sentence and knows no other package.
package fault

import (
	"fmt"
	"strconv"
	"strings"
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

// Error renders the fault as one line.
func (f *Fault) Error() string {
	var b strings.Builder
	if f.Path != "" {
		b.WriteString(f.Path + ": ")
	}
	switch f.Code {
	case Range:
		fmt.Fprintf(&b, "%s is outside %s to %s", f.Got, Number(f.Low), Number(f.High))
		if f.Unit != "" {
			b.WriteString(" " + f.Unit)
		}
	case Missing:
		b.WriteString("is missing")
	default:
		b.WriteString(f.Got)
	}
	if f.Advice != "" {
		b.WriteString(". " + f.Advice)
	}
	return b.String()
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
