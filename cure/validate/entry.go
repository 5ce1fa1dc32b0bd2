package validate

import (
	"encoding/json"
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/air"
)

// entry is one published entry with the comparisons that its case makes.
type entry struct {
	ID             string               `json:"id"`
	Topic          string               `json:"topic"`
	Inputs         map[string]any       `json:"inputs"`
	Outputs        map[string]any       `json:"outputs"`
	Tolerance      map[string]tolerance `json:"tolerance"`
	ToleranceText  string               `json:"tolerance_text"`
	Source         string               `json:"source"`
	Note           string               `json:"note"`
	Basis          string               `json:"basis"`
	Slow           bool                 `json:"slow"` // takes minutes: left to make validate
	LeftOut        string               `json:"left_out"`
	LeftOutOutputs map[string]string    `json:"left_out_outputs"`

	subject string
	rows    []Row
	done    map[string]bool
}

// tolerance is how far ours may lie from a published value. Several kinds together: the widest counts. Lists hold one
// number for each element of the output.
type tolerance struct {
	Rel    numbers `json:"rel"`
	Abs    numbers `json:"abs"`
	Factor float64 `json:"factor"`
	Range  bool    `json:"range"` // the output is a pair, low and high, or a list of pairs
	Least  bool    `json:"least"`
	Most   bool    `json:"most"`
}

// within and relative are tolerances stated by a case.
func within(abs float64) tolerance   { return tolerance{Abs: numbers{abs}} }
func relative(rel float64) tolerance { return tolerance{Rel: numbers{rel}} }

// numbers is one number or a list of them.
type numbers []float64

// UnmarshalJSON takes a single number as a list of one.
func (n *numbers) UnmarshalJSON(data []byte) error {
	var many []float64
	if json.Unmarshal(data, &many) == nil {
		*n = many
		return nil
	}
	var one float64
	err := json.Unmarshal(data, &one)
	*n = numbers{one}
	return err
}

// at is the number for element i; a single one serves all.
func (n numbers) at(i int) float64 {
	if len(n) == 0 {
		return 0
	}
	return n[min(i, len(n)-1)]
}

// list turns a value of the data into numbers: a single one is a list of one, lists of lists are joined, what is no number
// is NaN.
func list(v any) []float64 {
	switch v := v.(type) {
	case []any:
		var l []float64
		for _, e := range v {
			l = append(l, list(e)...)
		}
		return l
	case float64:
		return []float64{v}
	}
	return []float64{math.NaN()}
}

// in returns an input as a list.
func (e *entry) in(key string) []float64 {
	v, ok := e.Inputs[key]
	if !ok {
		e.fail("the entry has no input " + key)
		return []float64{math.NaN()}
	}
	return list(v)
}

// one returns an input that is a single number.
func (e *entry) one(key string) float64 { return e.in(key)[0] }

// kelvin returns an input in degrees Celsius as kelvin.
func (e *entry) kelvin(key string) float64 { return e.one(key) + zero }

// kelvins does so for a list.
func (e *entry) kelvins(key string) []float64 {
	return each(e.in(key), func(c float64) float64 { return c + zero })
}

// zero is 0 degC in kelvin.
const zero = 273.15

// atmosphere is the pressure where an entry gives none [Pa].
const atmosphere = 101325.0

// pressure is the entry's, else the atmosphere's.
func (e *entry) pressure() float64 {
	for _, key := range []string{"p_Pa", "P_Pa"} {
		if _, ok := e.Inputs[key]; ok {
			return e.one(key)
		}
	}
	return atmosphere
}

// texts returns an input that is a list of words.
func (e *entry) texts(key string) []string {
	var l []string
	many, _ := e.Inputs[key].([]any)
	for _, v := range many {
		s, _ := v.(string)
		l = append(l, s)
	}
	return l
}

// want returns an output as a list.
func (e *entry) want(key string) []float64 { return list(e.Outputs[key]) }

func each(x []float64, f func(float64) float64) []float64 {
	l := make([]float64, len(x))
	for i, v := range x {
		l[i] = f(v)
	}
	return l
}

// state passes an air state on and turns an error into a failing row.
func (e *entry) state(s air.State, err error) air.State {
	if err != nil {
		e.fail(err.Error())
		return air.State{T: math.NaN(), P: math.NaN(), Y: math.NaN()}
	}
	return s
}

