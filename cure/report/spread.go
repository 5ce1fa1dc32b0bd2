package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/plan"
)

// FillSpread writes the texts of a spread from its numbers.
func FillSpread(s *plan.Spread) {
	w, p := englishSpread(), englishPlans()
	for i := range s.Criteria {
		c := &s.Criteria[i]
		c.Text = fill(w.line[spreadCriterion], "fails", placeless(p.failing[c.Name]), "chance", w.rarely(c.Chance))
	}
	for i := range s.Influences {
		s.Influences[i].Text = w.influence(&s.Influences[i])
	}
	s.Text, s.Detail = w.spread(s, p), w.detail(s)
}

// spreadWords is the catalogue of one language for spreads.
type spreadWords struct {
	line [spreadPhrases]string
}

type spreadPhrase int

// The sentences, in the order of the catalogue.
const (
	spreadSome spreadPhrase = iota
	spreadAll
	spreadNone
	spreadLeast
	spreadMatters
	spreadMatter
	spreadNothing
	spreadRefused
	spreadDetail
	spreadGoing
	spreadCriterion
	spreadOften
	spreadNever
	spreadAlways
	influenceLine
	influenceNormal
	influenceUniform
	spreadPhrases // how many there are
)

func englishSpread() spreadWords {
	return spreadWords{line: [spreadPhrases]string{
		spreadSome:    "Everything is met in {chance} of cases (between {low} and {high}).",
		spreadAll:     "Everything is met in every one of {samples} samples: in at least {low} of cases.",
		spreadNone:    "In none of {samples} samples is everything met: in at most {high} of cases.",
		spreadLeast:   "Where it is not, then mostly because {fails}.",
		spreadMatters: "What makes the difference: {inputs}.",
		spreadMatter:  "{label} ({share})",
		spreadNothing: "None of the tolerances makes a difference.",
		spreadRefused: "In {refused} of the samples values are outside what is accepted; they count as not met.",
		spreadDetail: "{samples} samples for the chances, {runs} settings judged in all, {inputs} inputs varied. " +
			"The ranges hold the truth 95 times out of 100.",
		spreadGoing:      "First {runs} of {planned} settings.",
		spreadCriterion:  "In {chance} of cases {fails}.",
		spreadOften:      "{chance} ({low} to {high})",
		spreadNever:      "less than {high}",
		spreadAlways:     "more than {low}",
		influenceLine:    "{label}, {tolerance}: {first} of the spread by itself, {total} with all it takes part in.",
		influenceNormal:  "± {width} (standard deviation)",
		influenceUniform: "± {width} at most",
	}}
}

// spread is the sentence: how sure, what fails first, what decides.
func (w spreadWords) spread(s *plan.Spread, p planWords) string {
	c := &s.Chance
	line := spreadSome
	switch c.Value {
	case 0:
		line = spreadNone
	case 1:
		line = spreadAll
	}
	parts := []string{fill(w.line[line], "chance", chance(c.Value, math.Round), "low", chance(c.Low, math.Floor), "high", chance(c.High, math.Ceil),
		"samples", strconv.Itoa(s.Samples))}
	if c.Value < 1 && len(s.Criteria) > 0 && s.Criteria[0].Chance.Value < 1 {
		parts = append(parts, fill(w.line[spreadLeast], "fails", placeless(p.failing[s.Criteria[0].Name])))
	}
	if s.Refused > 0 {
		parts = append(parts, fill(w.line[spreadRefused], "refused", strconv.Itoa(s.Refused)))
	}
	return strings.Join(append(parts, w.matters(s)), " ")
}

// fewInfluences is how many inputs a sentence names, and worthNaming the least share of the spread that is worth a place in it.
const (
	fewInfluences = 3
	worthNaming   = 0.1
)

func (w spreadWords) matters(s *plan.Spread) string {
	var inputs []string
	for i := range s.Influences {
		f := &s.Influences[i]
		if len(inputs) < fewInfluences && f.Share.Total >= worthNaming {
			inputs = append(inputs, fill(w.line[spreadMatter], "label", f.Variable.Label, "share", chance(math.Min(1, f.Share.Total), math.Round)))
		}
	}
	if len(inputs) == 0 {
		return w.line[spreadNothing]
	}
	return fill(w.line[spreadMatters], "inputs", english().join(inputs))
}

func (w spreadWords) detail(s *plan.Spread) string {
	d := fill(w.line[spreadDetail], "samples", strconv.Itoa(s.Samples), "runs", strconv.Itoa(s.Runs), "inputs", strconv.Itoa(len(s.Influences)))
	if !s.Complete {
		d = fill(w.line[spreadGoing], "runs", strconv.Itoa(s.Runs), "planned", strconv.Itoa(s.Planned)) + " " + d
	}
	return d
}

// rarely prints the chance that a criterion is not met.
func (w spreadWords) rarely(c plan.Chance) string {
	line := spreadOften
	switch c.Value {
	case 0:
		line = spreadAlways
	case 1:
		line = spreadNever
	}
	return fill(w.line[line], "chance", chance(1-c.Value, math.Round), "low", chance(1-c.High, math.Floor), "high", chance(1-c.Low, math.Ceil))
}

func (w spreadWords) influence(f *plan.Influence) string {
	return fill(w.line[influenceLine], "label", f.Variable.Label, "tolerance", w.tolerance(&f.Variable, &f.Tolerance),
		"first", estimated(f.Share.First, f.Share.FirstError), "total", estimated(f.Share.Total, f.Share.TotalError))
}

func (w spreadWords) tolerance(v *plan.Variable, t *plan.Tolerance) string {
	shape, width := influenceNormal, fixed(100*t.Width, 1, "%")
	if t.Shape == plan.Uniform {
		shape = influenceUniform
	}
	if !t.Relative {
		width = difference(v, t.Width)
	}
	return fill(w.line[shape], "width", width)
}

// chance prints a share in per cent, whole but near the ends: "97 %", "99.6 %". It never reads 0 or 100 where it is not.
func chance(x float64, round func(float64) float64) string {
	percent, decimals := 100*x, 0
	if math.Min(percent, 100-percent) < 1 && x > 0 && x < 1 {
		decimals = 1
	}
	unit := math.Pow10(decimals)
	r := round(trimmed(percent*unit)) / unit
	if x > 0 && x < 1 {
		r = math.Min(math.Max(r, 0.1), 99.9)
	}
	return fixed(r, decimals, "%")
}

// estimated prints an index with its error.
func estimated(x, e float64) string {
	return fixed(100*x, 0, "") + " ± " + fixed(math.Ceil(100*e), 0, "%")
}

// placeless is a pattern without its place, for what is said of many samples.
func placeless(pattern string) string { return strings.ReplaceAll(pattern, " ({place})", "") }

// Spread prints a spread as the command shows it.
func Spread(study plan.Study, s *plan.Spread) string {
	var b strings.Builder
	b.WriteString(Goal(study) + "\n\n" + s.Text + "\n\n")
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
func Tolerances(study plan.Study, tolerances []plan.Tolerance) string {
	var b strings.Builder
	w := englishSpread()
	for i := range tolerances {
		t := &tolerances[i]
		if v, err := study.Variable(t.Variable); err == nil {
			fmt.Fprintf(&b, "%-46s %-32s %12s   %s\n", t.Variable, w.tolerance(&v, t), Amount(&v, v.Present), v.Label)
		}
	}
	return b.String()
}
