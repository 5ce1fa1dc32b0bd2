// Command drywright predicts when a sprayed film of water-borne adhesive is tack-free, dry through, cured and cool.
//
//	drywright predict JOB.json   print the answers (--json the whole result, --csv the curves)
//	drywright check JOB.json     check a job without computing it
//	drywright limit JOB.json     say how far things can be pushed
//	drywright spread JOB.json    say how sure a setting is
//	drywright cost JOB.json      set the cost of a day against its quantity
//	drywright optimise JOB.json  look for the settings that take least
//	drywright demo               print the demo job
//	drywright fit KIND --data F  fit numbers of a job to a trial (--adopt prints the job with them)
//	drywright ask REQUEST.json   answer a request as the service does
//	drywright serve              serve the page on this machine (--api: and the service)
//
// A file name of "-" reads the job from standard input. The exit code is 0 when the job was computed, 1 when it was
// refused (one reason a line on standard error), 2 when the command was called wrongly.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/words/languages"
	"github.com/drywright/drywright/site"
)

// build names the release; the linker sets it.
var build = "development"

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	page, built := site.Page()
	p := program{
		ctx: ctx, stdin: os.Stdin, stdout: os.Stdout, stderr: os.Stderr,
		predict: cure.Predict, say: report.New(languages.English(), report.SI), page: page, built: built, build: build,
	}
	code := p.run(os.Args[1:])
	stop()
	os.Exit(code)
}
