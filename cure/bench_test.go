package cure_test

import (
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
)

// BenchmarkPredict answers each worked example as a page does: all its routes, with marks, risks, curves and words.
func BenchmarkPredict(b *testing.B) {
	for _, d := range job.Demos() {
		b.Run("demo="+d.ID, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := cure.Predict(english(), d.Job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
