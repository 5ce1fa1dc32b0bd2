package fit

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/trial"
)

const (
	roomX = "workshop.transfer.multiplier"
	ovenX = "static_oven.transfer.multiplier"
)

// coupon is a job for a coupon on a scale in the workshop, and the same with other numbers, run on twice the cells.
func coupon(t *testing.T, numbers map[string]float64) (j, truth job.Job) {
	t.Helper()
	j = job.Default()
	j.Pile = nil
	truth = job.Clone(j)
	truth.Numerics.FilmCells, truth.Numerics.RelativeTolerance = 48, 1e-7
	for path, v := range numbers {
		if err := job.SetNumber(&truth, path, v); err != nil {
			t.Fatal(err)
		}
	}
	return j, truth
}

func everyMinutes(n int, step float64) []float64 {
	times := make([]float64, n)
	for i := range times {
		times[i] = 60 * step * float64(i)
	}
	return times
}

func table(t *testing.T, w Weighing, truth job.Job, seed uint64) string {
	t.Helper()
	curve, err := w.Curve(truth)
	if err != nil {
		t.Fatal(err)
	}
	return w.Table(truth, curve, regress.NewRandom(seed))
}

// A whole drying curve tells the multiplier and the dry film's diffusivity; the criterion finds both; bootstrap and Jacobian agree; the
// adopted job dries like the truth.
func TestWeight(t *testing.T) {
	j, truth := coupon(t, map[string]float64{roomX: 1.5, dryDiffusivity: 2.5e-12})
	w := Weighing{Route: result.Room, Times: everyMinutes(36, 3), Area: 0.05, Tare: 0.1, Scatter: 0.01}
	o := ask(t, j, table(t, w, truth, 1), Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare, Bootstrap: 60, Seed: 1, Name: "card"})
	if p := parameter(t, o, roomX); !within(p, 1.5) || *p.High / *p.Low > 1.1 {
		t.Errorf("multiplier %g, %g to %g", p.Value, *p.Low, *p.High)
	}
	p := parameter(t, o, dryDiffusivity)
	if !within(p, 2.5e-12) {
		t.Errorf("dry diffusivity %g, %g to %g", p.Value, *p.Low, *p.High)
	}
	if doubted(o, "bent", "") || p.BootstrapLow == nil {
		t.Errorf("bootstrap %v, doubts %+v", p.BootstrapLow, o.Fit.Doubts)
	}
	if s := o.Fit.Scatter / (truth.Film.WetCoat / 2); math.Abs(s-0.01) > 0.004 { // three standard errors of 36 draws
		t.Errorf("scatter %g of the water, made with 0.01", s)
	}
	if len(o.Fit.Choices) != 4 || len(o.Fit.Points) != 36 || len(o.Fit.Curves) != 1 || !o.Fit.Converged {
		t.Errorf("%d choices, %d points, %d curves", len(o.Fit.Choices), len(o.Fit.Points), len(o.Fit.Curves))
	}
	adopted, err := job.Adopt(j, o.Adoption)
	if err != nil {
		t.Fatal(err)
	}
	dry := func(j job.Job) float64 {
		r, err := sim.Run(&j)
		if err != nil {
			t.Fatal(err)
		}
		return *r.Routes[0].Marks[3].Time
	}
	if was, now, want := dry(j), dry(adopted), dry(truth); math.Abs(now/want-1) > 0.06 || math.Abs(was/want-1) < 0.15 {
		t.Errorf("dry through after %g s before, %g s with the fit, %g s in truth", was, now, want)
	}
}

