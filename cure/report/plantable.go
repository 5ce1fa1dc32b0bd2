package report

import (
	"strings"

	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/sim"
)

// Limits prints limits as the command shows them.
func Limits(s plan.Study, limits []plan.Limit) string {
	var b strings.Builder
	b.WriteString(Goal(s) + "\n\n")
	for i := range limits {
		l := &limits[i]
		if l.Answer != "" {
			b.WriteString(l.Answer + "\n")
		}
		b.WriteString(l.Text + "\n")
		for _, g := range l.Levers {
			b.WriteString("  " + g.Text + "\n")
		}
	}
	return b.String()
}

// FillAims writes the words of what a route is and could be asked for.
func FillAims(a *plan.Aims) {
	w := english()
	a.Text = englishPlans().goal(w, a.Goal)
	for i := range a.Marks {
		a.Marks[i].Label = w.holds[a.Marks[i].Mark]
	}
}

// Goal says what a study asks of its route.
func Goal(s plan.Study) string {
	w, p := english(), englishPlans()
	return fill(p.line[goalLine], "route", w.titles[s.Route], "goal", p.goal(w, *s.Goal))
}

func (p planWords) goal(w words, g sim.Goal) string {
	var parts []string
	if held := w.pick(w.holds, g.AtExit); len(held) > 0 {
		parts = append(parts, fill(p.line[goalExit], "marks", w.join(held)))
	}
	if g.ByDeadline {
		parts = append(parts, p.line[goalDeadline])
	}
	return w.join(append(parts, p.line[goalSpared]))
}
