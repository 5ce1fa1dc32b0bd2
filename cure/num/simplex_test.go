package num

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// Random programs with bounded unknowns and slack in every row, against gonum: the same least. Both stop at reduced costs of
// 1e-10 or less, and the numbers are of the order of one.
func TestSimplexAgainstGonum(t *testing.T) {
	dice := rand.New(rand.NewSource(3))
	for trial := range 500 {
		n, m := 1+dice.Intn(5), 1+dice.Intn(10)
		columns, rows := 2*n+m, n+m
		a, b, c := make([][]float64, rows), make([]float64, rows), make([]float64, columns)
		dense := mat.NewDense(rows, columns, nil)
		basic := make([]int, rows)
		for i := range rows {
			a[i] = make([]float64, columns)
			b[i], basic[i] = dice.Float64(), n+i
			a[i][n+i] = 1
			for j := range n {
				switch {
				case i == j: // a bound
					a[i][j] = 1
				case i >= n:
					a[i][j] = dice.NormFloat64()
				}
			}
			dense.SetRow(i, a[i])
		}
		if trial%5 == 0 {
			b[rows-1] = 0 // a degenerate start
		}
		for j := range n {
			c[j] = dice.NormFloat64()
		}
		want, _, err := lp.Simplex(c, dense, append([]float64(nil), b...), 1e-11, append([]int(nil), basic...))
		if err != nil {
			continue // gonum gives up on some degenerate ones
		}
		x, err := Simplex(c, a, append([]float64(nil), b...), basic)
		if err != nil {
			t.Fatalf("trial %d: %v", trial, err)
		}
		got := 0.0
		for k := range c {
			got += c[k] * x[k]
		}
		for i := range rows {
			sum := -b[i]
			for k, v := range dense.RawRowView(i) {
				sum += v * x[k]
			}
			if math.Abs(sum) > 1e-9 {
				t.Errorf("trial %d: row %d is off by %g", trial, i, sum)
			}
		}
		if math.Abs(got-want) > 1e-8*(1+math.Abs(want)) {
			t.Errorf("trial %d: least %.12g, gonum %.12g", trial, got, want)
		}
	}
}

// Beale's program (1955), from memory: it cycles for ever with Dantzig's choice of the column; the least is -1/20.
func TestSimplexDoesNotCycle(t *testing.T) {
	a := [][]float64{{0.25, -60, -0.04, 9, 1, 0, 0}, {0.5, -90, -0.02, 3, 0, 1, 0}, {0, 0, 1, 0, 0, 0, 1}}
	c := []float64{-0.75, 150, -0.02, 6, 0, 0, 0}
	x, err := Simplex(c, a, []float64{0, 0, 1}, []int{4, 5, 6})
	least := 0.0
	for k := range x {
		least += c[k] * x[k]
	}
	if err != nil || math.Abs(least+0.05) > 1e-12 {
		t.Errorf("least %g, %v", least, err)
	}
}

func TestSimplexRefuses(t *testing.T) {
	for what, c := range map[string]struct {
		a     [][]float64
		b     []float64
		basic []int
	}{
		"unbounded":  {[][]float64{{-1, 1}}, []float64{1}, []int{1}},
		"infeasible": {[][]float64{{1, 1}}, []float64{-1}, []int{1}},
		"singular":   {[][]float64{{1, 0}}, []float64{1}, []int{1}},
	} {
		if x, err := Simplex([]float64{-1, 0}, c.a, c.b, c.basic); err == nil {
			t.Errorf("%s: %v", what, x)
		}
	}
}
