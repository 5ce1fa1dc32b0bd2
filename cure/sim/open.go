package sim

import (
	"slices"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// openHorizon is how long the branch of the unflocked film is followed [s]; no dispersion stays open for a day in air
// that dries it at all.
const openHorizon = 86400.0

// openTime follows the unflocked film in the workshop's air until a packed layer at its surface keeps fibres out. All
// routes share it.
func (b *bench) openTime() (result.Mark, error) {
	mark := result.Mark{Name: result.Open}
	plan, err := route.Wait(b.job, openHorizon)
	if err != nil {
		return mark, err
	}
	st := &plan.Stages[0]
	// Fibres stop at packed particles, whatever way the last water takes: the branch is that of liquid diffusion.
	liquid := *b
	liquid.coat.Transport = film.LiquidDiffusion{}
	if b.coat.Transport != liquid.coat.Transport {
		liquid.first = &beginning{}
	}
	s := liquid.system(st)
	y := make([]float64, s.Dim())
	s.Pack(&b.start, nil, y)
	limit := b.job.Targets.OpenLayer
	look := func(t float64, y []float64) {
		y = slices.Clone(y)
		s.Bound(y)
		mark.State = state(t, s.Read(t, y))
	}
	shut := func(t float64, y []float64) {
		time := t
		mark.Time = &time
		look(t, y)
	}
	if s.PackedLayer(0, y) >= limit {
		shut(0, y)
		return mark, nil
	}
	solver, err := liquid.stepper(s, st)
	if err != nil {
		return mark, err
	}
	defer func() { b.pay(s, solver.Stats()) }()
	events := []ode.Event{{Name: "open", Dir: ode.Rising, Terminal: true,
		G: func(t float64, y []float64) float64 { return s.PackedLayer(t, y) - limit }, Hit: shut}}
	// A film that has dried out without ever packing (it cannot) would otherwise be followed for the whole day.
	dried := func(step *ode.Step) bool {
		return s.MeanWater(step.Y1) > b.coat.Diffusion.Water(b.coat.Diffusion.Closing)/2
	}
	from := 0.0
	for _, to := range append(append([]float64(nil), st.Stops...), st.End) {
		end, err := solver.Integrate(from, to, y, events, dried)
		if err != nil {
			look(end.T, y)
			return mark, b.budget.said(err)
		}
		from = end.T
		if mark.Time != nil || from < to {
			break
		}
	}
	if mark.Time == nil {
		look(from, y)
	}
	return mark, nil
}

var _ ode.System = (*film.System)(nil)
