package regress

import (
	"cmp"
	"math"
	"slices"
)

// Matrix is a dense matrix of a few columns, one for each parameter.
//
// The searches here have at most a dozen parameters. The library's matrices would bring all of BLAS and LAPACK into the program that a
// browser loads, 165 kB more compressed (measured), for what Jacobi's rotations do in forty lines.
type Matrix struct {
	rows, columns int
	data          []float64 // row by row
}

// NewMatrix is a matrix of zeros.
func NewMatrix(rows, columns int) *Matrix {
	return &Matrix{rows: rows, columns: columns, data: make([]float64, rows*columns)}
}

// Rows and Columns are the matrix's size.
func (m *Matrix) Rows() int    { return m.rows }
func (m *Matrix) Columns() int { return m.columns }

// At is the element of row i and column j, both from zero.
func (m *Matrix) At(i, j int) float64 { return m.data[i*m.columns+j] }

// Set writes an element.
func (m *Matrix) Set(i, j int, v float64) { m.data[i*m.columns+j] = v }

// clone is a copy.
func (m *Matrix) clone() *Matrix {
	return &Matrix{m.rows, m.columns, slices.Clone(m.data)}
}

// top is a copy of the first rows.
func (m *Matrix) top(rows int) *Matrix {
	return &Matrix{rows, m.columns, slices.Clone(m.data[:rows*m.columns])}
}

// column is the length of column j.
func (m *Matrix) length(j int) float64 {
	sum := 0.0
	for i := range m.rows {
		sum += square(m.At(i, j))
	}
	return math.Sqrt(sum)
}

// sweeps bounds the rounds of rotations; columns of a dozen parameters are orthogonal to rounding after five to eight.
const sweeps = 60

// rotate is the singular value decomposition by one-sided Jacobi rotations: it turns the columns of m against each other until they are
// orthogonal, and returns the turned matrix U S, the singular values S in falling order and the rotations V, with m = U S V'. Small
// singular values come out as exact as large ones.
//
// Source: Hestenes (1958), Inversion of matrices by biorthogonalization and related results, J. SIAM 6, 51-90; Demmel and Veselić (1992),
// Jacobi's method is more accurate than QR, SIAM J. Matrix Anal. Appl. 13, 1204-1245.
func rotate(m *Matrix) (us *Matrix, s []float64, v *Matrix) {
	us, v = m.clone(), NewMatrix(m.columns, m.columns)
	for j := range m.columns {
		v.Set(j, j, 1)
	}
	for range sweeps {
		turned := false
		for p := range m.columns {
			for q := p + 1; q < m.columns; q++ {
				turned = us.turn(v, p, q) || turned
			}
		}
		if !turned {
			break
		}
	}
	s = make([]float64, m.columns)
	order := make([]int, m.columns)
	for j := range s {
		s[j], order[j] = us.length(j), j
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(s[b], s[a]) })
	return us.ordered(order), pick(s, order), v.ordered(order)
}

// turn makes columns p and q of m orthogonal by a rotation, which v follows; it reports whether they were not yet.
func (m *Matrix) turn(v *Matrix, p, q int) bool {
	var alpha, beta, gamma float64
	for i := range m.rows {
		a, b := m.At(i, p), m.At(i, q)
		alpha, beta, gamma = alpha+a*a, beta+b*b, gamma+a*b
	}
	if math.Abs(gamma) <= 1e-15*math.Sqrt(alpha*beta) || gamma == 0 || math.IsNaN(gamma) {
		return false
	}
	zeta := (beta - alpha) / (2 * gamma)
	t := math.Copysign(1, zeta) / (math.Abs(zeta) + math.Sqrt(1+zeta*zeta))
	c := 1 / math.Sqrt(1+t*t)
	for _, x := range []*Matrix{m, v} {
		for i := range x.rows {
			a, b := x.At(i, p), x.At(i, q)
			x.Set(i, p, c*a-c*t*b)
			x.Set(i, q, c*t*a+c*b)
		}
	}
	return true
}

// ordered takes the columns in an order.
func (m *Matrix) ordered(order []int) *Matrix {
	out := NewMatrix(m.rows, m.columns)
	for i := range m.rows {
		for j, from := range order {
			out.Set(i, j, m.At(i, from))
		}
	}
	return out
}

func pick(v []float64, order []int) []float64 {
	out := make([]float64, len(order))
	for j, from := range order {
		out[j] = v[from]
	}
	return out
}

// Invert inverts a symmetric, positive matrix after scaling it to a unit diagonal; directions that it does not tell apart from zero get a
// very large variance instead of an error. Singular values and vectors of such a matrix are its own values and vectors.
func Invert(m *Matrix) *Matrix {
	k := m.columns
	d := make([]float64, k)
	for i := range d {
		if d[i] = math.Sqrt(m.At(i, i)); d[i] == 0 {
			d[i] = 1
		}
	}
	scaled := NewMatrix(k, k)
	for i := range k {
		for j := range k {
			scaled.Set(i, j, m.At(i, j)/(d[i]*d[j]))
		}
	}
	_, values, v := rotate(scaled)
	out := NewMatrix(k, k)
	for e, value := range values {
		value = math.Max(value, 1e-15)
		for i := range k {
			for j := range k {
				out.Set(i, j, out.At(i, j)+v.At(i, e)*v.At(j, e)/value/(d[i]*d[j]))
			}
		}
	}
	return out
}
