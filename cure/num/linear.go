package num

import (
	"math"
	"slices"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
)

// Linear is a table of points joined by straight lines and held constant beyond its ends (the caller states that rule
// to the user). The zero value has no points; make one with [NewLinear].
type Linear struct{ x, y []float64 }

// NewLinear copies the points (x[i], y[i]). x must rise strictly, all numbers must be finite, and there must be at least
// one point.
//
// Errors: fault.Missing without points, fault.Conflict on lengths that differ or x that does not rise, fault.Range on a
// number that is not finite; Path is the position, "x[3]".
func NewLinear(x, y []float64) (Linear, error) {
	if len(x) == 0 {
		return Linear{}, fault.New(fault.Missing, "x", "", "Give at least one point.")
	}
	if len(x) != len(y) {
		return Linear{}, fault.New(fault.Conflict, "x",
			"has "+strconv.Itoa(len(x))+" values against "+strconv.Itoa(len(y))+" of y", "Give points in pairs.")
	}
	for i := range x {
		for _, v := range []struct {
			name  string
			value float64
		}{{"x", x[i]}, {"y", y[i]}} {
			if math.IsNaN(v.value) || math.IsInf(v.value, 0) {
				return Linear{}, fault.OutOfRange(v.name+"["+strconv.Itoa(i)+"]", v.value,
					-math.MaxFloat64, math.MaxFloat64, "", "Give a finite number.")
			}
		}
		if i > 0 && !(x[i] > x[i-1]) {
			return Linear{}, fault.New(fault.Conflict, "x["+strconv.Itoa(i)+"]",
				fault.Number(x[i])+" does not follow "+fault.Number(x[i-1]), "Sort the points; no two may share an x.")
		}
	}
	return Linear{slices.Clone(x), slices.Clone(y)}, nil
}

// At returns the value at x; beyond the ends it is the value of the nearer end. NaN gives NaN.
func (l Linear) At(x float64) float64 {
	if math.IsNaN(x) {
		return x
	}
	i, w := l.Place(x)
	if w == 0 {
		return l.y[i]
	}
	return (1-w)*l.y[i] + w*l.y[i+1]
}

// Place says where x lies: at the share w, below 1, of the way from point i to the next; beyond the ends at the nearer point with w
// zero. Tables that share their x look x up once. NaN is for the caller to keep away.
func (l Linear) Place(x float64) (i int, w float64) {
	n := len(l.x)
	switch {
	case x <= l.x[0]:
		return 0, 0
	case x >= l.x[n-1]:
		return n - 1, 0
	}
	i = l.segment(x)
	return i, (x - l.x[i]) / (l.x[i+1] - l.x[i])
}

// Slope returns the derivative of [Linear.At]; at a point of the table it is that of the segment to the right, beyond
// the ends it is zero.
func (l Linear) Slope(x float64) float64 {
	n := len(l.x)
	if !(x >= l.x[0] && x < l.x[n-1]) {
		return 0
	}
	i := l.segment(x)
	return (l.y[i+1] - l.y[i]) / (l.x[i+1] - l.x[i])
}

// Knots returns the x of the points, in order; an integrator stops at each, because the slope jumps there. The slice is
// the table's own: read it only.
func (l Linear) Knots() []float64 { return l.x }

// segment returns i with x[i] <= x < x[i+1]; x must lie inside the table.
func (l Linear) segment(x float64) int {
	i, found := slices.BinarySearch(l.x, x)
	if found {
		return i
	}
	return i - 1
}
