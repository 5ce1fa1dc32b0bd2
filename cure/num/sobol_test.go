package num

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// points takes the first n of a sequence.
func points(t *testing.T, s *Sobol, err error, dimensions, n int) [][]float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	all := make([][]float64, n)
	for i := range all {
		all[i] = make([]float64, dimensions)
		s.Next(all[i])
	}
	return all
}

// The first points as Bratley and Fox (1988) print them, in Gray code order, from memory; the table of the validation holds
// forty dimensions.
func TestSobolBegins(t *testing.T) {
	s, err := NewSobol(3)
	got := points(t, s, err, 3, 8)
	for i, want := range [][]float64{{0, 0, 0}, {.5, .5, .5}, {.75, .25, .25}, {.25, .75, .75}, {.375, .375, .625}, {.875, .875, .125},
		{.625, .125, .875}, {.125, .625, .375}} {
		for d := range want {
			if math.Abs(got[i][d]-want[d]) > 0x1p-32 { // the middle of the cell
				t.Errorf("point %d is %v, want %v", i, got[i], want)
			}
		}
	}
}

// A (t, m, s)-net in base 2: each box whose sides are powers of a half, of volume 2^(t-m), holds 2^t of the 2^m points. For
// Sobol's sequence t is the sum of the polynomials' degrees, each less one (Sobol' 1967). Scrambling keeps it, and so does
// starting at a multiple of 2^m.
func TestSobolIsANet(t *testing.T) {
	const m = 7
	degrees := []int{1, 1, 2, 3, 3}
	for dimensions := 1; dimensions <= len(degrees); dimensions++ {
		quality := 0
		for _, e := range degrees[:dimensions] {
			quality += e - 1
		}
		plain, err := NewSobol(dimensions)
		nets := map[string][][]float64{"plain": points(t, plain, err, dimensions, 1<<m)}
		nets["second"] = points(t, plain, nil, dimensions, 1<<m)
		for r := range uint64(3) {
			s, err := ScrambledSobol(dimensions, 5, r)
			nets[fmt.Sprint("scrambled ", r)] = points(t, s, err, dimensions, 1<<m)
		}
		for name, net := range nets {
			boxes(dimensions, m-quality, func(sides []int) {
				counts := map[int]int{}
				for _, p := range net {
					box := 0
					for d, side := range sides {
						box = box<<side | int(p[d]*float64(int(1)<<side))
					}
					counts[box]++
				}
				for box, n := range counts {
					if n != 1<<quality {
						t.Errorf("%s, %d dimensions, sides %v: box %d holds %d points, want %d", name, dimensions, sides, box, n, 1<<quality)
					}
				}
			})
		}
	}
}

// boxes lists all ways to share out a number of halvings among sides.
func boxes(dimensions, halvings int, visit func(sides []int)) {
	sides := make([]int, dimensions)
	var share func(d, left int)
	share = func(d, left int) {
		if d == dimensions-1 {
			sides[d] = left
			visit(sides)
			return
		}
		for sides[d] = 0; sides[d] <= left; sides[d]++ {
			share(d+1, left-sides[d])
		}
	}
	share(0, halvings)
}

// Seeds and replicates give other points, the same ones the same; each coordinate is uniform over replicates.
func TestScrambling(t *testing.T) {
	const dimensions, replicates = MaxSobol, 2000
	take := func(seed, replicate uint64) []float64 {
		s, err := ScrambledSobol(dimensions, seed, replicate)
		return points(t, s, err, dimensions, 3)[2]
	}
	if a, b := take(1, 2), take(1, 2); a[0] != b[0] || a[dimensions-1] != b[dimensions-1] {
		t.Error("the same seed gives other points")
	}
	if a, b, c := take(1, 2), take(2, 1), take(1, 3); a[0] == b[0] || a[0] == c[0] {
		t.Error("another seed or replicate gives the same points")
	}
	sum, product := make([]float64, dimensions), 0.0
	for r := range uint64(replicates) {
		x := take(1, r)
		for d, v := range x {
			if !(v > 0 && v < 1) {
				t.Fatalf("%g is outside the cube", v)
			}
			sum[d] += v / replicates
		}
		product += (x[0] - 0.5) * (x[dimensions-1] - 0.5) / replicates
	}
	// Standard errors: 1/sqrt(12) and 1/12 over sqrt(2000); four of them in forty places.
	for d, mean := range sum {
		if math.Abs(mean-0.5) > 4*0.2887/math.Sqrt(replicates) {
			t.Errorf("dimension %d has the mean %.4f", d+1, mean)
		}
	}
	if math.Abs(product) > 4/12.0/math.Sqrt(replicates) {
		t.Errorf("first and last dimension go together: %.4f", product)
	}
}

func TestSobolRefuses(t *testing.T) {
	for _, n := range []int{0, MaxSobol + 1} {
		var f *fault.Fault
		if _, err := NewSobol(n); !errors.As(err, &f) || f.Code != fault.Range {
			t.Errorf("%d dimensions: %v", n, err)
		}
		if _, err := ScrambledSobol(n, 1, 1); err == nil {
			t.Errorf("%d dimensions are scrambled", n)
		}
	}
}

// Means over 256 points settle faster than the root of their number: for a product of gentle factors in ten dimensions, the
// error over 32 replicates is below a fifth of what chance would leave.
func TestSobolIsEven(t *testing.T) {
	const dimensions, n, replicates = 10, 256, 32
	sum := 0.0
	for r := range uint64(replicates) {
		s, err := ScrambledSobol(dimensions, 11, r)
		mean := 0.0
		for _, p := range points(t, s, err, dimensions, n) {
			f := 1.0
			for _, u := range p {
				f *= 1 + 0.3*(u-0.5)
			}
			mean += f / n
		}
		sum += (mean - 1) * (mean - 1) / replicates
	}
	chance := math.Sqrt((math.Pow(1+0.09/12, dimensions) - 1) / n)
	if got := math.Sqrt(sum); got > chance/5 {
		t.Errorf("the error is %.2g, that of chance %.2g", got, chance)
	}
}
