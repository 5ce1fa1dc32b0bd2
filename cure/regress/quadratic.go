package regress

import "math"

// quadratic is the model |r + J p|^2 of the sum of squares around a point, in the singular values of J D^-1 over the free
// variables.
type quadratic struct {
	f        *found
	scale    []float64
	free     []int
	singular []float64
	v        *Matrix
	c        []float64 // U' r
}

// newQuadratic returns nil where nothing is free or the Jacobian is not finite.
func newQuadratic(f *found, scale []float64, free []bool) *quadratic {
	q := &quadratic{f: f, scale: scale}
	for j, ok := range free {
		if ok {
			q.free = append(q.free, j)
		}
	}
	k := len(q.free)
	if k == 0 {
		return nil
	}
	rows := f.jacobian.Rows()
	a := NewMatrix(rows, k)
	for c, j := range q.free {
		for i := range rows {
			a.Set(i, c, f.jacobian.At(i, j)/scale[j])
		}
	}
	us, singular, v := rotate(a)
	if !finite(singular[0]) {
		return nil
	}
	q.singular, q.v = singular, v
	q.c = make([]float64, k)
	for s, value := range singular {
		for i := range rows {
			if value > 0 {
				q.c[s] += us.At(i, s) / value * f.r[i]
			}
		}
	}
	return q
}

// gradient is the length of the scaled gradient.
func (q *quadratic) gradient() float64 {
	sum := 0.0
	for s, v := range q.singular {
		sum += square(v * q.c[s])
	}
	return math.Sqrt(sum)
}

// step returns the step of a scaled length of at most radius, and that length. Directions that the data do not tell at all
// (singular values below rounding) are left alone.
func (q *quadratic) step(radius float64) (p []float64, length float64) {
	least := 1e-14 * q.singular[0]
	along := func(damping float64) (length, slope float64) {
		for s, v := range q.singular {
			if v <= least {
				continue
			}
			d := v*v + damping
			part := square(v * q.c[s] / d)
			length += part
			slope -= part / d
		}
		return math.Sqrt(length), slope
	}
	damping := 0.0
	if whole, _ := along(0); whole > radius {
		// Hebden's iteration on 1/|Dp| - 1/radius, which is nearly straight and concave: it climbs to the root from below.
		for range 60 {
			l, slope := along(damping)
			if math.Abs(l-radius) <= 0.05*radius {
				break
			}
			damping = math.Max(0, damping-(l-radius)/radius*l*l/slope)
		}
	}
	length, _ = along(damping)
	p = make([]float64, len(q.scale))
	for s, v := range q.singular {
		if v <= least {
			continue
		}
		w := -v * q.c[s] / (v*v + damping)
		for c, j := range q.free {
			p[j] += q.v.At(c, s) * w / q.scale[j]
		}
	}
	return p, length
}

// image is J p.
func (q *quadratic) image(p []float64) []float64 {
	rows, cols := q.f.jacobian.Rows(), q.f.jacobian.Columns()
	out := make([]float64, rows)
	for i := range out {
		for j := range cols {
			out[i] += q.f.jacobian.At(i, j) * p[j]
		}
	}
	return out
}

// fall is the fall of the sum of squares that the model predicts for a step.
func (q *quadratic) fall(p []float64) float64 {
	jp := q.image(p)
	return -2*dot(q.f.r, jp) - dot(jp, jp)
}

// slope is the derivative of the sum of squares along a step; negative downhill.
func (q *quadratic) slope(p []float64) float64 { return 2 * dot(q.f.r, q.image(p)) }
