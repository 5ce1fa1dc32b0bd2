package plan

import (
	"math"
	"slices"
)

// point is a place in a window, as shares of its width and height.
type point struct{ x, y float64 }

// line is where one criterion is just met inside a cell.
type line struct {
	criterion int
	points    []point
}

// lineTolerance is how far a boundary may run from the line that is drawn for it, as a share of the picture.
const lineTolerance = 1e-3

// join draws the boundaries inside the divided cells between the crossings of their sides, and bends each at the middle of
// every stretch that strays from the true boundary. It returns the cells in which that did not succeed.
func (s *survey) join(divided []cell) (failed map[cell]bool, err error) {
	var open []bend
	failed = map[cell]bool{}
	for _, c := range divided {
		var lines []line
		for k := range s.criteria {
			var ends []point
			for _, side := range c.sides() {
				if z, ok := s.zeros[crossing{side[0], side[1], k}]; ok {
					ends = append(ends, z)
				}
			}
			if len(ends) > 2 {
				failed[c] = true // two lines or more, and which of them belong together is a guess
			}
			for _, pair := range s.pairs(c, k, ends) {
				open = append(open, newBend(c, len(lines), pair[0], pair[1]))
				lines = append(lines, line{k, []point{pair[0], pair[1]}})
			}
		}
		s.lines[c] = lines
	}
	for len(open) > 0 {
		points := make([]point, len(open))
		for i, b := range open {
			points[i] = b.at(b.off)
		}
		outcomes, err := s.judge(points)
		if err != nil {
			return nil, err
		}
		var again []bend
		for i, b := range open {
			more, ok := s.bent(b, &outcomes[i])
			again = append(again, more...)
			if !ok {
				failed[b.cell] = true
			}
		}
		open = again
		s.report()
	}
	return failed, nil
}

// bent carries a bend on by what was found, and takes it into the line when it has arrived; it returns what is still to be
// judged, and false where the boundary does not let itself be found.
func (s *survey) bent(b bend, o *Outcome) (more []bend, ok bool) {
	l := &s.lines[b.cell][b.line]
	switch b.hear(s, s.excess(o, l.criterion)) {
	case goesOn:
		return []bend{b}, true
	case lost:
		return nil, false
	}
	sagitta := math.Abs(b.off)
	if sagitta < lineTolerance {
		return nil, true
	}
	p := b.at(b.off)
	l.insert(b.from, p)
	// Half as long a stretch of a smooth line strays a quarter as far.
	if sagitta/4 < lineTolerance {
		return nil, true
	}
	return []bend{newBend(b.cell, b.line, b.from, p), newBend(b.cell, b.line, p, b.to)}, true
}

// insert puts a point into the line after another.
func (l *line) insert(after, p point) {
	at := slices.Index(l.points, after) + 1
	l.points = slices.Insert(l.points, at, p)
}

// pairs says which crossings of a cell belong together. Four of them leave two ways, told apart by the middle of the cell.
func (s *survey) pairs(c cell, criterion int, ends []point) [][2]point {
	switch len(ends) {
	case 2:
		return [][2]point{{ends[0], ends[1]}}
	case 4:
		// The crossings lie on the lower, right, upper and left side. The two corners on the diagonal from lower left are joined
		// where the middle has their sign; the lines then cut off the other two.
		a := node{c.i, c.j}.at()
		half := float64(c.size) / fineness / 2
		middle := s.shares(c, point{a.x + half, a.y + half}, criterion) > 0
		if corner := s.excess(s.nodes[node{c.i, c.j}], criterion) > 0; middle == corner {
			return [][2]point{{ends[0], ends[1]}, {ends[2], ends[3]}}
		}
		return [][2]point{{ends[0], ends[3]}, {ends[1], ends[2]}}
	}
	return nil
}

func between(a, b point) point { return point{(a.x + b.x) / 2, (a.y + b.y) / 2} }

func distance(a, b point) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }

// crosses reports whether the segments a-b and c-d cross.
func crosses(a, b, c, d point) bool {
	side := func(p, q, r point) float64 { return (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x) }
	return (side(a, b, c) > 0) != (side(a, b, d) > 0) && (side(c, d, a) > 0) != (side(c, d, b) > 0)
}

// toSegment is the distance of a point from a segment.
func toSegment(p, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	share := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		share = math.Max(0, math.Min(1, ((p.x-a.x)*dx+(p.y-a.y)*dy)/long))
	}
	return distance(p, point{a.x + share*dx, a.y + share*dy})
}
