package num

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// dense writes shift I - J as a full matrix, straight from the definition in the documentation of Arrow.
func (a *Arrow) dense(shift float64) *mat.Dense {
	n, m := a.n, a.m
	d := mat.NewDense(a.Dim(), a.Dim(), nil)
	add := func(r, c int, v float64) { d.Set(r, c, d.At(r, c)-v) }
	for i := range n {
		add(i, i, a.Diag[i])
		if i > 0 {
			add(i, i-1, a.Lower[i])
		}
		if i+1 < n {
			add(i, i+1, a.Upper[i])
		}
		for c := range m {
			add(i, n+c, a.Col[c][i])
			add(n+c, i, a.Row[c][i])
		}
	}
	for r := range m {
		for c := range m {
			add(n+r, n+c, a.Corner[r*m+c])
		}
	}
	for t := range a.k {
		add(n+m+t, n+m+t, a.TailDiag[t])
		for p := a.TailPtr[t]; p < a.TailPtr[t+1]; p++ {
			add(n+m+t, a.TailIdx[p], a.TailVal[p])
		}
	}
	for i := range a.Dim() {
		add(i, i, -shift)
	}
	return d
}

// randomArrow fills J with diagonally dominant rows (of negative diagonal) of scattered size. Tail patterns may name an
// unknown twice: the entries add up.
func randomArrow(rng *rand.Rand, n, m, k int) *Arrow {
	tail := make([][]int, k)
	for t := range tail {
		for range rng.IntN(min(4, n+m+1)) {
			tail[t] = append(tail[t], rng.IntN(n+m))
		}
	}
	a := NewArrow(n, m, k, tail)
	fillArrow(rng, a)
	return a
}

func fillArrow(rng *rand.Rand, a *Arrow) {
	n, m := a.n, a.m
	for i := range n {
		scale := math.Pow(10, 4*rng.Float64()-2)
		sum := 0.0
		pick := func() float64 { v := scale * rng.NormFloat64(); sum += math.Abs(v); return v }
		a.Lower[i], a.Upper[i] = pick(), pick()
		for c := range m {
			a.Col[c][i] = pick()
		}
		a.Diag[i] = -sum
	}
	for r := range m {
		sum := 0.0
		pick := func() float64 { v := rng.NormFloat64(); sum += math.Abs(v); return v }
		for i := range n {
			a.Row[r][i] = pick()
		}
		for c := range m {
			a.Corner[r*m+c] = pick()
		}
		a.Corner[r*m+r] = -sum
	}
	for t := range a.k {
		a.TailDiag[t] = -rng.Float64()
	}
	for p := range a.TailVal {
		a.TailVal[p] = rng.NormFloat64()
	}
}

// TestArrowAgainstDense compares with gonum's LU of the full matrix, at two shifts of the same entries. The matrices have
// condition numbers up to 1e5 or so, hence 1e-10 of the largest component.
func TestArrowAgainstDense(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	sizes := [][3]int{{1, 0, 0}, {0, 1, 0}, {0, 3, 2}, {1, 1, 1}, {2, 0, 3}, {48, 2, 54}, {7, MaxBorder, 0}}
	for range 200 {
		sizes = append(sizes, [3]int{1 + rng.IntN(30), rng.IntN(MaxBorder + 1), rng.IntN(20)})
	}
	for _, z := range sizes {
		a := randomArrow(rng, z[0], z[1], z[2])
		for _, shift := range []float64{0.1, 37} {
			if !a.Factorise(shift) {
				t.Fatalf("size %v, shift %v: refused", z, shift)
			}
			b := make([]float64, a.Dim())
			for i := range b {
				b[i] = rng.NormFloat64()
			}
			var want mat.VecDense
			if err := want.SolveVec(a.dense(shift), mat.NewVecDense(len(b), append([]float64(nil), b...))); err != nil {
				t.Fatal(err)
			}
			a.Solve(b)
			large := mat.Norm(&want, math.Inf(1))
			for i, v := range b {
				if !(math.Abs(v-want.AtVec(i)) <= 1e-10*large) {
					t.Fatalf("size %v, shift %v, unknown %d: got %v, want %v", z, shift, i, v, want.AtVec(i))
				}
			}
		}
	}
}

