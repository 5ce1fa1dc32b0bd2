package report

import (
	"fmt"
	"math"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// FillCosts writes the texts of costs from their numbers.
func (w Speaker) FillCosts(a *plan.Costs) {
	w.Tell(a)
	p := pricing{w, a}
	a.Sentences = []string{}
	for i := range a.Routes {
		r := &a.Routes[i]
		for k := range r.Terms {
			t := &r.Terms[k]
			per, value := "cost.per."+string(t.Per), t.Value
			if t.Per == plan.PerArea {
				per, value = w.areaKey("cost.per."), value/w.area().Factor
			}
			t.Text = w.Say("cost.term_line", "name", w.Say("cost.term."+string(t.Name)), "value", p.money(value), "per", w.Say(per))
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

// pricing writes about one set of costs.
type pricing struct {
	Speaker
	costs *plan.Costs
}

func (p *pricing) money(v float64) string {
	digits := 2
	if math.Abs(v) >= 100 {
		digits = 0
	}
	return p.fixed(v, digits, p.costs.Currency)
}

// quantity prints an area, with the number of parts where one is known. Rounding down keeps a capacity a capacity.
func (p *pricing) quantity(area float64, round func(float64) float64) string {
	unit := p.area()
	square := withUnit(p.plain(rounded(area*unit.Factor, 3, round)), unit.Symbol)
	if p.costs.PartArea == nil {
		return p.Say("cost.area", "area", square)
	}
	return p.Say("cost.parts", "parts", round(trimmed(area / *p.costs.PartArea)), "area", square)
}

// route says what one unit carries and what is left out.
func (p *pricing) route(r *plan.RouteCost) string {
	var parts []string
	switch {
	case !r.Met:
		parts = append(parts, p.Say("cost.not_met", "place", p.place(r.Route), "fails", p.fails(r.Fails)))
	case r.Capacity == nil:
		parts = append(parts, p.Say("cost.unlimited", "place", p.place(r.Route)))
	default:
		line := map[result.Kind]string{result.Room: "cost.room", result.StaticOven: "cost.oven", result.Tunnel: "cost.tunnel"}[r.Route]
		values := []any{"capacity", p.quantity(*r.Capacity, math.Floor), "basis", p.Maybe("cost.basis." + string(r.Basis)), "charges", p.Say("cost.charges", "n", r.Charges)}
		if r.Charge != nil {
			values = append(values, "charge", p.quantity(*r.Charge, math.Floor))
		}
		parts = append(parts, p.Say(line, values...))
	}
	if len(r.Missing) > 0 {
		var labels []string
		for _, path := range r.Missing {
			labels = append(labels, p.Text(words.Inside(p.labelOf(path))))
		}
		parts = append(parts, p.Say("cost.missing", "place", p.place(r.Route), "missing", p.join(labels)))
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
	return s[0].Text + " " + p.Say("cost.many", "low", p.quantity(s[0].High, math.Round), "high", p.quantity(s[last].Low, math.Round),
		"times", last) + " " + s[last].Text
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
	s, line := &all[i], "cost.between"
	switch {
	case len(all) == 1:
		line = "cost.only"
	case i == 0:
		line = "cost.up_to"
	case i == len(all)-1:
		line = "cost.from"
	}
	return p.Say(line, "low", p.quantity(s.Low, math.Ceil), "high", p.quantity(s.High, math.Floor), "place", p.place(s.Route))
}

func (p *pricing) crossing(c *plan.Crossing) string {
	line := "cost.crossing"
	if c.Jump {
		line = "cost.jump"
	}
	return p.Say(line, "quantity", p.quantity(c.Quantity, math.Round), "cheaper", p.place(c.Cheaper), "dearer", p.place(c.Dearer),
		"cost", p.money(c.Cost))
}

func (p *pricing) asked(a *plan.AskedCost) string {
	var each []string
	for i := range p.costs.Routes {
		r := &p.costs.Routes[i]
		line := "cost.each"
		if r.Capacity == nil {
			line = "cost.alone"
		}
		each = append(each, p.Say(line, "place", p.place(r.Route), "cost", p.money(a.Cost[i]), "units", p.units(r.Route, a.Units[i])))
	}
	line, place := "cost.asked_none", ""
	switch {
	case a.Cheapest >= 0 && len(p.costs.Cheapest) > 0:
		line, place = "cost.asked", upperFirst(p.place(p.costs.Routes[a.Cheapest].Route))
	case a.Cheapest >= 0:
		line = "cost.asked_only"
	}
	return p.Say(line, "quantity", p.quantity(a.Quantity, math.Round), "costs", strings.Join(each, ", "), "place", place)
}

// place is a route in the middle of a sentence.
func (w Speaker) place(r result.Kind) string { return w.Say("route.in_a_sentence." + string(r)) }

// units is a number of rooms, ovens or tunnels: "1 oven", "3 ovens".
func (w Speaker) units(r result.Kind, n int) string {
	return w.Say("route.one_more."+string(r), "n", n)
}

// area is the reader's unit of area.
func (w Speaker) area() job.Display { return w.unit(area) }

// areaKey is a key by the reader's unit of area.
func (w Speaker) areaKey(group string) string {
	if w.unitSystem == US {
		return group + "ft2"
	}
	return group + "m2"
}

// labelOf is what a field or block of the job is called, without its route, which is named beside it.
func (w Speaker) labelOf(path string) string {
	if f, ok := job.NewRules().Field(path); ok {
		label := w.Text(f.Label)
		if _, bare, prefixed := strings.Cut(label, ": "); prefixed {
			return bare
		}
		return label
	}
	pattern := strings.ReplaceAll(path, "[0]", "[]")
	for _, b := range job.Blocks() {
		if b.Path == pattern {
			return w.Text(b.Label)
		}
	}
	return path
}

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] } // of words of ours, which begin with a letter of ASCII

// Costs prints costs as the command shows them.
func (w Speaker) Costs(a *plan.Costs) string {
	var b strings.Builder
	for _, s := range a.Sentences {
		b.WriteString(s + "\n")
	}
	p := pricing{w, a}
	b.WriteString("\n")
	for i := range a.Routes {
		r := &a.Routes[i]
		for _, t := range r.Terms {
			fmt.Fprintf(&b, "  %-16s %s\n", p.Say("route.title."+string(r.Route)), t.Text)
		}
	}
	fmt.Fprintf(&b, "\n  %14s", p.Say("cost.area_a_day", "unit", p.area().Symbol))
	for i := range a.Routes {
		fmt.Fprintf(&b, "  %24s", p.Say("route.title."+string(a.Routes[i].Route)))
	}
	b.WriteString("\n")
	const rows = 12
	for k := 1; k <= rows; k++ {
		i := k * (len(a.Quantity) - 1) / rows
		fmt.Fprintf(&b, "  %14s", p.plain(rounded(a.Quantity[i]*p.area().Factor, 3, math.Round)))
		for n := range a.Routes {
			r := &a.Routes[n]
			fmt.Fprintf(&b, "  %24s", p.money(r.Cost[i])+", "+p.units(r.Route, r.Units[i]))
		}
		b.WriteString("\n")
	}
	return b.String()
}
