package num

import (
	"errors"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

func TestLinear(t *testing.T) {
	l, err := NewLinear([]float64{0, 2, 3}, []float64{1, 5, 4})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ x, y, slope float64 }{
		{-1, 1, 0}, {0, 1, 2}, {1, 3, 2}, {2, 5, -1}, {2.5, 4.5, -1}, {3, 4, 0}, {9, 4, 0},
	} {
		if y, s := l.At(c.x), l.Slope(c.x); y != c.y || s != c.slope {
			t.Errorf("x = %v: got %v with slope %v, want %v and %v", c.x, y, s, c.y, c.slope)
		}
	}
	if !math.IsNaN(l.At(math.NaN())) {
		t.Error("NaN must give NaN")
	}
	one, err := NewLinear([]float64{7}, []float64{3})
	if err != nil || one.At(-1) != 3 || one.At(7) != 3 || one.At(8) != 3 || one.Slope(7) != 0 {
		t.Error("one point is a constant")
	}
	if k := l.Knots(); len(k) != 3 || k[1] != 2 {
		t.Errorf("knots %v", k)
	}
}

func TestLinearRefuses(t *testing.T) {
	for _, c := range []struct {
		x, y []float64
		code fault.Code
		path string
	}{
		{nil, nil, fault.Missing, "x"},
		{[]float64{1}, []float64{1, 2}, fault.Conflict, "x"},
		{[]float64{1, 1}, []float64{1, 2}, fault.Conflict, "x[1]"},
		{[]float64{1, math.Inf(1)}, []float64{1, 2}, fault.Range, "x[1]"},
		{[]float64{1, 2}, []float64{math.NaN(), 2}, fault.Range, "y[0]"},
	} {
		_, err := NewLinear(c.x, c.y)
		var f *fault.Fault
		if !errors.As(err, &f) || f.Code != c.code || f.Path != c.path {
			t.Errorf("%v, %v: got %v", c.x, c.y, err)
		}
	}
}
