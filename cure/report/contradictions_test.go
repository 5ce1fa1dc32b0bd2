package report

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words/languages"
)

// contradiction spoils a worked example in one way.
type contradiction struct {
	of    string // the example
	name  string
	spoil func(j *job.Job)
}

func celsius(t float64) float64 { return t + 273.15 }
func opt(x float64) *float64    { return &x }

// contradictions provoke every fault of the checks that compare one value of a job with another.
func contradictions() []contradiction {
	zone := func(spoil func(z *job.Zone)) func(j *job.Job) { return func(j *job.Job) { spoil(&j.Tunnel.Zones[0]) } }
	pairs := func(pairs ...job.SchedulePair) func(j *job.Job) {
		return func(j *job.Job) { j.Film.Adhesive.Crosslinking.Schedule.Pairs = pairs }
	}
	air := func(i int, t float64, h job.Humidity) func(j *job.Job) {
		return func(j *job.Job) {
			j.Workshop.Space.Outside[i].Temperature, j.Workshop.Space.Outside[i].Humidity = celsius(t), h
		}
	}
	batches := func(interval float64) func(j *job.Job) {
		return func(j *job.Job) {
			o := j.StaticOven
			o.Batches, o.BatchInterval, o.DoorOpen = 2, interval, 90
		}
	}
	return []contradiction{
		{"sleeves", "no humidity", func(j *job.Job) { j.StaticOven.Humidity = job.Humidity{} }},
		{"sleeves", "two humidities", func(j *job.Job) { j.StaticOven.Humidity.DewPoint = opt(celsius(10)) }},
		{"sleeves", "fog in the workshop", func(j *job.Job) { j.Workshop.Air[1].Humidity = job.Humidity{DewPoint: opt(celsius(21))} }},
		{"sleeves", "fog by its ratio", func(j *job.Job) { j.Workshop.Air[1].Humidity = job.Humidity{HumidityRatio: opt(0.03)} }},
		{"sleeves", "fog by its density", func(j *job.Job) { j.Workshop.Air[1].Humidity = job.Humidity{VapourDensity: opt(0.03)} }},
		{"sleeves", "a wet bulb that is warmer", func(j *job.Job) { j.Workshop.Air[1].Humidity = job.Humidity{WetBulb: opt(celsius(21))} }},
		{"sleeves", "more than steam", zone(func(z *job.Zone) {
			z.AirTemperature, z.Humidity = celsius(200), job.Humidity{RelativeHumidity: opt(0.5)}
		})},
		{"sleeves", "hardly any air left", zone(func(z *job.Zone) { z.Humidity = job.Humidity{DewPoint: opt(celsius(88.9))} })},
		{"shop", "frost beyond saturation", air(1, -5, job.Humidity{DewPoint: opt(celsius(-2))})},
		{"shop", "frost beyond saturation by ratio", air(1, -5, job.Humidity{HumidityRatio: opt(0.01)})},
		{"shop", "a frozen wet bulb", air(1, -5, job.Humidity{WetBulb: opt(celsius(2))})},
		{"sleeves", "closing below packing", func(j *job.Job) { j.Film.Adhesive.Closing = 0.63 }},
		{"sleeves", "packed when sprayed", func(j *job.Job) { j.Film.Adhesive.Solids = 0.68 }},
		{"sleeves", "open layer thicker than the film", func(j *job.Job) { j.Film.WetCoat, j.Targets.OpenLayer = 0.02, 20e-6 }},
		{"sleeves", "dry film faster than wet", func(j *job.Job) { j.Film.Adhesive.DryDiffusion = 1e-9 }},
		{"sleeves", "more than the whole coat", func(j *job.Job) {
			j.Film.Adhesive.CoSolvent = job.NewCoSolvent()
			j.Film.Adhesive.CoSolvent.Fraction, j.Film.Adhesive.Solids = 0.5, 0.55
		}},
		{"sleeves", "never dry by its chi", func(j *job.Job) {
			j.Film.Adhesive.Sorption.Isotherm, j.Film.Adhesive.Sorption.Chi = job.IsothermFloryHuggins, 0.75
		}},
		{"sleeves", "never dry by its K", func(j *job.Job) { j.Film.Adhesive.Sorption.GABK = 0.97 }},
		{"sleeves", "glass transition that sinks", func(j *job.Job) {
			g := job.NewVitrification()
			g.TgUncured, g.TgCured = celsius(20), celsius(10)
			j.Film.Adhesive.Crosslinking.Vitrification = g
		}},
		{"sleeves", "schedule beside autocatalysis", func(j *job.Job) {
			j.Film.Adhesive.Crosslinking.Autocatalysis = job.NewAutocatalysis()
			pairs(job.SchedulePair{Temperature: celsius(120), Time: 300})(j)
		}},
		{"sleeves", "schedule slower when hot", pairs(job.SchedulePair{Temperature: celsius(80), Time: 200}, job.SchedulePair{Temperature: celsius(120), Time: 300})},
		{"sleeves", "schedule beyond numbers", pairs(job.SchedulePair{Temperature: celsius(20), Time: 864000}, job.SchedulePair{Temperature: celsius(20.11), Time: 1})},
		{"sleeves", "schedule of an impossible energy", pairs(job.SchedulePair{Temperature: celsius(120), Time: 300}, job.SchedulePair{Temperature: celsius(121), Time: 100})},
		{"sleeves", "schedule below the glass transition", func(j *job.Job) {
			g := job.NewVitrification()
			g.TgUncured, g.TgCured = celsius(10), celsius(110)
			j.Film.Adhesive.Crosslinking.Vitrification = g
			pairs(job.SchedulePair{Temperature: celsius(23), Time: 172800}, job.SchedulePair{Temperature: celsius(80), Time: 600})(j)
		}},
		{"sleeves", "infrared that burns", zone(func(z *job.Zone) {
			z.Infrared = job.NewInfrared()
			z.Infrared.Flux = 80e3
		})},
		{"sleeves", "particles faster than water", func(j *job.Job) {
			j.Film.Adhesive.CapillaryDiffusion, j.Film.Adhesive.DryDiffusion = 1.1e-11, 1e-12
		}},
		{"sleeves", "cure in an instant", func(j *job.Job) {
			pairs()(j)
			j.Film.Adhesive.Crosslinking.FrequencyFactor = 1e15
		}},
		{"line", "radiators at a closed back", func(j *job.Job) {
			j.Part.Back = job.BackCoated
			j.Part.Carrier = nil
			zone(func(z *job.Zone) {
				z.Infrared = job.NewInfrared()
				z.Infrared.BackFlux = 1000
			})(j)
		}},
		{"line", "spot without a name", func(j *job.Job) { j.Part.Spots[0].Name = " " }},
		{"line", "two spots of a name", func(j *job.Job) {
			j.Part.Spots = []job.Spot{{Name: "Edge", TransferFactor: 1, CoatFactor: 1}, {Name: "edge", TransferFactor: 1, CoatFactor: 1}}
		}},
		{"line", "spot beyond a coat", func(j *job.Job) { j.Film.WetCoat, j.Part.Spots[0].CoatFactor = 0.9, 2 }},
		{"line", "spot too thin", func(j *job.Job) { j.Part.Spots[0].CoatFactor, j.Targets.OpenLayer = 0.5, 48e-6 }},
		{"line", "carrier on a coated back", func(j *job.Job) { j.Part.Back = job.BackCoated }},
		{"shop", "coated back that lies", func(j *job.Job) { j.Part.Back = job.BackCoated }},
		{"sleeves", "coated back with a law of its own", func(j *job.Job) {
			j.Part.Back, j.Workshop.Transfer.BackCoefficient = job.BackCoated, opt(5)
		}},
		{"sleeves", "no route", func(j *job.Job) { j.Room, j.StaticOven, j.Tunnel = nil, nil, nil }},
		{"sleeves", "run ends before flocking", func(j *job.Job) {
			j.StaticOven, j.Tunnel = nil, nil
			j.Room.Deadline, j.Room.Horizon, j.Pile.AppliedAfter = 3600, 3700, 3800
		}},
		{"sleeves", "run ends before the deadline", func(j *job.Job) { j.Room.Horizon = 50000 }},
		{"sleeves", "run ends in the oven", func(j *job.Job) { j.StaticOven.Deadline, j.StaticOven.Horizon = 1000, 2500 }},
		{"sleeves", "flocked after the oven", func(j *job.Job) { j.StaticOven.LoadedAfter = 120 }},
		{"sleeves", "fog at loading", func(j *job.Job) {
			j.StaticOven.Humidity = job.Humidity{DewPoint: opt(celsius(50))}
			j.StaticOven.Chamber.AirAtLoading = opt(celsius(40))
		}},
		{"sleeves", "door always open", func(j *job.Job) { j.StaticOven.Dwell, j.StaticOven.DoorOpen = 60, 90 }},
		{"sleeves", "loads that do not meet", batches(7200)},
		{"sleeves", "loads through an open door", batches(60)},
		{"line", "a zone without air", func(j *job.Job) {
			j.Tunnel.EntryLeak = 0
			zone(func(z *job.Zone) { z.Air.Exhaust, z.Air.MakeUp, z.Air.LeakToNext = 0, 0, 0 })(j)
		}},
		{"sleeves", "heat after cooling", func(j *job.Job) { j.Tunnel.Zones[1].Kind, j.Tunnel.Zones[2].Kind = job.Cooling, job.Heated }},
		{"sleeves", "radiators that cool", func(j *job.Job) { j.Tunnel.Zones[2].Infrared = job.NewInfrared() }},
		{"sleeves", "no carrier comes back", func(j *job.Job) { j.Tunnel.CarrierReturn = opt(celsius(40)) }},
		{"sleeves", "nothing heats", func(j *job.Job) { j.Tunnel.Zones = j.Tunnel.Zones[2:] }},
		{"sleeves", "tack after cure", func(j *job.Job) { j.Targets.TackConversion, j.Targets.FullConversion = 0.9, 0.8 }},
		{"sleeves", "air from the second hour on", func(j *job.Job) { j.Workshop.Air[0].Time = 3600 }},
		{"sleeves", "air out of order", func(j *job.Job) { j.Workshop.Air[2].Time = 10800 }},
		{"shop", "set back upwards", func(j *job.Job) { j.Workshop.Space.Heating.SetBack = celsius(25) }},
		{"shop", "resumes without set-back", func(j *job.Job) { j.Workshop.Space.Heating.SetBackAt = nil }},
		{"shop", "resumes too early", func(j *job.Job) { j.Workshop.Space.Heating.ResumeAt = opt(1800) }},
		{"shop", "dehumidifier that heats", func(j *job.Job) {
			j.Workshop.Space.Dehumidifier = job.NewDehumidifier()
			j.Workshop.Space.Dehumidifier.Power, j.Workshop.Space.Dehumidifier.Capacity = 4e3, 1e-5
		}},
		{"sleeves", "a storm from a fan", func(j *job.Job) {
			j.Workshop.Transfer.Fan = job.NewFan()
			j.Workshop.Transfer.Fan.AirFlow, j.Workshop.Transfer.Fan.CrossSection = 10, 0.1
		}},
		{"sleeves", "forced flow that stands", func(j *job.Job) { j.Workshop.Transfer.Kind, j.Workshop.Transfer.Velocity = job.ParallelFlow, 0 }},
		{"sleeves", "nozzles that are not there", zone(func(z *job.Zone) { z.Transfer.Kind = job.SlotNozzles })},
		{"line", "nozzles too close", zone(func(z *job.Zone) { z.Transfer.Nozzles.Pitch = 5e-3 })},
		{"line", "round nozzles too close", zone(func(z *job.Zone) {
			z.Transfer.Kind = job.RoundNozzles
			z.Transfer.Nozzles.Pitch = 9e-3
		})},
	}
}

