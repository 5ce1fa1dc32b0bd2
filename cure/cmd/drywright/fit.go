package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/unit"
)

// fitHelp is what the verb says when asked.
const fitHelp = "Fits numbers of a job to a trial of your own and prints them with their intervals, what the trial cannot tell,\n" +
	"and the residuals. KIND is weight (a coupon on a scale: time, mass), recorder (an oven recorder: time, air and part\n" +
	"temperature), cure (time, temperature, conversion or pass/fail) or sorption (relative humidity, water content). FILE is a\n" +
	"table with a header that names the units, as in \"time [min];mass [g]\"; - is standard input. The job describes the place of\n" +
	"the trial; without one it is the model adhesive on a part in a workshop."

// fitFlags are the flags of the verb, in workshop units.
type fitFlags struct {
	set                                                         *flag.FlagSet
	data, job, columns, parameters, criterion, route, isotherm  *string
	name, date                                                  *string
	area, tare, start, threshold, repeatability, reference, hot *string
	bootstrap                                                   *int
	seed                                                        *uint64
	plain, free, bare, json, adopt                              *bool
}

func newFitFlags() fitFlags {
	f := flag.NewFlagSet("fit", flag.ContinueOnError)
	return fitFlags{set: f,
		data:          f.String("data", "", "FILE, the table of the trial"),
		job:           f.String("job", "", "JOB.json, the job to fit; without it the default job, unflocked"),
		columns:       f.String("columns", "", "what columns are, where the header does not say: 1=time:min,2=mass:g"),
		parameters:    f.String("parameters", "", "paths of the numbers to fit, separated by commas; without it the criterion chooses"),
		criterion:     f.String("criterion", "", "aicc (default) or bic"),
		route:         f.String("route", "", "room, static_oven or tunnel: where the trial was made"),
		isotherm:      f.String("isotherm", "", "gab or flory_huggins; without it the criterion chooses"),
		name:          f.String("name", "", "name of the fit, when it is adopted"),
		date:          f.String("date", "", "date of the trial"),
		area:          f.String("area", "", "coated area of one coupon, cm²"),
		tare:          f.String("tare", "", "what the scale shows with the bare coupon, g"),
		start:         f.String("start", "", "when the table's time zero was, in minutes from spraying"),
		threshold:     f.String("threshold", "", "conversion that a passed test proves, %"),
		repeatability: f.String("repeatability", "", "scatter of a pass/fail test in time, % (15)"),
		reference:     f.String("reference", "", "temperature of the equivalent time, °C (120)"),
		hot:           f.String("limit", "", "limit of the time above, °C (the part's)"),
		bootstrap:     f.Int("bootstrap", 0, "resamplings that check the intervals (0)"),
		seed:          f.Uint64("seed", 0, "seed of the resampling (0)"),
		plain:         f.Bool("plain", false, "no protection against outliers"),
		free:          f.Bool("free", false, "no pull towards the numbers that the job has"),
		bare:          f.Bool("bare", false, "the recorded part carried no wet coat"),
		json:          f.Bool("json", false, "print the whole outcome as one JSON document"),
		adopt:         f.Bool("adopt", false, "print the job with the fit adopted"),
	}
}

// fitVerb fits a trial.
func (p *program) fitVerb(args []string) int {
	f := newFitFlags()
	words, code := p.parse("fit", f.set, args, 1)
	if code >= 0 {
		return code
	}
	if *f.json && *f.adopt {
		return p.misuse("fit", f.set, "--json and --adopt exclude each other")
	}
	if *f.data == "" {
		return p.misuse("fit", f.set, "--data FILE is missing")
	}
	q, err := f.question(trial.Kind(words[0]), mark(p.say))
	if err != nil {
		return p.misuse("fit", f.set, err.Error())
	}
	j := job.Default()
	j.Pile = nil
	if *f.job != "" {
		if j, code = p.job("fit", *f.job); code >= 0 {
			return code
		}
	}
	table, err := p.read(*f.data)
	if err != nil {
		fmt.Fprintf(p.stderr, "drywright fit: %v\n", err)
		return misused
	}
	o, err := cure.Fit(p.say, j, table, q)
	if err != nil {
		return p.refuse(err)
	}
	switch {
	case *f.json:
		text, err := json.Marshal(o)
		if err != nil {
			return p.refuse(err)
		}
		return p.print(string(text) + "\n")
	case *f.adopt:
		adopted, err := job.Adopt(j, o.Adoption)
		if err != nil {
			return p.refuse(err)
		}
		p.say.Tell(&adopted)
		text, err := job.Encode(adopted)
		if err != nil {
			return p.refuse(err)
		}
		return p.print(string(text))
	}
	return p.print(p.say.FitTable(o.Fit))
}

// question turns the flags into SI.
func (f *fitFlags) question(kind trial.Kind, decimal byte) (fit.Question, error) {
	q := fit.Question{Kind: kind, Criterion: *f.criterion, Route: result.Kind(*f.route), Isotherm: job.IsothermKind(*f.isotherm), Name: *f.name,
		Date: *f.date, Bootstrap: *f.bootstrap, Seed: *f.seed, Plain: *f.plain, Free: *f.free, Bare: *f.bare}
	if *f.data != "-" {
		q.Data = filepath.Base(*f.data)
	}
	if *f.parameters != "" {
		q.Parameters = strings.Split(*f.parameters, ",")
	}
	for _, c := range []struct {
		name, text string
		to         **float64
		dimension  unit.Dimension
		symbol     string
	}{
		{"area", *f.area, &q.Area, unit.Area, "cm²"}, {"tare", *f.tare, &q.Tare, unit.Mass, "g"}, {"start", *f.start, &q.Start, unit.Duration, "min"},
		{"threshold", *f.threshold, &q.Threshold, unit.Share, "%"}, {"repeatability", *f.repeatability, &q.Repeatability, unit.Share, "%"},
		{"reference", *f.reference, &q.Reference, unit.Temperature, "°C"}, {"limit", *f.hot, &q.Limit, unit.Temperature, "°C"},
	} {
		if c.text == "" {
			continue
		}
		v, err := unit.Parse(c.text, c.dimension, c.symbol, decimal)
		if err != nil {
			return q, fmt.Errorf("--%s: %w", c.name, err)
		}
		*c.to = &v
	}
	var err error
	q.Columns, err = columns(*f.columns)
	return q, err
}

// columns reads "1=time:min,2=mass:g".
func columns(text string) ([]trial.Choice, error) {
	var all []trial.Choice
	if text == "" {
		return nil, nil
	}
	for part := range strings.SplitSeq(text, ",") {
		number, rest, ok := strings.Cut(part, "=")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		if !ok || err != nil {
			return nil, fmt.Errorf("--columns %q is not of the form 1=time:min,2=mass:g", text)
		}
		kind, unit, _ := strings.Cut(rest, ":")
		all = append(all, trial.Choice{Column: n, Kind: trial.Quantity(strings.TrimSpace(kind)), Unit: strings.TrimSpace(unit)})
	}
	return all, nil
}
