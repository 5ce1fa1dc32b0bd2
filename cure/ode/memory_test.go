package ode_test

import (
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/ode"
)

// A run with a memory ends in the same bits as one without: where another one has been before, where it has been in another
// interval, and where it began elsewhere. What was computed before is not computed again.
func TestMemory(t *testing.T) {
	f := newFilm(24)
	run := func(m *ode.Memory, shift, end float64) (y, inside []float64, did ode.Stats) {
		opt := filmOptions(f, 1e-5, ode.Rodas4P2())
		opt.Memory = m
		s, err := ode.NewSolver(f, opt)
		if err != nil {
			t.Fatal(err)
		}
		y = f.start()
		y[0] += shift
		at := make([]float64, len(filmEvents(f, nil)))
		if _, err := s.Integrate(0, end, y, filmEvents(f, at), func(step *ode.Step) bool {
			inside = append(inside, step.Component((step.T0+step.T1)/2, f.n-1))
			return true
		}); err != nil {
			t.Fatal(err)
		}
		return y, append(inside, at...), s.Stats()
	}
	memory := ode.NewMemory()
	run(memory, 0, 4)
	for _, c := range []struct {
		name       string
		shift, end float64
		spared     bool
	}{{"again", 0, 4, true}, {"farther", 0, 8, true}, {"less far", 0, 1, true}, {"from elsewhere", 1e-15, 4, false}} {
		want, wantInside, all := run(nil, c.shift, c.end)
		got, inside, did := run(memory, c.shift, c.end)
		if !slices.Equal(got, want) || !slices.Equal(inside, wantInside) {
			t.Errorf("%s: another answer", c.name)
		}
		if did.Steps != all.Steps || did.Rejected != all.Rejected {
			t.Errorf("%s: %d steps, %d rejected, %d and %d without a memory", c.name, did.Steps, did.Rejected, all.Steps, all.Rejected)
		}
		if spared := did.Derivatives < all.Derivatives/2; spared != c.spared {
			t.Errorf("%s: %d derivatives of %d", c.name, did.Derivatives, all.Derivatives)
		}
	}
}
