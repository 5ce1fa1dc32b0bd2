package trial

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/fault"
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

// Use converts the table to the rows of a trial. It says in Notes what it took on itself: columns found by their place, rows
// left out or sorted, fractions told from percent. Errors are *fault.Fault: a quantity that is missing or there twice, a unit that
// is neither stated nor evident (path "column 2"), values that cannot be (path "line 7").
func (t *Table) Use(kind Kind, choices []Choice) (*Data, error) {
	columns := slices.Clone(t.Columns)
	for _, c := range choices {
		if c.Column < 1 || c.Column > len(columns) {
			return nil, fault.OutOfRange("columns", float64(c.Column), 1, float64(len(columns)), "", "Name a column of the table.")
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
		return nil, fault.New(fault.Missing, "rows", "", "No row has all that the trial needs.")
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
	u, ok := units()[strings.ToLower(strings.TrimSpace(o.Unit))]
	if !ok {
		return fault.New(fault.Choice, fmt.Sprintf("column %d", o.Column), fmt.Sprintf("%q is no unit", o.Unit),
			"Give s, min, h, d; mg, g, kg, oz, gr, lb; °C, °F, K; %, 1 or g/kg.")
	}
	c.Unit = u.symbol
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
					"Say which of them counts.")
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

// convert writes a column in SI.
func (d *Data) convert(q Quantity, c *Column, i int) error {
	switch {
	case q == Coupon:
		d.Words[q] = c.Words
		if c.Words == nil {
			d.Words[q] = make([]string, len(c.Numbers))
		}
		return nil
	case q == Passed && c.Words != nil:
		v, err := d.verdicts(c)
		d.Numbers[q] = v
		return err
	case c.Numbers == nil:
		return fault.New(fault.Type, fmt.Sprintf("column %d", i+1), fmt.Sprintf("%q holds words, not %s", c.Name, q.words()), "Give numbers.")
	case q == Passed:
		d.Numbers[q] = c.Numbers
		return nil
	}
	u, known := units()[strings.ToLower(c.Unit)]
	if known && u.of != q.dimension() {
		return fault.New(fault.Conflict, fmt.Sprintf("column %d", i+1), fmt.Sprintf("%q is no unit of %s", c.Unit, q.words()), "Say its unit.")
	}
	if !known {
		if q.dimension() != share {
			return fault.New(fault.Missing, fmt.Sprintf("column %d", i+1), "",
				fmt.Sprintf("Say the unit of %q, in the header as in %q or beside the table.", c.Name, c.Name+" ["+example(q)+"]"))
		}
		u = unit{"1", share, 1, 0}
		if largest(c.Numbers) > 1 {
			u = unit{"%", share, 0.01, 0}
		}
		d.Notes = append(d.Notes, fmt.Sprintf("%s has no unit; it was taken in %s.", upper(c.Name), map[string]string{"1": "parts of one", "%": "percent"}[u.symbol]))
	}
	out := make([]float64, len(c.Numbers))
	for r, v := range c.Numbers {
		out[r] = v*u.factor + u.offset
	}
	d.Numbers[q] = out
	return nil
}

func example(q Quantity) string {
	return map[dimension]string{duration: "min", mass: "g", temperature: "°C"}[q.dimension()]
}

func largest(v []float64) float64 {
	m := math.Inf(-1)
	for _, x := range v {
		if x > m {
			m = x
		}
	}
	return m
}

// verdicts reads pass and fail.
func (d *Data) verdicts(c *Column) ([]float64, error) {
	out := make([]float64, len(c.Words))
	for i, w := range c.Words {
		switch strings.ToLower(w) {
		case "pass", "passed", "p", "yes", "y", "ok", "true", "1", "good", "ja", "bestanden", "i.o.", "io":
			out[i] = 1
		case "fail", "failed", "f", "no", "n", "nok", "false", "0", "bad", "nein", "n.i.o.", "nio":
			out[i] = 0
		default:
			if !isGap(w) {
				return nil, at(d.Lines[i], fault.Choice, fmt.Sprintf("%s: %q is neither pass nor fail", c.Name, shorten(w)), "Write pass or fail.")
			}
			out[i] = math.NaN()
		}
	}
	return out, nil
}

// midnight carries clock times over midnight: a fall by more than twelve hours is the next day.
func (d *Data) midnight() {
	t := d.Numbers[Time]
	days, last, crossed := 0.0, math.NaN(), false
	out := make([]float64, len(t))
	for i, v := range t {
		if v < 86400 && v < last-43200 && last < 86400 {
			days, crossed = days+86400, true
		}
		if !math.IsNaN(v) {
			last = v
		}
		out[i] = v + days
	}
	if crossed {
		d.Numbers[Time] = out
		d.Notes = append(d.Notes, "The clock passes midnight; the later times were counted on.")
	}
}

// gaps drops rows that lack a number which the trial needs.
func (d *Data) gaps(kind Kind) {
	n := kind.needs()
	lacks := func(i int) bool {
		for _, q := range n.required {
			if math.IsNaN(d.Numbers[q][i]) {
				return true
			}
		}
		if len(n.alternatives) == 0 {
			return false
		}
		for _, q := range n.alternatives {
			if v := d.Numbers[q]; v != nil && !math.IsNaN(v[i]) {
				return false
			}
		}
		return true
	}
	if dropped := d.keep(func(i int) bool { return !lacks(i) }); dropped > 0 {
		d.Notes = append(d.Notes, counted(dropped, "row", "rows")+" with gaps left out.")
	}
}

// keep holds on to the rows that pass and returns how many do not.
func (d *Data) keep(pass func(i int) bool) (dropped int) {
	var order []int
	for i := range d.Lines {
		if pass(i) {
			order = append(order, i)
		} else {
			dropped++
		}
	}
	if dropped > 0 {
		d.arrange(order)
	}
	return dropped
}

// arrange puts the rows in the order given.
func (d *Data) arrange(order []int) {
	lines := make([]int, len(order))
	for k, i := range order {
		lines[k] = d.Lines[i]
	}
	d.Lines = lines
	for q, v := range d.Numbers {
		w := make([]float64, len(order))
		for k, i := range order {
			w[k] = v[i]
		}
		d.Numbers[q] = w
	}
	for q, v := range d.Words {
		w := make([]string, len(order))
		for k, i := range order {
			w[k] = v[i]
		}
		d.Words[q] = w
	}
}

// sort puts the rows in the order of time, coupon by coupon in the order of their first appearance.
func (d *Data) sort() {
	t, coupon := d.Numbers[Time], d.coupons()
	order := make([]int, len(d.Lines))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(coupon[a], coupon[b]), cmp.Compare(t[a], t[b]))
	})
	last := map[int]float64{}
	for i, c := range coupon {
		if before, seen := last[c]; seen && t[i] < before {
			d.Notes = append(d.Notes, "The rows were put in the order of time.")
			break
		}
		last[c] = t[i]
	}
	if !slices.IsSorted(order) {
		d.arrange(order)
	}
}

