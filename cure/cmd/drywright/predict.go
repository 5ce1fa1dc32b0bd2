package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
)

// predictVerb computes a job and prints the answers.
func (p *program) predictVerb(args []string) int {
	flags := flag.NewFlagSet("predict", flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the whole result as one JSON document")
	asCSV := flags.Bool("csv", false, "print the curves as comma-separated values")
	files, code := p.parse("predict", flags, args, 1)
	if code >= 0 {
		return code
	}
	if *asJSON && *asCSV {
		return p.misuse("predict", flags, "--json and --csv exclude each other")
	}
	j, code := p.job("predict", files[0])
	if code >= 0 {
		return code
	}
	r, err := p.predict(p.say, j)
	switch {
	case err != nil:
		return p.refuse(err)
	case *asCSV:
		return p.print(report.CSV(r))
	case *asJSON:
		text, err := json.Marshal(r)
		if err != nil {
			return p.refuse(err)
		}
		return p.print(string(text) + "\n")
	}
	return p.print(p.say.Table(r))
}

// checkVerb reads a job and reports its faults.
func (p *program) checkVerb(args []string) int {
	flags := flag.NewFlagSet("check", flag.ContinueOnError)
	files, code := p.parse("check", flags, args, 1)
	if code >= 0 {
		return code
	}
	j, code := p.job("check", files[0])
	if code >= 0 {
		return code
	}
	return p.print(p.say.Say("command.can_be_computed", "name", j.Name) + "\n")
}

// demoVerb prints a worked example: the first, or the one that is named.
func (p *program) demoVerb(args []string) int {
	flags := flag.NewFlagSet("demo", flag.ContinueOnError)
	name := flags.String("which", "sleeves", "the example: "+strings.Join(demoNames(), ", "))
	if _, code := p.parse("demo", flags, args, 0); code >= 0 {
		return code
	}
	for _, d := range job.Demos() {
		if d.ID != *name {
			continue
		}
		p.say.Tell(&d)
		text, err := job.Encode(d.Job)
		if err != nil {
			return p.refuse(err)
		}
		return p.print(string(text))
	}
	fmt.Fprintf(p.stderr, "drywright demo: there is no example %q; give one of %s\n", *name, strings.Join(demoNames(), ", "))
	return misused
}

// demoNames lists the worked examples.
func demoNames() []string {
	var names []string
	for _, d := range job.Demos() {
		names = append(names, d.ID)
	}
	return names
}

// job reads and decodes a job; it returns -1 with it, or an exit code with which to end.
func (p *program) job(verb, name string) (job.Job, int) {
	text, err := p.read(name)
	if err != nil {
		fmt.Fprintf(p.stderr, "drywright %s: %v\n", verb, err)
		return job.Job{}, misused
	}
	j, err := job.Decode(text)
	if err != nil {
		return job.Job{}, p.refuse(err)
	}
	return j, -1
}
