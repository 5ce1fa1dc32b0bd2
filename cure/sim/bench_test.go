package sim

import (
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

// measure times a job and counts the work of its routes; runs behind a route (balance of a tunnel, spots, open time) are
// timed and not counted.
func measure(b *testing.B, j job.Job) {
	b.ReportAllocs()
	var steps, rejected, derivatives int
	for b.Loop() {
		res, err := Run(&j)
		if err != nil {
			b.Fatal(err)
		}
		steps, rejected, derivatives = 0, 0, 0
		for i := range res.Routes {
			s := &res.Routes[i].Status
			steps += s.Steps
			rejected += s.Rejected
			derivatives += s.Derivatives
		}
	}
	b.ReportMetric(float64(steps), "steps")
	b.ReportMetric(float64(rejected), "rejected")
	b.ReportMetric(float64(derivatives), "derivatives")
}
