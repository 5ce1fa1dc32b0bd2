package api

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words/languages"
)

// The kept requests lie in testdata/requests, their answers in answers below it; see the README there. After a change that
// moves answers on purpose, write them anew and read the difference:
//
//	go test ./cure/api -run KeptRequests -write
var write = flag.Bool("write", false, "write the requests of testdata/requests and their answers")

const requestsFolder = "../../testdata/requests"

// Native code for amd64 and WebAssembly round alike (see num.Exp), so that answers are the same to the last bit but for fits, whose
// matrices have assembly of their own: 5e-11 seen. Where a compiler fuses multiplications and additions a bit may decide on a step, and
// moves what little water is left by 1e-3 at a tolerance of 1e-4. A number may therefore differ by closeness of itself, or by what
// sums that cancel leave: the error or a term of an account of heat by heat [J, J/m2], some 1e-11 of its terms; a window, which is drawn
// to less than it is found, by window; others by plain [SI units].
type bounds struct{ closeness, plain, heat, window float64 }

var (
	rounded = bounds{1e-9, 1e-12, 1e-12, 1e-12}
	fused   = bounds{2e-5, 1e-9, 1e-6, 1e-3}
)

// here are the bounds of this processor.
func here() bounds {
	if runtime.GOARCH == "amd64" || runtime.GOARCH == "wasm" {
		return rounded
	}
	return fused
}

func TestKeptRequests(t *testing.T) {
	if *write {
		writeRequests(t)
	}
	files, err := filepath.Glob(filepath.Join(requestsFolder, "*.json"))
	if err != nil || len(files) < 20 {
		t.Fatalf("%d requests, %v", len(files), err)
	}
	ops := map[Op]bool{}
	for _, file := range files {
		name := filepath.Base(file)
		request, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := os.ReadFile(filepath.Join(requestsFolder, "answers", name))
		if err != nil {
			t.Fatal(err)
		}
		var want, got any
		if err := json.Unmarshal(kept, &want); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := json.Unmarshal(Handle(languages.English(), request), &got); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if where := here().unlike(want, got); where != "" {
			t.Errorf("%s: answer%s", name, where)
		}
		var q Request
		if json.Unmarshal(request, &q) == nil {
			ops[q.Op] = true
		}
	}
	var missed []string
	for _, g := range []Group{Predicting(), Planning(), Fitting()} {
		for _, o := range g {
			if !ops[o.op] && o.op != Optimise { // it takes seconds, and stands on what the others ask
				missed = append(missed, string(o.op))
			}
		}
	}
	if len(missed) > 0 {
		t.Errorf("no request is kept of %s", strings.Join(missed, ", "))
	}
}

// unlike says where two values of JSON differ, beyond what rounding explains; empty: nowhere.
func (b bounds) unlike(want, got any) string { return b.differ(want, got, b.plain) }

// differ is unlike with what sums that cancel may leave.
func (b bounds) differ(want, got any, rest float64) string {
	switch w := want.(type) {
	case float64:
		if g, ok := got.(float64); ok && math.Abs(w-g) <= b.closeness*math.Abs(w)+rest {
			return ""
		}
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			break
		}
		for i := range w {
			if where := b.differ(w[i], g[i], rest); where != "" {
				return fmt.Sprintf("[%d]%s", i, where)
			}
		}
		return ""
	case map[string]any:
		g, ok := got.(map[string]any)
		if !ok || len(g) != len(w) {
			break
		}
		for key := range w {
			rest := rest
			switch {
			case strings.Contains(key, "_J"):
				rest = b.heat
			case key == "window":
				rest = b.window
			}
			if where := b.differ(w[key], g[key], rest); where != "" {
				return "." + key + where
			}
		}
		return ""
	default:
		if want == got {
			return ""
		}
	}
	return fmt.Sprintf(": %.200v, expected %.200v", got, want)
}

func TestUnlikeTellsNumbersApart(t *testing.T) {
	for _, c := range []struct {
		want, got string
		same      bool
	}{
		{`{"a":[1,{"b":300}]}`, `{"a":[1,{"b":300.002}]}`, true}, {`{"a":[1,{"b":300}]}`, `{"a":[1,{"b":300.01}]}`, false},
		{`[1]`, `[1,2]`, false}, {`{"a":1}`, `{"a":1,"b":null}`, false}, {`{"a":1,"b":2}`, `{"a":1,"c":2}`, false}, {`"x"`, `"y"`, false}, {`0`, `null`, false},
		{`1e-13`, `-1e-13`, true}, {`{"heat_J":{"error":0}}`, `{"heat_J":{"error":1e-8}}`, true}, {`{"heat":0}`, `{"heat":1e-8}`, false}, {`true`, `true`, true},
	} {
		var want, got any
		if json.Unmarshal([]byte(c.want), &want) != nil || json.Unmarshal([]byte(c.got), &got) != nil {
			t.Fatal(c)
		}
		if where := fused.unlike(want, got); (where == "") != c.same {
			t.Errorf("%s and %s: %q", c.want, c.got, where)
		}
	}
}

