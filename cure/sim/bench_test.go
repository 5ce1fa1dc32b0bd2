package sim

import (
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// BenchmarkRoutes runs the demo, route by route and whole; counters say how much work a run takes.
func BenchmarkRoutes(b *testing.B) {
	for _, c := range []struct {
		name string
		keep func(*job.Job)
	}{
		{"room", func(j *job.Job) { j.StaticOven, j.Tunnel = nil, nil }},
		{"static_oven", func(j *job.Job) { j.Room, j.Tunnel = nil, nil }},
		{"tunnel", func(j *job.Job) { j.Room, j.StaticOven = nil, nil }},
		{"demo", func(*job.Job) {}},
	} {
		b.Run("route="+c.name, func(b *testing.B) {
			j := job.Demo()
			c.keep(&j)
			b.ReportAllocs()
			steps := 0
			for b.Loop() {
				res, err := Run(&j)
				if err != nil {
					b.Fatal(err)
				}
				steps = 0
				for i := range res.Routes {
					steps += res.Routes[i].Status.Steps + res.Routes[i].Status.Rejected
				}
			}
			b.ReportMetric(float64(steps), "steps/op")
		})
	}
}
