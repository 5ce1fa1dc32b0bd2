package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/plan"
)

// FillOptimum writes the texts of an optimum from its numbers.
func FillOptimum(a *plan.Optimum) {
	w := englishOptimum()
	for i := range a.Settings {
		a.Settings[i].Text = w.setting(&a.Settings[i])
	}
	if a.Spread != nil {
		FillSpread(a.Spread)
	}
	a.Text = w.optimum(a)
	a.Detail = fill(w.line[optimumDetail], "runs", strconv.Itoa(a.Runs), "rounds", strconv.Itoa(a.Rounds), "steps", strconv.Itoa(len(a.Path)))
}

// optimumWords is the catalogue of one language for best settings.
type optimumWords struct {
	line [optimumPhrases]string
}

type optimumPhrase int

// The sentences, in the order of the catalogue.
const (
	optimumFound optimumPhrase = iota
	optimumSaves
	optimumCosts
	optimumSame
	optimumSure
	optimumNot
	optimumNotChecked
	optimumNone
	optimumGoing
	optimumTightest
	optimumDetail
	optimumSetting
	optimumLow
	optimumHigh
	optimumPhrases // how many there are
)

func englishOptimum() optimumWords {
	return optimumWords{line: [optimumPhrases]string{
		optimumFound: "Least: {settings}.",
		optimumSaves: "That takes {after} for a square metre, {change} less than now ({before}).",
		optimumCosts: "That takes {after} for a square metre, {change} more than now ({before}), which is not as sure.",
		optimumSame:  "That takes {after} for a square metre, as now.",
		optimumSure:  "Everything is met in {chance} of cases (between {low} and {high}); {wanted} were wanted.",
		optimumNot: "No setting within the bounds is as sure as wanted ({wanted}). " +
			"The surest is {settings}, where everything is met in {chance} of cases.",
		optimumNotChecked: "No setting within the bounds has been found good so far; the nearest is {settings}.",
		optimumNone:       "Nothing has been judged yet.",
		optimumGoing:      "So far, not yet sampled: {settings}, {after} for a square metre.",
		optimumTightest:   "The tightest is {of}, {share} used.",
		optimumDetail:     "{runs} settings judged in {rounds} rounds, {steps} improvements. Checked by a plain run and by samples.",
		optimumSetting:    "{label} {value}",
		optimumLow:        "{label} {value} (the least allowed)",
		optimumHigh:       "{label} {value} (the most allowed)",
	}}
}

func (w optimumWords) setting(s *plan.OptimalSetting) string {
	line := optimumSetting
	switch {
	case s.AtLow:
		line = optimumLow
	case s.AtHigh:
		line = optimumHigh
	}
	return fill(w.line[line], "label", lowerFirst(s.Variable.Label), "value", Amount(&s.Variable, s.Value))
}

func (w optimumWords) optimum(a *plan.Optimum) string {
	if a.Best == nil || a.Before == nil || a.After == nil {
		return w.line[optimumNone]
	}
	var settings []string
	for i := range a.Settings {
		settings = append(settings, a.Settings[i].Text)
	}
	values := []string{"settings", english().join(settings), "after", w.objective(a, *a.After), "before", w.objective(a, *a.Before),
		"wanted", chance(a.Confidence, math.Round), "change", fixed(100*math.Abs(*a.After / *a.Before - 1), 1, "%")}
	if s := a.Spread; s != nil {
		values = append(values, "chance", chance(s.Chance.Value, math.Round), "low", chance(s.Chance.Low, math.Floor),
			"high", chance(s.Chance.High, math.Ceil))
	}
	switch {
	case a.Spread == nil && a.Best.Met:
		return fill(w.line[optimumGoing], values...)
	case a.Spread == nil:
		return fill(w.line[optimumNotChecked], values...)
	case !a.Found:
		return fill(w.line[optimumNot], values...)
	}
	line := optimumSaves
	switch ratio := *a.After / *a.Before; {
	case math.Abs(ratio-1) < 5e-4:
		line = optimumSame
	case ratio > 1:
		line = optimumCosts
	}
	parts := []string{fill(w.line[optimumFound], values...), fill(w.line[line], values...), fill(w.line[optimumSure], values...)}
	if tight := first(a.Best.Margins); tight != nil {
		parts = append(parts, fill(w.line[optimumTightest], "of", englishPlans().of(tight), "share", Percent(tight.Share)))
	}
	return strings.Join(parts, " ")
}

// objective prints energy in kilowatt-hours, or money.
func (w optimumWords) objective(a *plan.Optimum, v float64) string {
	if a.Objective == plan.LeastCost {
		return three(v, a.Currency)
	}
	return three(v/3.6e6, "kWh")
}

// Optimum prints an optimum as the command shows it.
func Optimum(study plan.Study, a *plan.Optimum) string {
	var b strings.Builder
	b.WriteString(Goal(study) + "\n\n" + a.Text + "\n")
	if a.Spread != nil {
		for i := range a.Spread.Criteria {
			if c := &a.Spread.Criteria[i]; c.Chance.Value < 1 {
				b.WriteString("  " + c.Text + "\n")
			}
		}
	}
	w := englishOptimum()
	fmt.Fprintf(&b, "\n  %8s  %12s  %8s  %13s", "settings", "per m²", "tightest", "with reserve")
	for i := range a.Settings {
		fmt.Fprintf(&b, "  %s", a.Settings[i].Variable.Label)
	}
	b.WriteString("\n")
	for _, s := range a.Path {
		fmt.Fprintf(&b, "  %8d  %12s  %8s  %13s", s.Run, w.objective(a, s.Objective), Percent(s.Share), Percent(s.Reserved))
		for i := range s.Values {
			v := &a.Settings[i].Variable
			fmt.Fprintf(&b, "  %*s", len([]rune(v.Label)), Amount(v, s.Values[i]))
		}
		b.WriteString("\n")
	}
	b.WriteString("\n" + a.Detail + "\n")
	return b.String()
}