// coupons numbers the coupons of the rows in the order of their appearance; all zero without a coupon column.
func (d *Data) coupons() []int {
	out := make([]int, len(d.Lines))
	names := map[string]int{}
	for i, w := range d.Words[Coupon] {
		if _, ok := names[w]; !ok {
			names[w] = len(names)
		}
		out[i] = names[w]
	}
	return out
}

// repeated drops rows that say the same as the row before; of a recorder it averages readings of one moment.
func (d *Data) repeated(kind Kind) {
	t, coupon := d.Numbers[Time], d.coupons()
	same := func(i int) bool {
		if i == 0 || t[i] != t[i-1] || coupon[i] != coupon[i-1] {
			return false
		}
		if kind == Recorder {
			return true
		}
		return d.Numbers[Mass][i] == d.Numbers[Mass][i-1]
	}
	if dropped := d.keep(func(i int) bool { return !same(i) }); dropped > 0 {
		d.Notes = append(d.Notes, counted(dropped, "repeated row", "repeated rows")+" left out.")
	}
}

// plausible refuses what no instrument shows.
func (d *Data) plausible() error {
	for _, c := range []struct {
		q         Quantity
		low, high float64
		unit      string
	}{
		{AirTemperature, 213.15, 673.15, "K"}, {PartTemperature, 213.15, 673.15, "K"}, {Temperature, 213.15, 673.15, "K"},
		{Start, 213.15, 673.15, "K"}, {Conversion, -0.1, 1.1, ""}, {Humidity, 0, 1, ""}, {Water, -0.01, 10, "kg/kg"}, {Mass, -10, 1000, "kg"},
		{Passed, 0, 1, ""},
	} {
		for i, v := range d.Numbers[c.q] {
			if v < c.low || v > c.high {
				return fault.OutOfRange(fmt.Sprintf("line %d", d.Lines[i]), v, c.low, c.high, c.unit,
					"This is no "+c.q.words()+": check the number and the unit of its column.")
			}
		}
	}
	for i, v := range d.Numbers[Time] {
		if v < 0 {
			return fault.OutOfRange(fmt.Sprintf("line %d", d.Lines[i]), v, 0, math.MaxFloat64, "s", "Times count from spraying and are not negative.")
		}
	}
	return nil
}

// fromFirst counts clock times from the first row: a trial starts when it starts, not at midnight.
func (d *Data) fromFirst() {
	t := d.Numbers[Time]
	first := slices.Min(t)
	if first == 0 {
		return
	}
	for i := range t {
		t[i] -= first
	}
	d.Notes = append(d.Notes, "The clock times were counted from the first row.")
}
