package main

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// quickText is the demo's tunnel at settings that compute fast.
func quickText(t *testing.T) string {
	t.Helper()
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	j.Numerics.FilmCells, j.Numerics.PartCells, j.Numerics.RelativeTolerance = 10, 2, 1e-4
	text, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestLimit(t *testing.T) {
	text := quickText(t)
	got := call(text, canned, "limit", "--of", "line_speed", "--want", "+20%", "-")
	for _, want := range []string{"Tunnel oven. Asked for: ", "1.44 m/min (+20 %)", "The line can run at ", "1 m more of Curing zone: "} {
		if got.code != computed || !strings.Contains(got.out, want) {
			t.Errorf("%+v, want %q", got, want)
		}
	}
	if got = call(text, canned, "limit", "--list", "-"); got.code != computed || !strings.HasPrefix(got.out, "line_speed ") || !strings.Contains(got.out, "1.2 m/min") {
		t.Errorf("%+v", got)
	}
	got = call(text, canned, "limit", "--of", "film.wet_coat_kg_per_m2", "--toward", "highest", "--marks", "dry_through", "--json", "-")
	var l plan.Limit
	if err := json.Unmarshal([]byte(got.out), &l); err != nil || got.code != computed || l.Bound != plan.ByCriterion || len(l.Goal.AtExit) != 1 {
		t.Errorf("%v, %+v", err, got)
	}
}

func TestWindowPicture(t *testing.T) {
	got := call(quickText(t), canned, "window", "--x", "line_speed=0.6..2.4", "--y", "coat=100 g/m²..300", "--points", "24", "-")
	for _, want := range []string{"100 g/m²", "300 g/m²", "0.6 m/min  ...  Line speed  ...  2.4 m/min", "A the film is not cured at the exit", "settings were judged"} {
		if got.code != computed || !strings.Contains(got.out, want) {
			t.Errorf("%+v, want %q", got, want)
		}
	}
}

func TestPlansRefuse(t *testing.T) {
	text := quickText(t)
	for _, c := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"limit", "--of", "charge", "-"}, refused, "line_speed"},
		{[]string{"limit", "--of", "line_speed", "--toward", "up", "-"}, refused, "highest"},
		{[]string{"limit", "--of", "line_speed", "--want", "fast", "-"}, misused, "m/min"},
		{[]string{"limit", "--want", "1", "-"}, misused, "--of"},
		{[]string{"limit", "--of", "zone_temperatures", "--want", "+20%", "-"}, misused, "means nothing"},
		{[]string{"limit", "--route", "room", "-"}, refused, "room"},
		{[]string{"limit", "--marks", "shiny", "-"}, refused, "tack_free"},
		{[]string{"window", "--x", "line_speed=2..1", "-"}, refused, "rises"},
		{[]string{"window", "--x", "line_speed=a..b", "-"}, misused, "m/min"},
	} {
		if got := call(text, canned, c.args...); got.code != c.code || !strings.Contains(got.err, c.want) {
			t.Errorf("%v: %+v, want %d with %q", c.args, got, c.code, c.want)
		}
	}
}

// TestPoolIsTheSameAsOne: on all processors the outcomes are those of one, in order, and a cancelled context ends the sweep.
func TestPoolIsTheSameAsOne(t *testing.T) {
	j, err := job.Decode([]byte(quickText(t)))
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	p := program{ctx: ctx}
	crew := p.newPool(func(int64) {})
	q := plan.LimitsQuestion{Study: plan.Study{Job: &j, Route: result.Tunnel}, Limits: []plan.LimitQuestion{{Variable: plan.LineSpeed, Levers: true}}}
	many, err := cure.Limits(report.New(languages.English(), report.SI), q, crew.evaluate, nil)
	if err != nil {
		t.Fatal(err)
	}
	one, err := cure.Limits(report.New(languages.English(), report.SI), q, plan.Batch, nil)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := json.Marshal(many)
	b, _ := json.Marshal(one)
	if string(a) != string(b) || crew.judged.Load() == 0 {
		t.Errorf("%d judged, answers differ:\n%s\n%s", crew.judged.Load(), a, b)
	}
	cancel()
	if _, err := cure.Limits(report.New(languages.English(), report.SI), q, crew.evaluate, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
}
