package report

import (
	"math"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// FillLimit writes the texts of a limit from its numbers.
func (w Speaker) FillLimit(l *plan.Limit) {
	w.Tell(l)
	l.Text = w.limit(l)
	l.Answer = w.wanted(l)
	for i := range l.Levers {
		l.Levers[i].Text = w.gain(&l.Levers[i], l)
	}
	if l.Value != nil {
		l.Shown = w.inside(&l.Variable, *l.Value, l.Toward)
	}
	w.margins(l.Margins)
	for _, at := range []*plan.Standing{&l.Present, l.Wanted, l.Beyond} {
		if at != nil {
			at.Text = w.Amount(&l.Variable, at.Value)
			w.margins(at.Margins)
		}
	}
}

// margins says of each share what it is the share of.
func (w Speaker) margins(criteria []result.Criterion) {
	for i := range criteria {
		criteria[i].Text = w.of(&criteria[i])
	}
}

// Amount prints a number of a variable in its display unit: "1.29 m/min". A difference of a temperature leaves the offset
// out.
func (w Speaker) Amount(v *plan.Variable, si float64) string {
	return w.shown(w.unitOf(v), si, math.Round)
}

// unitOf is the unit in which the reader likes a variable.
func (w Speaker) unitOf(v *plan.Variable) job.Display { return w.Display(v.Display, v.USDisplay) }

// inside prints a limit rounded to the side on which it is still good.
func (w Speaker) inside(v *plan.Variable, si float64, toward plan.Direction) string {
	if toward == plan.Lowest {
		return w.shown(w.unitOf(v), si, math.Ceil)
	}
	return w.shown(w.unitOf(v), si, math.Floor)
}

// shown prints a number in a unit, with as many significant digits as the unit has and three at least.
func (w Speaker) shown(d job.Display, si float64, round func(float64) float64) string {
	x := si*d.Factor + d.Offset
	if !finite(x) {
		return absent
	}
	r := rounded(x, max(3, d.Digits), round)
	return withUnit(sign(x, r)+w.plain(math.Abs(r)), d.Symbol)
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
func (w Speaker) difference(v *plan.Variable, si float64) string {
	return w.shown(w.differenceUnit(v), math.Abs(si), math.Round)
}

func (w Speaker) differenceUnit(v *plan.Variable) job.Display {
	d := w.unitOf(v)
	d.Offset, d.Digits = 0, 3
	if v.Unit == "K" {
		d.Symbol = w.unit(temperatureStep).Symbol
	}
	return d
}

// limit is the sentence: how far it goes, what fails beyond, and how much the next criterion has left.
func (w Speaker) limit(l *plan.Limit) string {
	v := &l.Variable
	if l.Bound == plan.Nowhere {
		return w.Say("plan.limit_nowhere", "label", v.Label, "fails", w.fails(first(l.Margins)))
	}
	group := "limit." + v.ID
	if !w.Has(group + ".up_to") {
		group = "limit.any"
	}
	line := ".up_to"
	switch good := l.Present.Met; {
	case good && l.Toward == plan.Lowest:
		line = ".down_to"
	case l.Toward == plan.Lowest:
		line = ".must_rise"
	case !good:
		line = ".must_fall"
	}
	s := w.Say(group+line, "label", v.Label, "value", w.inside(v, *l.Value, l.Toward), "present", w.Amount(v, v.Present),
		"change", w.reach(l), "times", w.change(v, *l.Value), "way", w.way(v, *l.Value))
	switch {
	case l.Refused != "":
		return s + " " + w.Say("plan.limit_refused", "why", l.Refused)
	case l.Bound == plan.ByRange:
		return s + " " + w.Say("plan.limit_range")
	}
	s += " " + w.Say("plan.limit_beyond", "fails", w.fails(l.Binding))
	if !l.Present.Met {
		s = w.Say("plan.limit_not_now", "fails", w.fails(first(l.Present.Margins))) + " " + s
	}
	if next := second(l); next != nil {
		s += " " + w.Say("plan.limit_next", "share", w.Percent(next.Share), "of", w.of(next))
	}
	return s
}

// wanted says whether what was asked for is good.
func (w Speaker) wanted(l *plan.Limit) string {
	if l.Wanted == nil {
		return ""
	}
	v, at := &l.Variable, l.Wanted
	values := []any{"label", v.Label, "value", w.Amount(v, at.Value), "times", w.change(v, at.Value)}
	switch {
	case at.Refused != "":
		return w.Say("plan.wanted_refused", append(values, "why", at.Refused)...)
	case at.Met:
		return w.Say("plan.wanted_yes", append(values, "share", w.Percent(first(at.Margins).Share), "of", w.of(first(at.Margins)))...)
	}
	s := w.Say("plan.wanted_no", append(values, "fails", w.fails(first(at.Margins)))...)
	if others := failing(at.Margins); len(others) > 1 {
		var more []string
		for i := range others[1:] {
			more = append(more, w.fails(&others[1+i]))
		}
		s += " " + w.Say("plan.wanted_also", "fails", strings.Join(more, "; "))
	}
	return s
}

func (w Speaker) gain(g *plan.Gain, l *plan.Limit) string {
	what := w.Say("lever."+g.Name, "place", g.Place, "change", w.leverChange(g))
	if g.Value == nil {
		return w.Say("plan.gain_none", "what", what, "fails", w.fails(g.Fails))
	}
	p := "plan.gain_more"
	switch {
	case g.Gain < 0 && w.difference(&l.Variable, g.Gain) != w.difference(&l.Variable, 0):
		p = "plan.gain_less"
	case g.Gain <= 0 || l.Value != nil && w.Amount(&l.Variable, *l.Value) == w.Amount(&l.Variable, *g.Value):
		p = "plan.gain_nothing"
	}
	round := math.Floor
	if l.Toward == plan.Lowest {
		round = math.Ceil
	}
	value := w.grainy(&l.Variable, w.unitOf(&l.Variable), *g.Value, round)
	if l.Variable.ID == plan.SprayLater {
		value = w.grainy(&l.Variable, w.unitOf(&l.Variable), math.Abs(*g.Value), round) + " " + w.way(&l.Variable, *g.Value)
	}
	return w.Say(p, "what", what, "value", value,
		"gain", w.grainy(&l.Variable, w.differenceUnit(&l.Variable), math.Abs(g.Gain), math.Round))
}

// leverChange is the size of a change of plant or coat in words.
func (w Speaker) leverChange(g *plan.Gain) string {
	q := map[string]measure{"longer": length, "hotter": temperatureStep, "warmer": temperatureStep, "thinner": coatWeight}
	size := math.Abs(g.Change)
	switch quantity, known := q[g.Name]; {
	case known:
		return w.in(size, quantity)
	case g.Name == "dwell":
		return w.Duration(size)
	}
	return w.three(100*size, "%")
}

// grainy prints an amount that is known to a hundredth of the variable's step, and no finer.
func (w Speaker) grainy(v *plan.Variable, d job.Display, si float64, round func(float64) float64) string {
	x := si*d.Factor + d.Offset
	if v.Log || !finite(x) {
		return w.shown(d, si, round)
	}
	r := onGrid(x, int(math.Floor(math.Log10(0.01*v.Step*d.Factor)+1e-9)), round)
	return withUnit(sign(x, r)+w.plain(math.Abs(r)), d.Symbol)
}

// fails says what goes wrong by a criterion.
func (w Speaker) fails(c *result.Criterion) string {
	if c == nil {
		return w.Say("plan.fails_unknown")
	}
	s := w.Say("criterion.fails."+string(c.Name), "place", w.placed(c.Place))
	if c.Spot != "" {
		s += w.Say("plan.at_the_spot", "spot", c.Spot)
	}
	return s
}

// placed is a place behind a word; empty where it is everywhere.
func (w Speaker) placed(place string) string {
	if place == "" {
		return ""
	}
	return w.Say("report.in_place", "place", place)
}

// of says what a share is the share of.
func (w Speaker) of(c *result.Criterion) string {
	s := w.Say("criterion.share_of."+string(c.Name), "place", w.placed(c.Place))
	if c.Spot != "" {
		s += w.Say("plan.at_the_spot", "spot", c.Spot)
	}
	return s
}

// change is the step from the present value in words: "+12 %", or as a difference.
func (w Speaker) change(v *plan.Variable, value float64) string {
	if v.Log && v.Present > 0 {
		share := value/v.Present - 1
		return sign(share, math.Abs(share)) + w.plus(share) + w.plain(rounded(100*math.Abs(share), 3, math.Round)) + " %"
	}
	d := value - v.Present
	return sign(d, math.Abs(d)) + w.plus(d) + w.difference(v, d)
}

func (w Speaker) plus(x float64) string {
	if x < 0 {
		return ""
	}
	return "+"
}

// reach is how far a limit lies from the present value, rounded to the side on which it is still good.
func (w Speaker) reach(l *plan.Limit) string {
	d := w.unitOf(&l.Variable)
	d.Offset, d.Digits = 0, 3
	change := *l.Value - l.Variable.Present
	if (change > 0) == (l.Toward == plan.Highest) {
		return w.shown(d, math.Abs(change), math.Floor)
	}
	return w.shown(d, math.Abs(change), math.Ceil)
}

// way is the direction of a change: later or earlier for a moment, up or down for what is turned.
func (w Speaker) way(v *plan.Variable, value float64) string {
	more, less := "plan.later", "plan.earlier"
	if v.ID == plan.ZonesInStep {
		more, less = "plan.up", "plan.down"
	}
	if value < v.Present {
		return w.Say(less)
	}
	return w.Say(more)
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
