package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fit"
	"github.com/drywright/drywright/cure/job"
)

func couponText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("testdata/coupon.csv")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// The fit of the invented coupon prints its numbers, what it cannot tell, the residuals; as JSON it finds what the file was made with.
func TestFitWeight(t *testing.T) {
	const asked = "workshop.transfer.multiplier,film.adhesive.dry_diffusivity_at_25C_m2_per_s"
	args := []string{"fit", "weight", "--data", "-", "--area", "200", "--tare", "12,3", "--parameters", asked}
	got := call(couponText(t), canned, args...)
	if got.code != computed || got.err != "" {
		t.Fatalf("%+v", got)
	}
	for _, want := range []string{"Coupon on a scale\n=====", "Multiplier of the coefficient", "(1.", "workshop.transfer.multiplier", "µm²/s",
		"What this trial cannot tell", "Residuals", "standard deviation", "g/m²"} {
		if !strings.Contains(got.out, want) {
			t.Errorf("no %q in\n%s", want, got.out)
		}
	}
	got = call(couponText(t), canned, append(args, "--json")...)
	var o fit.Outcome
	if err := json.Unmarshal([]byte(got.out), &o); err != nil {
		t.Fatal(err)
	}
	for i, truth := range []float64{1.4, 2.5e-12} {
		if p := o.Fit.Parameters[i]; p.Low == nil || *p.Low > truth || *p.High < truth {
			t.Errorf("%s: %g", p.Path, p.Value)
		}
	}
}

// Adopting prints a job that is accepted, says where its numbers rest, and can be fitted again under another name only.
func TestFitAdopt(t *testing.T) {
	table := "time [min];temperature [°C];conversion [%]\n5;120;95\n20;100;95\n60;85;94\n2;120;70\n"
	got := call(table, canned, "fit", "cure", "--data", "-", "--name", "Data sheet", "--date", "May", "--adopt")
	if got.code != computed || got.err != "" {
		t.Fatalf("%+v", got)
	}
	j, err := job.Decode([]byte(got.out))
	if err != nil || len(j.Fits) != 1 || j.Fits[0].Name != "Data sheet" || len(j.Film.Adhesive.Crosslinking.Schedule.Pairs) != 0 {
		t.Fatalf("%v: %+v", err, j.Fits)
	}
	if len(j.Fits[0].Digest) != 16 || j.Fits[0].Points != 4 || !strings.Contains(j.Fits[0].Note, "4 points tell") {
		t.Errorf("%+v", j.Fits[0])
	}
	if back, err := job.Drop(j, "Data sheet"); err != nil || len(back.Film.Adhesive.Crosslinking.Schedule.Pairs) != 1 {
		t.Errorf("dropping: %v", err)
	}
}

// What is wrong is said with its place: usage, the table's line, the job's fault.
func TestFitRefuses(t *testing.T) {
	for _, c := range []struct {
		stdin string
		args  []string
		code  int
		want  string
	}{
		{"", []string{"fit", "weight"}, misused, "--data FILE is missing"},
		{"", []string{"fit"}, misused, "0 file names or words given, 1 wanted"},
		{"", []string{"fit", "weight", "--data", "nowhere.csv"}, misused, "nowhere.csv"},
		{"", []string{"fit", "weight", "--data", "-", "--area", "wide"}, misused, `--area: "wide" is not understood: a number is missing`},
		{"", []string{"fit", "weight", "--data", "-", "--columns", "time"}, misused, "1=time:min"},
		{"", []string{"fit", "weight", "--data", "-", "--json", "--adopt"}, misused, "exclude each other"},
		{"", []string{"fit", "weight", "--data", "-"}, refused, "line 1"},
		{"time [min];mass [g]\n0;1\n1;x\n2;3\n", []string{"fit", "weight", "--data", "-"}, refused, "line 3"},
		{"0;1\n1;2\n2;3\n", []string{"fit", "weight", "--data", "-", "--columns", "1=time:min,2=mass:g"}, refused, "area_m2"},
		{"a;b\n0;1\n", []string{"fit", "weather", "--data", "-"}, refused, "kind"},
	} {
		got := call(c.stdin, canned, c.args...)
		if got.code != c.code || !strings.Contains(got.err, c.want) {
			t.Errorf("%q: code %d, %q", c.args, got.code, got.err)
		}
	}
}
