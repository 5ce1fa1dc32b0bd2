package sim

import (
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// BenchmarkTunnel is the demo's tunnel alone: the speed that a change of the film's equations is judged by.
func BenchmarkTunnel(b *testing.B) {
	j := job.Demo()
	j.Room, j.StaticOven = nil, nil
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(&j); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRoom is the demo's night.
func BenchmarkRoom(b *testing.B) {
	j := job.Demo()
	j.Tunnel, j.StaticOven = nil, nil
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(&j); err != nil {
			b.Fatal(err)
		}
	}
}
