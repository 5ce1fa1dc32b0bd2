package plan

import (
	"math"
	"testing"
)

// Ishigami and Homma (1990) with a = 7, b = 0.1, on -pi..pi; its indices in closed form are those of the table.
func ishigami(u []float64) float64 {
	x := func(i int) float64 { return math.Pi * (2*u[i] - 1) }
	return math.Sin(x(0)) + 7*math.Pow(math.Sin(x(1)), 2) + 0.1*math.Pow(x(2), 4)*math.Sin(x(0))
}

func TestIndicesOfIshigami(t *testing.T) {
	first, total := []float64{0.3139, 0.4424, 0}, []float64{0.5576, 0.4424, 0.2437}
	// Rows from a rough spread's to many. Four stated errors hold 24 estimates together 99 times out of 100 with seven
	// degrees of freedom (p = 0.005 for each, two-sided); half of the last digit is that of the table.
	for _, rows := range []int{64, 512, 4096} {
		indices, err := Indices(ishigami, 3, rows, 8, 1)
		if err != nil {
			t.Fatal(err)
		}
		for x, i := range indices {
			t.Logf("%d rows, x%d: first %.4f ± %.4f, total %.4f ± %.4f", rows, x+1, i.First, i.FirstError, i.Total, i.TotalError)
			if math.Abs(i.First-first[x]) > 4*i.FirstError+5e-5 || math.Abs(i.Total-total[x]) > 4*i.TotalError+5e-5 {
				t.Errorf("%d rows, x%d: first %.4f ± %.4f, want %.4f; total %.4f ± %.4f, want %.4f", rows, x+1, i.First, i.FirstError, first[x],
					i.Total, i.TotalError, total[x])
			}
			// 32768 rows in all settle both to a few thousandths: an error that large would hide a wrong formula.
			if rows == 4096 && (i.FirstError > 0.004 || i.TotalError > 0.004) {
				t.Errorf("errors of %.4f and %.4f", i.FirstError, i.TotalError)
			}
		}
	}
}

// Of a sum both indices are each term's share of the variance: 1, 4 and 9 parts of 14; an input that does nothing has none.
func TestIndicesOfSum(t *testing.T) {
	sum := func(u []float64) float64 { return u[0] + 2*u[1] + 3*u[2] + 100 }
	indices, err := Indices(sum, 4, 128, 8, 3)
	if err != nil {
		t.Fatal(err)
	}
	for x, want := range []float64{1.0 / 14, 4.0 / 14, 9.0 / 14, 0} {
		i := indices[x]
		if math.Abs(i.First-want) > 4*i.FirstError+1e-12 || math.Abs(i.Total-want) > 4*i.TotalError+1e-12 || i.FirstError > 0.02 {
			t.Errorf("x%d: %+v, want %.4f", x, i, want)
		}
	}
	constant, err := Indices(func([]float64) float64 { return 7 }, 2, 8, 4, 1)
	if err != nil || constant[0] != (Index{}) {
		t.Errorf("a constant has the indices %+v, %v", constant, err)
	}
}

// The interval holds the true chance about 95 times out of 100, from rare to nearly certain, for a boundary that lies askew in
// four inputs. 300 seeds: 95 % ± 1.3 %; below 91 % it promises too much, and that is what matters.
func TestChanceHolds(t *testing.T) {
	const inputs, rows, replicates, seeds = 4, 8, 8, 300
	for _, bound := range []float64{0.9, 1.6, 2.4, 3.1} {
		truth := irwinHall(inputs, bound)
		held, wide := 0, 0.0
		for seed := range seeds {
			hits := make([]float64, replicates)
			for r := range hits {
				d, err := newDesign(inputs, rows, uint64(seed), uint64(r))
				if err != nil {
					t.Fatal(err)
				}
				for _, u := range d.points[:2*rows] {
					if u[0]+u[1]+u[2]+u[3] < bound {
						hits[r] += 1.0 / (2 * rows)
					}
				}
			}
			c := chanceOf(hits, 2*rows)
			if c.Low <= truth && truth <= c.High {
				held++
			}
			wide += c.Error / seeds
			if !(0 <= c.Low && c.Low <= c.Value && c.Value <= c.High && c.High <= 1 && c.Error > 0) {
				t.Fatalf("%+v", c)
			}
		}
		plain := math.Sqrt(truth * (1 - truth) / (2 * rows * replicates))
		t.Logf("chance %.4f: held %d of %d, mean error %.4f, of independent samples %.4f", truth, held, seeds, wide, plain)
		if held < 91*seeds/100 {
			t.Errorf("chance %.4f: the interval held it %d times out of %d", truth, held, seeds)
		}
		if wide > 1.1*plain {
			t.Errorf("chance %.4f: error %.4f, more than the %.4f of independent samples", truth, wide, plain)
		}
	}
}

// irwinHall is the chance that the sum of n numbers, uniform in 0..1, is below x (Irwin 1927, Hall 1927).
func irwinHall(n int, x float64) float64 {
	sum, sign, choose, factorial := 0.0, 1.0, 1.0, 1.0
	for k := 0; float64(k) <= x && k <= n; k++ {
		sum += sign * choose * math.Pow(x-float64(k), float64(n))
		sign, choose = -sign, choose*float64(n-k)/float64(k+1)
	}
	for k := 2; k <= n; k++ {
		factorial *= float64(k)
	}
	return sum / factorial
}

// None and all: by the rule of three (Hanley and Lippman-Hand 1983) the truth lies within 3/n of them; Student's factor of eight
// replicates makes that 5.6/n.
func TestChanceOfNoneAndAll(t *testing.T) {
	none, all := chanceOf(make([]float64, 8), 16), chanceOf([]float64{1, 1, 1, 1, 1, 1, 1, 1}, 16)
	if none.Value != 0 || none.Low != 0 || none.High < 3.0/128 || none.High > 6.0/128 || none.Error <= 0 {
		t.Errorf("none: %+v", none)
	}
	if all.Value != 1 || all.High != 1 || math.Abs(1-all.Low-none.High) > 1e-12 || all.Error <= 0 {
		t.Errorf("all: %+v", all)
	}
	// Two replicates: the errors of 32 independent samples.
	if c := chanceOf([]float64{0.5, 0.5}, 16); math.Abs(c.Error-math.Sqrt(0.25/32)) > 1e-12 {
		t.Errorf("two replicates: %+v", c)
	}
}

// Tables of Student's distribution print 3.182, 2.365, 2.131 and 1.960 for 3, 7, 15 and infinitely many degrees of freedom.
func TestStudentFactor(t *testing.T) {
	for nu, want := range map[float64]float64{3: 3.182, 7: 2.365, 15: 2.131, math.Inf(1): 1.960} {
		if got := studentFactor(nu); math.Abs(got/want-1) > 0.01 {
			t.Errorf("%g degrees of freedom: %.4f, want %.3f", nu, got, want)
		}
	}
}