// A trial that ends while the surface is wet cannot tell the dry film: asked for it, the number stays at the adhesive's default and the
// doubt is said; not asked, it is left out.
func TestWeightTooShort(t *testing.T) {
	j, truth := coupon(t, map[string]float64{roomX: 0.8, dryDiffusivity: 2e-12})
	w := Weighing{Route: result.Room, Times: everyMinutes(15, 2), Area: 0.05, Tare: 0.1, Scatter: 0.01}
	text := table(t, w, truth, 3)
	o := ask(t, j, text, Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare, Parameters: []string{roomX, dryDiffusivity}})
	p := parameter(t, o, dryDiffusivity)
	if !doubted(o, "prior", dryDiffusivity) || math.Abs(math.Log(p.Value/j.Film.Adhesive.DryDiffusion)) > 0.3 {
		t.Errorf("%g, learnt %g, doubts %+v", p.Value, p.Learnt, o.Fit.Doubts)
	}
	if p := parameter(t, o, roomX); !within(p, 0.8) || doubted(o, "wide", roomX) {
		t.Errorf("multiplier %g", p.Value)
	}
	o = ask(t, j, text, Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare})
	if len(o.Fit.Parameters) != 1 {
		t.Errorf("chosen: %+v", o.Fit.Parameters)
	}
}

// Two coupons in other units, without a tare, with gaps and one reading that was jogged: the multiplier is found and the reading
// counts for little.
func TestWeightTwoCouponsAndAnOutlier(t *testing.T) {
	j, truth := coupon(t, map[string]float64{roomX: 1.3})
	w := Weighing{Route: result.Room, Times: everyMinutes(24, 3), Area: 0.05, Scatter: 0}
	curve, err := w.Curve(truth)
	if err != nil {
		t.Fatal(err)
	}
	noise := regress.NewRandom(9)
	var b strings.Builder
	b.WriteString("coupon;time [min];weight [oz]\n")
	for k, name := range []string{"A", "B"} {
		for i, m := range curve {
			if k == 1 && i%3 == 0 {
				fmt.Fprintf(&b, "%s;%g;\n", name, w.Times[i]/60)
				continue
			}
			m += float64(k+1)*0.07 + 0.003e-3*noise.Normal()
			if k == 0 && i == 7 {
				m += 0.3e-3
			}
			fmt.Fprintf(&b, "%s;%g;%.8f\n", name, w.Times[i]/60, m/0.45359237*16)
		}
	}
	o := ask(t, j, b.String(), Question{Kind: trial.Weight, Area: &w.Area, Parameters: []string{roomX}})
	if p := parameter(t, o, roomX); math.Abs(p.Value/1.3-1) > 0.02 { // the grid's own error is a half per cent
		t.Errorf("multiplier %g", p.Value)
	}
	if p := o.Fit.Points[7]; p.Weight > 0.3 || !doubted(o, "outliers", "") {
		t.Errorf("the jogged reading weighs %g", p.Weight)
	}
	if len(o.Fit.Curves) != 2 || o.Fit.Count != 24+16 {
		t.Errorf("%d curves, %d points", len(o.Fit.Curves), o.Fit.Count)
	}
}

// Coverage on few seeds; five hundred run behind make validate. Of 12 seeds at 95 % fewer than 9 hold in one case of five hundred.
func TestWeightCoverage(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	j, truth := coupon(t, map[string]float64{roomX: 1.5, dryDiffusivity: 3e-12})
	w := Weighing{Route: result.Room, Times: everyMinutes(30, 3.5), Area: 0.05, Tare: 0.1, Scatter: 0.01}
	curve, err := w.Curve(truth)
	if err != nil {
		t.Fatal(err)
	}
	held := map[string]int{}
	for seed := range uint64(12) {
		o := ask(t, j, w.Table(truth, curve, regress.NewRandom(seed)), Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare, Free: true,
			Parameters: []string{roomX, dryDiffusivity}})
		for path, want := range map[string]float64{roomX: 1.5, dryDiffusivity: 3e-12} {
			if within(parameter(t, o, path), want) {
				held[path]++
			}
		}
	}
	for path, n := range held {
		if n < 9 {
			t.Errorf("%s held in %d of 12", path, n)
		}
	}
}

