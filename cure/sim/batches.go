package sim

import (
	"math"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/route"
)

// The loads of an oven that is filled in batches all draw alike, each in its own time; what one draws depends on what the
// others do to the air. A few rounds settle it: the search ends when the heat that a load has drawn altogether moves by less
// than this share from round to round.
const (
	companyTolerance = 1e-4
	companyRounds    = 12
)

// inCompany puts the other batches into a static oven's plan.
func (b *bench) inCompany(p route.Plan) (route.Plan, error) {
	o := b.job.StaticOven
	full, drawn := p, math.NaN()
	for range companyRounds {
		r := b.newRun(full.Until(full.Exit))
		if err := r.follow(); err != nil {
			return p, err
		}
		draws, total, err := r.draws()
		if err != nil {
			return p, err
		}
		full = p.InCompany(o.Batches, o.BatchInterval, draws)
		if math.Abs(total-drawn) <= companyTolerance*math.Abs(total) {
			break
		}
		drawn = total
	}
	return full, nil
}

// takings is what a load has taken altogether at one moment.
type takings struct{ time, air, walls, water float64 }

// take notes the takings at time t, from the ledger.
func (r *run) take(t float64, l *film.Ledger, mass float64) {
	r.takings = append(r.takings, takings{t, l.Convected + l.BackConvected + l.Carried + l.Warmed, l.Radiated + l.BackRadiated, r.start.Mass - mass})
}

// draws are the takings between entry and exit, and the heat taken altogether.
func (r *run) draws() (*route.Draws, float64, error) {
	var times, air, walls, water []float64
	for _, k := range r.takings {
		if n := len(times); k.time < r.plan.Entry || k.time > r.plan.Exit || n > 0 && k.time-r.plan.Entry <= times[n-1] {
			continue
		}
		times, air = append(times, k.time-r.plan.Entry), append(air, k.air)
		walls, water = append(walls, k.walls), append(water, k.water)
	}
	d, err := route.NewDraws(times, air, walls, water)
	last := len(times) - 1
	return d, air[last] - air[0] + walls[last] - walls[0], err
}
