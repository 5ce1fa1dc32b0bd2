package sim

import (
	"fmt"
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// BenchmarkTunnel is the demo's tunnel alone: the speed that a change of the film's equations is judged by.
func BenchmarkTunnel(b *testing.B) {
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	measure(b, j)
}

// BenchmarkRoom is the demo's night.
func BenchmarkRoom(b *testing.B) {
	j := job.Demo()
	j.Tunnel, j.StaticOven = nil, nil
	measure(b, j)
}

// BenchmarkLine is a tunnel whose zones are balanced, with a spot: some ten runs of the part.
func BenchmarkLine(b *testing.B) {
	for _, d := range job.Demos() {
		if d.ID == "line" {
			measure(b, d.Job)
		}
	}
}

// BenchmarkCells is the demo's tunnel over finer and finer grids of the film: work grows as the cells do.
func BenchmarkCells(b *testing.B) {
	for _, cells := range []int{16, 32, 64, 128} {
		b.Run(fmt.Sprintf("cells=%d", cells), func(b *testing.B) {
			j := job.Demo()
			j.Room, j.StaticOven = nil, nil
			j.Numerics.FilmCells = cells
			measure(b, j)
		})
	}
}

// BenchmarkZones is the demo's tunnel cut in more and more zones of the same air, at the same whole length.
func BenchmarkZones(b *testing.B) {
	for _, zones := range []int{2, 4, 8, 12} {
		b.Run(fmt.Sprintf("zones=%d", zones), func(b *testing.B) {
			j := job.Demo()
			j.Room, j.StaticOven = nil, nil
			t := *j.Tunnel
			t.Zones = nil
			for i := range zones {
				z := j.Tunnel.Zones[i*len(j.Tunnel.Zones)/zones]
				z.Length *= float64(len(j.Tunnel.Zones)) / float64(zones)
				t.Zones = append(t.Zones, z)
			}
			j.Tunnel = &t
			measure(b, j)
		})
	}
}

// measure times a job and counts the work of its routes; runs behind a route (balance of a tunnel, spots, open time) are
// timed and not counted.
func measure(b *testing.B, j job.Job) {
	b.ReportAllocs()
	var steps, rejected, derivatives, factorisations int
	for b.Loop() {
		res, err := Run(&j)
		if err != nil {
			b.Fatal(err)
		}
		steps, rejected, derivatives, factorisations = 0, 0, 0, 0
		for i := range res.Routes {
			s := &res.Routes[i].Status
			steps += s.Steps
			rejected += s.Rejected
			derivatives += s.Derivatives
			factorisations += s.Factorisations
		}
	}
	b.ReportMetric(float64(steps), "steps")
	b.ReportMetric(float64(rejected), "rejected")
	b.ReportMetric(float64(derivatives), "derivatives")
	b.ReportMetric(float64(factorisations), "factorisations")
}
