package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// The exit codes.
const (
	computed = 0
	refused  = 1 // the job has faults, or the run ended without an answer
	misused  = 2 // an unknown verb or flag, a file that cannot be read
)

// program is the command with everything it touches, so that a test can hand it other things.
type program struct {
	ctx            context.Context // ends serve
	stdin          io.Reader
	stdout, stderr io.Writer
	predict        func(report.Speaker, job.Job, ...result.Kind) (result.Result, error)
	say            report.Speaker // until flags choose another language or other units
	page           fs.FS
	built          bool   // whether there is a page
	build          string // the release, as the service names it
}

// verb is one thing the command does. usage is the line of arguments, help what it says when asked.
type verb struct {
	name, usage, help string
	run               func(p *program, args []string) int
}

func verbs() []verb {
	return []verb{
		{"predict", "predict [--json | --csv] JOB.json", "Computes a job and prints, for each route, the answer, the dry " +
			"states with the film's state,\nthe risks and the balances. JOB.json may be - for standard input.", (*program).predictVerb},
		{"check", "check JOB.json", "Reads a job and reports every fault in it, without computing. JOB.json may be - for " +
			"standard input.", (*program).checkVerb},
		{"limit", "limit [--of NAME] [--want VALUE] [--route NAME] [--json] JOB.json", "Says how far things can be pushed on a route before " +
			"something fails: line speed, temperatures, dwell, length,\ncoat, load, hour of spraying. With --of one of them, and what " +
			"changes of plant and coat would buy.", (*program).limitVerb},
		{"window", "window [--x NAME=LOW..HIGH] [--y NAME=LOW..HIGH] [--route NAME] [--json] JOB.json", "Shows which settings of two " +
			"variables are good, what limits them, and where there is most room.", (*program).windowVerb},
		{"spread", "spread [--vary LIST] [--route NAME] [--json] JOB.json", "Says how sure a setting is while coat, air, speed and the like vary: " +
			"the chance that everything is met,\nwhat fails, and which inputs decide.", (*program).spreadVerb},
		{"cost", "cost [--quantity AMOUNT] [--json] JOB.json",
			"Sets the cost of a day's work against its quantity for every route of the job: what one room, " +
				"oven or tunnel carries,\nand from which quantity on one route costs less than another.", (*program).costVerb},
		{"optimise", "optimise --free LIST [--least energy | cost] [--sure 95] [--route NAME] [--json] JOB.json",
			"Looks for the settings that take least energy or cost while everything is met as surely as wanted,\nwith what may be changed and within which bounds.", (*program).optimiseVerb},
		{"demo", "demo [--which NAME]", "Prints a worked example to start from: " + strings.Join(demoNames(), ", ") + ".", (*program).demoVerb},
		{"fit", "fit KIND --data FILE [--job JOB.json] [--json | --adopt] ...", fitHelp, (*program).fitVerb},
		{"ask", "ask REQUEST.json", "Answers one request as the service and the page do, with the whole answer as one JSON document.\n" +
			"REQUEST.json may be - for standard input; its \"units\" count.", (*program).askVerb},
		{"serve", "serve [--port N] [--api]", "Serves the page on 127.0.0.1, for this machine only, until interrupted; with --api programs as well.",
			(*program).serveVerb},
	}
}

// run carries out the command line and returns the exit code.
func (p *program) run(args []string) int {
	if len(args) == 0 {
		fmt.Fprint(p.stderr, overview())
		return misused
	}
	name, rest := args[0], args[1:]
	switch name {
	case "help", "-h", "-help", "--help":
		if len(rest) == 0 {
			return p.print(overview())
		}
		name, rest = rest[0], []string{"--help"}
	}
	for _, v := range verbs() {
		if v.name == name {
			return v.run(p, rest)
		}
	}
	fmt.Fprintf(p.stderr, "drywright: there is no %q\n\n%s", name, overview())
	return misused
}

