package main

import (
	"flag"
	"fmt"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// studyFlags are what every planning verb asks about the route.
type studyFlags struct {
	route, marks *string
	deadline     *bool
}

func addStudyFlags(flags *flag.FlagSet) studyFlags {
	return studyFlags{
		route:    flags.String("route", "", "room, static_oven or tunnel; left out: the last that the job has"),
		marks:    flags.String("marks", "", "what must hold at the oven's exit, out of touch,tack_free,dry_through,cured,cool; left out: what is usual"),
		deadline: flags.Bool("deadline", false, "with --marks: the part must also be ready by the route's deadline"),
	}
}

// study is the route and goal that the flags name.
func (f studyFlags) study(j *job.Job) plan.Study {
	s := plan.Study{Job: j, Route: result.Kind(*f.route)}
	if s.Route == "" {
		switch {
		case j.Tunnel != nil:
			s.Route = result.Tunnel
		case j.StaticOven != nil:
			s.Route = result.StaticOven
		default:
			s.Route = result.Room
		}
	}
	if *f.marks != "" || *f.deadline {
		s.Goal = &sim.Goal{AtExit: []result.MarkName{}, ByDeadline: *f.deadline}
		for _, m := range strings.FieldsFunc(*f.marks, func(r rune) bool { return r == ',' || r == ' ' }) {
			s.Goal.AtExit = append(s.Goal.AtExit, result.MarkName(m))
		}
	}
	return s
}

// amount reads a value of a variable as a person writes it: a number in the variable's usual unit, with or without the unit,
// and with a point or comma, or a change in per cent of the present value ("+20%").
func amount(say report.Speaker, v *plan.Variable, text string) (float64, error) {
	text = strings.TrimSpace(strings.ReplaceAll(text, ",", "."))
	if share, ok := strings.CutSuffix(text, "%"); ok && (strings.HasPrefix(text, "+") || strings.HasPrefix(text, "-")) {
		x, err := strconv.ParseFloat(strings.TrimSpace(share), 64)
		if err != nil {
			return 0, fmt.Errorf("%q is no change in per cent", text)
		}
		return v.Present * (1 + x/100), nil
	}
	for _, d := range []job.Display{say.Display(v.Display, v.USDisplay), v.Display, v.USDisplay} {
		number := text
		if d.Symbol != "" {
			number = strings.TrimSpace(strings.TrimSuffix(text, d.Symbol))
		}
		if x, err := strconv.ParseFloat(number, 64); err == nil {
			return (x - d.Offset) / d.Factor, nil
		}
	}
	return 0, fmt.Errorf("%q is no amount of %s; write a number in %s, or a change such as +20%%", text, v.Label, say.Display(v.Display, v.USDisplay).Symbol)
}
