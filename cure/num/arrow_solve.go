package num

import "math"

// Factorise prepares the solution of (shift I - J) x = b for the entries of J as they stand. It returns false when a
// pivot is zero or not finite; [Arrow.Solve] must not be called then.
func (a *Arrow) Factorise(shift float64) bool {
	return a.factoriseBand(shift) && a.factoriseBorder(shift) && a.factoriseTail(shift)
}

// reciprocal returns 1/p and whether it is a usable pivot.
func reciprocal(p float64) (float64, bool) {
	r := 1 / p
	return r, r != 0 && !math.IsInf(r, 0) && !math.IsNaN(r)
}

func (a *Arrow) factoriseBand(shift float64) bool {
	n := a.n
	if n == 0 {
		return true
	}
	lower, diag, upper := a.Lower[:n], a.Diag[:n], a.Upper[:n]
	low, inv, up := a.low[:n], a.inv[:n], a.up[:n]
	// The signs of shift I - J: off-diagonals are -Lower and -Upper.
	r, ok := reciprocal(shift - diag[0])
	if !ok {
		return false
	}
	inv[0], up[0], low[0] = r, -upper[0]*r, 0
	for i := 1; i < n; i++ {
		l := -lower[i]
		r, ok = reciprocal(shift - diag[i] - l*up[i-1])
		if !ok {
			return false
		}
		low[i] = l * inv[i-1]
		inv[i], up[i] = r, -upper[i]*r
	}
	return true
}

// solveBand overwrites x with B^-1 x.
func (a *Arrow) solveBand(x []float64) {
	n := a.n
	if n == 0 {
		return
	}
	x = x[:n]
	low, inv, up := a.low[:n], a.inv[:n], a.up[:n]
	v := x[0]
	for i := 1; i < n; i++ {
		v = x[i] - low[i]*v
		x[i] = v
	}
	v = x[n-1] * inv[n-1]
	x[n-1] = v
	for i := n - 2; i >= 0; i-- {
		v = x[i]*inv[i] - up[i]*v
		x[i] = v
	}
}

func (a *Arrow) factoriseBorder(shift float64) bool {
	m := a.m
	for c := range m {
		e := a.edge[c]
		for i, v := range a.Col[c] {
			e[i] = -v
		}
		a.solveBand(e)
	}
	s := a.schur
	for r := range m {
		for c := range m {
			s[r*m+c] = dot(a.Row[r], a.edge[c]) - a.Corner[r*m+c]
		}
		s[r*m+r] += shift
	}
	// Rows are of different units, so a pivot counts by its share of the largest entry of its row.
	weight := &a.weight
	for r := range m {
		largest := 0.0
		for _, v := range s[r*m : (r+1)*m] {
			largest = math.Max(largest, math.Abs(v))
		}
		weight[r] = 1 / largest
	}
	for p := range m {
		best := p
		for r := p + 1; r < m; r++ {
			if math.Abs(s[r*m+p])*weight[r] > math.Abs(s[best*m+p])*weight[best] {
				best = r
			}
		}
		a.pivot[p] = best
		if best != p {
			for c := range m {
				s[p*m+c], s[best*m+c] = s[best*m+c], s[p*m+c]
			}
			weight[p], weight[best] = weight[best], weight[p]
		}
		inv, ok := reciprocal(s[p*m+p])
		if !ok {
			return false
		}
		s[p*m+p] = inv
		for r := p + 1; r < m; r++ {
			l := s[r*m+p] * inv
			s[r*m+p] = l
			for c := p + 1; c < m; c++ {
				s[r*m+c] -= l * s[p*m+c]
			}
		}
	}
	return true
}

func (a *Arrow) factoriseTail(shift float64) bool {
	for t, d := range a.TailDiag {
		r, ok := reciprocal(shift - d)
		if !ok {
			return false
		}
		a.tailInv[t] = r
	}
	return true
}

// Solve overwrites b (length n+m+k: band, border, tail) with x.
func (a *Arrow) Solve(b []float64) {
	n, m := a.n, a.m
	lead, band, border, tail := b[:n+m], b[:n], b[n:n+m], b[n+m:n+m+a.k]
	a.solveBand(band)
	for r := range border {
		border[r] += dot(a.Row[r], band)
	}
	a.solveSchur(border)
	for c, v := range border {
		e := a.edge[c][:len(band)]
		for i := range band {
			band[i] -= e[i] * v
		}
	}
	idx, val := a.TailIdx, a.TailVal[:len(a.TailIdx)]
	p := 0
	for t := range tail {
		v := tail[t]
		for end := a.TailPtr[t+1]; p < end; p++ {
			v += val[p] * lead[idx[p]]
		}
		tail[t] = v * a.tailInv[t]
	}
}

func (a *Arrow) solveSchur(x []float64) {
	m, s := a.m, a.schur
	// The rows of L were swapped along with those of U, so every exchange comes before the first elimination.
	for p := range m {
		x[p], x[a.pivot[p]] = x[a.pivot[p]], x[p]
	}
	for r := 1; r < m; r++ {
		for c := range r {
			x[r] -= s[r*m+c] * x[c]
		}
	}
	for r := m - 1; r >= 0; r-- {
		for c := r + 1; c < m; c++ {
			x[r] -= s[r*m+c] * x[c]
		}
		x[r] *= s[r*m+r]
	}
}

// dot is the inner product; two sums hide the latency of the addition.
func dot(x, y []float64) float64 {
	y = y[:len(x)]
	var even, odd float64
	i := 0
	for ; i+1 < len(x); i += 2 {
		even += x[i] * y[i]
		odd += x[i+1] * y[i+1]
	}
	if i < len(x) {
		even += x[i] * y[i]
	}
	return even + odd
}
