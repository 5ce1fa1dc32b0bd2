package plan

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// The search for the least: sequential linear programming (Griffith and Stewart 1961, "A nonlinear programming technique for
// the optimization of continuous processing systems", Management Science 7, 379) inside a trust region. Energy and shares are
// close to straight in every input over a tenth of a usual range, and the best settings mostly lie where as many criteria and
// bounds meet as there are variables: a linear program finds such a corner at once, and its slopes come from runs that can
// be judged side by side. A simplex that crawls (Nelder and Mead) takes its runs one after the other and knows no bounds.

// landing is a setting that was judged, in unit coordinates of the free variables.
type landing struct {
	u       []float64
	outcome Outcome
	value   float64   // of the objective, as a multiple of the scale; infinite where there is none
	shares  []float64 // by criterion
}

// The trust region, as shares of the ranges allowed: at the start, at most, and where the search ends.
const (
	firstRadius = 0.15
	mostRadius  = 0.5
	lastRadius  = 1e-3
)

const (
	slopeStep  = 0.01 // for differences: shares are good for 1e-4, their slopes then for a hundredth
	spared     = 1e-3 // of a share that is left below 1, so that a straight line's error does not break the criterion
	costly     = 10   // multiples of the objective that a whole share of violation counts; a dwell cut by 1 % saves 1 % at most for 1 % of a share
	mostWalks  = 25   // steps of one search
	worthwhile = 1e-5 // least gain of a step, as a share of the objective
	idleSteps  = 2    // steps of little gain in a row that end a search
)

// violation is by how much the worst share with its reserve passes what is aimed at.
func (l *landing) violation(reserve []float64) float64 {
	worst := 0.0
	for i, s := range l.shares {
		worst = math.Max(worst, s+reserve[i]-(1-spared))
	}
	return worst
}

// merit is what a step has to lower.
func (l *landing) merit(reserve []float64) float64 {
	if l.shares == nil || math.IsInf(l.value, 1) {
		return math.Inf(1)
	}
	return l.value + costly*l.violation(reserve)
}

// descend walks from a landing to the least that it finds, telling each improvement.
func (k *seeker) descend(at landing, reserve []float64) (landing, error) {
	radius, idle := firstRadius, 0
	for range mostWalks {
		value, shares, err := k.slopes(&at)
		if err != nil {
			return at, err
		}
		// Three regions at once: the pool judges them side by side, and one of them fits.
		var tries [][]float64
		for _, r := range []float64{radius, radius / 3, radius / 9} {
			if u := linearStep(&at, value, shares, reserve, r); u != nil {
				tries = append(tries, u)
			}
		}
		landed, err := k.land(tries)
		if err != nil {
			return at, err
		}
		// Criteria bend, and a step along one leaves it by the square of its length. Beyond 1 shares do not say by how much, so
		// several ways back are tried.
		tries = nil
		for i := range landed {
			tries = append(tries, waysBack(&landed[i], shares, reserve, apart(landed[i].u, at.u))...)
		}
		back, err := k.land(tries)
		if err != nil {
			return at, err
		}
		landed = append(landed, back...)
		best := -1
		for i := range landed {
			if m := landed[i].merit(reserve); m < at.merit(reserve)-worthwhile && (best < 0 || m < landed[best].merit(reserve)) {
				best = i
			}
		}
		if best < 0 {
			if radius /= 27; radius < lastRadius {
				return at, nil
			}
			continue
		}
		gained := at.merit(reserve) - landed[best].merit(reserve)
		radius = math.Min(mostRadius, 2*apart(landed[best].u, at.u)) // as far again and a little
		at = landed[best]
		k.improved(&at, reserve)
		if idle++; gained > 20*worthwhile {
			idle = 0
		}
		if idle == idleSteps {
			return at, nil
		}
	}
	return at, nil
}

