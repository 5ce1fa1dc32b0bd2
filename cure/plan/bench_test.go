package plan

import (
	"fmt"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// demoTunnel is what the questions of the benchmarks are about: the two zones of the first example.
func demoTunnel(b *testing.B) Study {
	b.Helper()
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	study, err := Study{Job: &j, Route: result.Tunnel}.Settle(Batch)
	if err != nil {
		b.Fatal(err)
	}
	return study
}

// counting judges settings one after the other and counts them.
func counting(settings *int) Evaluate {
	return func(s Study, trials []Trial) ([]Outcome, error) {
		*settings += len(trials)
		return Batch(s, trials)
	}
}

// BenchmarkWindow draws the window of line speed and the zones' temperatures, coarse and fine: the boundaries are found by
// roots, so that settings grow slower than points.
func BenchmarkWindow(b *testing.B) {
	study := demoTunnel(b)
	for _, points := range []int{15, 30, 60, 120} {
		b.Run(fmt.Sprintf("points=%d", points), func(b *testing.B) {
			b.ReportAllocs()
			settings := 0
			for b.Loop() {
				settings = 0
				q := WindowQuestion{Study: study, X: Axis{Variable: "line_speed"}, Y: Axis{Variable: "zone_temperatures"}, Points: points}
				if _, err := FindWindow(q, counting(&settings), func(Window) {}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(settings), "settings")
		})
	}
}

// BenchmarkSpread samples the usual tolerances.
func BenchmarkSpread(b *testing.B) {
	study := demoTunnel(b)
	for _, rows := range []int{4, 8, 16} {
		b.Run(fmt.Sprintf("rows=%d", rows), func(b *testing.B) {
			b.ReportAllocs()
			settings := 0
			for b.Loop() {
				settings = 0
				if _, err := FindSpread(SpreadQuestion{Study: study, Rows: rows}, counting(&settings), func(Spread) {}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(settings), "settings")
		})
	}
}
