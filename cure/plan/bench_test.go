package plan

import (
	"fmt"
	"runtime"
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

// held runs a search once more, collects all garbage whenever it asks for settings, and reports the most memory that was in use
// then, beyond what there was before: what the search keeps.
func held(b *testing.B, search func(Evaluate) error) {
	var before, now runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	most := before.HeapAlloc
	err := search(func(s Study, trials []Trial) ([]Outcome, error) {
		outcomes, err := Batch(s, trials)
		runtime.GC()
		runtime.ReadMemStats(&now)
		most = max(most, now.HeapAlloc)
		return outcomes, err
	})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(most-before.HeapAlloc)/1e3, "held-kB")
}

// BenchmarkWindow draws the window of line speed and the zones' temperatures, coarse and fine: the boundaries are found by
// roots, so that settings grow slower than points.
func BenchmarkWindow(b *testing.B) {
	study := demoTunnel(b)
	for _, points := range []int{15, 30, 60, 120} {
		b.Run(fmt.Sprintf("points=%d", points), func(b *testing.B) {
			b.ReportAllocs()
			settings := 0
			q := WindowQuestion{Study: study, X: Axis{Variable: "line_speed"}, Y: Axis{Variable: "zone_temperatures"}, Points: points}
			search := func(judge Evaluate) error {
				_, err := FindWindow(q, judge, func(Window) {})
				return err
			}
			for b.Loop() {
				settings = 0
				if err := search(counting(&settings)); err != nil {
					b.Fatal(err)
				}
			}
			held(b, search)
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
			search := func(judge Evaluate) error {
				_, err := FindSpread(SpreadQuestion{Study: study, Rows: rows}, judge, func(Spread) {})
				return err
			}
			for b.Loop() {
				settings = 0
				if err := search(counting(&settings)); err != nil {
					b.Fatal(err)
				}
			}
			held(b, search)
			b.ReportMetric(float64(settings), "settings")
		})
	}
}
