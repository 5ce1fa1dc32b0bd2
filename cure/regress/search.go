package regress

import (
	"cmp"
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// problem is a sum of squares to be made small: residuals writes the m residuals at x, in which every unit is one standard
// deviation or any other common measure.
type problem struct {
	rows      int
	residuals func(x, r []float64) error
	low, high []float64 // bounds of x; infinite where there are none
	step      []float64 // increments of the differences that make the Jacobian; 0: a share of x
	central   bool      // differences to both sides: twice the work, two more digits
	tolerance float64   // the search ends where a step would bring the sum of squares down by less than its square
	budget    int       // evaluations of residuals at most
}

// found is where a search ended.
type found struct {
	x           []float64
	r           []float64
	jacobian    *Matrix
	sum         float64 // of squares
	evaluations int
	converged   bool
}

const (
	// firstReach is the first trust radius in the scaled norm of the start, the factor of Moré's program.
	firstReach = 10.0
	// accepted is the least share of the predicted fall for which a step is taken.
	accepted = 1e-4
	// increment of a difference as a share of x: the cube root of rounding serves differences to both sides.
	increment = 1e-5
	// rounding ends a search whose steps no longer move x.
	rounding = 1e-13
)

// search minimises by the Levenberg-Marquardt method in the trust-region form of Moré (1978), The Levenberg-Marquardt
// algorithm: implementation and theory, Lecture Notes in Mathematics 630, 105-116: steps p = -(J'J + l D'D)^-1 J'r whose
// scaled length |Dp| is held within a radius that grows and shrinks with the agreement of fall and prediction; D holds the
// largest column norms met so far. The damping l comes from the singular values of J D^-1, in which |Dp| is a plain sum.
//
// Bounds: a variable on its bound whose gradient points outwards is held; steps are cut at the bounds (projection). A point where the
// residuals cannot be computed counts as worse than any other, so that the radius shrinks away from it.
func search(p problem, start []float64) (found, error) {
	n := len(start)
	f := found{x: make([]float64, n), r: make([]float64, p.rows), jacobian: NewMatrix(p.rows, n)}
	for i := range f.x {
		f.x[i] = math.Max(p.low[i], math.Min(p.high[i], start[i]))
	}
	if err := p.residuals(f.x, f.r); err != nil {
		return f, err
	}
	f.evaluations++
	if f.sum = dot(f.r, f.r); !finite(f.sum) {
		return f, fault.New(fault.Numeric, "fit", words.Told("the model has no value at its start"), words.Told("Start from other parameters."))
	}
	scale := make([]float64, n)
	radius := 0.0
	trial, r := make([]float64, n), make([]float64, p.rows)
	for {
		if err := p.differences(&f); err != nil {
			return f, err
		}
		reach := 0.0
		for j := range n {
			scale[j] = math.Max(scale[j], f.jacobian.length(j))
			if scale[j] == 0 {
				scale[j] = 1
			}
			reach += square(scale[j] * f.x[j])
		}
		if radius == 0 {
			if radius = firstReach * math.Sqrt(reach); radius == 0 {
				radius = firstReach
			}
		}
		q := newQuadratic(&f, scale, p.free(&f))
		if q == nil || q.gradient() <= p.tolerance*1e-3*math.Sqrt(f.sum) {
			f.converged = true
			return f, nil
		}
		for improved := false; !improved; {
			if f.evaluations >= p.budget {
				return f, nil
			}
			step, length := q.step(radius)
			for j := range n {
				trial[j] = math.Max(p.low[j], math.Min(p.high[j], f.x[j]+step[j]))
				step[j] = trial[j] - f.x[j]
			}
			predicted := q.fall(step)
			f.evaluations++
			sum := math.Inf(1)
			if err := p.residuals(trial, r); err == nil {
				if sum = dot(r, r); math.IsNaN(sum) {
					sum = math.Inf(1)
				}
			}
			actual := f.sum - sum
			ratio := actual / predicted
			switch {
			case !(predicted > 0): // the bounds have turned the step uphill
				ratio, radius = 0, length/4
			case ratio < 0.25:
				shrink := 0.25
				if sum <= 100*f.sum { // where a parabola through fall and slope has its lowest point, within a tenth to a half
					slope := -q.slope(step)
					shrink = math.Max(0.1, math.Min(0.5, slope/(2*(slope-actual))))
				}
				radius = shrink * math.Min(radius, length)
			case ratio > 0.75 || length < 0.99*radius && ratio > 0.5:
				radius = math.Max(radius, 2*length)
			}
			least := rounding * norm(scale, f.x)
			small := length <= least || radius <= least
			flat := predicted <= p.tolerance*p.tolerance*f.sum
			if ratio > accepted {
				improved = true
				copy(f.x, trial)
				copy(f.r, r)
				f.sum = sum
			}
			if small || flat || f.sum == 0 {
				f.converged = true
				if improved {
					return f, p.differences(&f)
				}
				return f, nil
			}
		}
	}
}

// differences writes the Jacobian at f.x; a difference that would pass a bound is taken to the other side.
func (p *problem) differences(f *found) error {
	x := append([]float64(nil), f.x...)
	ahead, behind := make([]float64, p.rows), make([]float64, p.rows)
	for j := range x {
		h := p.step[j]
		if h == 0 {
			h = increment * cmp.Or(math.Abs(x[j]), 1e-3)
		}
		if x[j]+h > p.high[j] {
			h = -h
		}
		x[j] = f.x[j] + h
		h = x[j] - f.x[j] // what the machine made of it
		if err := p.residuals(x, ahead); err != nil {
			return err
		}
		f.evaluations++
		width := h
		base := f.r
		if back := f.x[j] - h; p.central && back >= p.low[j] && back <= p.high[j] {
			x[j] = back
			if err := p.residuals(x, behind); err != nil {
				return err
			}
			f.evaluations++
			base, width = behind, 2*h
		}
		for i := range ahead {
			f.jacobian.Set(i, j, (ahead[i]-base[i])/width)
		}
		x[j] = f.x[j]
	}
	return nil
}

// free says which variables may move: not those on a bound that the gradient pushes outwards.
func (p *problem) free(f *found) []bool {
	free := make([]bool, len(f.x))
	for j := range free {
		g := 0.0
		for i, r := range f.r {
			g += f.jacobian.At(i, j) * r
		}
		free[j] = !(f.x[j] <= p.low[j] && g > 0 || f.x[j] >= p.high[j] && g < 0)
	}
	return free
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

func norm(scale, x []float64) float64 {
	sum := 0.0
	for i, v := range x {
		sum += square(scale[i] * v)
	}
	return math.Sqrt(sum)
}

func square(v float64) float64 { return v * v }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
