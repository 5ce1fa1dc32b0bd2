package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// FillCosts writes the texts of costs from their numbers.
func FillCosts(a *plan.Costs) {
	w := englishCosts()
	p := pricing{w, english(), englishPlans(), a}
	a.Sentences = []string{}
	for i := range a.Routes {
		r := &a.Routes[i]
		for k := range r.Terms {
			t := &r.Terms[k]
			t.Text = fill(w.term, "name", w.names[t.Name], "value", p.money(t.Value), "per", w.per[t.Per])
		}
		r.Text = p.route(r)
		a.Sentences = append(a.Sentences, r.Text)
	}
	for i := range a.Crossings {
		a.Crossings[i].Text = p.crossing(&a.Crossings[i])
	}
	for i := range a.Cheapest {
		a.Cheapest[i].Text = p.stretch(i)
	}
	if s := p.comparison(); s != "" {
		a.Sentences = append(a.Sentences, s)
	}
	a.Sentences = append(a.Sentences, p.others()...)
	if a.Asked != nil {
		a.Asked.Text = p.asked(a.Asked)
		a.Sentences = append([]string{a.Asked.Text}, a.Sentences...)
	}
	a.Text = strings.Join(a.Sentences, " ")
}

// costWords is the catalogue of one language for costs.
type costWords struct {
	names map[plan.TermName]string
	per   map[plan.TermPer]string
	basis map[plan.CapacityBasis]string
	place map[result.Kind]string // the route in the middle of a sentence
	one   map[result.Kind]string // a further room, oven or tunnel
	term  string
	line  [costPhrases]string
}

type costPhrase int

// The sentences, in the order of the catalogue.
const (
	costRoom costPhrase = iota
	costOven
	costTunnel
	costUnlimited
	costNotMet
	costMissing
	costParts
	costArea
	costOnly
	costUpTo
	costBetween
	costFrom
	costMany
	costCrossing
	costJump
	costAsked
	costAskedOnly
	costAskedNone
	costEach
	costAlone
	costPhrases // how many there are
)

func englishCosts() costWords {
	return costWords{
		names: map[plan.TermName]string{plan.EnergyCost: "energy", plan.LabourCost: "labour", plan.AttendCost: "people attending",
			plan.FloorCost: "floor", plan.RackCost: "racks", plan.Depreciation: "investment"},
		per: map[plan.TermPer]string{plan.PerArea: "a square metre", plan.PerCharge: "a charge", plan.PerUnitDay: "a day",
			plan.PerHour: "an hour of running"},
		basis: map[plan.CapacityBasis]string{plan.LargestLoad: "as much as its air dries by the deadline", plan.StatedLoad: "as it has places for"},
		place: map[result.Kind]string{result.Room: "the room overnight", result.StaticOven: "the static oven", result.Tunnel: "the tunnel"},
		one:   map[result.Kind]string{result.Room: "room", result.StaticOven: "oven", result.Tunnel: "tunnel"},
		term:  "{name}: {value} {per}",
		line: [costPhrases]string{
			costRoom:      "Overnight suffices up to {capacity} a day in one room, {basis}.",
			costOven:      "One static oven carries {capacity} a day, {charges} of {charge}.",
			costTunnel:    "One tunnel carries {capacity} a day at today's speed.",
			costUnlimited: "How much {place} carries at once the job does not say, so that one is counted for any quantity.",
			costNotMet:    "No comparison with {place}: {fails}.",
			costMissing:   "Not counted for {place}: {missing}.",
			costParts:     "{parts} parts ({area})",
			costArea:      "{area}",
			costOnly:      "Up to {high} a day {place} costs least throughout.",
			costUpTo:      "Up to {high} a day {place} costs least.",
			costBetween:   "From {low} to {high} a day {place} costs least.",
			costFrom:      "From {low} a day on {place} costs least.",
			costMany:      "Between {low} and {high} a day the cheapest changes with every further charge or unit, {times} times.",
			costCrossing:  "From {quantity} a day on {cheaper} costs less than {dearer}, {cost} a day.",
			costJump:      "Beyond {quantity} a day, where a further charge or unit is needed, {cheaper} costs less than {dearer}, {cost} a day.",
			costAsked:     "{quantity} a day: {costs}. {place} costs least.",
			costAskedOnly: "{quantity} a day: {costs}.",
			costAskedNone: "{quantity} a day: {costs}. No route does what it should.",
			costEach:      "{place} {cost} ({units})",
			costAlone:     "{place} {cost}",
		},
	}
}

// pricing writes about one set of costs.
type pricing struct {
	costWords
	words words
	plans planWords
	costs *plan.Costs
}

func (p *pricing) money(v float64) string {
	digits := 2
	if math.Abs(v) >= 100 {
		digits = 0
	}
	return fixed(v, digits, p.costs.Currency)
}

// quantity prints an area, with the number of parts where one is known. Rounding down keeps a capacity a capacity.
func (p *pricing) quantity(area float64, round func(float64) float64) string {
	square := withUnit(plain(rounded(area, 3, round)), "m²")
	if p.costs.PartArea == nil {
		return fill(p.line[costArea], "area", square)
	}
	return fill(p.line[costParts], "parts", plain(round(trimmed(area / *p.costs.PartArea))), "area", square)
}

