package plan

import (
	"math"

	"github.com/drywright/drywright/cure/result"
)

// A window is found on a lattice over the picture: nodes first far apart, then closer where good and bad settings are
// neighbours, and closer still where a boundary does not let itself be drawn. Positions are shares of the picture's width and
// height.
const (
	fineness = 256 // lattice steps across the picture
	coarsest = 128 // steps of a cell in the first picture, which is to be there at once
	coarse   = 64  // of a cell from which on only divided ones are cut
	usual    = 32  // of a cell in which boundaries are drawn
	finest   = 1   // of a cell that is not cut any more
)

// node is a place on the lattice.
type node struct{ i, j int }

func (n node) at() point { return point{float64(n.i) / fineness, float64(n.j) / fineness} }

// cell is a square of the lattice by its lower left corner.
type cell struct{ i, j, size int }

// corners go round the cell against the clock.
func (c cell) corners() [4]node {
	return [4]node{{c.i, c.j}, {c.i + c.size, c.j}, {c.i + c.size, c.j + c.size}, {c.i, c.j + c.size}}
}

// quarters are the cells into which a cell is cut.
func (c cell) quarters() [4]cell {
	h := c.size / 2
	return [4]cell{{c.i, c.j, h}, {c.i + h, c.j, h}, {c.i, c.j + h, h}, {c.i + h, c.j + h, h}}
}

// holds reports whether a point lies in the cell.
func (c cell) holds(p point) bool {
	a, b := node{c.i, c.j}.at(), node{c.i + c.size, c.j + c.size}.at()
	return p.x >= a.x && p.x <= b.x && p.y >= a.y && p.y <= b.y
}

// survey is a window in the making.
type survey struct {
	question WindowQuestion
	exact    Study // as asked for
	study    Study // as the picture needs it
	evaluate Evaluate
	tell     func(Window)
	window   Window
	x, y     Variable
	nodes    map[node]*Outcome
	cells    []cell                 // the picture, cut up
	lines    map[cell][]line        // boundaries inside cells of the finest size
	zeros    map[crossing]point     // where boundaries cross the sides of cells
	criteria []result.CriterionName // of the study, with "refused" at the end
	runs     int
}

// refusedSetting stands for settings that validation does not accept.
const refusedSetting result.CriterionName = "refused"

// setting is the trial at a point.
func (s *survey) setting(p point) Trial {
	w := &s.window
	return Trial{{s.x.ID, w.XLow + p.x*(w.XHigh-w.XLow)}, {s.y.ID, w.YLow + p.y*(w.YHigh-w.YLow)}}
}

// judge evaluates settings at points.
func (s *survey) judge(points []point) ([]Outcome, error) {
	if len(points) == 0 {
		return nil, nil
	}
	trials := make([]Trial, len(points))
	for i, p := range points {
		trials[i] = s.setting(p)
	}
	s.runs += len(points)
	outcomes, err := s.evaluate(s.study, trials)
	if err == nil && s.criteria == nil {
		s.list(outcomes)
	}
	return outcomes, err
}

// list takes the names of the criteria from the first outcome that has any.
func (s *survey) list(outcomes []Outcome) {
	for i := range outcomes {
		if o := &outcomes[i]; o.Refused == "" {
			for _, c := range o.Judgement.Criteria {
				s.criteria = append(s.criteria, c.Name)
			}
			s.criteria = append(s.criteria, refusedSetting)
			return
		}
	}
}

// excess is by how much an outcome passes a criterion, above zero where it fails.
func (s *survey) excess(o *Outcome, criterion int) float64 {
	refused := criterion == len(s.criteria)-1
	switch {
	case refused && o.Refused != "":
		return 1
	case refused:
		return -1
	case o.Refused != "":
		return -1e-3 // unknown; that it is refused is what counts
	}
	e := o.Judgement.Criteria[criterion].Share - 1
	if e <= 0 {
		return math.Min(e, -1e-15) // met up to 1, and never zero
	}
	return e
}

// visit judges the nodes that are not known yet.
func (s *survey) visit(wanted []node) error {
	var missing []node
	var points []point
	asked := map[node]bool{}
	for _, n := range wanted {
		if s.nodes[n] == nil && !asked[n] {
			asked[n] = true
			missing, points = append(missing, n), append(points, n.at())
		}
	}
	outcomes, err := s.judge(points)
	if err != nil {
		return err
	}
	for i, n := range missing {
		s.nodes[n] = &outcomes[i]
	}
	return nil
}

// divided reports whether a boundary of the good area runs through a cell: some of the nodes round it are good and some are
// not, or none is good but no single criterion fails at all of them.
func (s *survey) divided(c cell) bool {
	around := s.around(c)
	good := 0
	for _, o := range around {
		if o.Met() {
			good++
		}
	}
	if good > 0 {
		return good < len(around)
	}
	for k := range s.criteria {
		if s.failing(around, k) == len(around) {
			return false
		}
	}
	return true
}

// around are the outcomes that are known on the sides of a cell: at its corners, and where smaller neighbours meet it.
func (s *survey) around(c cell) []*Outcome {
	var known []*Outcome
	for k := 0; k < c.size; k += finest {
		for _, n := range [4]node{{c.i + k, c.j}, {c.i + c.size, c.j + k}, {c.i + c.size - k, c.j + c.size}, {c.i, c.j + c.size - k}} {
			if o := s.nodes[n]; o != nil {
				known = append(known, o)
			}
		}
	}
	return known
}

// torn reports whether some corners of a cell are refused, and what fails at the others is not the same for all.
func (s *survey) torn(c cell) bool {
	var known []*Outcome
	for _, n := range c.corners() {
		if o := s.nodes[n]; o.Refused == "" {
			known = append(known, o)
		}
	}
	if len(known) == 4 {
		return false
	}
	for k := range s.criteria {
		if n := s.failing(known, k); n > 0 && n < len(known) {
			return true
		}
	}
	return false
}

// failing counts the outcomes in which a criterion fails.
func (s *survey) failing(outcomes []*Outcome, criterion int) int {
	n := 0
	for _, o := range outcomes {
		if s.excess(o, criterion) > 0 {
			n++
		}
	}
	return n
}

// lay judges the coarsest nodes.
func (s *survey) lay() error {
	var wanted []node
	for j := 0; j < fineness; j += coarsest {
		for i := 0; i < fineness; i += coarsest {
			c := cell{i, j, coarsest}
			s.cells = append(s.cells, c)
			corners := c.corners()
			wanted = append(wanted, corners[:]...)
		}
	}
	return s.visit(wanted)
}

// refine cuts the cells that a choice names, judges the new corners, and reports whether there were any.
func (s *survey) refine(choose func(cell) bool) (bool, error) {
	var kept []cell
	var wanted []node
	cut := false
	for _, c := range s.cells {
		if !choose(c) {
			kept = append(kept, c)
			continue
		}
		cut = true
		for _, q := range c.quarters() {
			kept = append(kept, q)
			corners := q.corners()
			wanted = append(wanted, corners[:]...)
		}
	}
	s.cells = kept
	return cut, s.visit(wanted)
}

// shares interpolates the excess of each criterion at a point inside a cell from its corners.
func (s *survey) shares(c cell, p point, criterion int) float64 {
	a := node{c.i, c.j}.at()
	x, y := (p.x-a.x)*fineness/float64(c.size), (p.y-a.y)*fineness/float64(c.size)
	n := c.corners()
	e := func(k int) float64 { return s.excess(s.nodes[n[k]], criterion) }
	return (1-x)*(1-y)*e(0) + x*(1-y)*e(1) + x*y*e(2) + (1-x)*y*e(3)
}
