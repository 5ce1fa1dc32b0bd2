package plan

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// crossing is a criterion on a side of a cell, from the lower or left node to the other.
type crossing struct {
	from, to  node
	criterion int
}

// crossingTolerance is how well a crossing is located, as a share of the picture. A mark's share has a kink where it passes
// 1 (result.Criterion), across which the error is estimated too small by the ratio of its slopes, of the order of ten at
// most: that leaves two thousandths.
const crossingTolerance = 2e-4

// hunt is the search for one crossing.
type hunt struct {
	crossing
	bracket num.Bracket // of the share of the way from one node to the other
	asked   float64
	done    bool
}

// sides lists the sides of a cell, lower or left node first.
func (c cell) sides() [4][2]node {
	n := c.corners()
	return [4][2]node{{n[0], n[1]}, {n[1], n[2]}, {n[3], n[2]}, {n[0], n[3]}}
}

// cross looks for all crossings on the sides of the cells that a boundary divides, side by side.
func (s *survey) cross(divided []cell) error {
	var hunts []*hunt
	begun := map[crossing]bool{}
	for _, c := range divided {
		for _, side := range c.sides() {
			for k := range s.criteria {
				x := crossing{side[0], side[1], k}
				a, b := s.excess(s.nodes[x.from], k), s.excess(s.nodes[x.to], k)
				if _, known := s.zeros[x]; known || begun[x] || (a > 0) == (b > 0) {
					continue
				}
				begun[x] = true
				length := float64(c.size) / fineness
				bracket, err := num.NewBracket(0, a, 1, b, crossingTolerance/length)
				if err != nil {
					return err
				}
				hunts = append(hunts, &hunt{crossing: x, bracket: bracket})
			}
		}
	}
	for round := 0; ; round++ {
		var points []point
		var open []*hunt
		for _, h := range hunts {
			if h.done {
				continue
			}
			h.asked = h.bracket.Next()
			open, points = append(open, h), append(points, h.place(h.asked))
		}
		if len(open) == 0 {
			return nil
		}
		outcomes, err := s.judge(points)
		if err != nil {
			return err
		}
		for i, h := range open {
			if err := h.hear(s.excess(&outcomes[i], h.criterion)); err != nil {
				return err
			}
			if h.done {
				s.zeros[h.crossing] = h.place(h.zero())
			}
		}
		if round%2 == 1 {
			s.report()
		}
	}
}

func (h *hunt) place(share float64) point {
	a, b := h.from.at(), h.to.at()
	return point{a.x + share*(b.x-a.x), a.y + share*(b.y-a.y)}
}

// hear takes a value; the search ends when the bracket is narrow, or when the value at one end is so small that the slope
// leaves no doubt.
func (h *hunt) hear(value float64) error {
	if err := h.bracket.Tell(h.asked, value); err != nil {
		return err
	}
	a, fa, b, fb := h.bracket.Ends()
	length := math.Abs(h.to.at().x-h.from.at().x) + math.Abs(h.to.at().y-h.from.at().y)
	left := math.Min(math.Abs(fa), math.Abs(fb)) * (b - a) / math.Abs(fb-fa) * length
	h.done = h.bracket.Done() || left < crossingTolerance
	return nil
}

// zero is the crossing inside the last bracket, by a straight line.
func (h *hunt) zero() float64 {
	a, fa, b, fb := h.bracket.Ends()
	if fa == fb {
		return a
	}
	return a - fa*(b-a)/(fb-fa)
}
