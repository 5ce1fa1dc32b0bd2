package main

import (
	"flag"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// windowVerb says which settings of two variables are good.
func (p *program) windowVerb(args []string) int {
	flags := flag.NewFlagSet("window", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print one JSON document, in SI units")
	x := flags.String("x", "", `what varies to the right, as NAME or NAME=LOW..HIGH in the unit of "limit --list"; left out: speed, dwell or hour of spraying`)
	y := flags.String("y", "", "what varies upwards; left out: temperature, or coat in a room")
	points := flags.Int("points", 0, "dots of the picture along each axis; left out: 60")
	about := addStudyFlags(flags)
	files, code := p.parse("window", flags, args, 1)
	if code >= 0 {
		return code
	}
	j, code := p.job("window", files[0])
	if code >= 0 {
		return code
	}
	study, err := about.study(&j).Settle(plan.Batch)
	if err != nil {
		return p.refuse(err)
	}
	usual := usualAxes[study.Route]
	q := plan.WindowQuestion{Study: study, Points: *points}
	for i, text := range []string{*x, *y} {
		if text == "" {
			text = usual[i]
		}
		a, err := p.axis(study, text)
		if err != nil {
			return p.misuse("window", flags, err.Error())
		}
		*[]*plan.Axis{&q.X, &q.Y}[i] = a
	}
	shown := p.newProgress("window", 0)
	w, err := cure.Window(p.say, q, p.newPool(shown.judged).evaluate, func(w plan.Window) { shown.expect(int64(w.Expected)) })
	shown.over()
	if err != nil {
		return p.refuse(err)
	}
	if *asJSON {
		return p.printJSON(w)
	}
	return p.print(p.say.Window(study, &w))
}

// usualAxes are the variables of a window where none are named.
var usualAxes = map[result.Kind][2]string{
	result.Room: {plan.SprayLater, plan.Coat}, result.StaticOven: {plan.Dwell, plan.SetPoint}, result.Tunnel: {plan.LineSpeed, plan.ZonesInStep}}

// axis reads NAME or NAME=LOW..HIGH.
func (p *program) axis(s plan.Study, text string) (plan.Axis, error) {
	name, stretch, stated := strings.Cut(text, "=")
	a := plan.Axis{Variable: name}
	v, err := s.Variable(name)
	if err != nil || !stated {
		return a, err
	}
	low, high, _ := strings.Cut(stretch, "..")
	if a.Low, err = amount(p.say, &v, low); err != nil {
		return a, err
	}
	a.High, err = amount(p.say, &v, high)
	return a, err
}