// overview is the help of the command as a whole.
func overview() string {
	var b strings.Builder
	b.WriteString("Drywright predicts when a sprayed film of water-borne adhesive is dry, cured and cool.\n\nUsage:\n")
	for _, v := range verbs() {
		b.WriteString("  drywright " + v.usage + "\n")
	}
	b.WriteString("\nMore on each: drywright help VERB\n" +
		"Exit codes: 0 computed, 1 job refused (reasons on standard error), 2 wrong usage\n")
	return b.String()
}

// parse reads flags, before or after the positional arguments, of which there must be the wanted number. It returns
// the positional arguments and -1, or an exit code with which to end.
func (p *program) parse(name string, flags *flag.FlagSet, args []string, wanted int) ([]string, int) {
	flags.SetOutput(io.Discard)
	language := flags.String("language", "en", "of the answer: "+strings.Join(languages.Tags(), ", "))
	units := flags.String("units", string(report.SI), "in which the answer gives its numbers: si or us")
	var found []string
	for {
		if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
			return nil, p.print(helpOf(name, flags))
		} else if err != nil {
			return nil, p.misuse(name, flags, err.Error())
		}
		if flags.NArg() == 0 {
			break
		}
		found, args = append(found, flags.Arg(0)), flags.Args()[1:] // package flag stops at the first of these
	}
	if *units != string(report.SI) && *units != string(report.US) {
		return nil, p.misuse(name, flags, fmt.Sprintf("there are no units %q; give si or us", *units))
	}
	spoken, err := languages.Open(*language)
	if err != nil {
		return nil, p.misuse(name, flags, err.Error())
	}
	p.say = report.New(spoken, report.Units(*units))
	if len(found) != wanted {
		return nil, p.misuse(name, flags, fmt.Sprintf("%d file names or words given, %d wanted", len(found), wanted))
	}
	return found, -1
}

// helpOf is the help of one verb with its flags.
func helpOf(name string, flags *flag.FlagSet) string {
	var b strings.Builder
	for _, v := range verbs() {
		if v.name == name {
			b.WriteString("Usage: drywright " + v.usage + "\n\n" + v.help + "\n")
		}
	}
	width := 6
	flags.VisitAll(func(f *flag.Flag) { width = max(width, len(f.Name)) })
	flags.VisitAll(func(f *flag.Flag) { b.WriteString(fmt.Sprintf("\n  --%-*s %s", width, f.Name, f.Usage)) })
	return strings.TrimRight(b.String(), "\n") + "\n"
}

func (p *program) misuse(name string, flags *flag.FlagSet, complaint string) int {
	fmt.Fprintf(p.stderr, "drywright %s: %s\n\n%s", name, p.say.Text(complaint), helpOf(name, flags))
	return misused
}

// print writes to standard output; a reader that went away is no success.
func (p *program) print(text string) int {
	if _, err := io.WriteString(p.stdout, text); err != nil {
		return refused
	}
	return computed
}

// refuse reports why a job is not computed, one fault a line.
func (p *program) refuse(err error) int {
	var list fault.List
	if errors.As(err, &list) {
		for _, f := range list {
			fmt.Fprintln(p.stderr, p.complaint(f))
		}
		return refused
	}
	var one *fault.Fault
	if errors.As(err, &one) {
		err = errors.New(p.complaint(one))
	}
	fmt.Fprintln(p.stderr, err)
	return refused
}

// complaint is a fault in one line: a sentence for people, and behind it the place in the document for who mends it there.
func (p *program) complaint(f *fault.Fault) string { return placed(p.say.Sentence(f), f.Path) }

func placed(said, path string) string {
	if path == "" || strings.HasPrefix(said, path) {
		return said
	}
	return said + " [" + path + "]"
}

// read reads a job's text from a file, or from standard input where the name is "-".
func (p *program) read(name string) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(p.stdin)
	}
	return os.ReadFile(name)
}
