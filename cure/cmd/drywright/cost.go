package main

import (
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/unit"
)

// costVerb sets the cost of a day against its quantity.
func (p *program) costVerb(args []string) int {
	flags := flag.NewFlagSet("cost", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON document, in SI units")
	want := flags.String("quantity", "", `a day's quantity to be answered besides, in square metres of coated faces or in parts: "40", "300 parts"`)
	highest := flags.Float64("highest", 0, "where the curves end, in square metres a day; 0: where the crossings show")
	files, code := p.parse("cost", flags, args, 1)
	if code >= 0 {
		return code
	}
	j, code := p.job("cost", files[0])
	if code >= 0 {
		return code
	}
	ask := plan.CostQuestion{Job: &j, Highest: *highest}
	if *want != "" {
		q, err := dayQuantity(p.say, &j, *want)
		if err != nil {
			return p.misuse("cost", flags, err.Error())
		}
		ask.Quantity = &q
	}
	shown := p.newProgress("cost", 0)
	costs, err := cure.Costs(p.say, ask, p.newPool(shown.judged).evaluate, nil)
	shown.over()
	if err != nil {
		return p.refuse(err)
	}
	if *asJSON {
		return p.printJSON(costs)
	}
	return p.print(p.say.Costs(&costs))
}

// dayQuantity reads a day's quantity as a person writes it.
func dayQuantity(say report.Speaker, j *job.Job, text string) (float64, error) {
	number, parts := strings.CutSuffix(strings.TrimSpace(text), "parts")
	dimension, symbol := unit.Area, "m²"
	if parts {
		dimension, symbol = unit.Number, ""
	}
	x, err := unit.Parse(number, dimension, symbol, mark(say))
	switch {
	case err != nil || x < 0:
		return 0, fmt.Errorf("%q is no quantity; write an area a day, in m² or another unit, or a number of parts", text)
	case parts && j.Part.CoatedArea == nil:
		return 0, fmt.Errorf("the job does not say the coated area of one part (part.coated_area_m2): give square metres")
	case parts:
		return x * *j.Part.CoatedArea, nil
	}
	return x, nil
}