// route says what one unit carries and what is left out.
func (p *pricing) route(r *plan.RouteCost) string {
	var parts []string
	switch {
	case !r.Met:
		parts = append(parts, fill(p.line[costNotMet], "place", p.place[r.Route], "fails", p.plans.fails(r.Fails)))
	case r.Capacity == nil:
		parts = append(parts, fill(p.line[costUnlimited], "place", p.place[r.Route]))
	default:
		line := map[result.Kind]costPhrase{result.Room: costRoom, result.StaticOven: costOven, result.Tunnel: costTunnel}[r.Route]
		values := []string{"capacity", p.quantity(*r.Capacity, math.Floor), "basis", p.basis[r.Basis], "charges", counted(r.Charges, "charge")}
		if r.Charge != nil {
			values = append(values, "charge", p.quantity(*r.Charge, math.Floor))
		}
		parts = append(parts, fill(p.line[line], values...))
	}
	if len(r.Missing) > 0 {
		var labels []string
		for _, path := range r.Missing {
			labels = append(labels, lowerFirst(labelOf(path)))
		}
		parts = append(parts, fill(p.line[costMissing], "place", p.place[r.Route], "missing", p.words.join(labels)))
	}
	return strings.Join(parts, " ")
}

// fewStretches is how many changes of the cheapest a text tells one by one.
const fewStretches = 5

// comparison says which route costs least from where to where.
func (p *pricing) comparison() string {
	s := p.costs.Cheapest
	if len(s) == 0 {
		return ""
	}
	if len(s) <= fewStretches {
		var parts []string
		for i := range s {
			parts = append(parts, s[i].Text)
		}
		return strings.Join(parts, " ")
	}
	last := len(s) - 1
	return s[0].Text + " " + fill(p.line[costMany], "low", p.quantity(s[0].High, math.Round), "high", p.quantity(s[last].Low, math.Round),
		"times", strconv.Itoa(last)) + " " + s[last].Text
}

// others are the last crossings of pairs that the comparison does not speak of, since a third route is cheaper than both there.
func (p *pricing) others() []string {
	type pair [2]result.Kind
	last := map[pair]int{}
	var order []pair
	for i := range p.costs.Crossings {
		c := &p.costs.Crossings[i]
		k := pair{min(c.Cheaper, c.Dearer), max(c.Cheaper, c.Dearer)}
		if _, known := last[k]; !known {
			order = append(order, k)
		}
		last[k] = i
	}
	var texts []string
	for _, k := range order {
		c := &p.costs.Crossings[last[k]]
		spoken := false
		for _, s := range p.costs.Cheapest {
			spoken = spoken || s.Low == c.Quantity
		}
		if !spoken {
			texts = append(texts, p.crossing(c))
		}
	}
	return texts
}

func (p *pricing) stretch(i int) string {
	all := p.costs.Cheapest
	s, line := &all[i], costBetween
	switch {
	case len(all) == 1:
		line = costOnly
	case i == 0:
		line = costUpTo
	case i == len(all)-1:
		line = costFrom
	}
	return fill(p.line[line], "low", p.quantity(s.Low, math.Ceil), "high", p.quantity(s.High, math.Floor), "place", p.place[s.Route])
}

func (p *pricing) crossing(c *plan.Crossing) string {
	line := costCrossing
	if c.Jump {
		line = costJump
	}
	return fill(p.line[line], "quantity", p.quantity(c.Quantity, math.Round), "cheaper", p.place[c.Cheaper], "dearer", p.place[c.Dearer],
		"cost", p.money(c.Cost))
}

func (p *pricing) asked(a *plan.AskedCost) string {
	var each []string
	for i := range p.costs.Routes {
		r := &p.costs.Routes[i]
		line := costEach
		if r.Capacity == nil {
			line = costAlone
		}
		each = append(each, fill(p.line[line], "place", p.place[r.Route], "cost", p.money(a.Cost[i]), "units", counted(a.Units[i], p.one[r.Route])))
	}
	line, place := costAskedNone, ""
	switch {
	case a.Cheapest >= 0 && len(p.costs.Cheapest) > 0:
		line, place = costAsked, upperFirst(p.place[p.costs.Routes[a.Cheapest].Route])
	case a.Cheapest >= 0:
		line = costAskedOnly
	}
	return fill(p.line[line], "quantity", p.quantity(a.Quantity, math.Round), "costs", strings.Join(each, ", "), "place", place)
}

// counted is a number of things: "1 oven", "3 ovens".
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// labelOf is what a field or block of the job is called, without its route, which is named beside it.
func labelOf(path string) string {
	if f, ok := job.NewRules().Field(path); ok {
		_, label, prefixed := strings.Cut(f.Label, ": ")
		if !prefixed {
			label = f.Label
		}
		return label
	}
	pattern := strings.ReplaceAll(path, "[0]", "[]")
	for _, b := range job.Blocks() {
		if b.Path == pattern {
			return b.Label
		}
	}
	return path
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// Costs prints costs as the command shows them.
func Costs(a *plan.Costs) string {
	var b strings.Builder
	for _, s := range a.Sentences {
		b.WriteString(s + "\n")
	}
	w := englishCosts()
	p := pricing{w, english(), englishPlans(), a}
	b.WriteString("\n")
	for i := range a.Routes {
		r := &a.Routes[i]
		for _, t := range r.Terms {
			fmt.Fprintf(&b, "  %-16s %s\n", english().titles[r.Route], t.Text)
		}
	}
	fmt.Fprintf(&b, "\n  %14s", "m² a day")
	for i := range a.Routes {
		fmt.Fprintf(&b, "  %24s", english().titles[a.Routes[i].Route])
	}
	b.WriteString("\n")
	const rows = 12
	for k := 1; k <= rows; k++ {
		i := k * (len(a.Quantity) - 1) / rows
		fmt.Fprintf(&b, "  %14s", plain(rounded(a.Quantity[i], 3, math.Round)))
		for n := range a.Routes {
			r := &a.Routes[n]
			fmt.Fprintf(&b, "  %24s", p.money(r.Cost[i])+", "+counted(r.Units[i], w.one[r.Route]))
		}
		b.WriteString("\n")
	}
	return b.String()
}
