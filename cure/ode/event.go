package ode

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Direction says which crossings of zero an [Event] answers to.
type Direction int

// The directions.
const (
	Either Direction = iota
	Rising
	Falling
)

// Event is a condition G(t, y) = 0 on the run. A crossing is a change from one side of zero to the other, or onto zero:
// an event whose G is zero at the start, or already past zero, does not fire there (test start conditions yourself).
//
// The sign is compared at the ends of each step and at three points of the dense output inside it; a pair of crossings
// closer together than a quarter of a step can be missed, and MaxStep is the remedy. The time is that of the dense output,
// found to 1e-10 of the step or four units in the last place of t, and lies just past the crossing, so that a run
// started again from there does not meet it a second time.
type Event struct {
	Name     string
	Dir      Direction
	Terminal bool // ends the run at its time
	Once     bool // is left out after its first crossing
	// G is looked at in any order of t within a step and must change nothing. A NaN ends the run with an error.
	G func(t float64, y []float64) float64
	// Hit, when not nil, is called for each crossing in order of time; y is valid during the call and must not be changed.
	Hit func(t float64, y []float64)
	// Fired is set by the solver at a crossing. With Once it keeps the event out, in later calls of Integrate too; the
	// caller resets it.
	Fired bool
}

func (e *Event) idle() bool { return e.Once && e.Fired }

// crossed reports whether g passed or reached zero in the direction of interest between two points.
func (d Direction) crossed(left, right float64) bool {
	rising, falling := left < 0 && right >= 0, left > 0 && right <= 0
	return rising && d != Falling || falling && d != Rising
}

// parts is the number of pieces of a step at whose ends the signs are compared.
const parts = 4

// rootShare is the width, as a share of the step, to which a crossing is enclosed.
const rootShare = 1e-10

// hit is a crossing at the share x of the step.
type hit struct {
	x     float64
	event int
}

// watch follows the events of one run.
type watch struct {
	events []Event
	g      []float64 // values at the left end of the piece
	right  []float64
	hits   []hit
	state  []float64 // of the dense output at the point looked at

	step *Step
	seek int                     // event whose root is sought
	f    func(x float64) float64 // valueAt, bound once so that no step allocates
}

func (w *watch) start(events []Event, t float64, y []float64) error {
	w.events = events
	for len(w.g) < len(events) {
		w.g, w.right = append(w.g, 0), append(w.right, 0)
		w.hits = append(w.hits, hit{})
	}
	for i := range events {
		if e := &events[i]; !e.idle() {
			if w.g[i] = e.G(t, y); math.IsNaN(w.g[i]) {
				return badEvent(e.Name, t)
			}
		}
	}
	return nil
}

// point returns time and state at the share x of the step.
func (w *watch) point(x float64) (float64, []float64) {
	if x == 1 {
		return w.step.T1, w.step.Y1
	}
	w.step.at(x, w.state)
	return w.step.T0 + x*w.step.h, w.state
}

func (w *watch) valueAt(x float64) float64 {
	t, y := w.point(x)
	return w.events[w.seek].G(t, y)
}

// scan delivers the crossings inside the step in order of time. When a terminal one is among them it returns its index
// and the share of the step at which the run ends; otherwise -1.
func (w *watch) scan(st *Step) (terminal int, x float64, err error) {
	w.step = st
	live := false
	for i := range w.events {
		live = live || !w.events[i].idle()
	}
	if !live {
		return -1, 0, nil
	}
	tol := math.Max(rootShare, 4*spacing(st.T1)/st.h)
	left := 0.0
	for p := 1; p <= parts; p++ {
		right := float64(p) / parts
		found, err := w.piece(left, right, tol)
		if err != nil {
			return -1, 0, err
		}
		if terminal, x = w.deliver(found, tol); terminal >= 0 {
			return terminal, x, nil
		}
		left = right
	}
	return -1, 0, nil
}

// piece fills w.hits with the crossings between two points of the step, ordered by time, and returns their number.
func (w *watch) piece(left, right, tol float64) (int, error) {
	t, y := w.point(right)
	for i := range w.events {
		if e := &w.events[i]; !e.idle() {
			if w.right[i] = e.G(t, y); math.IsNaN(w.right[i]) {
				return 0, badEvent(e.Name, t)
			}
		}
	}
	found := 0
	for i := range w.events {
		e := &w.events[i]
		if e.idle() {
			continue
		}
		if e.Dir.crossed(w.g[i], w.right[i]) {
			w.seek = i
			_, x, err := num.Enclose(w.f, left, w.g[i], right, w.right[i], tol)
			if err != nil {
				return 0, badEvent(e.Name, t)
			}
			at := found
			for ; at > 0 && w.hits[at-1].x > x; at-- {
				w.hits[at] = w.hits[at-1]
			}
			w.hits[at] = hit{x, i}
			found++
		}
		w.g[i] = w.right[i]
	}
	return found, nil
}

// deliver calls Hit for the first found of w.hits. Crossings that the enclosure cannot tell apart share the latest of
// their times, where all have crossed, and come in the order of the list; a terminal one among them does not cut off
// the others.
func (w *watch) deliver(found int, tol float64) (terminal int, x float64) {
	for first := 0; first < found; {
		last := first + 1
		for last < found && w.hits[last].x-w.hits[last-1].x <= tol {
			last++
		}
		x = w.hits[last-1].x
		group := w.hits[first:last]
		for i := 1; i < len(group); i++ {
			for j := i; j > 0 && group[j].event < group[j-1].event; j-- {
				group[j], group[j-1] = group[j-1], group[j]
			}
		}
		terminal = -1
		for _, h := range group {
			e := &w.events[h.event]
			e.Fired = true
			if e.Terminal && terminal < 0 {
				terminal = h.event
			}
			if e.Hit != nil {
				e.Hit(w.point(x))
			}
		}
		if terminal >= 0 {
			return terminal, x
		}
		first = last
	}
	return -1, 0
}
