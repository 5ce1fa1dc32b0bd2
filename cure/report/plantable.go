package report

import (
	"strings"

	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/sim"
)

// Limits prints limits as the command shows them.
func (w Speaker) Limits(s plan.Study, limits []plan.Limit) string {
	var b strings.Builder
	b.WriteString(w.Goal(s) + "\n\n")
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
func (w Speaker) FillAims(a *plan.Aims) {
	a.Text = w.goal(a.Goal)
	for i := range a.Marks {
		a.Marks[i].Label = w.Say("mark.holds." + string(a.Marks[i].Mark))
	}
}

// Goal says what a study asks of its route.
func (w Speaker) Goal(s plan.Study) string {
	return w.Say("plan.goal_line", "route", w.Say("route.title."+string(s.Route)), "goal", w.goal(*s.Goal))
}

func (w Speaker) goal(g sim.Goal) string {
	var parts []string
	if held := w.pick("mark.holds.", g.AtExit); len(held) > 0 {
		parts = append(parts, w.Say("plan.goal_exit", "marks", w.join(held)))
	}
	if g.ByDeadline {
		parts = append(parts, w.Say("plan.goal_deadline"))
	}
	return w.join(append(parts, w.Say("plan.goal_spared")))
}
