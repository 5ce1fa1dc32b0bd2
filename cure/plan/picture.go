package plan

import "math"

// trace is a share of a cell far above rounding and far below what a picture shows.
const trace = 1e-6

// fails reports whether a criterion fails at a point inside a cell: as at the corner where that is clearest, turned round by
// each line between.
func (s *survey) fails(c cell, p point, criterion int) bool {
	var from point
	clearest := 0.0
	for _, n := range c.corners() {
		if e := s.excess(s.nodes[n], criterion); math.Abs(e) > math.Abs(clearest) {
			from, clearest = n.at(), e
		}
	}
	failing := clearest > 0
	// A line ends on the cell's edge: a way along the edge would touch it without crossing, so it goes a trace inside.
	low, high := node{c.i, c.j}.at(), node{c.i + c.size, c.j + c.size}.at()
	p.x += trace * ((low.x+high.x)/2 - p.x)
	p.y += trace * ((low.y+high.y)/2 - p.y)
	for _, l := range s.lines[c] {
		if l.criterion != criterion {
			continue
		}
		for k := 1; k < len(l.points); k++ {
			if crosses(from, p, l.points[k-1], l.points[k]) {
				failing = !failing
			}
		}
	}
	return failing
}

// verdict is what fails most at a point of a cell, -1 where nothing does.
func (s *survey) verdict(c cell, p point) int {
	most, worst := -1, math.Inf(-1)
	lined := len(s.lines[c]) > 0
	for k := range s.criteria {
		e := s.shares(c, p, k)
		failing := e > 0
		if lined {
			failing = s.fails(c, p, k)
		}
		if failing && e > worst {
			most, worst = k, e
		}
	}
	return most
}

// find is the cell that holds a point.
func (s *survey) find(p point) cell {
	for _, c := range s.cells {
		if c.holds(p) {
			return c
		}
	}
	return s.cells[0]
}

// report tells what is known so far.
func (s *survey) report() {
	if s.tell != nil {
		s.draw()
		s.window.Expected = s.runs + s.ahead()
		s.tell(s.window)
	}
}

// ahead is about how many settings are still to be judged.
func (s *survey) ahead() int {
	n := 0
	for _, c := range s.cells {
		if _, drawn := s.lines[c]; !drawn && s.divided(c) {
			n += 5 * max(1, c.size/usual)
		}
	}
	return n
}

// draw makes the picture of what is known.
func (s *survey) draw() {
	w := &s.window
	w.Runs = s.runs
	w.Limits, w.Boundaries = []WindowLimit{}, []Boundary{}
	place := map[int]int{}
	entry := func(criterion int) int {
		at, listed := place[criterion]
		if !listed {
			at = len(w.Limits)
			place[criterion] = at
			w.Limits = append(w.Limits, WindowLimit{Name: s.criteria[criterion]})
		}
		return at
	}
	n := w.Columns
	w.Cells = make([]int, n*n)
	good := 0
	for row := range n {
		for column := range n {
			p := s.centre(row, column)
			v := s.verdict(s.find(p), p)
			if v < 0 {
				good++
			} else {
				v = entry(v)
			}
			w.Cells[row*n+column] = v
		}
	}
	w.Good = float64(good) / float64(n*n)
	for _, c := range s.cells {
		for _, l := range s.lines[c] {
			for _, piece := range s.visible(c, l) {
				w.Boundaries = append(w.Boundaries, s.boundary(entry(l.criterion), piece))
			}
		}
	}
}

// centre is the middle of one dot of the picture.
func (s *survey) centre(row, column int) point {
	n := float64(s.window.Columns)
	return point{(float64(column) + 0.5) / n, (float64(row) + 0.5) / n}
}

func (s *survey) boundary(limit int, points []point) Boundary {
	w := &s.window
	b := Boundary{Limit: limit}
	for _, p := range points {
		b.X, b.Y = append(b.X, w.XLow+p.x*(w.XHigh-w.XLow)), append(b.Y, w.YLow+p.y*(w.YHigh-w.YLow))
	}
	return b
}

// visible are the stretches of a line beside which the setting is good: where no other criterion fails.
func (s *survey) visible(c cell, l line) [][]point {
	const pieces = 8
	var stretches [][]point
	var now []point
	for k := 1; k < len(l.points); k++ {
		a, b := l.points[k-1], l.points[k]
		at := func(share float64) point { return point{a.x + share*(b.x-a.x), a.y + share*(b.y-a.y)} }
		for i := range pieces {
			from, to := at(float64(i)/pieces), at(float64(i+1)/pieces)
			if s.othersFail(c, between(from, to), l.criterion) {
				if len(now) > 0 {
					stretches, now = append(stretches, now), nil
				}
				continue
			}
			if len(now) == 0 {
				now = []point{from}
			}
			now = append(now, to)
		}
	}
	if len(now) > 0 {
		stretches = append(stretches, now)
	}
	return stretches
}

func (s *survey) othersFail(c cell, p point, criterion int) bool {
	for k := range s.criteria {
		if k != criterion && s.fails(c, p, k) {
			return true
		}
	}
	return false
}

// roomiest is the good dot of the picture that lies farthest from every boundary and from the edge.
func (s *survey) roomiest() (best point, margin float64) {
	n, segments := s.window.Columns, s.segments()
	for row := range n {
		for column := range n {
			if s.window.Cells[row*n+column] >= 0 {
				continue
			}
			p := s.centre(row, column)
			// What lies beyond the picture nobody knows.
			d := math.Min(nearest(p, segments), math.Min(math.Min(p.x, 1-p.x), math.Min(p.y, 1-p.y)))
			if d > margin {
				best, margin = p, d
			}
		}
	}
	return best, margin
}

// segments are all boundaries of the good area.
func (s *survey) segments() [][2]point {
	var segments [][2]point
	for _, c := range s.cells {
		for _, l := range s.lines[c] {
			for _, piece := range s.visible(c, l) {
				for k := 1; k < len(piece); k++ {
					segments = append(segments, [2]point{piece[k-1], piece[k]})
				}
			}
		}
	}
	return segments
}

func nearest(p point, segments [][2]point) float64 {
	d := math.Inf(1)
	for _, g := range segments {
		d = math.Min(d, toSegment(p, g[0], g[1]))
	}
	return d
}
