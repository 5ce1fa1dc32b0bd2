package ode

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// tree is a rooted tree; its value is the list of the subtrees at its root.
type tree []tree

// trees returns all rooted trees with n vertices.
func trees(n int) []tree {
	var out []tree
	for _, f := range forests(n-1, n-1) {
		out = append(out, tree(f))
	}
	return out
}

// forests returns the multisets of trees with n vertices in all, none larger than most.
func forests(n, most int) [][]tree {
	if n == 0 {
		return [][]tree{nil}
	}
	var out [][]tree
	for size := min(n, most); size >= 1; size-- {
		kinds := trees(size)
		// Choose how many trees of this size, then which, then the rest from smaller ones.
		for count := 1; count*size <= n; count++ {
			for _, pick := range multisets(kinds, count, 0) {
				for _, rest := range forests(n-count*size, size-1) {
					out = append(out, append(append([]tree{}, pick...), rest...))
				}
			}
		}
	}
	return out
}

func multisets(kinds []tree, count, from int) [][]tree {
	if count == 0 {
		return [][]tree{nil}
	}
	var out [][]tree
	for i := from; i < len(kinds); i++ {
		for _, rest := range multisets(kinds, count-1, i) {
			out = append(out, append([]tree{kinds[i]}, rest...))
		}
	}
	return out
}

func (t tree) order() int {
	n := 1
	for _, s := range t {
		n += s.order()
	}
	return n
}

// density is gamma(t): the product of the orders of all subtrees.
func (t tree) density() float64 {
	d := float64(t.order())
	for _, s := range t {
		d *= s.density()
	}
	return d
}

// classical is a Rosenbrock method in Hairer and Wanner's coefficients, recovered from its tableau:
// Gamma = (I/gamma - C)^-1, alpha = A Gamma, b = m Gamma, beta = alpha + Gamma.
type classical struct {
	s                   int
	alpha, gamma, beta  *mat.Dense
	b, embedded, weight []float64 // weight: m in terms of u
}

func recoverClassical(tb Tableau) classical {
	s := tb.Stages
	inv := mat.NewDense(s, s, nil)
	a := mat.NewDense(s, s, nil)
	for i := range s {
		inv.Set(i, i, 1/tb.Gamma)
		for j := range i {
			inv.Set(i, j, -tb.C[i][j])
			a.Set(i, j, tb.A[i][j])
		}
	}
	c := classical{s: s, alpha: new(mat.Dense), gamma: new(mat.Dense), beta: new(mat.Dense)}
	if err := c.gamma.Inverse(inv); err != nil {
		if _, poor := err.(mat.Condition); !poor {
			panic(err)
		}
	}
	c.alpha.Mul(a, c.gamma)
	c.beta.Add(c.alpha, c.gamma)
	hat := append([]float64(nil), tb.A[s-1]...)
	c.weight = append([]float64(nil), hat...)
	c.weight[s-1]++
	c.b, c.embedded = c.inStages(c.weight), c.inStages(hat)
	return c
}

// inStages turns weights of u into weights of k = f + ...: u = Gamma k.
func (c classical) inStages(w []float64) []float64 {
	var v mat.VecDense
	v.MulVec(c.gamma.T(), mat.NewVecDense(c.s, w))
	return v.RawVector().Data
}

// phi returns the elementary weights of the stages: beta at a vertex with one branch, alpha at one with more (Hairer and
// Wanner 1996, section IV.7, theorem 7.4).
func (c classical) phi(t tree) []float64 {
	out := make([]float64, c.s)
	for i := range out {
		out[i] = 1
	}
	m := c.alpha
	if len(t) == 1 {
		m = c.beta
	}
	for _, sub := range t {
		var v mat.VecDense
		v.MulVec(m, mat.NewVecDense(c.s, c.phi(sub)))
		for i := range out {
			out[i] *= v.AtVec(i)
		}
	}
	return out
}

func inner(x, y []float64) float64 {
	sum := 0.0
	for i, v := range x {
		sum += v * y[i]
	}
	return sum
}

// worst returns the largest residual of the order conditions at the given order for weights b at the share x of the step.
func (c classical) worst(b []float64, order int, x float64) float64 {
	worst := 0.0
	for _, t := range trees(order) {
		worst = math.Max(worst, math.Abs(inner(b, c.phi(t))-math.Pow(x, float64(order))/t.density()))
	}
	return worst
}

func TestTreeCounts(t *testing.T) {
	// OEIS A000081, the number of rooted trees with n vertices.
	for n, want := range map[int]int{1: 1, 2: 1, 3: 2, 4: 4, 5: 9, 6: 20} {
		if got := len(trees(n)); got != want {
			t.Errorf("%d vertices: %d trees, want %d", n, got, want)
		}
	}
}

// roundOff bounds the residual of a condition that holds: coefficients of up to 150 are printed to 16 digits, and a
// condition is a sum of products of up to five of them.
const roundOff = 1e-13