// ovenRecord follows a coated part through an oven or tunnel that is as much better than its law as the multipliers say, and
// writes what a recorder on its back would show.
func ovenRecord(t *testing.T, truth job.Job, kind result.Kind, entry, length float64) string {
	t.Helper()
	var times []float64
	for s := 0.0; s <= length; s += 5 {
		times = append(times, entry+s)
	}
	samples, err := sim.Follow(&truth, kind, times, nil)
	if err != nil {
		t.Fatal(err)
	}
	noise := regress.NewRandom(3)
	var b strings.Builder
	b.WriteString("time [s],part [°C]\n")
	for i, s := range samples {
		fmt.Fprintf(&b, "%g,%.3f\n", times[i]-entry, s.Back-273.15+0.3*noise.Normal())
	}
	return b.String()
}

// The heating of a part tells what its oven's law has to be multiplied by; with it come the film's state where the record ends, the
// equivalent time and the time above a limit.
func TestRecorderOven(t *testing.T) {
	j := job.Demo()
	j.Room, j.Tunnel = nil, nil
	truth := job.Clone(j)
	if err := job.SetNumber(&truth, ovenX, 1.6); err != nil {
		t.Fatal(err)
	}
	limit := 333.15
	o := ask(t, j, ovenRecord(t, truth, result.StaticOven, j.StaticOven.LoadedAfter, 1200), Question{Kind: trial.Recorder, Limit: &limit})
	if p := parameter(t, o, ovenX); !within(p, 1.6) || *p.High / *p.Low > 1.2 {
		t.Errorf("multiplier %g, %g to %g", p.Value, *p.Low, *p.High)
	}
	if notes := strings.Join(o.Fit.Notes, " "); !strings.Contains(notes, "W/(m²·K) at the coated face") {
		t.Errorf("no coefficient in %q", notes)
	}
	r := o.Fit.Recorded
	if r == nil || r.Route.Exit == nil || r.EquivalentTime == nil {
		t.Fatalf("recorded: %+v", r)
	}
	// The truth's own run up to the same moment.
	truth.StaticOven.Dwell = 1200
	res, err := sim.Run(&truth)
	if err != nil {
		t.Fatal(err)
	}
	want := res.Routes[0].Exit.State
	if got := r.Route.Exit.State; math.Abs(got.MeanWater/want.MeanWater-1) > 0.05 || math.Abs(got.MeanConversion-want.MeanConversion) > 0.03 {
		t.Errorf("at the end: water %g, conversion %g; the truth has %g and %g", got.MeanWater, got.MeanConversion, want.MeanWater, want.MeanConversion)
	}
	if r.TimeAbove < 300 || r.TimeAbove > 1200 || *r.EquivalentTime <= 0 || r.WhoseTemperature != "part" {
		t.Errorf("%g s above, %g s equivalent", r.TimeAbove, *r.EquivalentTime)
	}
}

// A tunnel: each zone has its own multiplier, and its name at the number.
func TestRecorderTunnel(t *testing.T) {
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	truth := job.Clone(j)
	length := 0.0
	want := []float64{1.5, 0.8, 1.2}
	for i, z := range j.Tunnel.Zones {
		length += z.Length / j.Tunnel.LineSpeed
		if i < len(want) {
			if err := job.SetNumber(&truth, fmt.Sprintf("tunnel.zones[%d].transfer.multiplier", i), want[i]); err != nil {
				t.Fatal(err)
			}
		}
	}
	o := ask(t, j, ovenRecord(t, truth, result.Tunnel, j.Tunnel.EnteredAfter, length), Question{Kind: trial.Recorder})
	if len(o.Fit.Parameters) != len(j.Tunnel.Zones) {
		t.Fatalf("%d zones of %d", len(o.Fit.Parameters), len(j.Tunnel.Zones))
	}
	for i, p := range o.Fit.Parameters {
		v := 1.0
		if i < len(want) {
			v = want[i]
		}
		if math.Abs(math.Log(p.Value/v)) > 3.5*p.StandardError+0.02 { // the differences of the Jacobian beside the scatter
			t.Errorf("%s: %g, want %g", p.Label, p.Value, v)
		}
		if !strings.Contains(p.Label, j.Tunnel.Zones[i].Name) {
			t.Errorf("%q does not name the zone", p.Label)
		}
	}
	if _, err := job.Adopt(j, o.Adoption); err != nil {
		t.Error(err)
	}
}