// TestArrowPivots: the Schur complement needs its row exchanges, here with a zero in its corner.
func TestArrowPivots(t *testing.T) {
	a := NewArrow(0, 3, 0, nil)
	copy(a.Corner, []float64{1, -2, 0, -3, 1, -1, 0, -4, 1}) // I - J = [0 2 0; 3 0 1; 0 4 0] is singular
	if a.Factorise(1) {
		t.Error("a singular corner must be refused")
	}
	a.Corner[8] = -1 // I - J = [0 2 0; 3 0 1; 0 4 2]
	if !a.Factorise(1) {
		t.Fatal("refused")
	}
	b := []float64{2, 5, 10} // x = (2/3, 1, 3)
	a.Solve(b)
	for i, want := range []float64{2.0 / 3, 1, 3} {
		if math.Abs(b[i]-want) > 1e-15 {
			t.Errorf("x[%d] = %v, want %v", i, b[i], want)
		}
	}
}

func TestArrowRefuses(t *testing.T) {
	for name, spoil := range map[string]func(a *Arrow){
		"zero band pivot":    func(a *Arrow) { a.Diag[0] = 1 },
		"NaN in the band":    func(a *Arrow) { a.Lower[2] = math.NaN() },
		"infinite diagonal":  func(a *Arrow) { a.Diag[1] = math.Inf(-1) },
		"NaN in the border":  func(a *Arrow) { a.Row[0][1] = math.NaN() },
		"zero border pivot":  func(a *Arrow) { a.Corner[0] = 1 },
		"zero tail pivot":    func(a *Arrow) { a.TailDiag[0] = 1 },
		"infinite tail":      func(a *Arrow) { a.TailDiag[0] = math.Inf(1) },
		"NaN in the tail":    func(a *Arrow) { a.TailDiag[0] = math.NaN() },
		"NaN in the corner":  func(a *Arrow) { a.Corner[0] = math.NaN() },
		"infinite last band": func(a *Arrow) { a.Diag[2] = math.Inf(1) },
	} {
		a := NewArrow(3, 1, 1, [][]int{{0, 3}})
		spoil(a)
		if a.Factorise(1) {
			t.Errorf("%s: accepted", name)
		}
		a.Clear()
		b := []float64{1, 2, 3, 4, 5}
		if !a.Factorise(2) {
			t.Fatalf("%s: refused after Clear", name)
		}
		if a.Solve(b); b[3] != 2 || b[4] != 2.5 {
			t.Errorf("%s: Clear left something: %v", name, b)
		}
	}
}

func TestArrowMisuse(t *testing.T) {
	for _, c := range []struct {
		n, m, k int
		tail    [][]int
	}{{-1, 0, 0, nil}, {1, MaxBorder + 1, 0, nil}, {1, 1, 1, nil}, {1, 1, 1, [][]int{{2}}}, {1, 1, 1, [][]int{{-1}}}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%+v: no panic", c)
				}
			}()
			NewArrow(c.n, c.m, c.k, c.tail)
		}()
	}
}

func TestArrowAllocates(t *testing.T) {
	a := randomArrow(rand.New(rand.NewPCG(5, 6)), 48, 2, 54)
	b := make([]float64, a.Dim())
	if got := testing.AllocsPerRun(10, func() { a.Factorise(1); a.Solve(b) }); got != 0 {
		t.Errorf("%v allocations", got)
	}
}

// The size of the film: 48 cells, film and part temperature, a conversion per cell and six sums.
func BenchmarkArrowFactorise(b *testing.B) {
	a := randomArrow(rand.New(rand.NewPCG(5, 6)), 48, 2, 54)
	b.ReportAllocs()
	for b.Loop() {
		a.Factorise(1)
	}
}

func BenchmarkArrowSolve(b *testing.B) {
	a := randomArrow(rand.New(rand.NewPCG(5, 6)), 48, 2, 54)
	a.Factorise(1)
	x := make([]float64, a.Dim())
	b.ReportAllocs()
	for b.Loop() {
		for i := range x {
			x[i] = 1
		}
		a.Solve(x)
	}
}
