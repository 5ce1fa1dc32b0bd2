package report

import (
	"fmt"
	"math"
	"strings"

	"github.com/drywright/drywright/cure/plan"
)

// FillSpread writes the texts of a spread from its numbers.
func (w Speaker) FillSpread(s *plan.Spread) {
	w.Tell(s)
	for i := range s.Criteria {
		c := &s.Criteria[i]
		c.Text = w.Say("spread.criterion", "fails", w.Say("criterion.fails."+string(c.Name), "place", ""), "chance", w.rarely(c.Chance))
	}
	for i := range s.Influences {
		s.Influences[i].Text = w.influence(&s.Influences[i])
	}
	s.Text, s.Detail = w.spread(s), w.detail(s)
}

// spread is the sentence: how sure, what fails first, what decides.
func (w Speaker) spread(s *plan.Spread) string {
	c := &s.Chance
	line := "spread.some"
	switch c.Value {
	case 0:
		line = "spread.none"
	case 1:
		line = "spread.all"
	}
	parts := []string{w.Say(line, "chance", w.chance(c.Value, math.Round), "low", w.chance(c.Low, math.Floor), "high", w.chance(c.High, math.Ceil),
		"samples", s.Samples)}
	if c.Value < 1 && len(s.Criteria) > 0 && s.Criteria[0].Chance.Value < 1 {
		parts = append(parts, w.Say("spread.least", "fails", w.Say("criterion.fails."+string(s.Criteria[0].Name), "place", "")))
	}
	if s.Refused > 0 {
		parts = append(parts, w.Say("spread.refused", "refused", s.Refused))
	}
	return strings.Join(append(parts, w.matters(s)), " ")
}

// fewInfluences is how many inputs a sentence names, and worthNaming the least share of the spread that is worth a place in it.
const (
	fewInfluences = 3
	worthNaming   = 0.1
)

func (w Speaker) matters(s *plan.Spread) string {
	var inputs []string
	for i := range s.Influences {
		f := &s.Influences[i]
		if len(inputs) < fewInfluences && f.Share.Total >= worthNaming {
			inputs = append(inputs, w.Say("spread.matter", "label", f.Variable.Label, "share", w.chance(math.Min(1, f.Share.Total), math.Round)))
		}
	}
	if len(inputs) == 0 {
		return w.Say("spread.nothing")
	}
	return w.Say("spread.matters", "inputs", w.join(inputs))
}

func (w Speaker) detail(s *plan.Spread) string {
	d := w.Say("spread.detail", "samples", s.Samples, "runs", s.Runs, "inputs", len(s.Influences))
	if !s.Complete {
		d = w.Say("spread.going", "runs", s.Runs, "planned", s.Planned) + " " + d
	}
	return d
}

// rarely prints the chance that a criterion is not met.
func (w Speaker) rarely(c plan.Chance) string {
	line := "spread.often"
	switch c.Value {
	case 0:
		line = "spread.always"
	case 1:
		line = "spread.never"
	}
	return w.Say(line, "chance", w.chance(1-c.Value, math.Round), "low", w.chance(1-c.High, math.Floor), "high", w.chance(1-c.Low, math.Ceil))
}

func (w Speaker) influence(f *plan.Influence) string {
	return w.Say("spread.influence_line", "label", f.Variable.Label, "tolerance", w.tolerance(&f.Variable, &f.Tolerance),
		"first", w.estimated(f.Share.First, f.Share.FirstError), "total", w.estimated(f.Share.Total, f.Share.TotalError))
}

func (w Speaker) tolerance(v *plan.Variable, t *plan.Tolerance) string {
	shape, width := "spread.influence_normal", w.fixed(100*t.Width, 1, "%")
	if t.Shape == plan.Uniform {
		shape = "spread.influence_uniform"
	}
	if !t.Relative {
		width = w.difference(v, t.Width)
	}
	return w.Say(shape, "width", width)
}

// chance prints a share in per cent, whole but near the ends: "97 %", "99.6 %". It never reads 0 or 100 where it is not.
func (w Speaker) chance(x float64, round func(float64) float64) string {
	percent, decimals := 100*x, 0
	if math.Min(percent, 100-percent) < 1 && x > 0 && x < 1 {
		decimals = 1
	}
	unit := math.Pow10(decimals)
	r := round(trimmed(percent*unit)) / unit
	if x > 0 && x < 1 {
		r = math.Min(math.Max(r, 0.1), 99.9)
	}
	return w.fixed(r, decimals, "%")
}

// estimated prints an index with its error.
func (w Speaker) estimated(x, e float64) string {
	return w.fixed(100*x, 0, "") + " ± " + w.fixed(math.Ceil(100*e), 0, "%")
}

// Spread prints a spread as the command shows it.
func (w Speaker) Spread(study plan.Study, s *plan.Spread) string {
	var b strings.Builder
	b.WriteString(w.Goal(study) + "\n\n" + s.Text + "\n\n")
	for i := range s.Criteria {
		if s.Criteria[i].Chance.Value < 1 {
			b.WriteString("  " + s.Criteria[i].Text + "\n")
		}
	}
	for i := range s.Influences {
		b.WriteString("  " + s.Influences[i].Text + "\n")
	}
	b.WriteString("\n" + s.Detail + "\n")
	return b.String()
}

// Tolerances prints tolerances as the command lists them.
func (w Speaker) Tolerances(study plan.Study, tolerances []plan.Tolerance) string {
	var b strings.Builder
	for i := range tolerances {
		t := &tolerances[i]
		if v, err := study.Variable(t.Variable); err == nil {
			fmt.Fprintf(&b, "%-46s %-32s %12s   %s\n", t.Variable, w.tolerance(&v, t), w.Amount(&v, v.Present), w.Text(v.Label))
		}
	}
	return b.String()
}
