package plan

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// bend looks for the true boundary at right angles to the middle of a stretch of a line: by the slope between the cell's
// corners where the share is smooth, by a bracket where it jumps.
type bend struct {
	cell     cell
	line     int
	from, to point   // ends of the stretch
	off      float64 // how far from the middle the next setting lies
	moves    int
	reach    float64 // how far from the middle it may lie
	ends     []float64
	bracket  *num.Bracket
}

// straighten is how often a slope is followed before it is given up.
const straighten = 3

func newBend(c cell, l int, from, to point) bend {
	return bend{cell: c, line: l, from: from, to: to, reach: float64(c.size) / fineness / 4}
}

// at is the place at a distance from the middle, at right angles to the stretch.
func (b *bend) at(off float64) point {
	m := between(b.from, b.to)
	length := distance(b.from, b.to)
	if length == 0 {
		return m
	}
	return point{m.x - off*(b.to.y-b.from.y)/length, m.y + off*(b.to.x-b.from.x)/length}
}

// state of a bend after an outcome.
type bending int

const (
	goesOn bending = iota
	arrived
	lost
)

// hear takes the excess of the line's criterion at the place that was asked for.
func (b *bend) hear(s *survey, excess float64) bending {
	switch {
	case b.bracket != nil:
		if b.bracket.Tell(b.off, excess) != nil {
			return lost
		}
	case b.ends != nil:
		if b.ends = append(b.ends, excess); len(b.ends) == 1 {
			b.off = b.reach
			return goesOn
		}
		bracket, err := num.NewBracket(-b.reach, b.ends[0], b.reach, b.ends[1], lineTolerance)
		if err != nil {
			return lost // the boundary does not pass here
		}
		b.bracket = &bracket
	default:
		return b.follow(s, excess)
	}
	if b.bracket.Done() {
		b.off, _, _, _ = b.bracket.Ends()
		return arrived
	}
	b.off = b.bracket.Next()
	return goesOn
}

// follow makes one step by the slope.
func (b *bend) follow(s *survey, excess float64) bending {
	criterion := s.lines[b.cell][b.line].criterion
	slope := (s.shares(b.cell, b.at(b.reach), criterion) - s.shares(b.cell, b.at(-b.reach), criterion)) / (2 * b.reach)
	step := -excess / slope
	if math.Abs(step) < lineTolerance {
		return arrived
	}
	b.moves++
	if to := b.off + step; b.moves <= straighten && math.Abs(to) <= b.reach && b.cell.holds(b.at(to)) {
		b.off = to
		return goesOn
	}
	b.ends, b.off = []float64{}, -b.reach
	return goesOn
}
