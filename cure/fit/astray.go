package fit

import (
	"math"

	"github.com/drywright/drywright/cure/result"
)

const (
	// astrayAt is how many standard deviations too few runs of one sign there are before the curve is said to leave its points;
	// by chance once in a thousand trials.
	astrayAt = 3.0
	// astrayShare is the scatter, as a share of what the readings run through, below which nobody need care.
	astrayShare = 0.02
)

// astray tells whether the residuals keep to one side of the curve for long stretches, series by series, by the runs test of Wald
// and Wolfowitz (1940, On a test whether two samples are from the same population, Ann. Math. Statist. 11, 147-162), and what
// share of the readings' range their scatter is. Readings that follow each other within a series are in the order of x.
func astray(points []result.FitPoint) (share float64, yes bool) {
	runs, expected, variance, sum := 0.0, 0.0, 0.0, 0.0
	least, most := math.Inf(1), math.Inf(-1)
	for from := 0; from < len(points); {
		above, below, changes := 0.0, 0.0, 1.0
		to := from
		for ; to < len(points) && points[to].Series == points[from].Series; to++ {
			p := &points[to]
			sum += p.Residual * p.Residual
			least, most = math.Min(least, p.Y), math.Max(most, p.Y)
			if p.Residual > 0 {
				above++
			} else {
				below++
			}
			if to > from && (p.Residual > 0) != (points[to-1].Residual > 0) {
				changes++
			}
		}
		if n := above + below; n > 1 {
			both := 2 * above * below
			runs += changes
			expected += 1 + both/n
			variance += both * (both - n) / (n * n * (n - 1))
		}
		from = to
	}
	if !(most > least) || variance <= 0 {
		return 0, false
	}
	share = math.Sqrt(sum/float64(len(points))) / (most - least)
	return share, share > astrayShare && (runs-expected)/math.Sqrt(variance) < -astrayAt
}
