package trial

import (
	"fmt"
	"math"
	"slices"
	"unicode"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Kind is the kind of trial that a table belongs to.
type Kind string

// The kinds of trial.
const (
	Weight   Kind = "weight"
	Recorder Kind = "recorder"
	Cure     Kind = "cure"
	Sorption Kind = "sorption"
)

// Choice overrules what was recognised in one column, counted from one; an empty Kind or Unit leaves that as it is.
type Choice struct {
	Column int      `json:"column"`
	Kind   Quantity `json:"kind"`
	Unit   string   `json:"unit"`
}

// Data are the rows of a trial in SI units, by quantity. A gap is NaN.
type Data struct {
	Lines   []int // of the text
	Numbers map[Quantity][]float64
	Words   map[Quantity][]string
	Notes   []string
}

// needs are the quantities of a kind of trial; of alternatives one is enough.
type needs struct {
	required     []Quantity
	alternatives []Quantity
	optional     []Quantity
}

func (k Kind) needs() needs {
	switch k {
	case Weight:
		return needs{required: []Quantity{Time, Mass}, optional: []Quantity{Coupon}}
	case Recorder:
		return needs{required: []Quantity{Time}, alternatives: []Quantity{AirTemperature, PartTemperature}, optional: []Quantity{Humidity}}
	case Cure:
		return needs{required: []Quantity{Time, Temperature}, alternatives: []Quantity{Conversion, Passed}, optional: []Quantity{Start}}
	}
	return needs{required: []Quantity{Humidity, Water}}
}

// Quantities are what a kind of trial reads from columns, the required ones first.
func (k Kind) Quantities() []Quantity {
	n := k.needs()
	return slices.Concat(n.required, n.alternatives, n.optional)
}

// Use converts the table to the rows of a trial. It says in Notes what it took on itself: columns found by their place, rows
// left out or sorted, fractions told from percent. Errors are *fault.Fault: a quantity that is missing or there twice, a unit that
// is neither stated nor evident (path "column 2"), values that cannot be (path "line 7").
func (t *Table) Use(kind Kind, choices []Choice) (*Data, error) {
	columns := slices.Clone(t.Columns)
	for _, c := range choices {
		if c.Column < 1 || c.Column > len(columns) {
			return nil, fault.OutOfRange("columns", float64(c.Column), 1, float64(len(columns)), "", words.Told("Name a column of the table."))
		}
		if err := columns[c.Column-1].choose(c); err != nil {
			return nil, err
		}
	}
	d := &Data{Lines: slices.Clone(t.Lines), Numbers: map[Quantity][]float64{}, Words: map[Quantity][]string{}, Notes: slices.Clone(t.Notes)}
	if err := d.assign(kind, columns); err != nil {
		return nil, err
	}
	clocked := slices.ContainsFunc(columns, func(c Column) bool { return c.Kind == Time && c.Clock })
	if clocked {
		d.midnight()
	}
	d.gaps(kind)
	if len(d.Lines) == 0 {
		return nil, fault.New(fault.Missing, "rows", "", words.Told("No row has all that the trial needs."))
	}
	if kind == Weight || kind == Recorder {
		if clocked {
			d.fromFirst()
		}
		d.sort()
		d.repeated(kind)
	}
	return d, d.plausible()
}

func (c *Column) choose(o Choice) error {
	if o.Kind != Unknown {
		c.Kind = o.Kind
		if o.Kind == Coupon && c.Words == nil {
			c.Words = make([]string, len(c.Numbers))
			for i, v := range c.Numbers {
				c.Words[i] = fault.Number(v)
			}
		}
	}
	if o.Unit == "" {
		return nil
	}
	u, ok := unitNamed(o.Unit)
	if !ok {
		return fault.New(fault.Choice, fmt.Sprintf("column %d", o.Column), fmt.Sprintf("%q is no unit", o.Unit),
			words.Told("Give s, min, h, d; mg, g, kg, oz, gr, lb; °C, °F, K; %, 1 or g/kg."))
	}
	c.Unit = u.Symbol
	return nil
}

// assign finds the column of each quantity and converts it.
func (d *Data) assign(kind Kind, columns []Column) error {
	n := kind.needs()
	for i := range columns {
		c := &columns[i]
		c.Kind = fitting(kind, *c)
	}
	if err := d.places(kind, n, columns); err != nil {
		return err
	}
	wanted := slices.Concat(n.required, n.alternatives, n.optional)
	for _, q := range wanted {
		for i := range columns {
			c := &columns[i]
			if c.Kind != q {
				continue
			}
			if d.Numbers[q] != nil || d.Words[q] != nil {
				return fault.New(fault.Conflict, fmt.Sprintf("column %d", i+1), fmt.Sprintf("a second column of %s", q.words()),
					words.Told("Say which of them counts."))
			}
			if err := d.convert(q, c, i); err != nil {
				return err
			}
		}
	}
	for _, q := range n.required {
		if d.Numbers[q] == nil {
			return fault.New(fault.Missing, string(q), "", fmt.Sprintf("No column of %s was found: name one in the header, or say which it is.", q.words()))
		}
	}
	if len(n.alternatives) > 0 {
		a, b := n.alternatives[0], n.alternatives[1]
		if d.Numbers[a] == nil && d.Numbers[b] == nil {
			return fault.New(fault.Missing, string(a), "", fmt.Sprintf("No column of %s or %s was found: name one in the header, or say which it is.",
				a.words(), b.words()))
		}
	}
	return nil
}

// words names a quantity in a message.
func (q Quantity) words() string {
	switch q {
	case AirTemperature:
		return "air temperature"
	case PartTemperature:
		return "part temperature"
	case Start:
		return "start temperature"
	case Humidity:
		return "relative humidity"
	case Water:
		return "water content"
	case Passed:
		return "pass or fail"
	}
	return string(q)
}

// fitting turns what a header says into what the kind of trial means by it: the oven's temperature in a cure test is that of
// the film, a column of verdicts under the name "result" is pass or fail.
func fitting(kind Kind, c Column) Quantity {
	switch {
	case kind == Cure && (c.Kind == AirTemperature || c.Kind == PartTemperature):
		return Temperature
	case kind == Cure && (c.Kind == Conversion || c.Kind == Passed || c.Kind == Unknown && c.Words != nil):
		if c.Words != nil || c.Kind == Passed && binary(c.Numbers) {
			return Passed
		}
		return Conversion
	case kind == Sorption && c.Kind == Mass && c.Unit == "":
		return Water
	}
	return c.Kind
}

// binary reports whether a column holds nothing but 0 and 1.
func binary(v []float64) bool {
	for _, x := range v {
		if x != 0 && x != 1 && !math.IsNaN(x) {
			return false
		}
	}
	return len(v) > 0
}

// places gives columns without a known quantity the one that is missing, where only one way is left; without any header the
// time of a weighing is told by its order.
func (d *Data) places(kind Kind, n needs, columns []Column) error {
	var missing []Quantity
	for _, q := range n.required {
		if !slices.ContainsFunc(columns, func(c Column) bool { return c.Kind == q }) {
			missing = append(missing, q)
		}
	}
	var free []int
	for i, c := range columns {
		if c.Kind == Unknown && c.Numbers != nil {
			free = append(free, i)
		}
	}
	if len(missing) == 0 || len(missing) != len(free) {
		return nil
	}
	if len(missing) == 2 && missing[0] == Time && rising(columns[free[1]].Numbers) && !rising(columns[free[0]].Numbers) {
		free[0], free[1] = free[1], free[0]
	}
	for i, q := range missing {
		columns[free[i]].Kind = q
		d.Notes = append(d.Notes, fmt.Sprintf("%s was taken as %s.", upper(columns[free[i]].Name), q.words()))
	}
	return nil
}

// upper starts a sentence with a name.
func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

func rising(v []float64) bool {
	last := math.Inf(-1)
	for _, x := range v {
		if x < last {
			return false
		}
		if !math.IsNaN(x) {
			last = x
		}
	}
	return true
}