// plain are lists of numbers and words, which are written in one line.
var plain = regexp.MustCompile(`\[\s*([^\[\]{}]*?)\s*\]`)

func writeRequests(t *testing.T) {
	t.Helper()
	answers := filepath.Join(requestsFolder, "answers")
	if err := os.MkdirAll(answers, 0o755); err != nil {
		t.Fatal(err)
	}
	put := func(path string, text []byte) {
		var lines bytes.Buffer
		if err := json.Indent(&lines, text, "", " "); err != nil {
			t.Fatal(err)
		}
		short := plain.ReplaceAllFunc(lines.Bytes(), func(list []byte) []byte { return bytes.Join(bytes.Fields(list), []byte(" ")) })
		if json.Valid(short) && bytes.Equal(compact(t, short), compact(t, text)) { // not where a text holds brackets
			lines.Reset()
			lines.Write(short)
		}
		if err := os.WriteFile(path, append(lines.Bytes(), '\n'), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for name, q := range keptRequests(t) {
		request, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		put(filepath.Join(requestsFolder, name+".json"), request)
		put(filepath.Join(answers, name+".json"), Handle(languages.English(), request))
	}
}

func compact(t *testing.T, text []byte) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := json.Compact(&b, text); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// keptRequests are the questions by name, each of which the page, the command and the service can be asked.
func keptRequests(t *testing.T) map[string]any {
	t.Helper()
	all := map[string]any{}
	text := func(j job.Job) json.RawMessage {
		b, err := job.Encode(told(j))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	with := func(base func() job.Job, change func(j *job.Job)) json.RawMessage {
		j := base()
		j.Numerics.RelativeTolerance = job.Default().Numerics.RelativeTolerance // where a last bit decides on a step, it shows as much as this
		change(&j)
		return text(j)
	}
	nothing := func(*job.Job) {}

	for _, d := range job.Demos() {
		all["predict-"+d.ID] = Request{Op: Predict, Job: text(d.Job)}
	}
	room := func() job.Job {
		j := job.Default()
		j.Numerics.FilmCells, j.Numerics.PartCells = 12, 3
		return j
	}
	all["predict-room"] = Request{Op: Predict, Job: with(room, nothing)}
	all["predict-room-heavy"] = Request{Op: Predict, Job: with(room, func(j *job.Job) { j.Film.WetCoat = 0.3 })}
	all["predict-oven"] = Request{Op: Predict, Job: with(quickOven, nothing)}
	all["predict-oven-us"] = Request{Op: Predict, Job: with(quickOven, func(j *job.Job) { j.Film.WetCoat = 0.12 }), Units: report.US}
	all["predict-tunnel"] = Request{Op: Predict, Job: with(quick, nothing)}
	all["predict-tunnel-fast-us"] = Request{Op: Predict, Job: with(quick, func(j *job.Job) { j.Tunnel.LineSpeed *= 2 }), Units: report.US}

	all["fault-range"] = Request{Op: Check, Job: with(quick, func(j *job.Job) { j.Film.WetCoat = -1 })}
	all["fault-range-us"] = Request{Op: Check, Job: with(quick, func(j *job.Job) { j.Film.WetCoat = 9 }), Units: report.US}
	all["fault-several"] = Request{Op: Check, Job: with(quick, func(j *job.Job) {
		j.Film.WetCoat, j.Tunnel.LineSpeed, j.Tunnel.Zones[0].Length = 0, -1, 1e9
	})}
	all["fault-conflict"] = Request{Op: Check, Job: with(quick, func(j *job.Job) { j.Film.WetCoat, j.Targets.OpenLayer = 0.02, 5e-5 })}
	all["fault-member"] = Request{Op: Check, Job: json.RawMessage(`{"version":1,"film":{"wet_coat":0.1}}`)}
	all["fault-version"] = Request{Op: Check, Job: json.RawMessage(`{"version":99}`)}
	all["fault-operation"] = Request{Op: "guess"}
	all["fault-no-job"] = Request{Op: Check}
	all["fault-request"] = map[string]any{"op": Check, "jib": 1}

	all["check"] = Request{Op: Check, Job: with(quickOven, nothing)}
	all["check-sparse"] = Request{Op: Check, Job: json.RawMessage(`{"version":1,"tunnel":{"line_speed_m_per_s":0.03}}`)}
	all["describe"] = Request{Op: Describe}
	all["demo"] = Request{Op: Demo}
	all["moist-air"] = Request{Op: MoistAir, Job: with(quick, nothing), MoistAir: &MoistAirQuestion{Route: result.Tunnel}}
	all["derive"] = Request{Op: Derive, Derive: &derive.Question{Kind: derive.Sprayed, Path: "film.wet_coat_kg_per_m2",
		Inputs: map[string]float64{"mass_kg": 0.012, "area_m2": 0.05, "overspray": 0.25}}}

	tunnelGoal := plan.Study{Route: result.Tunnel, Goal: &sim.Goal{AtExit: []result.MarkName{result.DryThrough}}}
	ovenGoal := plan.Study{Route: result.StaticOven, Goal: &sim.Goal{AtExit: []result.MarkName{result.DryThrough}}}
	tolerances := []plan.Tolerance{{Variable: plan.Coat, Shape: plan.Normal, Width: 0.05, Relative: true}}
	faster := plan.Trial{{Variable: plan.LineSpeed, Value: 0.031}}
	tunnel, oven := with(quick, nothing), with(quickOven, nothing)
	all["variables"] = Request{Op: Variables, Job: tunnel, Study: &plan.Study{Route: result.Tunnel}}
	all["variables-us"] = Request{Op: Variables, Job: oven, Study: &ovenGoal, Units: report.US}
	all["tolerances"] = Request{Op: Tolerances, Job: tunnel, Study: &tunnelGoal}
	all["trials"] = Request{Op: Trials, Job: tunnel, Trials: &TrialSet{Study: tunnelGoal, Trials: []plan.Trial{{}, faster, {{Variable: plan.Coat, Value: -1}}}}}
	all["apply"] = Request{Op: Apply, Job: tunnel, Study: &tunnelGoal, Setting: faster}
	all["limits"] = Request{Op: Limits, Job: tunnel, Limits: &plan.LimitsQuestion{Study: tunnelGoal, Limits: []plan.LimitQuestion{{Variable: plan.LineSpeed}}}}
	all["window"] = Request{Op: Window, Job: oven, Window: &plan.WindowQuestion{Study: ovenGoal, X: plan.Axis{Variable: plan.Dwell, Low: 600, High: 3600},
		Y: plan.Axis{Variable: plan.Coat, Low: 0.05, High: 0.2}, Points: 8}}
	all["spread"] = Request{Op: Spread, Job: oven, Spread: &plan.SpreadQuestion{Study: ovenGoal, Tolerances: tolerances, Rows: 4, Replicates: 4}}
	all["costs"] = Request{Op: Costs, Job: oven, Costs: &plan.CostQuestion{Points: 20}}
	all["fault-no-route"] = Request{Op: Spread, Job: oven, Spread: &plan.SpreadQuestion{Study: plan.Study{Route: result.Room}}}

	weighing := "Zeit [min];Gewicht [g]\n0;24,513\n5;\n10;23,702\n"
	curing := "time [min];temperature [°C];conversion [%]\n5;120;95\n20;100;95\n60;85;94\n2;120;70\n"
	demo := with(job.Demo, nothing)
	fitting := Request{Op: FitTrial, Job: demo, Table: curing, Trial: &fit.Question{Kind: trial.Cure, Name: "Sheet"}}
	all["read-table"] = Request{Op: ReadTable, Table: weighing, Trial: &fit.Question{Kind: trial.Weight}}
	all["fault-table"] = Request{Op: ReadTable, Table: "a;b\n1;x\n"}
	all["trial-forms"] = Request{Op: TrialForms, Job: demo}
	all["fit-cure"] = fitting
	r := send(t, fitting)
	if !r.OK {
		t.Fatalf("%+v", r.Faults)
	}
	adopting := Request{Op: Adopt, Job: demo, Adoption: &r.Outcome.Adoption}
	all["adopt"] = adopting
	adopted := send(t, adopting)
	if !adopted.OK {
		t.Fatalf("%+v", adopted.Faults)
	}
	all["drop"] = Request{Op: Drop, Job: text(*adopted.Job), Name: "Sheet"}
	return all
}
