package report

import (
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/unit"
)

// Chances are told whole, finer near the ends, and never as certain while they are not.
func TestChance(t *testing.T) {
	for _, c := range []struct {
		x     float64
		round func(float64) float64
		want  string
	}{
		{0.843, math.Round, "84 %"}, {0.9953, math.Round, "99.5 %"}, {0.9953, math.Floor, "99.5 %"}, {0.99999, math.Ceil, "99.9 %"}, {1, math.Round, "100 %"},
		{0.0004, math.Round, "0.1 %"}, {0, math.Round, "0 %"}, {0.121, math.Ceil, "13 %"}, {0.129, math.Floor, "12 %"},
	} {
		if got := english().chance(c.x, c.round); got != c.want {
			t.Errorf("%g: %q, want %q", c.x, got, c.want)
		}
	}
}

func TestSpreadSentences(t *testing.T) {
	v := plan.Variable{ID: plan.Coat, Label: "Wet coat", Unit: "kg/m²", Display: job.Display{Symbol: "g/m²", Factor: 1e3, Digits: 4}}
	s := plan.Spread{Chance: plan.Chance{Value: 0.84, Error: 0.02, Low: 0.79, High: 0.88}, Samples: 128, Runs: 385, Planned: 385, Complete: true,
		Criteria: []plan.CriterionChance{{Name: result.HeatEnough, Chance: plan.Chance{Value: 0.9, Low: 0.84, High: 0.94}}},
		Influences: []plan.Influence{{Variable: v, Tolerance: plan.Tolerance{Variable: plan.Coat, Shape: plan.Normal, Width: 0.05, Relative: true},
			Share: plan.Index{First: 0.6, FirstError: 0.031, Total: 0.62, TotalError: 0.029}}}}
	english().FillSpread(&s)
	for got, want := range map[string]string{
		s.Text: "Everything is met in 84 % of cases (between 79 % and 88 %). Where it is not, then mostly because the heater does not reach. " +
			"What makes the difference: Wet coat (62 %).",
		s.Criteria[0].Text:   "In 10 % (6 % to 16 %) of cases the heater does not reach.",
		s.Influences[0].Text: "Wet coat, ± 5.0 % (standard deviation): 60 ± 4 % of the spread by itself, 62 ± 3 % with all it takes part in.",
	} {
		if got != want {
			t.Errorf("%q\nwant %q", got, want)
		}
	}
	s.Chance = plan.Chance{Value: 1, Low: 0.958, High: 1}
	english().FillSpread(&s)
	if !strings.HasPrefix(s.Text, "Everything is met in every one of 128 samples: in at least 95 % of cases.") {
		t.Error(s.Text)
	}
}

func TestCostSentences(t *testing.T) {
	part, room, oven, charge := 0.1, 41.26, 39.0, 3.0
	a := plan.Costs{Currency: "EUR", PartArea: &part, Highest: 100,
		Routes: []plan.RouteCost{
			{Route: result.Room, Met: true, Capacity: &room, Charge: &room, Charges: 1, Basis: plan.LargestLoad, Missing: []string{"costs.room.racks"}},
			{Route: result.StaticOven, Met: true, Capacity: &oven, Charge: &charge, Charges: 13, Basis: plan.StatedLoad}},
		Crossings: []plan.Crossing{{Quantity: 41.26, Cheaper: result.StaticOven, Dearer: result.Room, Jump: true, Cost: 300},
			{Quantity: 60, Cheaper: result.Tunnel, Dearer: result.StaticOven, Jump: true, Cost: 400}},
		Cheapest: []plan.Stretch{{Low: 0, High: 41.26, Route: result.Room}, {Low: 41.26, High: 100, Route: result.StaticOven}},
		Asked:    &plan.AskedCost{Quantity: 40, Cost: []float64{12.345, 234.5}, Units: []int{1, 2}, Cheapest: 0}}
	english().FillCosts(&a)
	want := []string{"400 parts (40 m²) a day: the room overnight 12.35 EUR (1 room), the static oven 234 EUR (2 ovens). The room overnight costs least.",
		"Overnight suffices up to 412 parts (41.2 m²) a day in one room, as much as its air dries by the deadline. Not counted for the room overnight: racks.",
		"One static oven carries 390 parts (39 m²) a day, 13 charges of 30 parts (3 m²).",
		"Up to 412 parts (41.2 m²) a day the room overnight costs least. From 413 parts (41.3 m²) a day on the static oven costs least.",
		"Beyond 600 parts (60 m²) a day, where a further charge or unit is needed, the tunnel costs less than the static oven, 400 EUR a day."}
	if len(a.Sentences) != len(want) {
		t.Fatalf("%q", a.Sentences)
	}
	for i := range want {
		if a.Sentences[i] != want[i] {
			t.Errorf("%q\nwant %q", a.Sentences[i], want[i])
		}
	}
}