// Questions that make no sense are refused by their field.
func TestQuestionsAreChecked(t *testing.T) {
	j, _ := coupon(t, nil)
	text := "time [min];mass [g]\n0;107.5\n10;106\n20;105.5\n"
	area, far, low := 0.05, 1e9, -1.0
	tare := 50e-3
	for want, q := range map[string]Question{
		"kind":        {Kind: "colour"},
		"criterion":   {Kind: trial.Weight, Area: &area, Criterion: "r2"},
		"area_m2":     {Kind: trial.Weight},
		"start_s":     {Kind: trial.Weight, Area: &area, Start: &far},
		"tare_kg":     {Kind: trial.Weight, Area: &area, Tare: &low},
		"route":       {Kind: trial.Weight, Area: &area, Route: result.Tunnel},
		"parameters":  {Kind: trial.Weight, Area: &area, Parameters: []string{"film.colour"}},
		"line 2":      {Kind: trial.Weight, Area: &area, Tare: &tare, Parameters: []string{roomX}},
		"bootstrap":   {Kind: trial.Weight, Area: &area, Bootstrap: 1e6},
		"temperature": {Kind: trial.Cure},
	} {
		_, err := Run(j, []byte(text), q)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", want, err)
		}
	}
}

// BenchmarkWeight is a weight fit of a coupon with the numbers chosen by the criterion.
func BenchmarkWeight(b *testing.B) {
	j := job.Default()
	j.Pile = nil
	truth := job.Clone(j)
	if err := job.SetNumber(&truth, roomX, 1.5); err != nil {
		b.Fatal(err)
	}
	w := Weighing{Route: result.Room, Times: everyMinutes(30, 3.5), Area: 0.05, Tare: 0.1, Scatter: 0.01}
	curve, err := w.Curve(truth)
	if err != nil {
		b.Fatal(err)
	}
	text := []byte(w.Table(truth, curve, regress.NewRandom(1)))
	for range b.N {
		if _, err := Run(j, text, Question{Kind: trial.Weight, Area: &w.Area, Tare: &w.Tare}); err != nil {
			b.Fatal(err)
		}
	}
}

// Whatever table of the ugly ones meets whatever kind of trial, the answer is a fit or a fault, never a panic; what is fitted can be
// written as JSON.
func TestAnyTableAnyKind(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	dir := filepath.Join("..", "..", "testdata", "trials")
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	j := job.Demo()
	area := 0.05
	fitted := 0
	for _, f := range files {
		text, err := os.ReadFile(filepath.Join(dir, f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		for kind := range kinds() {
			if kind == trial.Weight && strings.Contains("01 02 03 04 05 06 07 08 10 11 19 23 28", f.Name()[:2]) && f.Name()[:2] != "08" {
				continue // the same weighing again and again
			}
			o, err := Run(j, text, Question{Kind: kind, Area: &area, Bootstrap: 5})
			var one *fault.Fault
			var list fault.List
			if err != nil && !errors.As(err, &one) && !errors.As(err, &list) {
				t.Errorf("%s as %s: %v is no fault", f.Name(), kind, err)
			}
			if err == nil {
				fitted++
				if _, err := json.Marshal(o); err != nil {
					t.Errorf("%s as %s: %v", f.Name(), kind, err)
				}
			}
		}
	}
	if fitted < 5 {
		t.Errorf("only %d were fitted", fitted)
	}
}
