package ode_test

import (
	"fmt"
	"testing"

	"github.com/drywright/drywright/cure/ode"
)

// BenchmarkFilm compares the methods on the film: work against the error of the marks (in units of 1e-6 of their time).
func BenchmarkFilm(b *testing.B) {
	f := newFilm(48)
	want, _ := filmMarks(b, f, 1e-10, ode.Rodas5P())
	for _, rel := range []float64{1e-3, 1e-4, 1e-5, 1e-6} {
		for _, m := range tableaux() {
			b.Run(fmt.Sprintf("%s/%.0e", m.Name, rel), func(b *testing.B) {
				s, err := ode.NewSolver(f, filmOptions(f, rel, m))
				if err != nil {
					b.Fatal(err)
				}
				start, y, events := f.start(), f.start(), filmEvents(f, nil)
				for b.Loop() {
					s.ResetStats()
					copy(y, start)
					if _, err := s.Integrate(0, filmEnd, y, events, nil); err != nil {
						b.Fatal(err)
					}
				}
				got, _ := filmMarks(b, f, rel, m)
				report(b, s.Stats(), 1e6*farthestMark(got, want), "ppm")
			})
		}
	}
}

// BenchmarkTestSet runs each problem of the test set; the error is that of its end in the solver's norm.
func BenchmarkTestSet(b *testing.B) {
	for _, p := range testSet(b) {
		for _, rel := range []float64{1e-4, 1e-6} {
			for _, m := range tableaux() {
				b.Run(fmt.Sprintf("%s/%s/%.0e", p.ID, m.Name, rel), func(b *testing.B) {
					opt := p.options(rel, m)
					s, err := ode.NewSolver(p.System, opt)
					if err != nil {
						b.Fatal(err)
					}
					y := make([]float64, len(p.Start))
					for b.Loop() {
						s.ResetStats()
						copy(y, p.Start)
						if _, err := s.Integrate(0, p.TEnd, y, nil, nil); err != nil {
							b.Fatal(err)
						}
					}
					report(b, s.Stats(), distance(y, p.End, opt), "error")
				})
			}
		}
	}
}

func report(b *testing.B, st ode.Stats, err float64, unit string) {
	b.ReportMetric(float64(st.Steps), "steps")
	b.ReportMetric(float64(st.Rejected), "rejected")
	b.ReportMetric(float64(st.Derivatives), "derivatives")
	b.ReportMetric(err, unit)
}
