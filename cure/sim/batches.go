package sim

import (
	"math"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/route"
	"github.com/drywright/drywright/cure/transfer"
	"github.com/drywright/drywright/cure/words"
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
			return full, nil
		}
		drawn = total
	}
	return p, fault.New(fault.Numeric, "static_oven.batches", words.Told("the loads did not settle in {company_rounds} rounds", "company_rounds", companyRounds),
		words.Told("So large a load overwhelms this heater: load less, or further apart."))
}

// take notes what has been taken up to time t, from the ledger, and the oven then.
func (r *run) take(t float64, l *film.Ledger, mass float64, d *film.Reading) {
	c := &d.Climate
	r.taken = append(r.taken, route.Taken{Time: t, Air: l.Convected + l.BackConvected + l.Carried + l.Warmed,
		Walls: l.Radiated + l.BackRadiated, Water: r.start.Mass - mass, AirWas: c.Air.T, WallWas: c.Wall, Ease: d.Exchange,
		MoistWas: c.Air.Y, MoistEase: transfer.MoistEase(d.MassCoefficient, c.Air)})
}

// draws are the takings between entry and exit, and the heat taken altogether.
func (r *run) draws() (*route.Draws, float64, error) {
	var inside []route.Taken
	for _, k := range r.taken {
		if k.Time < r.plan.Entry || k.Time > r.plan.Exit {
			continue
		}
		k.Time -= r.plan.Entry
		if n := len(inside); n > 0 && k.Time <= inside[n-1].Time {
			inside[n-1] = k // of two at a seam the second is the oven's
			continue
		}
		inside = append(inside, k)
	}
	d, err := route.NewDraws(inside)
	if err != nil {
		return nil, 0, err
	}
	first, last := &inside[0], &inside[len(inside)-1]
	return d, last.Air - first.Air + last.Walls - first.Walls, nil
}
