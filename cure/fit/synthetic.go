package fit

import (
	"fmt"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/regress"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// Weighing is a made-up weight trial, to see what a real one would tell before it is made, and to test the fit: which route, when the
// coupon is weighed, its coated area, tare, and the scatter of the scale as a share of the sprayed water.
type Weighing struct {
	Route   result.Kind
	Times   []float64 // rising, from spraying [s]
	Area    float64   // [m2]
	Tare    float64   // [kg]
	Scatter float64   // of a reading, in shares of the coupon's water when sprayed
}

// Curve is the mass that the scale would show without scatter [kg], for the job as it stands.
func (s Weighing) Curve(j job.Job) ([]float64, error) {
	samples, err := sim.Follow(&j, s.Route, s.Times, nil)
	if err != nil {
		return nil, err
	}
	m := make([]float64, len(samples))
	for i := range m {
		m[i] = s.Tare + s.Area*samples[i].Mass
	}
	return m, nil
}

// Table writes a curve with normal scatter as the table that a trial would give, in seconds and grams.
func (s Weighing) Table(j job.Job, curve []float64, noise *regress.Random) string {
	sigma := s.Scatter * s.Area * j.Film.WetCoat * (1 - j.Film.Adhesive.Solids)
	var b strings.Builder
	b.WriteString("time [s];mass [g]\n")
	for i, m := range curve {
		fmt.Fprintf(&b, "%.6g;%.7g\n", s.Times[i], 1e3*(m+sigma*noise.Normal()))
	}
	return b.String()
}
