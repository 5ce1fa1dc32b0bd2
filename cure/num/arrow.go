package num

import "strconv"

// MaxBorder is the largest number of border unknowns of an [Arrow].
const MaxBorder = 12

// Arrow solves (shift I - J) x = b for the Jacobian of a layered film:
//
//	    | B C 0 |   n band unknowns (cells in a row; each sees its two neighbours)
//	J = | R D 0 |   m border unknowns (0 <= m <= MaxBorder) that see and are seen by every cell
//	    | S   E |   k tail unknowns that nothing else depends on; each sees itself (E diagonal) and a few of the n+m
//
// The order of unknowns in b is band, border, tail. Fill the exported slices, call [Arrow.Factorise], then
// [Arrow.Solve] as often as needed; the entries of J are kept, so that another shift needs no refill.
//
// Method: LU of the tridiagonal block without pivoting, which is backward stable for a diagonally dominant matrix
// (Higham 2002, Accuracy and Stability of Numerical Algorithms, 2nd ed., theorem 9.12), the m x m Schur complement by LU
// with scaled partial pivoting, then the tail row by row. A factorisation costs about n(3 + 5m) operations, a solution
// n(5 + 4m) and two for every entry of the tail. Neither allocates.
type Arrow struct {
	// Lower[i] = dB_i/dx_(i-1), Diag[i] = dB_i/dx_i, Upper[i] = dB_i/dx_(i+1), each of length n. Lower[0] and
	// Upper[n-1] are not read.
	Lower, Diag, Upper []float64
	// Col[c][i] is the derivative of band equation i by border unknown c; m columns of length n.
	Col [][]float64
	// Row[r][i] is the derivative of border equation r by band unknown i; m rows of length n.
	Row [][]float64
	// Corner[r*m+c] is the derivative of border equation r by border unknown c.
	Corner []float64
	// TailDiag[t] is the derivative of tail equation t by its own unknown; length k.
	TailDiag []float64
	// TailVal[p], p from TailPtr[t] to TailPtr[t+1]-1, is the derivative of tail equation t by unknown TailIdx[p] of the
	// n+m leading ones. The pattern is fixed by the constructor.
	TailPtr, TailIdx []int
	TailVal          []float64

	n, m, k int
	low     []float64   // multipliers of the band's L
	inv     []float64   // reciprocal pivots of the band's U
	up      []float64   // superdiagonal of U times the reciprocal pivot of its row
	edge    [][]float64 // A_bb^-1 A_bc, m columns of length n
	schur   []float64   // LU of the Schur complement, row major, reciprocal pivots on its diagonal
	pivot   [MaxBorder]int
	weight  [MaxBorder]float64 // of the rows of schur, for choosing pivots
	tailInv []float64          // 1/(shift - TailDiag)
}

// NewArrow makes room for n band, m border and k tail unknowns; tail[t] lists the leading unknowns (0 to n+m-1) that tail
// equation t depends on, so len(tail) is k. All entries are zero. It panics when the sizes or indices make no sense,
// which is a mistake of the program, never of its user.
func NewArrow(n, m, k int, tail [][]int) *Arrow {
	if n < 0 || m < 0 || m > MaxBorder || k < 0 || len(tail) != k {
		panic("num: no arrow matrix has band " + strconv.Itoa(n) + ", border " + strconv.Itoa(m) + ", tail " +
			strconv.Itoa(k) + " with " + strconv.Itoa(len(tail)) + " tail rows")
	}
	a := &Arrow{n: n, m: m, k: k}
	a.Lower, a.Diag, a.Upper = make([]float64, n), make([]float64, n), make([]float64, n)
	a.low, a.inv, a.up = make([]float64, n), make([]float64, n), make([]float64, n)
	a.Col, a.Row, a.edge = columns(m, n), columns(m, n), columns(m, n)
	a.Corner, a.schur = make([]float64, m*m), make([]float64, m*m)
	a.TailDiag, a.tailInv = make([]float64, k), make([]float64, k)
	a.TailPtr = make([]int, k+1)
	for t, row := range tail {
		for _, j := range row {
			if j < 0 || j >= n+m {
				panic("num: tail row " + strconv.Itoa(t) + " names unknown " + strconv.Itoa(j))
			}
		}
		a.TailIdx = append(a.TailIdx, row...)
		a.TailPtr[t+1] = len(a.TailIdx)
	}
	a.TailVal = make([]float64, len(a.TailIdx))
	return a
}

func columns(m, n int) [][]float64 {
	c := make([][]float64, m)
	for i := range c {
		c[i] = make([]float64, n)
	}
	return c
}

// Dim returns the number of unknowns, n + m + k.
func (a *Arrow) Dim() int { return a.n + a.m + a.k }

// Clear sets every entry of J to zero; the tail's pattern stays.
func (a *Arrow) Clear() {
	clear(a.Lower)
	clear(a.Diag)
	clear(a.Upper)
	for c := range a.m {
		clear(a.Col[c])
		clear(a.Row[c])
	}
	clear(a.Corner)
	clear(a.TailDiag)
	clear(a.TailVal)
}
