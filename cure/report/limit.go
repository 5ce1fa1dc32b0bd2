package report

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// FillLimit writes the texts of a limit from its numbers.
func FillLimit(l *plan.Limit) {
	w := englishPlans()
	l.Text = w.limit(l)
	l.Answer = w.wanted(l)
	for i := range l.Levers {
		l.Levers[i].Text = w.gain(&l.Levers[i], l)
	}
	if l.Value != nil {
		l.Shown = inside(&l.Variable, *l.Value, l.Toward)
	}
	w.margins(l.Margins)
	for _, at := range []*plan.Standing{&l.Present, l.Wanted, l.Beyond} {
		if at != nil {
			at.Text = Amount(&l.Variable, at.Value)
			w.margins(at.Margins)
		}
	}
}

// margins says of each share what it is the share of.
func (w planWords) margins(criteria []result.Criterion) {
	for i := range criteria {
		criteria[i].Text = w.of(&criteria[i])
	}
}

// Amount prints a number of a variable in its display unit: "1.29 m/min". A difference of a temperature leaves the offset
// out.
func Amount(v *plan.Variable, si float64) string { return shown(v.Display, si, math.Round) }

// inside prints a limit rounded to the side on which it is still good.
func inside(v *plan.Variable, si float64, toward plan.Direction) string {
	if toward == plan.Lowest {
		return shown(v.Display, si, math.Ceil)
	}
	return shown(v.Display, si, math.Floor)
}

// shown prints a number in a unit, with as many significant digits as the unit has and three at least.
func shown(d job.Display, si float64, round func(float64) float64) string {
	x := si*d.Factor + d.Offset
	if !finite(x) {
		return absent
	}
	r := rounded(x, max(3, d.Digits), round)
	return withUnit(sign(x, r)+plain(math.Abs(r)), d.Symbol)
}

// rounded keeps a number of significant digits.
func rounded(x float64, digits int, round func(float64) float64) float64 {
	if x == 0 {
		return 0
	}
	return onGrid(x, int(math.Floor(math.Log10(math.Abs(x))))+1-digits, round)
}

// onGrid rounds to a power of ten.
func onGrid(x float64, power int, round func(float64) float64) float64 {
	places := -power
	// Powers of ten below one are no binary numbers: dividing by those above one leaves the shortest digits.
	if places >= 0 {
		unit := math.Pow10(places)
		return round(trimmed(x*unit)) / unit
	}
	unit := math.Pow10(-places)
	return round(trimmed(x/unit)) * unit
}

// trimmed takes off what arithmetic has left behind a whole number, so that 3 m is not rounded down to 2.99.
func trimmed(x float64) float64 {
	if whole := math.Round(x); math.Abs(x-whole) < 1e-9*math.Abs(whole) {
		return whole
	}
	return x
}

// difference prints a change of a variable, always above zero.
func difference(v *plan.Variable, si float64) string {
	return shown(differenceUnit(v), math.Abs(si), math.Round)
}

func differenceUnit(v *plan.Variable) job.Display {
	d := v.Display
	d.Offset, d.Digits = 0, 3
	if v.Unit == "K" {
		d.Symbol = "K"
	}
	return d
}

// limit is the sentence: how far it goes, what fails beyond, and how much the next criterion has left.
func (w planWords) limit(l *plan.Limit) string {
	v := &l.Variable
	if l.Bound == plan.Nowhere {
		return fill(w.line[limitNowhere], "label", v.Label, "fails", w.fails(first(l.Margins)))
	}
	p, known := w.limits[v.ID]
	if !known {
		p = [4]string{w.line[limitUpTo], w.line[limitDownTo], w.line[limitMustFall], w.line[limitMustRise]}
	}
	place := 0
	if l.Toward == plan.Lowest {
		place = 1
	}
	if !l.Present.Met {
		place += 2
	}
	s := fill(p[place], "label", v.Label, "value", inside(v, *l.Value, l.Toward), "present", Amount(v, v.Present),
		"change", w.reach(l), "times", w.change(v, *l.Value), "way", w.way(v, *l.Value))
	switch {
	case l.Refused != "":
		return s + " " + fill(w.line[limitRefused], "why", l.Refused)
	case l.Bound == plan.ByRange:
		return s + " " + w.line[limitRange]
	}
	s += " " + fill(w.line[limitBeyond], "fails", w.fails(l.Binding))
	if !l.Present.Met {
		s = fill(w.line[limitNotNow], "fails", w.fails(first(l.Present.Margins))) + " " + s
	}
	if next := second(l); next != nil {
		s += " " + fill(w.line[limitNext], "share", Percent(next.Share), "of", w.of(next))
	}
	return s
}

