package transfer_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

// row is one published value with its source and tolerance, as testdata/transfer/rows.json has it.
type row struct {
	ID        string         `json:"id"`
	Inputs    map[string]any `json:"inputs"`
	Outputs   map[string]any `json:"outputs"`
	Tolerance any            `json:"tolerance"`
	Source    string         `json:"source"`

	checked map[string]bool
}

func (r *row) in(key string) []float64 {
	v, ok := r.Inputs[key]
	if !ok {
		panic(r.ID + " has no input " + key)
	}
	return list(v)
}

func (r *row) one(key string) float64 { return r.in(key)[0] }

func list(v any) []float64 {
	if many, ok := v.([]any); ok {
		var l []float64
		for _, e := range many {
			l = append(l, e.(float64))
		}
		return l
	}
	return []float64{v.(float64)}
}

// check compares got with an output at the row's own tolerance.
func (r *row) check(t *testing.T, key string, got ...float64) {
	t.Helper()
	tolerance, ok := r.Tolerance.(map[string]any)[key].(map[string]any)
	if !ok {
		t.Fatalf("%s %s: no tolerance", r.ID, key)
	}
	rel, _ := tolerance["rel"].(float64)
	abs, _ := tolerance["abs"].(float64)
	r.within(t, key, rel, abs, got...)
}

// within compares at a tolerance stated in the test, for rows whose own is prose and for models that differ.
func (r *row) within(t *testing.T, key string, rel, abs float64, got ...float64) {
	t.Helper()
	r.checked[key] = true
	want := list(r.Outputs[key])
	if len(got) != len(want) {
		t.Fatalf("%s %s: %d values for %d", r.ID, key, len(got), len(want))
	}
	for i := range want {
		if !(math.Abs(got[i]-want[i]) <= max(abs, rel*math.Abs(want[i]))) {
			t.Errorf("%s %s[%d]: got %.6g, want %.6g, rel %g abs %g (%s)", r.ID, key, i, got[i], want[i], rel, abs, r.Source)
		}
	}
}

// elsewhere marks outputs that are not this package's, with the reason.
func (r *row) elsewhere(reason string, keys ...string) {
	_ = reason
	for _, key := range keys {
		r.checked[key] = true
	}
}

const zero = 273.15

// TestRows runs every row through the functions that the product uses, and fails on a row or an output that nothing checks.
// Tolerances are the rows' own unless the case says why not.
func TestRows(t *testing.T) {
	var rows []*row
	data, err := os.ReadFile("../../testdata/transfer/rows.json")
	if err == nil {
		err = json.Unmarshal(data, &rows)
	}
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 50 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, r := range rows {
		r.checked = map[string]bool{}
		t.Run(r.ID, func(t *testing.T) {
			run := cases(r.ID)
			if run == nil {
				t.Fatalf("no case for row %s", r.ID)
			}
			run(t, r)
			for key := range r.Outputs {
				if !r.checked[key] {
					t.Errorf("%s: output %s is not checked", r.ID, key)
				}
			}
		})
	}
}

type check func(t *testing.T, r *row)

// cases finds the check of a row: by whole id, else by the family it belongs to.
func cases(id string) check {
	for _, table := range []map[string]check{flow, analogy, wet, measured} {
		if c := table[id]; c != nil {
			return c
		}
	}
	for family, c := range families {
		if strings.HasPrefix(id, family) {
			return c
		}
	}
	return nil
}

func must(s air.State, err error) air.State {
	if err != nil {
		panic(err)
	}
	return s
}

// root bisects f, which falls from positive to negative between lo and hi.
func root(lo, hi float64, f func(float64) float64) float64 {
	for range 80 {
		mid := (lo + hi) / 2
		if f(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// adiabatic is the temperature at which a wet face without a part behind it stays, and its exchange there.
func adiabatic(s *Surface) (float64, Exchange) {
	T := root(260, min(s.Air.T+80, air.SaturationTemperature(s.Air.P)-1e-6), func(T float64) float64 {
		e := s.Exchange(T, 1)
		return e.FilmHeat - e.Flux*air.LatentHeat(T)
	})
	return T, s.Exchange(T, 1)
}
