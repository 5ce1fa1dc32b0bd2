package main

import (
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/plan"
)

// optimiseVerb looks for the settings that take least.
func (p *program) optimiseVerb(args []string) int {
	flags := flag.NewFlagSet("optimise", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON document, in SI units")
	free := flags.String("free", "", `what may be changed, names of "limit --list" or JSON paths, with bounds in the unit of that list, separated by
           semicolons: "line_speed=1.0..1.4 m/min; zone_temperatures=-15..10"; without bounds: where the trade usually is`)
	least := flags.String("least", "energy", "what is to be least: energy or cost, for a square metre")
	sure := flags.Float64("sure", 95, "chance that everything is met, in per cent")
	vary := flags.String("vary", "", `tolerances in place of the usual ones, as "spread" reads them`)
	seed := flags.Int("seed", 1, "another number gives other samples, the same one the same")
	about := addStudyFlags(flags)
	files, code := p.parse("optimise", flags, args, 1)
	if code >= 0 {
		return code
	}
	if *free == "" {
		return p.misuse("optimise", flags, "--free is needed: what may be changed?")
	}
	j, code := p.job("optimise", files[0])
	if code >= 0 {
		return code
	}
	study, err := about.study(&j).Settle(plan.Batch)
	if err != nil {
		return p.refuse(err)
	}
	ask := plan.OptimiseQuestion{Study: study, Objective: plan.Objective(*least), Confidence: *sure / 100, Seed: *seed}
	if ask.Free, err = p.axes(study, *free); err != nil {
		return p.misuse("optimise", flags, err.Error())
	}
	if *vary != "" {
		if ask.Tolerances, err = p.varied(study, *vary); err != nil {
			return p.misuse("optimise", flags, err.Error())
		}
	}
	shown := p.newProgress("optimise", 0)
	optimum, err := cure.Optimise(p.say, ask, p.newPool(shown.judged).evaluate, nil)
	shown.over()
	if err != nil {
		return p.refuse(err)
	}
	if *asJSON {
		return p.printJSON(optimum)
	}
	return p.print(p.say.Optimum(study, &optimum))
}

// axes reads variables with their bounds as a person writes them.
func (p *program) axes(study plan.Study, text string) ([]plan.Axis, error) {
	var list []plan.Axis
	for _, part := range strings.Split(text, ";") {
		name, bounds, bounded := strings.Cut(part, "=")
		v, err := study.Variable(strings.TrimSpace(name))
		if err != nil {
			return nil, err
		}
		a := plan.Axis{Variable: v.ID, Low: v.UsualLow, High: v.UsualHigh}
		if bounded {
			low, high, ok := strings.Cut(bounds, "..")
			if !ok {
				return nil, fmt.Errorf("%q are no bounds; write LOW..HIGH", bounds)
			}
			if a.Low, err = amount(p.say, &v, low); err != nil {
				return nil, err
			}
			if a.High, err = amount(p.say, &v, high); err != nil {
				return nil, err
			}
		}
		list = append(list, a)
	}
	return list, nil
}
