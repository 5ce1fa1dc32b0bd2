package route

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
)

// Schedule is air whose temperature and relative humidity run in straight lines between given points.
type Schedule struct {
	temperature, humidity num.Linear
	pressure              float64
	real                  bool
	wall                  *float64
	steady                bool
}

// over returns the schedule for one stage, noting whether it stands still there.
func (s *Schedule) over(start, end float64) *Schedule {
	c := *s
	knots := s.temperature.Knots()
	c.steady = len(knots) == 1 || start >= knots[len(knots)-1]
	return &c
}

// State returns the air at time t [s].
func (s *Schedule) State(t float64) air.State {
	a := air.State{T: s.temperature.At(t), P: s.pressure, Real: s.real}
	a.Y = s.humidity.At(t) * a.SaturatedFraction()
	return a
}

// States implements film.Surroundings.
func (s *Schedule) States() int { return 0 }

// Scale implements film.Surroundings.
func (s *Schedule) Scale(int) float64 { return 1 }

// Climate implements film.Surroundings.
func (s *Schedule) Climate(t float64, _ []float64) film.Climate {
	a := s.State(t)
	c := film.Climate{Air: a, Wall: a.T}
	if s.wall != nil {
		c.Wall = *s.wall
	}
	return c
}

// Rates implements film.Surroundings.
func (s *Schedule) Rates(float64, []float64, film.Drawn, []float64) {}

// Varies implements film.Surroundings.
func (s *Schedule) Varies() bool { return !s.steady }

// Steady is air that stays as it is.
type Steady film.Climate

// States implements film.Surroundings.
func (s *Steady) States() int { return 0 }

// Scale implements film.Surroundings.
func (s *Steady) Scale(int) float64 { return 1 }

// Climate implements film.Surroundings.
func (s *Steady) Climate(float64, []float64) film.Climate { return film.Climate(*s) }

// Rates implements film.Surroundings.
func (s *Steady) Rates(float64, []float64, film.Drawn, []float64) {}

// Varies implements film.Surroundings.
func (s *Steady) Varies() bool { return false }
