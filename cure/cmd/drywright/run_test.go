package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// outcome is what a run left behind.
type outcome struct {
	code     int
	out, err string
}

// canned predicts the same for every job, so that these tests are of the command alone.
func canned(say report.Speaker, j job.Job, _ ...result.Kind) (result.Result, error) {
	ready, margin := 3600.0, 7200.0
	r := result.Result{Version: result.Version, JobName: j.Name, Routes: []result.Route{{Kind: result.Room,
		Answer: result.Answer{Ready: &ready, Margin: &margin, Deadline: 10800, Binding: "cool"},
		Status: result.Status{Complete: true},
		Curves: result.Curves{Time: []float64{0, 1}, MeanWater: []float64{1, 0.5}}}}}
	say.Fill(&r)
	return r, nil
}

// call runs the command with a text on standard input.
func call(stdin string, predict func(report.Speaker, job.Job, ...result.Kind) (result.Result, error), args ...string) outcome {
	var out, complaints bytes.Buffer
	p := program{ctx: context.Background(), stdin: strings.NewReader(stdin), stdout: &out, stderr: &complaints, predict: predict}
	code := p.run(args)
	return outcome{code, out.String(), complaints.String()}
}

func demoText(t *testing.T) string {
	t.Helper()
	got := call("", canned, "demo")
	if got.code != computed || got.err != "" {
		t.Fatalf("demo: %+v", got)
	}
	return got.out
}

func TestDemoIsAJobThatIsAccepted(t *testing.T) {
	got := call(demoText(t), canned, "check", "-")
	if got.code != computed || got.err != "" || !strings.Contains(got.out, words.English(job.Demo().Name)) {
		t.Errorf("check of the demo: %+v", got)
	}
}

func TestPredict(t *testing.T) {
	demo := demoText(t)
	file := filepath.Join(t.TempDir(), "job.json")
	if err := os.WriteFile(file, []byte(demo), 0o600); err != nil {
		t.Fatal(err)
	}
	const sentence = "Ready to handle 60 min after spraying, 2 h before the deadline of 3 h; cooling down comes last."
	for name, c := range map[string]struct {
		stdin string
		args  []string
		want  string
	}{
		"standard input":      {demo, []string{"predict", "-"}, sentence},
		"a file":              {"", []string{"predict", file}, sentence},
		"curves":              {demo, []string{"predict", "--csv", "-"}, "route,time_s,mean_water_kg_per_kg"},
		"flag after the file": {"", []string{"predict", file, "--csv"}, "\nroom,1,0.5"},
		"single dash":         {"", []string{"predict", "-json", file}, `"kind":"room"`},
	} {
		got := call(c.stdin, canned, c.args...)
		if got.code != computed || got.err != "" || !strings.Contains(got.out, c.want) {
			t.Errorf("%s: %+v, want %q", name, got, c.want)
		}
	}
	got := call(demo, canned, "predict", "-", "--json")
	var r result.Result
	if err := json.Unmarshal([]byte(got.out), &r); err != nil || r.Version != result.Version || len(r.Routes) != 1 {
		t.Errorf("--json: %v, %+v", err, r)
	}
}

// Each fault is one line on standard error that begins with what it is about and ends with the place in the document; nothing is
// written to standard output.
func TestRefusedJobs(t *testing.T) {
	demo := demoText(t)
	bad := strings.Replace(demo, `"wet_coat_kg_per_m2": `, `"wet_coat_kg_per_m2": -`, 1)
	bad = strings.Replace(bad, `"solids_fraction": `, `"solids_fraction": 7`, 1)
	for _, verb := range []string{"predict", "check"} {
		got := call(bad, canned, verb, "-")
		lines := strings.Split(strings.TrimSpace(got.err), "\n")
		if got.code != refused || got.out != "" || len(lines) != 2 ||
			!strings.HasPrefix(lines[0], "Film, Wet coat: ") || !strings.HasSuffix(lines[0], " [film.wet_coat_kg_per_m2]") ||
			!strings.HasPrefix(lines[1], "Film, Adhesive, Solids: ") || !strings.HasSuffix(lines[1], " [film.adhesive.solids_fraction]") {
			t.Errorf("%s: %+v", verb, got)
		}
	}
	if got := call("{", canned, "predict", "-"); got.code != refused || got.err == "" || got.out != "" {
		t.Errorf("broken JSON: %+v", got)
	}
	for name, err := range map[string]error{
		"a list":  fault.List{fault.New(fault.Numeric, "numerics", "no answer", "Loosen it.")},
		"a fault": fault.New(fault.Numeric, "numerics", "no answer", "Loosen it."),
		"another": errors.New("Computation: no answer. Loosen it. [numerics]"),
	} {
		failing := func(report.Speaker, job.Job, ...result.Kind) (result.Result, error) { return result.Result{}, err }
		if got := call(demo, failing, "predict", "-"); got != (outcome{refused, "", "Computation: no answer. Loosen it. [numerics]\n"}) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

func TestWrongUsage(t *testing.T) {
	demo := demoText(t)
	for name, args := range map[string][]string{
		"nothing":             {},
		"unknown verb":        {"dry"},
		"unknown flag":        {"predict", "--yaml", "-"},
		"no file":             {"predict"},
		"two files":           {"predict", "-", "-"},
		"both forms":          {"predict", "--json", "--csv", "-"},
		"missing file":        {"check", filepath.Join(t.TempDir(), "none.json")},
		"demo takes no file":  {"demo", "-"},
		"port is no number":   {"serve", "--port", "eighty"},
		"port out of range":   {"serve", "--port", "65536"},
		"help of an unknown":  {"help", "dry"},
		"page was not built":  {"serve"},
		"serve takes no file": {"serve", "-"},
	} {
		if got := call(demo, canned, args...); got.code != misused || got.out != "" || got.err == "" {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

func TestHelp(t *testing.T) {
	for name, c := range map[string]struct {
		args []string
		want string
	}{
		"overview":  {[]string{"help"}, "drywright predict [--json | --csv] JOB.json"},
		"flag":      {[]string{"--help"}, "Exit codes"},
		"of a verb": {[]string{"help", "predict"}, "--csv"},
		"by flag":   {[]string{"predict", "--help"}, "--json"},
		"serve":     {[]string{"serve", "-h"}, "--port"},
		"check":     {[]string{"help", "check"}, "Usage: drywright check JOB.json"},
		"demo":      {[]string{"help", "demo"}, "Usage: drywright demo"},
	} {
		if got := call("", canned, c.args...); got.code != computed || got.err != "" || !strings.Contains(got.out, c.want) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}

// closedPipe is a reader of standard output that has gone away.
type closedPipe struct{}

func (closedPipe) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestUnwritableOutputIsNoSuccess(t *testing.T) {
	p := program{ctx: context.Background(), stdout: closedPipe{}, stderr: &bytes.Buffer{}, predict: canned}
	if code := p.run([]string{"demo"}); code != refused {
		t.Errorf("exit code %d", code)
	}
}