// fail makes a row that misses, with the reason as its note.
func (e *entry) fail(reason string) {
	r := e.row("the case itself")
	r.Note = reason
	e.rows = append(e.rows, r)
}

// row is an empty comparison of this entry.
func (e *entry) row(quantity string) Row {
	return Row{ID: e.ID, Subject: e.subject, Quantity: quantity, Source: e.Source, Basis: e.Basis, Bound: Equal,
		Measure: Absolute}
}

// check compares an output with ours, element by element, at the entry's own tolerance.
func (e *entry) check(key string, ours ...float64) { e.compare(key, nil, "", ours) }

// checkAt compares as check does; labels name the elements.
func (e *entry) checkAt(key string, labels []string, ours ...float64) {
	e.compareLabelled(key, nil, "", labels, ours)
}

// richer compares an output at the tolerance t, because our model and the entry's differ as the reason says.
func (e *entry) richer(key string, t tolerance, reason string, ours ...float64) {
	e.compare(key, &t, reason, ours)
}

func (e *entry) compare(key string, t *tolerance, note string, ours []float64) {
	e.compareLabelled(key, t, note, e.labels(len(ours)), ours)
}

// labels names the elements of a list after the input that has as many, temperatures first.
func (e *entry) labels(n int) []string {
	if n == 1 {
		return nil
	}
	best := ""
	for key, v := range e.Inputs {
		if l := list(v); len(l) == n && distinct(l) && (best == "" || before(key, best)) {
			best = key
		}
	}
	labels := make([]string, n)
	for i := range labels {
		if best == "" {
			labels[i] = fmt.Sprintf("%d of %d", i+1, n)
		} else {
			name, unit := split(best)
			labels[i] = fmt.Sprintf("%s = %.5g %s", name, list(e.Inputs[best])[i], unit)
		}
	}
	return labels
}

func before(a, b string) bool {
	if (a[0] == 'T') != (b[0] == 'T') {
		return a[0] == 'T'
	}
	return a < b
}

func distinct(l []float64) bool {
	seen := map[float64]bool{}
	for _, v := range l {
		if math.IsNaN(v) || seen[v] {
			return false
		}
		seen[v] = true
	}
	return true
}

func (e *entry) compareLabelled(key string, stated *tolerance, note string, labels []string, ours []float64) {
	t, ok := e.Tolerance[key]
	if stated != nil {
		t, ok = *stated, true
	}
	want := e.want(key)
	if e.LeftOutOutputs[key] != "" {
		return
	}
	size := 1
	if t.Range {
		size = 2
	}
	e.done[key] = true
	name, unit := split(key)
	if !ok || len(want) != size && len(want) != size*len(ours) {
		e.fail(fmt.Sprintf("%s: %d published values, %d of ours, tolerance given: %t", key, len(want), len(ours), ok))
		return
	}
	for i, v := range ours {
		r := e.row(name)
		r.Unit, r.Note, r.Ours = unit, note, v
		if i < len(labels) {
			r.Quantity += ", " + labels[i]
		}
		at := size * min(i, len(want)/size-1)
		r.Expected, r.Upper = want[at], want[at+size-1]
		r.judge(t, i)
		e.rows = append(e.rows, r)
	}
}

// rounding is the share by which a deviation may pass its tolerance: both come out of subtractions.
const rounding = 1e-9

// judge fills in bound, deviation and verdict.
func (r *Row) judge(t tolerance, i int) {
	low, high := r.Expected, r.Upper
	switch {
	case t.Range:
		r.Bound = Between
	case t.Least:
		r.Bound, high = Least, math.Inf(1)
	case t.Most:
		r.Bound, low = Most, math.Inf(-1)
	}
	nearest := min(max(r.Ours, low), high) // NaN stays NaN
	off := math.Abs(r.Ours - nearest)
	room := t.Abs.at(i)
	r.Measure, r.Deviation, r.Tolerance = Absolute, off, room
	if share := t.Rel.at(i) * math.Abs(nearest); share > room {
		room = share
		r.Measure, r.Deviation, r.Tolerance = Relative, off/math.Abs(nearest), t.Rel.at(i)
	}
	r.Pass = off <= room*(1+rounding)
	if t.Factor > 0 {
		ratio := max(r.Ours/nearest, nearest/r.Ours)
		r.Measure, r.Deviation, r.Tolerance = Factor, ratio, t.Factor
		r.Pass = ratio > 0 && ratio <= t.Factor*(1+rounding)
	}
}
