package coupon

import (
	"math"
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/ode"
)

func coupon(t *testing.T) *Coupon {
	t.Helper()
	c, err := New(32)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A banded peer may leave out what lies beyond the band, but for what the film's temperature does to all cells.
func TestOrderIsBanded(t *testing.T) {
	c := coupon(t)
	order := c.Order()
	if sorted := slices.Sorted(slices.Values(order)); len(sorted) != len(c.start) || sorted[0] != 0 || slices.Compact(sorted)[len(order)-1] != len(order)-1 {
		t.Fatalf("not a permutation of %d unknowns: %v", len(c.start), order)
	}
	// A state on the way, where water and conversion have profiles.
	y := c.Start()
	solver, err := ode.NewSolver(c.System, ode.Options{RelTol: 1e-6, AbsTol: scaled(c, 1e-6)})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := solver.Integrate(0, 120, y, nil, nil); err != nil {
		t.Fatal(err)
	}
	n := len(y)
	f, moved := make([]float64, n), make([]float64, n)
	c.System.Derivative(120, y, f)
	scale := c.Scale()
	felt := 0
	for at, from := range order {
		if at == walls || at == walls+1 || math.IsInf(scale[from], 1) {
			continue
		}
		shifted := slices.Clone(y)
		shifted[from] += 1e-4 * scale[from]
		c.System.Derivative(120, shifted, moved)
		for to, row := range order {
			if math.IsInf(scale[row], 1) || moved[row] == f[row] {
				continue
			}
			felt++
			if d := to - at; d < -Band || d > Band {
				t.Errorf("unknown %d moves unknown %d, %d apart", from, row, d)
			}
		}
	}
	if felt < 2*n {
		t.Errorf("only %d dependences: the test shifts nothing", felt)
	}
}

// The marks come in the order of drying, each once.
func TestMarks(t *testing.T) {
	c := coupon(t)
	solver, err := ode.NewSolver(c.System, ode.Options{RelTol: 1e-6, AbsTol: scaled(c, 1e-6)})
	if err != nil {
		t.Fatal(err)
	}
	y, times := c.Start(), make([]float64, len(Marks))
	if _, err := solver.Integrate(0, End, y, c.Events(times), nil); err != nil {
		t.Fatal(err)
	}
	if !(0 < times[0] && times[0] < times[1] && times[1] < times[2] && times[2] < End) {
		t.Errorf("touch, dry and cured at %v s", times)
	}
	g := make([]float64, len(Marks))
	c.Margins(y, g)
	for i, v := range g {
		if !(v < 0) {
			t.Errorf("%s at the end: %g to go", Marks[i], v)
		}
	}
}

func scaled(c *Coupon, tol float64) []float64 {
	s := c.Scale()
	for i := range s {
		s[i] *= tol
	}
	return s
}
