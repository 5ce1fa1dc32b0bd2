package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/plan"
)

// limitVerb says how far things can be pushed on a route.
func (p *program) limitVerb(args []string) int {
	flags := flag.NewFlagSet("limit", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON document, in SI units")
	of := flags.String("of", "", "what is pushed: a name of --list, or the JSON path of a number of the job; left out: all that are listed")
	list := flags.Bool("list", false, "print what can be pushed on the route, and no limits")
	toward := flags.String("toward", "", "highest or lowest; left out: the way that is worth pushing")
	want := flags.String("want", "", `a value to be judged besides, in the unit of --list, or a change such as "+20%"`)
	levers := flags.Bool("levers", true, "also say what changes of plant and coat would buy, where one thing is asked of")
	about := addStudyFlags(flags)
	files, code := p.parse("limit", flags, args, 1)
	if code >= 0 {
		return code
	}
	j, code := p.job("limit", files[0])
	if code >= 0 {
		return code
	}
	study := about.study(&j)
	if *list {
		return p.print(p.listed(plan.Named(&j, study.Route)))
	}
	asked := []string{*of}
	if *of == "" {
		if *want != "" || *toward != "" {
			return p.misuse("limit", flags, "--want and --toward need --of")
		}
		asked = nil
		for _, v := range plan.Named(&j, study.Route) {
			asked = append(asked, v.ID)
		}
	}
	study, err := study.Settle(plan.Batch)
	if err != nil {
		return p.refuse(err)
	}
	ask := plan.LimitsQuestion{Study: study}
	for _, name := range asked {
		q := plan.LimitQuestion{Variable: name, Toward: plan.Direction(*toward), Levers: *levers && *of != ""}
		if *want != "" {
			v, err := study.Variable(name)
			if err != nil {
				return p.refuse(err)
			}
			x, err := amount(p.say, &v, *want)
			if err != nil {
				return p.misuse("limit", flags, err.Error())
			}
			q.Wanted = &x
		}
		ask.Limits = append(ask.Limits, q)
	}
	shown := p.newProgress("limits", 0)
	limits, err := cure.Limits(p.say, ask, p.newPool(shown.judged).evaluate, nil)
	shown.over()
	if err != nil {
		return p.refuse(err)
	}
	if *asJSON {
		var document any = limits
		if *of != "" {
			document = limits[0]
		}
		return p.printJSON(document)
	}
	return p.print(p.say.Limits(study, limits))
}

// printJSON prints a document in one line.
func (p *program) printJSON(document any) int {
	text, err := json.Marshal(document)
	if err != nil {
		return p.refuse(err)
	}
	return p.print(string(text) + "\n")
}

// listed is a table of variables.
func (p *program) listed(vs []plan.Variable) string {
	var b strings.Builder
	for _, v := range vs {
		fmt.Fprintf(&b, "%-36s %-9s %12s   %s\n", v.ID, v.Toward, p.say.Amount(&v, v.Present), p.say.Text(v.Label))
	}
	return b.String()
}
