package num

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// FixedPoint finds x with g(x) = x by Anderson acceleration (Walker and Ni 2011, SIAM J. Numer. Anal. 49, 1715, algorithm
// AA, depth 1 to 3 with the least squares by normal equations): a plain iteration that remembers its last steps. g writes
// g(x) into out. The search ends when every component moves by no more than tol times scale + |x_i|, and fails after
// limit evaluations. It returns the image of the last x and the number of evaluations.
//
// A g that is computed to a tolerance jumps by about so much between places that are as good as one, and may jump past its own fixed
// point: noise says how much, on the scale of tol. Once the search is as near as that it ends, too, with the nearest image, where
// it has come no nearer by half in patience evaluations. 0 is a g without noise.
//
// Errors: what g returns; fault.Numeric when the limit is reached.
func FixedPoint(g func(x, out []float64) error, x []float64, tol, noise, scale float64, limit int) (image []float64, evaluations int, err error) {
	n := len(x)
	image = make([]float64, n)
	nearest, best, since := math.Inf(1), make([]float64, n), 0
	var dx, df [][]float64 // differences of steps and residuals, newest last
	var last, lastResidual []float64
	for evaluations = 1; evaluations <= limit; evaluations++ {
		if err := g(x, image); err != nil {
			return image, evaluations, err
		}
		residual, distance := make([]float64, n), 0.0
		for i := range residual {
			residual[i] = image[i] - x[i]
			distance = math.Max(distance, math.Abs(residual[i])/(scale+math.Abs(x[i])))
		}
		if distance <= tol {
			return image, evaluations, nil
		}
		since++
		if distance <= nearest/2 {
			since = 0
		}
		if distance < nearest {
			nearest = distance
			copy(best, image)
		}
		if nearest <= noise && since >= patience {
			return best, evaluations, nil
		}
		if last != nil {
			dx, df = append(dx, difference(x, last)), append(df, difference(residual, lastResidual))
			if len(dx) > memory {
				dx, df = dx[1:], df[1:]
			}
		}
		last, lastResidual = append([]float64(nil), x...), residual
		weights := leastSquares(df, residual)
		for i := range x {
			x[i] += residual[i]
			for k, w := range weights {
				x[i] -= w * (dx[k][i] + df[k][i])
			}
		}
	}
	return image, limit, fault.New(fault.Numeric, "fixed point", words.Told("no convergence in {limit} evaluations", "limit", limit),
		words.Told("Look for flows that nearly vanish."))
}

// patience is how many evaluations may bring a search no nearer before its noise is taken to have stopped it.
const patience = 3

// memory is how many steps the acceleration remembers.
const memory = 3

func difference(a, b []float64) []float64 {
	d := make([]float64, len(a))
	for i := range d {
		d[i] = a[i] - b[i]
	}
	return d
}

// leastSquares returns the weights that bring the residual nearest to the span of df, by Gram-Schmidt from the newest
// back; directions that hardly add anything are left out.
func leastSquares(df [][]float64, residual []float64) []float64 {
	m := len(df)
	weights := make([]float64, m)
	rest := append([]float64(nil), residual...)
	var basis [][]float64
	var mix [][]float64 // each basis vector in terms of df
	for k := m - 1; k >= 0; k-- {
		v, c := append([]float64(nil), df[k]...), make([]float64, m)
		c[k] = 1
		size := norm(v)
		for b := range basis {
			p := dot(v, basis[b])
			for i := range v {
				v[i] -= p * basis[b][i]
			}
			for i := range c {
				c[i] -= p * mix[b][i]
			}
		}
		left := norm(v)
		if left <= 1e-8*size || left == 0 {
			continue
		}
		for i := range v {
			v[i] /= left
		}
		for i := range c {
			c[i] /= left
		}
		basis, mix = append(basis, v), append(mix, c)
		p := dot(rest, v)
		for i := range c {
			weights[i] += p * c[i]
		}
		for i := range rest {
			rest[i] -= p * v[i]
		}
	}
	return weights
}

func norm(v []float64) float64 { return math.Sqrt(dot(v, v)) }
