package route

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
)

// Replay is air and walls as another run has found them, joined linearly: what a small spot of the part sees while the
// whole load shapes the room or the oven.
type Replay struct {
	temperature, humidity, wall num.Linear
	like                        air.State // pressure and real-gas setting
}

// NewReplay makes a Replay of climates at rising times [s].
func NewReplay(times []float64, climates []film.Climate) (*Replay, error) {
	n := len(times)
	T, y, wall := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, c := range climates {
		T[i], y[i], wall[i] = c.Air.T, c.Air.Y, c.Wall
	}
	r := &Replay{like: climates[0].Air}
	var err error
	for _, t := range []struct {
		to     *num.Linear
		values []float64
	}{{&r.temperature, T}, {&r.humidity, y}, {&r.wall, wall}} {
		if *t.to, err = num.NewLinear(times, t.values); err != nil {
			return nil, err
		}
	}
	return r, nil
}

// States implements film.Surroundings.
func (r *Replay) States() int { return 0 }

// Scale implements film.Surroundings.
func (r *Replay) Scale(int) float64 { return 1 }

// Climate implements film.Surroundings.
func (r *Replay) Climate(t float64, _ []float64) film.Climate {
	a := r.like
	a.T, a.Y = r.temperature.At(t), r.humidity.At(t)
	return film.Climate{Air: a, Wall: r.wall.At(t)}
}

// Rates implements film.Surroundings.
func (r *Replay) Rates(float64, []float64, film.Drawn, []float64) {}

// Varies implements film.Surroundings.
func (r *Replay) Varies() bool { return true }
