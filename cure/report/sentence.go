package report

import (
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// say fills the {names} of a sentence; values come as pairs of name and text.
func (w words) say(p phrase, values ...string) string { return fill(w.line[p], values...) }

// fill replaces {name} by its value.
func fill(pattern string, values ...string) string {
	pairs := make([]string, 0, len(values))
	for i := 0; i+1 < len(values); i += 2 {
		pairs = append(pairs, "{"+values[i]+"}", values[i+1])
	}
	return strings.NewReplacer(pairs...).Replace(pattern)
}

// join strings words together: "a", "a and b", "a, b and c".
func (w words) join(parts []string) string {
	last := len(parts) - 1
	if last < 1 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:last], ", ") + " " + w.line[and] + " " + parts[last]
}

// sentence is the answer of a route: how the part leaves the oven, when it is ready and by what margin, what comes
// last, when it is cured if that is later, and the first danger.
func (w words) sentence(r *result.Route) string {
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
func (w words) leaving(r *result.Route) string {
	if r.Exit == nil {
		return ""
	}
	holds, lacks := w.pick(w.holds, worthSaying(r.Exit.Holds)), w.pick(w.lacks, implied(r.Exit.Lacks))
	if len(holds)+len(lacks) == 0 {
		return ""
	}
	place, exit := w.places[r.Kind], Duration(r.Exit.Time)
	if len(holds) > 0 && len(lacks) > 0 {
		return w.say(leavesBoth, "place", place, "exit", exit, "holds", w.join(holds), "lacks", w.join(lacks))
	}
	return w.say(leavesOne, "place", place, "exit", exit, "state", w.join(append(holds, lacks...)))
}

// readiness says when the part may be handled, with the margin and the mark that comes last.
func (w words) readiness(r *result.Route) string {
	a := r.Answer
	if a.Ready == nil {
		horizon := Duration(horizonOf(r))
		if missing := w.pick(w.lacks, implied(unreached(r))); len(missing) > 0 {
			return w.say(readyNever, "horizon", horizon, "lacks", w.join(missing))
		}
		return w.say(readyUnknown, "horizon", horizon)
	}
	when := afterSpraying
	if r.Exit != nil && *a.Ready < r.Exit.Time {
		when = stillInside // it can be handled once it is out
	}
	p, margin := readyAlone, 0.0
	if a.Margin != nil && a.Deadline > 0 {
		margin = *a.Margin
		p = readyEarly
		switch {
		case Duration(margin) == Duration(0): // what prints as nothing is neither early nor late
			p = readyJust
		case margin < 0:
			p, margin = readyLate, -margin
		}
	}
	s := w.say(p, "when", w.say(when, "ready", Duration(*a.Ready)), "margin", Duration(margin), "deadline", Duration(a.Deadline))
	if last := w.last[result.MarkName(a.Binding)]; last != "" {
		return w.say(comesLast, "sentence", s, "mark", last)
	}
	return s + "."
}

// curing says when the film is cured where that is later than ready: the part is handled before it is strong.
func (w words) curing(r *result.Route) string {
	cured, ready := markOf(r, result.Cured), r.Answer.Ready
	switch {
	case cured == nil || ready == nil:
		return ""
	case cured.Time == nil:
		return w.say(curedNever, "horizon", Duration(horizonOf(r)))
	case *cured.Time > *ready && Duration(*cured.Time) != Duration(*ready):
		return w.say(curedLater, "cured", Duration(*cured.Time))
	}
	return ""
}

// dangers quotes the first danger and counts the others.
func (w words) dangers(r *result.Route) []string {
	var found []string
	for _, risk := range r.Risks {
		if risk.Severity == result.Danger {
			found = append(found, risk.Text)
		}
	}
	if len(found) == 0 {
		return nil
	}
	said := []string{w.say(but, "risk", found[0])}
	if len(found) > 1 {
		said = append(said, w.say(moreRisks, "count", plain(float64(len(found)-1))))
	}
	return said
}

// pick translates marks.
func (w words) pick(table map[result.MarkName]string, names []result.MarkName) []string {
	var out []string
	for _, n := range names {
		if text := table[n]; text != "" {
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

// horizonOf is the end of the run [s]: the last stage's end, or the last entry of the curves where no stage is given.
func horizonOf(r *result.Route) float64 {
	if n := len(r.Stages); n > 0 {
		return r.Stages[n-1].End
	}
	if n := len(r.Curves.Time); n > 0 {
		return r.Curves.Time[n-1]
	}
	return 0
}
