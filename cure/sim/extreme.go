package sim

import "math"

// extreme is the worst value of something so far, and when it first passed its limit. A peak between two looks is taken from
// the parabola through it and its neighbours: the highest of the looks alone would jump about with the steps, by some per cent
// for a sharp peak, and a search for the setting at which it meets a limit would find a ragged line.
type extreme struct {
	passed bool
	start  float64
	worst  float64
	before [2]look // the last two looks since the last jump, the older one first
	seen   int     // how many of them there are
}

// look is a value at a time [s].
type look struct{ t, value float64 }

// see takes a value; limit is where it begins to count. A second value at one time is the far side of a jump.
func (e *extreme) see(t, value, limit float64) {
	if e.seen > 0 && t == e.before[1].t {
		e.seen = 0
	}
	if e.seen == 2 {
		if p, peaks := peak(e.before[0], e.before[1], look{t, value}); peaks {
			e.take(p, limit)
		}
	}
	e.take(look{t, value}, limit)
	e.before[0], e.before[1] = e.before[1], look{t, value}
	e.seen = min(2, e.seen+1)
}

func (e *extreme) take(l look, limit float64) {
	if l.value > limit && !e.passed {
		e.passed, e.start = true, l.t
	}
	e.worst = math.Max(e.worst, l.value)
}

// peak is the top of the parabola through three looks, where the middle one is the highest.
func peak(a, b, c look) (top look, peaks bool) {
	if !(b.value >= a.value && b.value >= c.value && a.value+c.value < 2*b.value) {
		return look{}, false
	}
	left, right := b.t-a.t, c.t-b.t
	rise, fall := (b.value-a.value)/left, (c.value-b.value)/right
	curve := (fall - rise) / (left + right)            // half the second derivative
	slope := (rise*right + fall*left) / (left + right) // at b
	at := -slope / (2 * curve)
	return look{b.t + at, b.value + slope*at/2}, true
}
