package regress

import "math"

// Random is a stream of numbers that a seed fixes for ever, on every machine. It is SplitMix64: a counter through a mixing
// function. Source: Steele, Lea and Flood (2014), Fast splittable pseudorandom number generators, OOPSLA '14, 453-472, fig. 13
// with the mixing constants 0xbf58476d1ce4e5b9 and 0x94d049bb133111eb; seed 1234567 starts with 6457827717110365317 (a test
// value of the algorithm's published implementations, from memory).
type Random struct {
	state uint64
	spare float64
	has   bool
}

// NewRandom starts a stream.
func NewRandom(seed uint64) *Random { return &Random{state: seed} }

// Uint64 is the next number of the stream.
func (r *Random) Uint64() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// Float64 is uniform in [0, 1).
func (r *Random) Float64() float64 { return float64(r.Uint64()>>11) / (1 << 53) }

// Below is uniform among 0..n-1, n > 0.
func (r *Random) Below(n int) int { return int(r.Float64() * float64(n)) }

// Normal is a draw from the standard normal distribution, by the polar method (Marsaglia and Bray 1964, SIAM Review 6, 260).
func (r *Random) Normal() float64 {
	if r.has {
		r.has = false
		return r.spare
	}
	for {
		u, v := 2*r.Float64()-1, 2*r.Float64()-1
		s := u*u + v*v
		if s > 0 && s < 1 {
			m := math.Sqrt(-2 * math.Log(s) / s)
			r.spare, r.has = v*m, true
			return u * m
		}
	}
}
