package plan

import (
	"errors"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/words"
)

var goalOfTests = sim.Goal{AtExit: []result.MarkName{result.DryThrough}}

// TestLimitOfKnownModels: limits of made-up models whose ends are known.
func TestLimitOfKnownModels(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name    string
		model   func(v float64) []float64 // of the line speed [m/s], which stands at 0.02
		toward  Direction
		bound   Bound
		value   float64
		binding result.CriterionName
	}{
		{"straight", func(v float64) []float64 { return []float64{v / 0.033, 0.5} }, Highest, ByCriterion, 0.033, result.DryAtExit},
		{"two criteria", func(v float64) []float64 { return []float64{v / 0.033, v / 0.03} }, Highest, ByCriterion, 0.03, result.PartSpared},
		{"jump", func(v float64) []float64 {
			if v > 0.027 {
				return []float64{2.5, 0.1}
			}
			return []float64{0.2, 0.1}
		}, Highest, ByCriterion, 0.027, result.DryAtExit},
		{"kink", func(v float64) []float64 {
			share := v / 0.021
			if share > 1 {
				share = 1 + 0.01*(share-1)
			}
			return []float64{share, 0}
		}, Highest, ByCriterion, 0.021, result.DryAtExit},
		{"downwards", func(v float64) []float64 { return []float64{0, 0.003 / v} }, Lowest, ByCriterion, 0.003, result.PartSpared},
		{"back from a bad start", func(v float64) []float64 { return []float64{v / 0.012, 0} }, Highest, ByCriterion, 0.012, result.DryAtExit},
		{"ahead from a bad start", func(v float64) []float64 { return []float64{v / 0.12, 0.05 / v} }, Highest, ByCriterion, 0.12, result.DryAtExit},
		{"just a hair beyond", func(v float64) []float64 { return []float64{v / 0.0200001, 0} }, Highest, ByCriterion, 0.0200001, result.DryAtExit},
		{"no end", func(float64) []float64 { return []float64{0.3, 0.2} }, Highest, ByRange, 0.5, ""},
		{"none good", func(float64) []float64 { return []float64{1.3, 0.2} }, Highest, Nowhere, nan, ""},
		{"refused", func(v float64) []float64 {
			if v > 0.041 {
				return []float64{nan}
			}
			return []float64{0.4, 0.2}
		}, Highest, ByRange, 0.041, ""},
	} {
		judged := 0
		model := shares(func(at map[string]float64) []float64 { return c.model(at[LineSpeed]) })
		limits, err := FindLimits(LimitsQuestion{Study: tunnel(t), Limits: []LimitQuestion{{Variable: LineSpeed, Toward: c.toward}}}, model.evaluate(&judged), nil)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		l := limits[0]
		if l.Bound != c.bound {
			t.Errorf("%s: bound %s, want %s", c.name, l.Bound, c.bound)
		}
		// The bracket is a hundred-thousandth wide.
		switch {
		case math.IsNaN(c.value):
			if l.Value != nil {
				t.Errorf("%s: value %v", c.name, *l.Value)
			}
		case l.Value == nil || math.Abs(*l.Value/c.value-1) > 1.1e-5:
			t.Errorf("%s: %v, want %v", c.name, l.Value, c.value)
		default:
			if outcome := c.model(*l.Value); outcome[0] > 1 {
				t.Errorf("%s: the limit itself is not good: %v", c.name, outcome)
			}
		}
		if c.binding != "" && (l.Binding == nil || l.Binding.Name != c.binding || l.Binding.Share <= 1 || l.Beyond == nil || l.Beyond.Met) {
			t.Errorf("%s: binding %+v, beyond %+v", c.name, l.Binding, l.Beyond)
		}
		// Rungs in fours, some eighteen halvings at the very worst.
		if judged > 75 || judged != l.Runs {
			t.Errorf("%s: %d settings judged, %d said", c.name, judged, l.Runs)
		}
	}
}

