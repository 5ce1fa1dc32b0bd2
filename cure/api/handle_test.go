package api

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// canned predicts the same for every job.
func canned(_ report.Speaker, j job.Job, _ ...result.Kind) (result.Result, error) {
	return result.Result{Version: result.Version, JobName: j.Name, Routes: []result.Route{}, Warnings: []result.Warning{}}, nil
}

// ask puts a request and reads the response.
func ask(t *testing.T, request string, predict predictor) Response {
	t.Helper()
	text := Offer(languages.English(), predicting(predict), Planning(), Fitting(), Schemas())([]byte(request))
	if bytes.ContainsRune(text, '\n') {
		t.Errorf("the response to %.60s has line breaks", request)
	}
	var r Response
	if err := json.Unmarshal(text, &r); err != nil {
		t.Fatalf("%v in %.200s", err, text)
	}
	if r.Version != Version {
		t.Errorf("version %d", r.Version)
	}
	if !bytes.Contains(text, []byte(`"faults":[`)) {
		t.Errorf("faults are no list in %.200s", text)
	}
	return r
}

// with builds a request around a job.
func with(t *testing.T, op Op, j job.Job) string {
	t.Helper()
	text, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	request, err := json.Marshal(Request{Op: op, Job: text})
	if err != nil {
		t.Fatal(err)
	}
	return string(request)
}

// told is a job with its texts in English.
func told(j job.Job) job.Job {
	report.New(languages.English(), report.SI).Tell(&j)
	return j
}

func TestOperations(t *testing.T) {
	if r := ask(t, `{"op":"demo"}`, canned); !r.OK || r.Job == nil || r.Job.Name != told(job.Demo()).Name {
		t.Errorf("demo: %+v", r)
	}
	if r := ask(t, with(t, Predict, job.Demo()), canned); !r.OK || r.Result == nil || r.Result.JobName != told(job.Demo()).Name || r.Job != nil {
		t.Errorf("predict: %+v", r)
	}
	// What a job leaves out comes back filled in.
	if r := ask(t, `{"op":"check","job":{"version":1}}`, canned); !r.OK || r.Job == nil || r.Job.Film.WetCoat <= 0 || r.Result != nil {
		t.Errorf("check: %+v", r)
	}
	if r := ask(t, `{"op":"schema"}`, canned); !r.OK || !strings.Contains(string(r.Schema), "wet_coat_kg_per_m2") {
		t.Errorf("schema: %.200s", r.Schema)
	}
}

