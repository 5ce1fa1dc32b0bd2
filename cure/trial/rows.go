package trial

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

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
		d.Notes = append(d.Notes, words.Told("The clock passes midnight; the later times were counted on."))
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
		d.Notes = append(d.Notes, words.Told("{count, plural, one {# row with gaps left out.} other {# rows with gaps left out.}}", "count", dropped))
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
			d.Notes = append(d.Notes, words.Told("The rows were put in the order of time."))
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
		d.Notes = append(d.Notes, words.Told("{count, plural, one {# repeated row left out.} other {# repeated rows left out.}}", "count", dropped))
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
					words.Told("This is no {value}: check the number and the unit of its column.", "value", c.q.words()))
			}
		}
	}
	for i, v := range d.Numbers[Time] {
		if v < 0 {
			return fault.OutOfRange(fmt.Sprintf("line %d", d.Lines[i]), v, 0, math.MaxFloat64, "s", words.Told("Times count from spraying and are not negative."))
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
	d.Notes = append(d.Notes, words.Told("The clock times were counted from the first row."))
}
