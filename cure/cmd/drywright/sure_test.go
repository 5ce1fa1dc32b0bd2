package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// quickText is an invented job of a few milliseconds.
func quickOvenText(t *testing.T) string {
	t.Helper()
	j := job.Default()
	j.Pile, j.Film.Adhesive.Crosslinking, j.Room = nil, nil, nil
	j.Numerics.FilmCells, j.Numerics.PartCells, j.Numerics.RelativeTolerance = 8, 2, 1e-4
	j.StaticOven, j.Part.LimitTemperature = job.NewStaticOven(), 400
	j.Tariffs, j.Costs = job.NewTariffs(), job.NewCosts()
	text, err := job.Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestSureVerbs(t *testing.T) {
	text := quickOvenText(t)
	spread := call(text, canned, "spread", "--vary", "coat=5%; set_point=3 K; dwell=even 2 min", "--rows", "4", "--replicates", "4", "--marks", "dry_through", "-")
	if spread.code != computed || !strings.Contains(spread.out, "Everything is met in") || !strings.Contains(spread.out, "2 min at most") {
		t.Errorf("spread: %+v", spread)
	}
	whole := call(text, canned, "spread", "--json", "--vary", "coat=5%", "--rows", "4", "--replicates", "4", "--marks", "dry_through", "-")
	var s plan.Spread
	if err := json.Unmarshal([]byte(whole.out), &s); err != nil || !s.Complete || s.Samples != 32 {
		t.Errorf("spread --json: %v, %.200s", err, whole.out)
	}
	list := call(text, canned, "spread", "--list", "-")
	if list.code != computed || !strings.HasPrefix(list.out, "coat ") || !strings.Contains(list.out, "set_point") {
		t.Errorf("spread --list: %+v", list)
	}
	cost := call(text, canned, "cost", "--quantity", "20", "-")
	if cost.code != computed || !strings.Contains(cost.out, "One static oven carries") || !strings.Contains(cost.out, "20 m² a day") {
		t.Errorf("cost: %+v", cost)
	}
	if testing.Short() {
		return
	}
	best := call(text, canned, "optimise", "--free", "dwell=10..120", "--vary", "coat=5%", "--marks", "dry_through", "-")
	if best.code != computed || !strings.Contains(best.out, "Least: time in the oven") {
		t.Errorf("optimise: %+v", best)
	}
}

func TestSureVerbsMisused(t *testing.T) {
	text := quickOvenText(t)
	for _, args := range [][]string{
		{"spread", "--vary", "coat", "-"}, {"spread", "--vary", "coat=wide", "-"}, {"spread", "--vary", "colour=1", "-"}, {"spread"},
		{"cost", "--quantity", "many", "-"}, {"cost", "--quantity", "30 parts", "-"}, {"optimise", "-"}, {"optimise", "--free", "dwell=10", "-"},
	} {
		if got := call(text, canned, args...); got.code != misused || got.out != "" {
			t.Errorf("%v: %+v", args, got)
		}
	}
	for _, args := range [][]string{{"spread", "--rows", "5", "-"}, {"spread", "--vary", "coat=90%", "-"}, {"spread", "--route", "tunnel", "-"},
		{"optimise", "--free", "dwell=10..120", "--sure", "100", "-"}, {"optimise", "--free", "dwell=10..120", "--least", "beauty", "-"}} {
		if got := call(text, canned, args...); got.code != refused || got.err == "" {
			t.Errorf("%v: %+v", args, got)
		}
	}
}

// Tolerances and quantities as people write them.
func TestReadingAmounts(t *testing.T) {
	j := job.Demo()
	study := plan.Study{Job: &j, Route: result.StaticOven}
	speaking := program{say: report.New(languages.English(), report.SI)}
	got, err := speaking.varied(study, "coat=5 %;coat=8 g/m²; set_point = 3 K; room_humidity=5 %; dwell=even 1,5 min")
	if err != nil {
		t.Fatal(err)
	}
	want := []plan.Tolerance{{Variable: "coat", Shape: plan.Normal, Width: 0.05, Relative: true}, {Variable: "coat", Shape: plan.Normal, Width: 0.008},
		{Variable: "set_point", Shape: plan.Normal, Width: 3}, {Variable: "room_humidity", Shape: plan.Normal, Width: 0.05},
		{Variable: "dwell", Shape: plan.Uniform, Width: 90}}
	for i, w := range want {
		g := got[i]
		if math.Abs(g.Width-w.Width) > 1e-12 {
			t.Errorf("%d: %+v, want %+v", i, g, w)
		}
		if g.Width = w.Width; g != w {
			t.Errorf("%d: %+v, want %+v", i, g, w)
		}
	}
	for _, c := range []struct {
		name, text string
		want       float64
	}{{"set_point", "250 F", 394.2611111111}, {"set_point", "120", 393.15}, {"dwell", "1 h 30 min", 5400}, {"coat", "4.4 oz/yd2", 0.1491853},
		{"coat", "+20%", j.Film.WetCoat * 1.2}, {"room_humidity", "55,5 %", 0.555}} {
		v, err := study.Variable(c.name)
		if err != nil {
			t.Fatal(err)
		}
		// 4.4 times 3.390575e-2 kg/m2 to an ounce for a square yard, NIST Special Publication 811, printed to seven digits.
		if x, err := amount(speaking.say, &v, c.text); err != nil || math.Abs(x/c.want-1) > 1e-7 {
			t.Errorf("%s %q: %.9g, %v", c.name, c.text, x, err)
		}
		if _, err := amount(speaking.say, &v, "3 furlong"); err == nil || !strings.Contains(err.Error(), v.Display.Symbol) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	if w, err := speaking.varied(study, "set_point=9 °F"); err != nil || math.Abs(w[0].Width-5) > 1e-12 {
		t.Errorf("9 degF: %v, %v", w, err)
	}
	one := 0.25
	j.Part.CoatedArea = &one
	for text, want := range map[string]float64{"40": 40, "40,5 m2": 40.5, "100 parts": 25, "100 ft²": 9.290304} {
		if q, err := dayQuantity(speaking.say, &j, text); err != nil || q != want {
			t.Errorf("%q: %g, %v", text, q, err)
		}
	}
}
