package ode

import "slices"

// Memory keeps the steps of a run, for others that begin like it: they take them over instead of computing them again. All
// solvers that share one must integrate the same system to the same tolerances with the same method, one after the other; in
// the ends of their intervals, in events and observers they may differ. Time, size and state at the start of a step must be the
// same to the last bit.
type Memory struct{ steps []kept }

// mostKept bounds a memory; the beginning that runs have in common takes some dozens of steps.
const mostKept = 64

// kept is an accepted step.
type kept struct {
	t, h, err float64
	start     []float64 // state
	rest      []float64 // what carries has after it
}

// NewMemory makes an empty memory.
func NewMemory() *Memory { return &Memory{} }

// from is the step from t; nil where there is none.
func (m *Memory) from(t float64) *kept {
	for i := range m.steps {
		if m.steps[i].t == t {
			return &m.steps[i]
		}
	}
	return nil
}

// carries are the vectors that a step leaves behind.
func (s *Solver) carries() [][]float64 { return append([][]float64{s.y1, s.f1}, s.u...) }

// recalled is the step of size h from (t, s.y0) as if it had just been computed, where the memory has it.
func (s *Solver) recalled(t, h float64) (err float64, ok bool) {
	if s.opt.Memory == nil {
		return 0, false
	}
	k := s.opt.Memory.from(t)
	if k == nil || k.h != h || !slices.Equal(k.start, s.y0) {
		return 0, false
	}
	rest := k.rest
	for _, v := range s.carries() {
		rest = rest[copy(v, rest):]
	}
	return k.err, true
}

// keep puts the step just computed into the memory, unless another one begins at the same time.
func (s *Solver) keep(t, h, err float64) {
	m := s.opt.Memory
	if m == nil || len(m.steps) == mostKept || m.from(t) != nil {
		return
	}
	m.steps = append(m.steps, kept{t, h, err, slices.Clone(s.y0), slices.Concat(s.carries()...)})
}