// wanted says whether what was asked for is good.
func (w planWords) wanted(l *plan.Limit) string {
	if l.Wanted == nil {
		return ""
	}
	v, at := &l.Variable, l.Wanted
	values := []string{"label", v.Label, "value", Amount(v, at.Value), "times", w.change(v, at.Value)}
	switch {
	case at.Refused != "":
		return fill(w.line[wantedRefused], append(values, "why", at.Refused)...)
	case at.Met:
		return fill(w.line[wantedYes], append(values, "share", Percent(first(at.Margins).Share), "of", w.of(first(at.Margins)))...)
	}
	s := fill(w.line[wantedNo], append(values, "fails", w.fails(first(at.Margins)))...)
	if others := failing(at.Margins); len(others) > 1 {
		var more []string
		for i := range others[1:] {
			more = append(more, w.fails(&others[1+i]))
		}
		s += " " + fill(w.line[wantedAlso], "fails", strings.Join(more, "; "))
	}
	return s
}

func (w planWords) gain(g *plan.Gain, l *plan.Limit) string {
	what := fill(w.levers[g.Name], "place", g.Place)
	if g.Value == nil {
		return fill(w.line[gainNone], "what", what, "fails", w.fails(g.Fails))
	}
	p := gainMore
	switch {
	case g.Gain < 0 && difference(&l.Variable, g.Gain) != difference(&l.Variable, 0):
		p = gainLess
	case g.Gain <= 0 || l.Value != nil && Amount(&l.Variable, *l.Value) == Amount(&l.Variable, *g.Value):
		p = gainNothing
	}
	round := math.Floor
	if l.Toward == plan.Lowest {
		round = math.Ceil
	}
	value := grainy(&l.Variable, l.Variable.Display, *g.Value, round)
	if l.Variable.ID == plan.SprayLater {
		value = grainy(&l.Variable, l.Variable.Display, math.Abs(*g.Value), round) + " " + w.way(&l.Variable, *g.Value)
	}
	return fill(w.line[p], "what", what, "value", value,
		"gain", grainy(&l.Variable, differenceUnit(&l.Variable), math.Abs(g.Gain), math.Round))
}

// grainy prints an amount that is known to a hundredth of the variable's step, and no finer.
func grainy(v *plan.Variable, d job.Display, si float64, round func(float64) float64) string {
	x := si*d.Factor + d.Offset
	if v.Log || !finite(x) {
		return shown(d, si, round)
	}
	r := onGrid(x, int(math.Floor(math.Log10(0.01*v.Step*d.Factor)+1e-9)), round)
	return withUnit(sign(x, r)+plain(math.Abs(r)), d.Symbol)
}

// fails says what goes wrong by a criterion.
func (w planWords) fails(c *result.Criterion) string {
	if c == nil {
		return w.line[failsUnknown]
	}
	s := fill(w.failing[c.Name], "place", c.Place)
	if c.Spot != "" {
		s += fill(w.line[atTheSpot], "spot", c.Spot)
	}
	return s
}

// of says what a share is the share of.
func (w planWords) of(c *result.Criterion) string {
	s := fill(w.shareOf[c.Name], "place", c.Place)
	if c.Spot != "" {
		s += fill(w.line[atTheSpot], "spot", c.Spot)
	}
	return s
}

// change is the step from the present value in words: "+12 %", or as a difference.
func (w planWords) change(v *plan.Variable, value float64) string {
	if v.Log && v.Present > 0 {
		share := value/v.Present - 1
		return sign(share, math.Abs(share)) + w.plus(share) + plain(rounded(100*math.Abs(share), 3, math.Round)) + " %"
	}
	d := value - v.Present
	return sign(d, math.Abs(d)) + w.plus(d) + difference(v, d)
}

func (w planWords) plus(x float64) string {
	if x < 0 {
		return ""
	}
	return "+"
}

// reach is how far a limit lies from the present value, rounded to the side on which it is still good.
func (w planWords) reach(l *plan.Limit) string {
	d := l.Variable.Display
	d.Offset, d.Digits = 0, 3
	change := *l.Value - l.Variable.Present
	if (change > 0) == (l.Toward == plan.Highest) {
		return shown(d, math.Abs(change), math.Floor)
	}
	return shown(d, math.Abs(change), math.Ceil)
}

// way is the direction of a change: later or earlier for a moment, up or down for what is turned.
func (w planWords) way(v *plan.Variable, value float64) string {
	more, less := later, earlier
	if v.ID == plan.ZonesInStep {
		more, less = up, down
	}
	if value < v.Present {
		return w.line[less]
	}
	return w.line[more]
}

func first(margins []result.Criterion) *result.Criterion {
	if len(margins) == 0 {
		return nil
	}
	return &margins[0]
}

// second is the tightest criterion besides the one that binds.
func second(l *plan.Limit) *result.Criterion {
	for i := range l.Margins {
		if c := &l.Margins[i]; l.Binding == nil || c.Name != l.Binding.Name {
			return c
		}
	}
	return nil
}

func failing(margins []result.Criterion) []result.Criterion {
	n := 0
	for n < len(margins) && !margins[n].Met() {
		n++
	}
	return margins[:n]
}
