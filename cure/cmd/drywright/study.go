package main

import (
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/unit"
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

// amount reads a value of a variable as a person writes it: a number with any unit of what the variable measures, or in its usual unit
// without one, or a change in per cent of the present value ("+20%"), unless that is a temperature or nothing.
func amount(say report.Speaker, v *plan.Variable, text string) (float64, error) {
	text = strings.TrimSpace(text)
	if share, ok := strings.CutSuffix(text, "%"); ok && (strings.HasPrefix(text, "+") || strings.HasPrefix(text, "-")) {
		x, err := unit.Parse(share, unit.Number, "", mark(say))
		if err != nil {
			return 0, fmt.Errorf("%q is no change in per cent", text)
		}
		if v.Present == 0 || v.Display.Offset != 0 {
			return 0, fmt.Errorf("%s: %s of it means nothing; write the value with its unit", v.Label, text)
		}
		return v.Present * (1 + x/100), nil
	}
	d := say.Display(v.Display, v.USDisplay)
	x, err := measured(say, d, d.Dimension, text)
	if err != nil {
		return 0, fmt.Errorf("%s: %w; or write a change such as +20%%", v.Label, err)
	}
	return x, nil
}

// mark is the decimal mark of a reader's language; the other one is read, too, where it cannot group thousands.
func mark(say report.Speaker) byte {
	if say.Mark == "," {
		return ','
	}
	return '.'
}

// measured reads a number that is shown in a display, in SI. What is shown in a unit of no dimension, such as ×, is a plain number.
func measured(say report.Speaker, d job.Display, dimension unit.Dimension, text string) (float64, error) {
	if dimension != "" {
		return unit.Parse(text, dimension, d.Symbol, mark(say))
	}
	x, err := unit.Parse(strings.TrimSuffix(text, d.Symbol), unit.Number, "", mark(say))
	return (x - d.Offset) / d.Factor, err
}