func TestOptimumSentences(t *testing.T) {
	v := plan.Variable{ID: plan.SetPoint, Label: "Set-point", Unit: "K", Display: job.Display{Symbol: "°C", Factor: 1, Offset: -273.15, Digits: 4}}
	before, after := 3.6e6, 2.7e6
	a := plan.Optimum{Objective: plan.LeastEnergy, Confidence: 0.95, Found: true, Before: &before, After: &after, Runs: 300, Rounds: 2,
		Settings: []plan.OptimalSetting{{Variable: v, Low: 330, High: 380, Value: 330, AtLow: true}},
		Best:     &plan.Standing{Met: true, Margins: []result.Criterion{{Name: result.DryAtExit, Share: 0.9}}},
		Spread:   &plan.Spread{Chance: plan.Chance{Value: 0.96, Low: 0.931, High: 0.984}}, Path: []plan.OptimalStep{{}}}
	english().FillOptimum(&a)
	const want = "Least: set-point 56.85 °C (the least allowed). That takes 0.75 kWh for a square metre, 25.0 % less than now (1 kWh). " +
		"Everything is met in 96 % of cases (between 93 % and 99 %); 95 % were wanted. The tightest is the time in the oven until dry through, 90.0 % used."
	if a.Text != want {
		t.Errorf("%q\nwant %q", a.Text, want)
	}
	a.Found = false
	english().FillOptimum(&a)
	if !strings.HasPrefix(a.Text, "No setting within the bounds is as sure as wanted (95 %). The surest is set-point 56.85 °C (the least allowed), where") {
		t.Error(a.Text)
	}
	a.Spread = nil
	english().FillOptimum(&a)
	if !strings.HasPrefix(a.Text, "So far, not yet sampled: ") {
		t.Error(a.Text)
	}
}

// Every word of the plans' named types has its words.
func TestPlanWordsAreWhole(t *testing.T) {
	w := english()
	for _, n := range []plan.TermName{plan.EnergyCost, plan.LabourCost, plan.AttendCost, plan.FloorCost, plan.RackCost, plan.Depreciation} {
		if key := "cost.term." + string(n); !w.Has(key) {
			t.Errorf("%s has no name", key)
		}
	}
	for _, n := range []plan.TermPer{plan.PerArea, plan.PerCharge, plan.PerUnitDay, plan.PerHour} {
		if key := "cost.per." + string(n); !w.Has(key) {
			t.Errorf("%s has no words", key)
		}
	}
	for _, k := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		if !w.Has("route.in_a_sentence."+string(k)) || !w.Has("route.one_more."+string(k)) {
			t.Errorf("%s has no words", k)
		}
	}
	for _, c := range result.CriterionNames() {
		if !w.Has("criterion.fails."+string(c)) || !w.Has("criterion.share_of."+string(c)) {
			t.Errorf("%s has no words", c)
		}
	}
}

// Every measure has its units in the one table.
func TestMeasuresHaveUnits(t *testing.T) {
	for _, m := range []measure{temperature, temperatureStep, filmWater, airHumidity, coatWeight, carbon, pressure, filmThickness, length, power, area,
		smallArea, smallMass, heatFlux} {
		for _, symbol := range []string{m.si, m.us} {
			if _, known := unit.Get(m.dimension, symbol); !known {
				t.Errorf("%s has no unit %s", m.dimension, symbol)
			}
		}
	}
}