// TestOrderConditions checks all conditions up to the claimed order of the method, of the embedded solution and of the
// dense output, and that the next order fails, so that the check can.
func TestOrderConditions(t *testing.T) {
	for _, tb := range []Tableau{Rodas4P2(), Rodas5P()} {
		c := recoverClassical(tb)
		check := func(what string, b []float64, claimed int, x float64) {
			for p := 1; p <= claimed; p++ {
				if r := c.worst(b, p, x); r > roundOff {
					t.Errorf("%s %s: order %d has a residual of %.2g", tb.Name, what, p, r)
				}
			}
			if r := c.worst(b, claimed+1, x); r < 1e-6 {
				t.Errorf("%s %s: order %d holds too (%.2g): the claim or the check is wrong", tb.Name, what, claimed+1, r)
			}
		}
		check("solution", c.b, tb.Order, 1)
		check("embedded", c.embedded, tb.Embedded, 1)
		for _, x := range []float64{0.1, 0.35, 0.5, 0.8} {
			w := make([]float64, c.s)
			for j := range w {
				sum := 0.0
				for r := len(tb.H) - 1; r >= 0; r-- {
					sum = sum*x + tb.H[r][j]
				}
				w[j] = x * (c.weight[j] + (1-x)*sum)
			}
			check("dense output", c.inStages(w), tb.DenseOrder, x)
		}
	}
}

// TestConsistency: the times and time factors are the row sums of alpha and Gamma, the method is stiffly accurate
// (b = last row of beta, last alpha 1) and L-stable at infinity: R = 1 - b beta^-1 1 = 0, for the embedded solution too.
func TestConsistency(t *testing.T) {
	for _, tb := range []Tableau{Rodas4P2(), Rodas5P()} {
		c := recoverClassical(tb)
		s := c.s
		for i := range s {
			if d := inner(c.alpha.RawRowView(i), ones(s)) - tb.Alpha[i]; math.Abs(d) > roundOff {
				t.Errorf("%s: alpha %d off by %.2g", tb.Name, i+1, d)
			}
			if d := inner(c.gamma.RawRowView(i), ones(s)) - tb.D[i]; math.Abs(d) > roundOff {
				t.Errorf("%s: gamma %d off by %.2g", tb.Name, i+1, d)
			}
			if d := c.beta.At(s-1, i) - c.b[i]; math.Abs(d) > roundOff {
				t.Errorf("%s: b %d is not in the last row of beta, off by %.2g", tb.Name, i+1, d)
			}
			// The embedded solution is the argument of the last stage, so stage s-1 is stiffly accurate for it.
			if d := c.beta.At(s-2, i) - c.embedded[i]; math.Abs(d) > roundOff {
				t.Errorf("%s: embedded b %d off by %.2g", tb.Name, i+1, d)
			}
		}
		if r := stability(c, c.b, math.Inf(-1)); math.Abs(r) > roundOff {
			t.Errorf("%s: R(infinity) = %.2g", tb.Name, r)
		}
		if r := stability(c, c.embedded, math.Inf(-1)); math.Abs(r) > roundOff {
			t.Errorf("%s: embedded R(infinity) = %.2g", tb.Name, r)
		}
	}
}

// TestStableOnNegativeAxis: |R(z)| <= 1 on the whole negative real axis, where the film lives.
func TestStableOnNegativeAxis(t *testing.T) {
	for _, tb := range []Tableau{Rodas4P2(), Rodas5P()} {
		c := recoverClassical(tb)
		for e := -6.0; e <= 12; e += 0.05 {
			z := -math.Pow(10, e)
			if r := stability(c, c.b, z); math.Abs(r) > 1 {
				t.Errorf("%s: R(%g) = %v", tb.Name, z, r)
			}
		}
	}
}

// stability is R(z) = 1 + z b (I - z beta)^-1 1.
func stability(c classical, b []float64, z float64) float64 {
	m := mat.NewDense(c.s, c.s, nil)
	m.Scale(-1, c.beta)
	if !math.IsInf(z, 0) {
		for i := range c.s {
			m.Set(i, i, m.At(i, i)+1/z)
		}
	}
	var v mat.VecDense
	if err := v.SolveVec(m, mat.NewVecDense(c.s, ones(c.s))); err != nil {
		if _, poor := err.(mat.Condition); !poor {
			panic(err)
		}
	}
	return 1 + inner(b, v.RawVector().Data)
}

func ones(n int) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = 1
	}
	return x
}

func TestTableauShape(t *testing.T) {
	for name, spoil := range map[string]func(*Tableau){
		"stages":   func(tb *Tableau) { tb.Stages = maxStages + 1 },
		"rows":     func(tb *Tableau) { tb.A = tb.A[1:] },
		"length":   func(tb *Tableau) { tb.C[2] = tb.C[2][1:] },
		"dense":    func(tb *Tableau) { tb.H = nil },
		"gamma":    func(tb *Tableau) { tb.Gamma = math.NaN() },
		"embedded": func(tb *Tableau) { tb.Embedded = 9 },
	} {
		tb := Rodas4P2()
		if err := tb.check(); err != nil {
			t.Fatal(err)
		}
		if spoil(&tb); tb.check() == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}
