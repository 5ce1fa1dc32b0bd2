package plan

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// design is one replicate of a sample from which chances and indices follow together: two independent sets of rows, A and B,
// and for each input the rows of A with that input taken from B (Saltelli et al. 2010, "Variance based sensitivity analysis of
// model output", Comput. Phys. Commun. 181, 259). A and B are the two halves of one scrambled sequence.
type design struct {
	inputs, rows int
	points       [][]float64 // in the unit cube: A, then B, then A with input 0, 1, ... of B
}

func newDesign(inputs, rows int, seed, replicate uint64) (design, error) {
	d := design{inputs: inputs, rows: rows}
	sequence, err := num.ScrambledSobol(2*inputs, seed, replicate)
	if err != nil {
		return d, err
	}
	both := make([][]float64, rows)
	for i := range both {
		both[i] = make([]float64, 2*inputs)
		sequence.Next(both[i])
	}
	for half := range 2 {
		for _, p := range both {
			d.points = append(d.points, p[half*inputs:(half+1)*inputs])
		}
	}
	for x := range inputs {
		for _, p := range both {
			mixed := append([]float64(nil), p[:inputs]...)
			mixed[x] = p[inputs+x]
			d.points = append(d.points, mixed)
		}
	}
	return d, nil
}

// indicesOf estimates the indices of every input from the outcomes of replicates, each in the order of a design's points: the
// first order after Saltelli et al. (2010), table 2 (b), the total order after Jansen (1999, "Analysis of variance designs
// for model output", Comput. Phys. Commun. 117, 35), both over all replicates together. The errors are those of the jackknife
// over replicates (Efron and Stein 1981), since replicates, other than the rows of one, are independent.
func indicesOf(inputs, rows int, outcomes [][]float64) []Index {
	indices := estimate(inputs, rows, outcomes, -1)
	n := float64(len(outcomes))
	if n < 2 {
		return indices
	}
	without := make([][]Index, len(outcomes))
	for r := range outcomes {
		without[r] = estimate(inputs, rows, outcomes, r)
	}
	for x := range indices {
		spread := func(of func(*Index) float64) float64 {
			mean, sum := 0.0, 0.0
			for r := range without {
				mean += of(&without[r][x]) / n
			}
			for r := range without {
				d := of(&without[r][x]) - mean
				sum += d * d
			}
			return math.Sqrt((n - 1) / n * sum)
		}
		indices[x].FirstError = spread(func(i *Index) float64 { return i.First })
		indices[x].TotalError = spread(func(i *Index) float64 { return i.Total })
	}
	return indices
}

// estimate takes the indices of all replicates but one. Outcomes that do not vary have indices of zero.
func estimate(inputs, rows int, outcomes [][]float64, but int) []Index {
	indices := make([]Index, inputs)
	n, mean, variance := 0.0, 0.0, 0.0
	for r, y := range outcomes {
		for i := 0; r != but && i < 2*rows; i++ {
			n++
			d := y[i] - mean
			mean += d / n
			variance += d * (y[i] - mean)
		}
	}
	if variance <= 1e-24*n*mean*mean { // rounding alone
		return indices
	}
	variance /= n
	for x := range indices {
		first, total := 0.0, 0.0
		for r, y := range outcomes {
			a, b, ab := y[:rows], y[rows:2*rows], y[(2+x)*rows:(3+x)*rows]
			for i := 0; r != but && i < rows; i++ {
				first += (b[i] - mean) * (ab[i] - a[i])
				total += (a[i] - ab[i]) * (a[i] - ab[i]) / 2
			}
		}
		indices[x].First, indices[x].Total = first/(n/2)/variance, total/(n/2)/variance
	}
	return indices
}

// Indices are the variance-based indices of a function on the unit cube, from rows*(inputs+2) values in each replicate. It
// is what a spread does with the model, open to functions whose indices are known.
//
// Errors: fault.Range where there are too many inputs.
func Indices(f func(u []float64) float64, inputs, rows, replicates, seed int) ([]Index, error) {
	outcomes := make([][]float64, replicates)
	for r := range outcomes {
		d, err := newDesign(inputs, rows, uint64(seed), uint64(r))
		if err != nil {
			return nil, err
		}
		for _, u := range d.points {
			outcomes[r] = append(outcomes[r], f(u))
		}
	}
	return indicesOf(inputs, rows, outcomes), nil
}
