package report

import (
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// join strings words together: "a", "a and b", "a, b and c".
func (w Speaker) join(parts []string) string {
	last := len(parts) - 1
	if last < 1 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:last], ", ") + " " + w.Say("report.and") + " " + parts[last]
}

// sentence is the answer of a route: how the part leaves the oven, when it is ready and by what margin, what comes
// last, when it is cured if that is later, and the first danger.
func (w Speaker) sentence(r *result.Route) string {
	var parts []string
	if s := w.leaving(r); s != "" {
		parts = append(parts, s)
	}
	parts = append(parts, w.readiness(r))
	if s := w.curing(r); s != "" {
		parts = append(parts, s)
	}
	return strings.Join(append(parts, w.dangers(r)...), " ")
}

// leaving says what holds and what lacks at the oven's exit; empty for the room.
func (w Speaker) leaving(r *result.Route) string {
	if r.Exit == nil {
		return ""
	}
	holds, lacks := w.pick("mark.holds.", worthSaying(r.Exit.Holds)), w.pick("mark.lacks.", implied(r.Exit.Lacks))
	if len(holds)+len(lacks) == 0 {
		return ""
	}
	place, exit := w.Say("route.left."+string(r.Kind)), w.Duration(r.Exit.Time)
	if len(holds) > 0 && len(lacks) > 0 {
		return w.Say("report.leaves_both", "place", place, "exit", exit, "holds", w.join(holds), "lacks", w.join(lacks))
	}
	return w.Say("report.leaves_one", "place", place, "exit", exit, "state", w.join(append(holds, lacks...)))
}

// readiness says when the part may be handled, with the margin and the mark that comes last.
func (w Speaker) readiness(r *result.Route) string {
	a := r.Answer
	if a.Ready == nil {
		horizon := w.Duration(horizonOf(r))
		if missing := w.pick("mark.lacks.", implied(unreached(r))); len(missing) > 0 {
			return w.Say("report.ready_never", "horizon", horizon, "lacks", w.join(missing))
		}
		return w.Say("report.ready_unknown", "horizon", horizon)
	}
	when := "report.after_spraying"
	if r.Exit != nil && *a.Ready < r.Exit.Time {
		when = "report.still_inside" // it can be handled once it is out
	}
	p, margin := "report.ready_alone", 0.0
	if a.Margin != nil && a.Deadline > 0 {
		margin = *a.Margin
		p = "report.ready_early"
		switch {
		case w.Duration(margin) == w.Duration(0): // what prints as nothing is neither early nor late
			p = "report.ready_just"
		case margin < 0:
			p, margin = "report.ready_late", -margin
		}
	}
	s := w.Say(p, "when", w.Say(when, "ready", w.Duration(*a.Ready)), "margin", w.Duration(margin), "deadline", w.Duration(a.Deadline))
	if last := w.Maybe("mark.last." + a.Binding); last != "" {
		return w.Say("report.comes_last", "sentence", s, "mark", last)
	}
	return s + "."
}

// curing says when the film is cured where that is later than ready: the part is handled before it is strong.
func (w Speaker) curing(r *result.Route) string {
	cured, ready := markOf(r, result.Cured), r.Answer.Ready
	switch {
	case cured == nil || ready == nil:
		return ""
	case cured.Time == nil:
		return w.Say("report.cured_never", "horizon", w.Duration(horizonOf(r)))
	case *cured.Time > *ready && w.Duration(*cured.Time) != w.Duration(*ready):
		return w.Say("report.cured_later", "cured", w.Duration(*cured.Time))
	}
	return ""
}

// dangers quotes the first danger and counts the others.
func (w Speaker) dangers(r *result.Route) []string {
	var found []string
	for _, risk := range r.Risks {
		if risk.Severity == result.Danger {
			found = append(found, risk.Text)
		}
	}
	if len(found) == 0 {
		return nil
	}
	said := []string{w.Say("report.but", "risk", found[0])}
	if len(found) > 1 {
		said = append(said, w.Say("report.more_risks", "count", len(found)-1))
	}
	return said
}

// pick says marks by the words of a group.
func (w Speaker) pick(group string, names []result.MarkName) []string {
	var out []string
	for _, n := range names {
		if text := w.Maybe(group + string(n)); text != "" {
			out = append(out, text)
		}
	}
	return out
}

// worthSaying drops touch-dry where tack-free, which includes it, is said as well.
func worthSaying(holds []result.MarkName) []result.MarkName {
	return without(holds, result.Touch, has(holds, result.TackFree))
}

// implied drops what a missing mark takes with it: what is wet is also tacky, what is not dry is not cured either.
func implied(lacks []result.MarkName) []result.MarkName {
	lacks = without(lacks, result.TackFree, has(lacks, result.Touch))
	return without(lacks, result.Cured, has(lacks, result.DryThrough))
}

func has(names []result.MarkName, name result.MarkName) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}

func without(names []result.MarkName, name result.MarkName, drop bool) []result.MarkName {
	if !drop {
		return names
	}
	var out []result.MarkName
	for _, n := range names {
		if n != name {
			out = append(out, n)
		}
	}
	return out
}

// unreached lists the marks that keep a part from being ready.
func unreached(r *result.Route) []result.MarkName {
	var out []result.MarkName
	for _, name := range []result.MarkName{result.Touch, result.TackFree, result.DryThrough, result.Cool} {
		if m := markOf(r, name); m != nil && m.Time == nil {
			out = append(out, name)
		}
	}
	return out
}

// markOf finds a mark by name; nil when the route does not list it.
func markOf(r *result.Route, name result.MarkName) *result.Mark {
	for i := range r.Marks {
		if r.Marks[i].Name == name {
			return &r.Marks[i]
		}
	}
	return nil
}

// horizonOf is the end of the run [s]: the last stage's end, or the last entry of the curves where no stage is given or the run
// ended early.
func horizonOf(r *result.Route) float64 {
	if n := len(r.Stages); n > 0 && r.Status.Complete {
		return r.Stages[n-1].End
	}
	if n := len(r.Curves.Time); n > 0 {
		return r.Curves.Time[n-1]
	}
	return 0
}
