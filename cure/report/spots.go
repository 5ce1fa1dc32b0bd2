package report

import (
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// spots fills the texts of every spot, and the route's answer where it is judged at one.
func (w Speaker) spots(r *result.Route) {
	for i := range r.Spots {
		s := &r.Spots[i]
		at := w.seenFrom(r, s)
		w.route(&at)
		s.Answer, s.Marks, s.Risks = at.Answer, at.Marks, at.Risks
		if s.Worst {
			r.Answer = s.Answer
			r.Answer.Spot = s.Name
			r.Answer.Text = w.Say("report.at_spot", "spot", s.Name, "sentence", s.Answer.Text)
		}
	}
}

// seenFrom is the route as it looks at a spot.
func (w Speaker) seenFrom(r *result.Route, s *result.SpotAnswer) result.Route {
	at := result.Route{Kind: r.Kind, Answer: s.Answer, Marks: s.Marks, Risks: s.Risks, Stages: r.Stages, Curves: r.Curves, Status: r.Status}
	at.Answer.Spot = ""
	if r.Exit == nil {
		return at
	}
	at.Exit = &result.Exit{Time: r.Exit.Time, State: r.Exit.State}
	for _, m := range s.Marks {
		switch {
		case m.AtExit == nil || m.Name == result.Ready:
		case *m.AtExit:
			at.Exit.Holds = append(at.Exit.Holds, m.Name)
		default:
			at.Exit.Lacks = append(at.Exit.Lacks, m.Name)
		}
	}
	return at
}

func (w Speaker) spotLines(b *strings.Builder, spots []result.SpotAnswer) {
	if len(spots) == 0 {
		return
	}
	b.WriteString(w.Say("report.head_spots") + "\n")
	for _, s := range spots {
		line := "report.spot_line"
		if s.Worst {
			line = "report.spot_worst"
		}
		b.WriteString("  " + w.Say(line, "name", s.Name, "text", s.Answer.Text) + "\n")
	}
	b.WriteString("\n")
}