// waysBack are points beside a landing that breaks a criterion, a few lengths towards where it should hold by its slopes.
func waysBack(at *landing, shares [][]float64, reserve []float64, step float64) [][]float64 {
	worst := -1
	for i, s := range at.shares {
		if s+reserve[i] > 1-spared && (worst < 0 || s+reserve[i] > at.shares[worst]+reserve[worst]) {
			worst = i
		}
	}
	if worst < 0 {
		return nil
	}
	square := 0.0
	for j := range at.u {
		square += shares[j][worst] * shares[j][worst]
	}
	if square == 0 {
		return nil
	}
	var ways [][]float64
	for _, share := range []float64{0.02, 0.06, 0.2} { // of the step, as a change of the share
		u := append([]float64(nil), at.u...)
		for j := range u {
			u[j] = math.Min(1, math.Max(0, u[j]-share*step*shares[j][worst]/square))
		}
		ways = append(ways, u)
	}
	return ways
}

// slopes are the differences of objective and shares for each free variable, over what validation and bounds allow.
func (k *seeker) slopes(at *landing) (value []float64, shares [][]float64, err error) {
	n := len(at.u)
	var ends [][]float64
	for j := range n {
		for _, d := range []float64{-slopeStep, slopeStep} {
			u := append([]float64(nil), at.u...)
			u[j] = math.Min(math.Max(u[j]+d, 0), 1)
			ends = append(ends, u)
		}
	}
	landed, err := k.land(ends)
	if err != nil {
		return nil, nil, err
	}
	value, shares = make([]float64, n), make([][]float64, n)
	for j := range n {
		shares[j] = make([]float64, len(at.shares))
		low, high := &landed[2*j], &landed[2*j+1]
		if low.shares == nil || math.IsInf(low.value, 1) {
			low = at
		}
		if high.shares == nil || math.IsInf(high.value, 1) {
			high = at
		}
		width := high.u[j] - low.u[j]
		if width <= 0 {
			continue
		}
		value[j] = (high.value - low.value) / width
		for i := range shares[j] {
			// Beyond 1 a share counts on another scale: a difference across it is none.
			from, to := low, high
			good := at.shares[i] <= 1
			if lowGood, highGood := low.shares[i] <= 1, high.shares[i] <= 1; lowGood != highGood {
				if lowGood == good && low.u[j] < at.u[j] {
					to = at
				} else if high.u[j] > at.u[j] {
					from = at
				}
			}
			shares[j][i] = (to.shares[i] - from.shares[i]) / (to.u[j] - from.u[j])
		}
	}
	return value, shares, nil
}

// linearStep solves the linear program of one step within a radius: least objective, with any violation that cannot be avoided
// as a cost. It returns nil where the program fails or does not move.
//
// With y the way from the lower corner of the region and t the violation: y + s = width, slope·y - t + s = room, all >= 0.
func linearStep(at *landing, value []float64, shares [][]float64, reserve []float64, radius float64) []float64 {
	n, m := len(at.u), len(at.shares)
	low, width := make([]float64, n), make([]float64, n)
	for j := range n {
		low[j] = math.Max(0, at.u[j]-radius)
		width[j] = math.Min(1, at.u[j]+radius) - low[j]
	}
	columns, rows := 2*n+1+m, n+m
	a, b, c := make([][]float64, rows), make([]float64, rows), make([]float64, columns)
	for row := range a {
		a[row] = make([]float64, columns)
	}
	basic := make([]int, rows)
	violation := 2 * n
	c[violation] = costly
	for j := range n {
		c[j] = value[j]
		a[j][j], a[j][n+j] = 1, 1
		b[j], basic[j] = width[j], n+j
	}
	worst := -1
	for i := range m {
		row := n + i
		b[row] = 1 - spared - reserve[i] - at.shares[i]
		for j := range n {
			a[row][j] = shares[j][i]
			b[row] -= shares[j][i] * (low[j] - at.u[j])
		}
		a[row][violation], a[row][violation+1+i] = -1, 1
		basic[row] = violation + 1 + i
		if b[row] < 0 && (worst < 0 || b[row] < b[worst]) {
			worst = row
		}
	}
	if worst >= 0 {
		basic[worst] = violation // as large as the worst row needs: then every other has room
	}
	y, err := num.Simplex(c, a, b, basic)
	if err != nil {
		return nil
	}
	u, moved := make([]float64, n), 0.0
	for j := range n {
		u[j] = math.Min(1, math.Max(0, low[j]+y[j]))
		moved = math.Max(moved, math.Abs(u[j]-at.u[j]))
	}
	if moved < 1e-6 {
		return nil
	}
	return u
}