// whole is what must not be met in a message, whatever the language: units of SI that no workshop reads, names of the document,
// messages that were not put into words.
var unread = regexp.MustCompile(`\d\s?K\b|\d s\b|\d J\b|\d J/mol\b|\bkg/m[²2]|\d m²/s|degC|\w_\w|\[\d*\]|\bnull\b|[{}\x02\x03\x1f⟦⟧]|%!`)

// Every contradiction is told by the names and in the units of whoever reads it. The sentences of the checks are read off their
// source, so that a new one without a row here fails.
func TestContradictionsSpeakToTheReader(t *testing.T) {
	examples := map[string]job.Job{}
	for _, d := range job.Demos() {
		examples[d.ID] = d.Job
	}
	provoked := map[string]bool{}
	for _, c := range contradictions() {
		j := job.Clone(examples[c.of])
		c.spoil(&j)
		list, _ := job.Validate(j).(fault.List)
		if len(list) == 0 {
			t.Errorf("%s: accepted", c.name)
		}
		for _, f := range list {
			for _, text := range []string{f.Got, f.Advice} {
				provoked[template(text)] = true
			}
			heard := map[string]string{}
			for _, tag := range languages.Tags() {
				spoken, err := languages.Open(tag)
				if err != nil {
					t.Fatal(err)
				}
				for _, units := range []Units{SI, US} {
					w := New(spoken, units)
					said := w.Sentence(f)
					if wrong := unread.FindString(said); wrong != "" || strings.ContainsAny(f.Path, "._[") && strings.Contains(said, f.Path) {
						t.Errorf("%s, %s, %s: %q in %q", c.name, tag, units, wrong, said)
					}
					if metric := regexp.MustCompile(`\d[ \x{202f}](°C|µm([^²]|$)|mm|m/s|g/m²)`).FindString(w.Text(f.Said())); units == US && metric != "" {
						t.Errorf("%s, %s: %q in %q", c.name, tag, metric, said)
					}
					if tag == "de" && regexp.MustCompile(`\d\.\d`).MatchString(said) {
						t.Errorf("%s: a decimal point in %q", c.name, said)
					}
					heard[tag] = said
				}
			}
			if heard["de"] == heard["en"] {
				t.Errorf("%s: German says what English says: %q", c.name, heard["de"])
			}
			t.Log(heard["en"])
		}
	}
	for _, file := range []string{"air", "film", "hottest", "part", "routes", "space", "transfer"} {
		for _, told := range toldIn(t, "../job/check_"+file+".go") {
			if !provoked[told] {
				t.Errorf("nothing provokes %q of check_%s.go", told, file)
			}
		}
	}
}

// template is the sentence in English that a text on its way was made of.
func template(text string) string {
	text = strings.TrimPrefix(text, "\x02t")
	end := strings.IndexAny(text, "\x03\x1f")
	return text[:max(0, end)]
}

// toldIn lists the sentences of a source file: the first argument of each words.Told.
func toldIn(t *testing.T, path string) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), filepath.FromSlash(path), nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	ast.Inspect(file, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		if name, ok := call.Fun.(*ast.SelectorExpr); ok && name.Sel.Name == "Told" {
			all = append(all, constant(call.Args[0]))
		}
		return true
	})
	if len(all) == 0 {
		t.Fatalf("%s tells nothing", path)
	}
	return all
}

// constant is the value of a text that is written in one or several pieces.
func constant(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, _ := strconv.Unquote(e.Value)
		return s
	case *ast.BinaryExpr:
		return constant(e.X) + constant(e.Y)
	}
	return ""
}