// TestLevers: what a change buys in a model where it is known, and that a change which spoils all is said to.
func TestLevers(t *testing.T) {
	model := shares(func(at map[string]float64) []float64 {
		v, length, hotter, coat := at[LineSpeed], 6.0, at[ZonesInStep], 0.155
		if l, changed := at["tunnel.zones[1].length_m"]; changed {
			length = l
		}
		if c, changed := at[Coat]; changed {
			coat = c
		}
		// Speed 0.03 at 6 m, in proportion to length and against coat; ten kelvin are too much for the part.
		return []float64{v / (0.005 * length) * coat / 0.155, 0.95 + hotter/100}
	})
	judged := 0
	wanted := 0.029
	limits, err := FindLimits(LimitsQuestion{Study: tunnel(t), Limits: []LimitQuestion{{Variable: LineSpeed, Wanted: &wanted, Levers: true}}}, model.evaluate(&judged), nil)
	if err != nil {
		t.Fatal(err)
	}
	l := limits[0]
	if math.Abs(*l.Value-0.03) > 1e-6 || l.Wanted == nil || !l.Wanted.Met || judged != l.Runs {
		t.Errorf("limit %v, wanted %+v, %d settings, %d said", *l.Value, l.Wanted, judged, l.Runs)
	}
	want := map[string]float64{"Curing zone": 0.005, "thinner": 0.03 * (155.0/145.0 - 1), "Drying zone": 0, "Cooling zone": 0}
	for _, g := range l.Levers {
		key := words.English(g.Place)
		if key == "" {
			key = g.Name
		}
		if key == "hotter" {
			if g.Value != nil || g.Fails == nil || g.Fails.Name != result.PartSpared {
				t.Errorf("hotter: %+v", g)
			}
			continue
		}
		// Gains are told to a thousandth of the speed.
		if g.Value == nil || math.Abs(g.Gain-want[key]) > 1e-3*0.03 {
			t.Errorf("%s: gain %v, want %v", key, g.Gain, want[key])
		}
		delete(want, key)
	}
	if len(want) > 0 || l.Levers[len(l.Levers)-1].Name != "hotter" {
		t.Errorf("missing %v, last %s", want, l.Levers[len(l.Levers)-1].Name)
	}
}

func TestLimitsRefuse(t *testing.T) {
	good := tunnel(t)
	judged := 0
	model := shares(func(map[string]float64) []float64 { return []float64{0} })
	code := func(q LimitsQuestion) fault.Code {
		_, err := FindLimits(q, model.evaluate(&judged), nil)
		var one *fault.Fault
		var list fault.List
		switch {
		case errors.As(err, &list):
			return list[0].Code
		case errors.As(err, &one):
			return one.Code
		}
		return ""
	}
	ask := []LimitQuestion{{Variable: LineSpeed}}
	noTunnel, broken, roomGoal := good, good, good
	j, k := job.Clone(*good.Job), job.Clone(*good.Job)
	j.Tunnel = nil
	k.Film.WetCoat = -1
	noTunnel.Job, broken.Job = &j, &k
	roomGoal.Route = result.Room
	nonsense := good
	nonsense.Goal = &sim.Goal{AtExit: []result.MarkName{"tidy"}}
	for want, q := range map[fault.Code]LimitsQuestion{
		fault.Missing:  {Study: noTunnel, Limits: ask},
		fault.Range:    {Study: broken, Limits: ask},
		fault.Conflict: {Study: roomGoal, Limits: ask},
		fault.Choice:   {Study: nonsense, Limits: ask},
	} {
		if got := code(q); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	for _, q := range []LimitQuestion{{Variable: "tunnel.zones[7].length_m"}, {Variable: LineSpeed, Toward: "sideways"}} {
		if got := code(LimitsQuestion{Study: good, Limits: []LimitQuestion{q}}); got != fault.Choice {
			t.Errorf("%+v: %s", q, got)
		}
	}
}

// TestCancelled: what the evaluator returns ends the search.
func TestCancelled(t *testing.T) {
	stop := errors.New("stop")
	_, err := FindLimits(LimitsQuestion{Study: tunnel(t), Limits: []LimitQuestion{{Variable: LineSpeed}}}, func(Study, []Trial) ([]Outcome, error) { return nil, stop }, nil)
	if !errors.Is(err, stop) {
		t.Errorf("%v", err)
	}
}
