package main

import (
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/unit"
)

// spreadVerb says how sure a setting is.
func (p *program) spreadVerb(args []string) int {
	flags := flag.NewFlagSet("spread", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON document, in SI units")
	list := flags.Bool("list", false, "print the usual tolerances of the route, and nothing else")
	vary := flags.String("vary", "", `tolerances in place of the usual ones, out of NAME=WIDTH separated by semicolons, "coat=5%; set_point=3 K": a
           standard deviation, or half the width of an even spread after "even": "air_changes=even 50%"`)
	rows := flags.Int("rows", 0, "samples of one replicate, a power of two; 0: 8")
	replicates := flags.Int("replicates", 0, "independent replicates, from which the errors come; 0: 8")
	seed := flags.Int("seed", 1, "another number gives other samples, the same one the same")
	about := addStudyFlags(flags)
	files, code := p.parse("spread", flags, args, 1)
	if code >= 0 {
		return code
	}
	j, code := p.job("spread", files[0])
	if code >= 0 {
		return code
	}
	study, err := about.study(&j).Settle(plan.Batch)
	if err != nil {
		return p.refuse(err)
	}
	tolerances, err := plan.DefaultTolerances(&j, study.Route)
	if err != nil {
		return p.refuse(err)
	}
	if *vary != "" {
		var complaint error
		if tolerances, complaint = p.varied(study, *vary); complaint != nil {
			return p.misuse("spread", flags, complaint.Error())
		}
	}
	if *list {
		return p.print(p.say.Tolerances(study, tolerances))
	}
	ask := plan.SpreadQuestion{Study: study, Tolerances: tolerances, Rows: *rows, Replicates: *replicates, Seed: *seed}
	shown := p.newProgress("spread", ask.Runs())
	spread, err := cure.Spread(p.say, ask, p.newPool(shown.judged).evaluate, nil)
	shown.over()
	if err != nil {
		return p.refuse(err)
	}
	if *asJSON {
		return p.printJSON(spread)
	}
	return p.print(p.say.Spread(study, &spread))
}

// varied reads tolerances as a person writes them.
func (p *program) varied(study plan.Study, text string) ([]plan.Tolerance, error) {
	var list []plan.Tolerance
	for _, part := range strings.Split(text, ";") {
		name, width, ok := strings.Cut(part, "=")
		if !ok {
			return nil, fmt.Errorf("%q is no tolerance; write NAME=WIDTH", part)
		}
		v, err := study.Variable(strings.TrimSpace(name))
		if err != nil {
			return nil, err
		}
		d := p.say.Display(v.Display, v.USDisplay)
		t := plan.Tolerance{Variable: v.ID, Shape: plan.Normal}
		width = strings.TrimSpace(width)
		if rest, even := strings.CutPrefix(width, "even "); even {
			width, t.Shape = strings.TrimSpace(rest), plan.Uniform
		}
		if share, relative := strings.CutSuffix(width, "%"); relative && d.Symbol != "%" {
			t.Relative = true
			t.Width, err = unit.Parse(share, unit.Share, "%", mark(p.say))
		} else {
			d.Offset = 0 // a width is a difference
			t.Width, err = measured(p.say, d, d.Dimension.Step(), width)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w; or write per cent of the present value", v.Label, err)
		}
		list = append(list, t)
	}
	return list, nil
}