func TestCatalogue(t *testing.T) {
	r := ask(t, `{"op":"describe"}`, canned)
	if !r.OK || r.Catalogue == nil {
		t.Fatalf("%+v", r)
	}
	c := r.Catalogue
	if c.Version != Version || len(c.Fields) != len(job.Fields()) || len(c.Blocks) != len(job.Blocks()) {
		t.Errorf("version %d, %d fields, %d blocks", c.Version, len(c.Fields), len(c.Blocks))
	}
	if len(c.Adhesives) == 0 || len(c.Parts) == 0 || len(c.Fibres) == 0 || len(c.Methods) == 0 {
		t.Errorf("%d adhesives, %d parts, %d fibres, %d methods", len(c.Adhesives), len(c.Parts), len(c.Fibres), len(c.Methods))
	}
	for name, j := range map[string]job.Job{"demo": c.Demo, "default": c.Default} {
		if err := job.Validate(j); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Every fault comes with its path and a sentence; a list of them comes whole.
func TestFaults(t *testing.T) {
	bad := job.Demo()
	bad.Film.WetCoat, bad.Film.Adhesive.Solids = -1, 7
	for _, op := range []Op{Check, Predict} {
		r := ask(t, with(t, op, bad), canned)
		if r.OK || len(r.Faults) != 2 || r.Faults[0].Path != "film.wet_coat_kg_per_m2" || r.Faults[0].Code != fault.Range ||
			!strings.Contains(r.Faults[0].Text, "less than") || r.Job != nil || r.Result != nil || r.Message != "" {
			t.Errorf("%s: %+v", op, r)
		}
	}
	for request, code := range map[string]fault.Code{
		``:                          fault.Syntax,
		`{`:                         fault.Syntax,
		`7`:                         fault.Syntax,
		`{"op":"demo"} {}`:          fault.Syntax,
		`{"op":"predict","jbo":{}}`: fault.Syntax,
		`{}`:                        fault.Choice,
		`{"op":"dry"}`:              fault.Choice,
		`{"op":"predict"}`:          fault.Missing,
		`{"op":"check"}`:            fault.Missing,
		`{"op":"predict","routes":["kiln"],"job":{"version":1}}`:        fault.Choice,
		`{"op":"demo","job":"` + strings.Repeat("x", MaxRequest) + `"}`: fault.Limit,
	} {
		r := ask(t, request, canned)
		if r.OK || len(r.Faults) != 1 || r.Faults[0].Code != code || r.Faults[0].Text == "" {
			t.Errorf("%.60s: %+v, want %s", request, r, code)
		}
	}
}

// What the core does wrong is told, not passed on: a panic, a number that JSON does not have, an error of no known kind.
func TestFailingCore(t *testing.T) {
	demo := with(t, Predict, job.Demo())
	one := func(report.Speaker, job.Job, ...result.Kind) (result.Result, error) {
		return result.Result{}, fault.New(fault.Numeric, "numerics", "no answer", "Loosen it.")
	}
	if r := ask(t, demo, one); r.OK || r.Result != nil || len(r.Faults) != 1 || r.Faults[0].Text != "Computation: no answer. Loosen it." {
		t.Errorf("a fault: %+v", r)
	}
	strange := func(report.Speaker, job.Job, ...result.Kind) (result.Result, error) {
		return result.Result{}, bytes.ErrTooLarge
	}
	if r := ask(t, demo, strange); r.OK || r.Result != nil || r.Message != bytes.ErrTooLarge.Error() {
		t.Errorf("an error: %+v", r)
	}
	panics := func(report.Speaker, job.Job, ...result.Kind) (result.Result, error) { panic("index out of range") }
	if r := ask(t, demo, panics); r.OK || r.Message != "panic: index out of range" {
		t.Errorf("a panic: %+v", r)
	}
	unspeakable := func(_ report.Speaker, j job.Job, _ ...result.Kind) (result.Result, error) {
		r, err := canned(report.Speaker{}, j)
		r.Routes = []result.Route{{Answer: result.Answer{Deadline: math.NaN()}}}
		return r, err
	}
	if r := ask(t, demo, unspeakable); r.OK || !strings.HasPrefix(r.Message, "panic: ") || r.Result != nil {
		t.Errorf("a NaN: %+v", r)
	}
}

// The demo job through the real core, twice: an answer for each route, and the same bytes.
func TestHandleIsDeterministic(t *testing.T) {
	request := []byte(with(t, Predict, job.Demo()))
	first := Handle(languages.English(), request)
	var r Response
	if err := json.Unmarshal(first, &r); err != nil || !r.OK || len(r.Result.Routes) != 3 {
		t.Fatalf("%v, %.300s", err, first)
	}
	for _, route := range r.Result.Routes {
		if route.Title == "" || route.Answer.Text == "" || len(route.Marks) != len(result.MarkNames()) {
			t.Errorf("route %s is not filled in: %+v", route.Kind, route.Answer)
		}
	}
	if second := Handle(languages.English(), request); !bytes.Equal(first, second) {
		t.Error("the same request gives other bytes")
	}
	describe := []byte(`{"op":"describe"}`)
	if !bytes.Equal(Handle(languages.English(), describe), Handle(languages.English(), describe)) {
		t.Error("the catalogue differs from one call to the next")
	}
}

// No bytes whatever may bring the core down.
func FuzzHandle(f *testing.F) {
	for _, seed := range []string{``, `{}`, `{"op":"describe"}`, `{"op":"check","job":{"version":1}}`, `{"op":"check","job":[1e999]}`,
		`{"op":"check","job":{"version":1,"tunnel":{"zones":[null]}}}`, "\x00", `{"op":"check","job":{"version":2}}`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, request []byte) {
		var r Response
		if err := json.Unmarshal(Offer(languages.English(), predicting(canned), Planning(), Fitting(), Schemas())(request), &r); err != nil {
			t.Fatal(err)
		}
		if strings.HasPrefix(r.Message, "panic:") || !r.OK && len(r.Faults) == 0 && r.Message == "" {
			t.Errorf("%+v", r)
		}
	})
}

// Asked for units of the United States, fields and variables are displayed in them, and so are the measures of results.
func TestUnitsOfTheCatalogue(t *testing.T) {
	for _, c := range []struct {
		units                         string
		coat, temperature, area, mass string
	}{
		{"si", "g/m²", "°C", "m²", "kg"}, {"us", "oz/yd²", "°F", "ft²", "lb"},
	} {
		r := ask(t, `{"op": "describe", "units": "`+c.units+`"}`, canned)
		if !r.OK || r.Catalogue == nil {
			t.Fatal(r.Message)
		}
		for _, f := range r.Catalogue.Fields {
			if f.Path == "film.wet_coat_kg_per_m2" && f.Display.Symbol != c.coat {
				t.Errorf("%s: the coat is displayed in %s", c.units, f.Display.Symbol)
			}
		}
		m := r.Catalogue.Measures
		if m.CoatWeight.Symbol != c.coat || m.Temperature.Symbol != c.temperature || m.Area.Symbol != c.area || m.Mass.Symbol != c.mass {
			t.Errorf("%s: results are measured in %+v", c.units, m)
		}
		// Water boils at 100 °C or 212 °F, by definition of the scales.
		want := map[string]float64{"si": 100, "us": 212}[c.units]
		if got := 373.15*m.Temperature.Factor + m.Temperature.Offset; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: 373.15 K is %g", c.units, got)
		}
	}
}
