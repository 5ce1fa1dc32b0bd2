package kinetics

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// row is one published row of testdata/kinetics.
type row struct {
	ID      string         `json:"id"`
	Inputs  map[string]any `json:"inputs"`
	Outputs map[string]any `json:"outputs"`
}

func published(t *testing.T, id string) row {
	t.Helper()
	data, err := os.ReadFile("../../testdata/kinetics/rows.json")
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	if err := json.Unmarshal(data, &rows); err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if r.ID == id {
			return r
		}
	}
	t.Fatalf("no row %s", id)
	return row{}
}

func (row) numbers(t *testing.T, v any) []float64 {
	t.Helper()
	list, ok := v.([]any)
	if !ok {
		list = []any{v}
	}
	out := make([]float64, len(list))
	for i, x := range list {
		f, ok := x.(float64)
		if !ok {
			t.Fatalf("%v is not a number", x)
		}
		out[i] = f
	}
	return out
}

// Two pairs are met exactly and give back the law that made them, for orders on both sides of one.
func TestFitScheduleReturnsTheLaw(t *testing.T) {
	for _, n := range []float64{0.6, 1, 1.5, 2} {
		law := FromPair(393.15, 300, 0.95, 76e3, n)
		for _, temperatures := range [][]float64{{353.15, 393.15}, {296.15, 353.15, 393.15, 413.15}} {
			var pairs []Pair
			for _, temperature := range temperatures {
				pairs = append(pairs, Pair{temperature, law.IsothermalTime(temperature, 0.95)})
			}
			a, e, misfit, err := FitSchedule(pairs, 0.95, n)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "A", a, law.A1, 1e-9) // rounding of ln t, magnified by E/RT = 23
			near(t, "E", e, law.E1, 1e-11)
			if misfit > 1e-11 {
				t.Errorf("order %g: misfit %g of a schedule that the law itself made", n, misfit)
			}
		}
	}
}

// The expm1 form of G joins the logarithm at n = 1, and is the textbook form elsewhere.
func TestOrderIntegral(t *testing.T) {
	near(t, "G(0.95, 1)", OrderIntegral(0.95, 1), math.Log(20), 1e-14)
	near(t, "G(0.95, 2)", OrderIntegral(0.95, 2), 19, 1e-13)
	near(t, "G(0.75, 1.5)", OrderIntegral(0.75, 1.5), 2, 1e-14)
	near(t, "G(0.75, 0.5)", OrderIntegral(0.75, 0.5), 1, 1e-14)
	near(t, "join", OrderIntegral(0.9, 1+1e-9), OrderIntegral(0.9, 1), 1e-8) // dG/dn = l^2/2 = 2.6 against G = 2.3
}

func TestFitScheduleRefusals(t *testing.T) {
	good := []Pair{{353.15, 1200}, {393.15, 300}}
	for name, c := range map[string]struct {
		pairs         []Pair
		conversion, n float64
		path          string
	}{
		"one pair":         {good[:1], 0.95, 1, "pairs"},
		"same temperature": {[]Pair{{353.15, 1200}, {353.15, 300}}, 0.95, 1, "pairs"},
		"slower when hot":  {[]Pair{{353.15, 300}, {393.15, 1200}}, 0.95, 1, "pairs"},
		"full conversion":  {good, 1, 1, "conversion"},
		"no conversion":    {good, math.NaN(), 1, "conversion"},
		"order":            {good, 0.95, 0, "order"},
		"time":             {[]Pair{{353.15, 1200}, {393.15, 0}}, 0.95, 1, "pairs[1].time_s"},
		"temperature":      {[]Pair{{math.Inf(1), 1200}, {393.15, 30}}, 0.95, 1, "pairs[0].temperature_K"},
	} {
		_, _, _, err := FitSchedule(c.pairs, c.conversion, c.n)
		var f *fault.Fault
		if !errors.As(err, &f) || f.Path != c.path {
			t.Errorf("%s: got %v, want a fault at %s", name, err, c.path)
		}
	}
}
