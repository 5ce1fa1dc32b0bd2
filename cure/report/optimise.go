package report

import (
	"fmt"
	"math"
	"strings"

	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/words"
)

// FillOptimum writes the texts of an optimum from its numbers.
func (w Speaker) FillOptimum(a *plan.Optimum) {
	w.Tell(a)
	for i := range a.Settings {
		a.Settings[i].Text = w.setting(&a.Settings[i])
	}
	if a.Spread != nil {
		w.FillSpread(a.Spread)
	}
	a.Text = w.optimum(a)
	a.Detail = w.Say("optimum.detail", "runs", a.Runs, "rounds", a.Rounds, "steps", len(a.Path))
}

func (w Speaker) setting(s *plan.OptimalSetting) string {
	line := "optimum.setting"
	switch {
	case s.AtLow:
		line = "optimum.low"
	case s.AtHigh:
		line = "optimum.high"
	}
	return w.Say(line, "label", w.Text(words.Inside(s.Variable.Label)), "value", w.Amount(&s.Variable, s.Value))
}

func (w Speaker) optimum(a *plan.Optimum) string {
	if a.Best == nil || a.Before == nil || a.After == nil {
		return w.Say("optimum.none")
	}
	var settings []string
	for i := range a.Settings {
		settings = append(settings, a.Settings[i].Text)
	}
	values := []any{"area", w.Say(w.areaKey("optimum.area.")), "settings", w.join(settings), "after", w.objective(a, *a.After), "before", w.objective(a, *a.Before),
		"wanted", w.chance(a.Confidence, math.Round), "change", w.fixed(100*math.Abs(*a.After / *a.Before - 1), 1, "%")}
	if s := a.Spread; s != nil {
		values = append(values, "chance", w.chance(s.Chance.Value, math.Round), "low", w.chance(s.Chance.Low, math.Floor),
			"high", w.chance(s.Chance.High, math.Ceil))
	}
	switch {
	case a.Spread == nil && a.Best.Met:
		return w.Say("optimum.going", values...)
	case a.Spread == nil:
		return w.Say("optimum.not_checked", values...)
	case !a.Found:
		return w.Say("optimum.not", values...)
	}
	line := "optimum.saves"
	switch ratio := *a.After / *a.Before; {
	case math.Abs(ratio-1) < 5e-4:
		line = "optimum.same"
	case ratio > 1:
		line = "optimum.costs"
	}
	parts := []string{w.Say("optimum.found", values...), w.Say(line, values...), w.Say("optimum.sure", values...)}
	if tight := first(a.Best.Margins); tight != nil {
		parts = append(parts, w.Say("optimum.tightest", "of", w.of(tight), "share", w.Percent(tight.Share)))
	}
	return strings.Join(parts, " ")
}

// objective prints energy in kilowatt-hours, or money.
func (w Speaker) objective(a *plan.Optimum, v float64) string {
	if a.Objective == plan.LeastCost {
		return w.three(v/w.area().Factor, a.Currency)
	}
	return w.three(v/w.area().Factor/3.6e6, "kWh")
}

// Optimum prints an optimum as the command shows it.
func (w Speaker) Optimum(study plan.Study, a *plan.Optimum) string {
	var b strings.Builder
	b.WriteString(w.Goal(study) + "\n\n" + a.Text + "\n")
	if a.Spread != nil {
		for i := range a.Spread.Criteria {
			if c := &a.Spread.Criteria[i]; c.Chance.Value < 1 {
				b.WriteString("  " + c.Text + "\n")
			}
		}
	}
	fmt.Fprintf(&b, "\n  %8s  %12s  %8s  %13s", w.Say("optimum.column.settings"), w.Say("optimum.column.per_area", "unit", w.area().Symbol),
		w.Say("optimum.column.tightest"), w.Say("optimum.column.with_reserve"))
	for i := range a.Settings {
		fmt.Fprintf(&b, "  %s", a.Settings[i].Variable.Label)
	}
	b.WriteString("\n")
	for _, s := range a.Path {
		fmt.Fprintf(&b, "  %8d  %12s  %8s  %13s", s.Run, w.objective(a, s.Objective), w.Percent(s.Share), w.Percent(s.Reserved))
		for i := range s.Values {
			v := &a.Settings[i].Variable
			fmt.Fprintf(&b, "  %*s", len([]rune(v.Label)), w.Amount(v, s.Values[i]))
		}
		b.WriteString("\n")
	}
	b.WriteString("\n" + a.Detail + "\n")
	return b.String()
}
