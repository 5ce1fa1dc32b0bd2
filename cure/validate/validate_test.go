package validate

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"github.com/drywright/drywright/testdata"
)

// The whole table passes, is as long as promised, and leaves nothing of the data out without saying why.
func TestTable(t *testing.T) {
	report, err := RunQuick(testdata.Files.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	entries := map[string]bool{}
	for i := range report.Rows {
		r := &report.Rows[i]
		entries[r.ID] = true
		if !r.Pass {
			t.Errorf("%s %s: %s %g (%g), ours %g, off by %.3g, tolerance %g (%s). %s", r.ID, r.Quantity, r.Bound, r.Expected,
				r.Upper, r.Ours, r.Deviation, r.Tolerance, r.Measure, r.Note)
		}
		if r.Source == "" || !slices.Contains([]string{"published", "from memory", "derived"}, r.Basis) {
			t.Errorf("%s has source %q, basis %q", r.ID, r.Source, r.Basis)
		}
		if math.IsInf(r.Ours, 0) || math.IsNaN(r.Deviation) {
			t.Errorf("%s %s is %g", r.ID, r.Quantity, r.Ours)
		}
	}
	if len(entries) < 150 || len(report.Rows) < 150 {
		t.Errorf("%d rows of %d entries", len(report.Rows), len(entries))
	}
	out := map[string]bool{}
	for _, l := range report.LeftOut {
		out[l.ID] = true
		if len(l.Reason) < 10 {
			t.Errorf("%s is left out for %q", l.ID, l.Reason)
		}
	}
	all := 0
	seen := map[string]bool{}
	for _, s := range Subjects() {
		for _, e := range read(t, s) {
			all++
			if seen[e.ID] {
				t.Errorf("%s is there twice", e.ID)
			}
			seen[e.ID] = true
			if !entries[e.ID] && !out[e.ID] {
				t.Errorf("%s is neither compared nor left out", e.ID)
			}
			for key := range e.LeftOutOutputs {
				if _, ok := e.Outputs[key]; !ok {
					t.Errorf("%s leaves out %s, which it does not have", e.ID, key)
				}
			}
			for key := range e.Tolerance {
				if _, ok := e.Outputs[key]; !ok {
					t.Errorf("%s has a tolerance for %s, which it does not have", e.ID, key)
				}
			}
		}
	}
	t.Logf("%d rows of %d entries, %d entries in the data, %d left out", len(report.Rows), len(entries), all, len(report.LeftOut))
}

func read(t *testing.T, subject string) []*entry {
	t.Helper()
	data, err := testdata.Files.ReadFile(File(subject))
	if err != nil {
		t.Fatal(err)
	}
	var entries []*entry
	if err := json.Unmarshal(data, &entries); err != nil {
		t.Fatal(err)
	}
	return entries
}

// Every file of published entries belongs to a subject.
func TestNoFileIsForgotten(t *testing.T) {
	dirs, err := testdata.Files.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range dirs {
		if d.IsDir() && !slices.Contains(Subjects(), d.Name()) {
			t.Errorf("testdata/%s is no subject", d.Name())
		}
	}
}

// A table that cannot fail proves nothing: a wrong number, a missing case and a forgotten output are rows that miss.
func TestTableCanFail(t *testing.T) {
	const data = `[
		{"id": "SAT-GOOD", "inputs": {"T_C": 100}, "outputs": {"p_sat_Pa": 101418}, "tolerance": {"p_sat_Pa": {"rel": 0.001}}},
		{"id": "SAT-WRONG", "inputs": {"T_C": 100}, "outputs": {"p_sat_Pa": 102418}, "tolerance": {"p_sat_Pa": {"rel": 0.001}}},
		{"id": "SAT-MORE", "inputs": {"T_C": 100}, "outputs": {"colour": 1}, "tolerance": {"colour": {"abs": 1}}},
		{"id": "SAT-NOTOL", "inputs": {"T_C": 100}, "outputs": {"p_sat_Pa": 101418}, "tolerance": {}},
		{"id": "SAT-NOINPUT", "inputs": {}, "outputs": {"p_sat_Pa": 101418}, "tolerance": {"p_sat_Pa": {"rel": 0.001}}},
		{"id": "NOBODY", "inputs": {}, "outputs": {"p_sat_Pa": 1}, "tolerance": {}},
		{"id": "SAT-OUT", "topic": "left", "left_out": "on purpose, for this test", "outputs": {"p_sat_Pa": 1}}]`
	report, err := RunSubject("saturation", func(string) ([]byte, error) { return []byte(data), nil })
	if err != nil {
		t.Fatal(err)
	}
	passed := map[string]bool{}
	for _, r := range report.Rows {
		if p, ok := passed[r.ID]; ok {
			passed[r.ID] = p && r.Pass
		} else {
			passed[r.ID] = r.Pass
		}
	}
	want := map[string]bool{"SAT-GOOD": true, "SAT-WRONG": false, "SAT-MORE": false, "SAT-NOTOL": false, "SAT-NOINPUT": false,
		"NOBODY": false}
	for id, pass := range want {
		if got, ok := passed[id]; !ok || got != pass {
			t.Errorf("%s: passed %t (there: %t), want %t", id, got, ok, pass)
		}
	}
	if len(report.LeftOut) != 1 || report.LeftOut[0].ID != "SAT-OUT" {
		t.Errorf("left out: %v", report.LeftOut)
	}
	if _, err := RunSubject("nothing", testdata.Files.ReadFile); err == nil {
		t.Error("an unknown subject runs")
	}
}

// judge, bound by bound.
func TestJudge(t *testing.T) {
	for _, c := range []struct {
		tolerance       tolerance
		low, high, ours float64
		pass            bool
		deviation       float64
	}{
		{relative(0.01), 100, 100, 101, true, 0.01},
		{relative(0.01), 100, 100, 101.1, false, 0.011},
		{within(0.5), 0, 0, -0.5, true, 0.5},
		{tolerance{Rel: numbers{0.01}, Abs: numbers{2}}, 100, 100, 98, true, 2},
		{tolerance{Range: true}, 1, 3, 2, true, 0},
		{tolerance{Range: true}, 1, 3, 3.1, false, 0.1},
		{tolerance{Range: true, Abs: numbers{0.2}}, 1, 3, 3.1, true, 0.1},
		{tolerance{Range: true, Factor: 2}, 1, 3, 0.5, true, 2},
		{tolerance{Factor: 1.4}, 7, 7, 4.9, false, 7 / 4.9},
		{tolerance{Factor: 2}, 7, 7, -7, false, -1},
		{tolerance{Least: true}, 5, 5, 50, true, 0},
		{tolerance{Least: true}, 5, 5, 4, false, 1},
		{tolerance{Most: true}, 5, 5, 4, true, 0},
		{within(1), 5, 5, math.NaN(), false, math.NaN()},
	} {
		r := Row{Expected: c.low, Upper: c.high, Ours: c.ours}
		r.judge(c.tolerance, 0)
		if r.Pass != c.pass || math.Abs(r.Deviation-c.deviation) > 1e-12 || math.IsNaN(r.Deviation) != math.IsNaN(c.deviation) {
			t.Errorf("%+v: pass %t, deviation %g", c, r.Pass, r.Deviation)
		}
	}
}

func TestSplit(t *testing.T) {
	for key, want := range map[string][2]string{"T_wb_C": {"T_wb", "degC"}, "h_fg_J_per_kg": {"h_fg", "J/kg"}, "Nu": {"Nu", ""},
		"h_m_m_per_s": {"h_m", "m/s"}, "flux_kg_m2s": {"flux", "kg/(m2 s)"}, "nu_m2_per_s": {"nu", "m2/s"}} {
		if name, unit := split(key); name != want[0] || unit != want[1] {
			t.Errorf("%s is %q in %q", key, name, unit)
		}
	}
}

func BenchmarkTable(b *testing.B) {
	for range b.N {
		if _, err := RunQuick(testdata.Files.ReadFile); err != nil {
			b.Fatal(err)
		}
	}
}
