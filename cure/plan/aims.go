package plan

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// Aims is what a route is asked for, and what it could be asked for.
type Aims struct {
	Route    result.Kind `json:"route"`
	Goal     sim.Goal    `json:"goal"`     // as stated, else the usual one
	Marks    []Aim       `json:"marks"`    // what may be asked to hold at the exit; none for a room
	Deadline bool        `json:"deadline"` // it may be asked to be ready in time or not
	Text     string      `json:"text"`     // the goal in words
}

// Aim is one mark that may be asked for.
type Aim struct {
	Mark  result.MarkName `json:"mark"`
	Label string          `json:"label"`
}

// Aims lists what the route of a settled study could be asked for. Cured is offered where the adhesive has something to
// cure, the deadline where the route has one.
func (s Study) Aims() Aims {
	a := Aims{Route: s.Route, Goal: *s.Goal, Marks: []Aim{}}
	if s.Route == result.Room {
		return a // always by its deadline
	}
	for _, m := range []result.MarkName{result.Touch, result.TackFree, result.DryThrough, result.Cured, result.Cool} {
		if m != result.Cured || s.Job.Film.Adhesive.Crosslinking != nil {
			a.Marks = append(a.Marks, Aim{Mark: m})
		}
	}
	a.Deadline = deadlineOf(s.Job, s.Route) > 0
	return a
}

// deadlineOf is a route's deadline [s]; 0: none.
func deadlineOf(j *job.Job, kind result.Kind) float64 {
	switch kind {
	case result.Room:
		return j.Room.Deadline
	case result.StaticOven:
		return j.StaticOven.Deadline
	}
	return j.Tunnel.Deadline
}
