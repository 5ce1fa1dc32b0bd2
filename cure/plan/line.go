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

// straighten is how often the middle of a stretch is moved before it is left as it is.
const straighten = 3

// bend is the middle of a stretch of a line on its way to the true boundary.
type bend struct {
	cell     cell
	line     int
	from, to point // ends of the stretch
	p        point
	moves    int
}

// join draws the boundaries inside the divided cells between the crossings of their sides, and bends each at the middle of
// every stretch that strays from the true boundary.
func (s *survey) join(divided []cell) error {
	var open []bend
	for _, c := range divided {
		var lines []line
		for k := range s.criteria {
			var ends []point
			for _, side := range c.sides() {
				if z, ok := s.zeros[crossing{side[0], side[1], k}]; ok {
					ends = append(ends, z)
				}
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
			points[i] = b.p
		}
		outcomes, err := s.judge(points)
		if err != nil {
			return err
		}
		var again []bend
		for i, b := range open {
			again = append(again, s.bent(b, &outcomes[i])...)
		}
		open = again
		s.report()
	}
	return nil
}

func newBend(c cell, l int, from, to point) bend { return bend{c, l, from, to, between(from, to), 0} }

// bent moves the middle of a stretch, or takes it into the line when it has arrived; it returns what is still to be judged.
func (s *survey) bent(b bend, o *Outcome) []bend {
	l := &s.lines[b.cell][b.line]
	to, off := s.corrected(b, s.excess(o, l.criterion))
	if off >= lineTolerance {
		if b.moves++; b.moves > straighten || !b.cell.holds(to) {
			return nil
		}
		b.p = to
		return []bend{b}
	}
	sagitta := distance(b.p, between(b.from, b.to))
	if sagitta < lineTolerance {
		return nil
	}
	l.insert(b.from, b.p)
	// Half as long a stretch of a smooth line strays a quarter as far.
	if sagitta/4 < lineTolerance {
		return nil
	}
	return []bend{newBend(b.cell, b.line, b.from, b.p), newBend(b.cell, b.line, b.p, b.to)}
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

// corrected moves the middle of a stretch at right angles to it to where the criterion is met, by the slope between the
// cell's corners; off is how far.
func (s *survey) corrected(b bend, excess float64) (to point, off float64) {
	length := distance(b.from, b.to)
	if length == 0 {
		return b.p, 0
	}
	criterion := s.lines[b.cell][b.line].criterion
	n := point{-(b.to.y - b.from.y) / length, (b.to.x - b.from.x) / length}
	size := float64(b.cell.size) / fineness
	at := func(step float64) float64 {
		return s.shares(b.cell, point{b.p.x + n.x*step, b.p.y + n.y*step}, criterion)
	}
	slope := (at(size/4) - at(-size/4)) / (size / 2)
	if slope == 0 {
		return b.p, 0
	}
	move := math.Max(-size/4, math.Min(size/4, -excess/slope))
	return point{b.p.x + n.x*move, b.p.y + n.y*move}, math.Abs(move)
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
