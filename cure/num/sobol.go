package num

import (
	"math/bits"

	"github.com/drywright/drywright/cure/fault"
)

// Sobol is a low-discrepancy sequence of points in the unit cube: every 2^m of them from a multiple of 2^m on fill it more
// evenly than chance does, so that means over them settle faster. The same arguments give the same points everywhere.
//
// Source: Sobol' (1967); Gray code order after Antonov and Saleev (1979); direction numbers of Joe and Kuo (2008, "Constructing
// Sobol sequences with better two-dimensional projections", SIAM J. Sci. Comput. 30, 2635), file new-joe-kuo-6. Scrambled by a
// random lower triangular matrix and a digital shift (Matoušek 1998, "On the L2-discrepancy for anchored boxes", J. Complexity
// 14, 527), which keeps the evenness, makes every point uniform by itself, and so gives independent replicates.
type Sobol struct {
	direction [][sobolBits]uint32 // of each dimension
	state     []uint32
	next      uint32
}

const sobolBits = 32

// MaxSobol is the largest number of dimensions.
const MaxSobol = 40

// NewSobol starts the sequence in 1 to MaxSobol dimensions, unscrambled: its first point is the origin.
//
// Errors: fault.Range for another number of dimensions.
func NewSobol(dimensions int) (*Sobol, error) {
	if dimensions < 1 || dimensions > MaxSobol {
		return nil, fault.OutOfRange("dimensions", float64(dimensions), 1, MaxSobol, "", "Vary fewer inputs.")
	}
	s := &Sobol{direction: make([][sobolBits]uint32, dimensions), state: make([]uint32, dimensions)}
	for k := range sobolBits {
		s.direction[0][k] = 1 << (sobolBits - 1 - k) // van der Corput's sequence
	}
	for d := 1; d < dimensions; d++ {
		s.direction[d] = directions(joeKuo[d-1])
	}
	return s, nil
}

// ScrambledSobol is the sequence scrambled anew for each seed and replicate: replicates are independent of each other.
func ScrambledSobol(dimensions int, seed, replicate uint64) (*Sobol, error) {
	s, err := NewSobol(dimensions)
	if err != nil {
		return nil, err
	}
	c := counter{key: mixed(seed ^ mixed(replicate+0x9e3779b97f4a7c15))}
	for d := range s.direction {
		var row [sobolBits]uint32 // of the matrix: digit k hangs on itself and the digits before it
		for k := range row {
			above := ^uint32(0) << (sobolBits - 1 - k) << 1
			row[k] = c.next()&above | 1<<(sobolBits-1-k)
		}
		for i, v := range s.direction[d] {
			scrambled := uint32(0)
			for k := range row {
				scrambled |= uint32(bits.OnesCount32(v&row[k])&1) << (sobolBits - 1 - k)
			}
			s.direction[d][i] = scrambled
		}
		s.state[d] = c.next()
	}
	return s, nil
}

// Next fills in the coordinates of the next point, each above 0 and below 1: the middle of the cell that 32 binary digits
// name. There are 2^32 points.
func (s *Sobol) Next(point []float64) {
	for d := range s.state {
		point[d] = (float64(s.state[d]) + 0.5) / (1 << sobolBits)
	}
	k := bits.TrailingZeros32(^s.next) // the digit in which the Gray codes of this point and the next differ
	s.next++
	if k == sobolBits {
		return
	}
	for d := range s.state {
		s.state[d] ^= s.direction[d][k]
	}
}

// directions continues the direction numbers of one dimension by the recurrence of its polynomial.
func directions(p primitive) (v [sobolBits]uint32) {
	degree := len(p.first)
	for k := range sobolBits {
		if k < degree {
			v[k] = p.first[k] << (sobolBits - 1 - k)
			continue
		}
		v[k] = v[k-degree] ^ v[k-degree]>>degree
		for i := 1; i < degree; i++ {
			if p.coefficients>>(degree-1-i)&1 == 1 {
				v[k] ^= v[k-i]
			}
		}
	}
	return v
}

// primitive is a primitive polynomial over two elements, its inner coefficients as binary digits, and the first direction
// numbers of its dimension; as many as its degree.
type primitive struct {
	coefficients uint32
	first        []uint32
}

// joeKuo are dimensions 2 to MaxSobol of the published table.
var joeKuo = [MaxSobol - 1]primitive{
	{0, []uint32{1}},
	{1, []uint32{1, 3}},
	{1, []uint32{1, 3, 1}},
	{2, []uint32{1, 1, 1}},
	{1, []uint32{1, 1, 3, 3}},
	{4, []uint32{1, 3, 5, 13}},
	{2, []uint32{1, 1, 5, 5, 17}},
	{4, []uint32{1, 1, 5, 5, 5}},
	{7, []uint32{1, 1, 7, 11, 19}},
	{11, []uint32{1, 1, 5, 1, 1}},
	{13, []uint32{1, 1, 1, 3, 11}},
	{14, []uint32{1, 3, 5, 5, 31}},
	{1, []uint32{1, 3, 3, 9, 7, 49}},
	{13, []uint32{1, 1, 1, 15, 21, 21}},
	{16, []uint32{1, 3, 1, 13, 27, 49}},
	{19, []uint32{1, 1, 1, 15, 7, 5}},
	{22, []uint32{1, 3, 1, 15, 13, 25}},
	{25, []uint32{1, 1, 5, 5, 19, 61}},
	{1, []uint32{1, 3, 7, 11, 23, 15, 103}},
	{4, []uint32{1, 3, 7, 13, 13, 15, 69}},
	{7, []uint32{1, 1, 3, 13, 7, 35, 63}},
	{8, []uint32{1, 3, 5, 9, 1, 25, 53}},
	{14, []uint32{1, 3, 1, 13, 9, 35, 107}},
	{19, []uint32{1, 3, 1, 5, 27, 61, 31}},
	{21, []uint32{1, 1, 5, 11, 19, 41, 61}},
	{28, []uint32{1, 3, 5, 3, 3, 13, 69}},
	{31, []uint32{1, 1, 7, 13, 1, 19, 1}},
	{32, []uint32{1, 3, 7, 5, 13, 19, 59}},
	{37, []uint32{1, 1, 3, 9, 25, 29, 41}},
	{41, []uint32{1, 3, 5, 13, 23, 1, 55}},
	{42, []uint32{1, 3, 7, 3, 13, 59, 17}},
	{50, []uint32{1, 3, 1, 3, 5, 53, 69}},
	{55, []uint32{1, 1, 5, 5, 23, 33, 13}},
	{56, []uint32{1, 1, 7, 7, 1, 61, 123}},
	{59, []uint32{1, 1, 7, 9, 13, 61, 49}},
	{62, []uint32{1, 3, 3, 5, 3, 55, 33}},
	{14, []uint32{1, 3, 1, 15, 31, 13, 49, 245}},
	{21, []uint32{1, 3, 5, 15, 31, 59, 63, 97}},
	{22, []uint32{1, 3, 1, 11, 11, 11, 77, 249}},
}

// counter makes digits that look random from a key, the same everywhere (splitmix64: Steele, Lea and Flood 2014).
type counter struct{ key, at uint64 }

func (c *counter) next() uint32 {
	c.at++
	return uint32(mixed(c.key+c.at*0x9e3779b97f4a7c15) >> 32)
}

func mixed(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
