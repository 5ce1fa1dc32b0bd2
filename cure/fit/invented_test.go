package fit

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/trial"
)

var invent = flag.Bool("invent", false, "write the invented trials of testdata/invented-trials anew")

// head marks an invented trial in its first line; the reader tells it as skipped.
const head = "Invented example: computed with scatter for the demo job, no measurement\n"

// truth is the demo job with other numbers, which the invented trials hide.
func inventedTruth(t *testing.T) job.Job {
	t.Helper()
	j := job.Demo()
	dry, _ := job.Number(&j, dryDiffusivity)
	for path, v := range map[string]float64{roomX: 1.35, dryDiffusivity: 0.6 * dry} {
		if err := job.SetNumber(&j, path, v); err != nil {
			t.Fatal(err)
		}
	}
	for i, m := range []float64{0.8, 1.25, 1.1, 1} {
		if i < len(j.Tunnel.Zones) {
			j.Tunnel.Zones[i].Transfer.Multiplier = &m
		}
	}
	return j
}

// invented writes one trial of each kind from the model.
func invented(t *testing.T) map[string]string {
	t.Helper()
	j := inventedTruth(t)
	out := map[string]string{}
	noise := regress.NewRandom(11)

	// Two coupons of 200 cm2 on a scale that shows a hundredth of a gram.
	times := []float64{0, 5, 10, 15, 20, 30, 40, 50, 60, 75, 90, 110, 130, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1200, 1440}
	for i := range times {
		times[i] *= 60
	}
	curve, err := Weighing{Route: result.Room, Times: times, Area: 0.02}.Curve(j)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(head + "time [min];coupon;mass [g]\n")
	for i, m := range curve {
		for k, tare := range []float64{12.31, 12.64} {
			fmt.Fprintf(&b, "%g;%c;%.2f\n", times[i]/60, 'A'+k, tare+1e3*m+0.008*noise.Normal())
		}
	}
	out["weight"] = b.String()

	// A recorder that goes through the tunnel on a coated part and writes air and part every ten seconds.
	length := 0.0
	for _, z := range j.Tunnel.Zones {
		length += z.Length
	}
	var record []float64
	for s := 0.0; s <= length/j.Tunnel.LineSpeed; s += 10 {
		record = append(record, j.Tunnel.EnteredAfter+s)
	}
	samples, err := sim.Follow(&j, result.Tunnel, record, nil)
	if err != nil {
		t.Fatal(err)
	}
	b.Reset()
	b.WriteString(head + "time [s],part temperature [°C]\n")
	for i, s := range samples {
		fmt.Fprintf(&b, "%.0f,%.1f\n", record[i]-record[0], s.Back-273.15+0.3*noise.Normal())
	}
	out["recorder"] = b.String()

	// Conversions of a dry film held at three temperatures, first order, scatter 0.02.
	b.Reset()
	b.WriteString(head + "time [min];temperature [°C];conversion [%]\n")
	for _, c := range []float64{90, 105, 120} {
		for _, m := range []float64{1, 2, 4, 8, 16, 32} {
			k := 0.6 * 1.2494e8 * math.Exp(-76e3/(8.314462618*(c+273.15)))
			x := 1 - math.Exp(-k*60*m) + 0.015*noise.Normal()
			fmt.Fprintf(&b, "%g;%g;%.1f\n", m, c, 100*math.Max(0, math.Min(0.995, x)))
		}
	}
	out["cure"] = b.String()

	b.Reset()
	b.WriteString(head + "relative humidity [%];water content [g/kg]\n")
	g := film.GAB{Monolayer: 0.022, C: 6, K: 0.82}
	for _, rh := range []float64{11, 23, 33, 43, 58, 75, 85, 93} {
		fmt.Fprintf(&b, "%g;%.1f\n", rh, 1e3*g.Water(rh/100)*(1+0.02*noise.Normal()))
	}
	out["sorption"] = b.String()
	return out
}

// The invented trials that the page offers are what the model writes, are read without a choice, and their fits find what they hide.
func TestInventedTrials(t *testing.T) {
	area := 0.02
	for kind, text := range invented(t) {
		path := filepath.Join("..", "..", "testdata", "invented-trials", kind+".csv")
		if *invent {
			if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		stored, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(string(stored), head) {
			t.Errorf("%s is not marked as invented", path)
		}
		if string(stored) != text {
			t.Errorf("%s is not what the model writes: go test ./cure/fit -run Invented -invent", path)
		}
		q := Question{Kind: trial.Kind(kind)}
		if kind == "weight" {
			q.Area = &area
		}
		o, err := Run(job.Demo(), stored, q)
		if err != nil {
			t.Fatalf("%s: %v", kind, err)
		}
		if len(o.Fit.Parameters) == 0 || !o.Fit.Converged {
			t.Errorf("%s: %+v", kind, o.Fit)
		}
		for _, p := range o.Fit.Parameters {
			t.Logf("%s %s: %.4g, before %.4g, learnt %.2f", kind, p.Path, p.Value, p.Before, p.Learnt)
		}
	}
}
