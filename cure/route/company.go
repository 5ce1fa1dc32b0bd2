package route

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
)

// Draws is what a load takes from an oven and gives to it, per square metre of coated face, against the time since it
// entered: straight lines through the middles of the steps of a run.
type Draws struct{ air, walls, vapour num.Linear }

// NewDraws makes the draws of a load from what it has taken altogether up to each of the rising times since it entered:
// heat from the air and from the walls [J/m2], water given off [kg/m2].
func NewDraws(times, air, walls, water []float64) (*Draws, error) {
	d := &Draws{}
	for _, c := range []struct {
		to    *num.Linear
		total []float64
	}{{&d.air, air}, {&d.walls, walls}, {&d.vapour, water}} {
		var at, rate []float64
		for i := 1; i < len(times); i++ {
			if step := times[i] - times[i-1]; step > 0 {
				at = append(at, (times[i]+times[i-1])/2)
				rate = append(rate, (c.total[i]-c.total[i-1])/step)
			}
		}
		var err error
		if *c.to, err = num.NewLinear(at, rate); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// Company is another load in the same oven: it enters and leaves at its own moments and draws as the judged one does.
type Company struct {
	Enters, Leaves float64 // from spraying of the judged load [s]
	Draws          *Draws
}

// add sums up what the company draws at time t.
func (c *Company) add(t float64, d *film.Drawn) {
	if t < c.Enters || t > c.Leaves {
		return
	}
	since := t - c.Enters
	d.FromAir += c.Draws.air.At(since)
	d.FromWalls += c.Draws.walls.At(since)
	d.Vapour += c.Draws.vapour.At(since)
}

// InCompany puts other loads into the oven of a plan: batches of them, each an interval after the one before, the judged
// one in the middle. Stages are cut where a load enters or leaves.
func (p Plan) InCompany(batches int, interval float64, draws *Draws) Plan {
	dwell := p.Exit - p.Entry
	var others []Company
	var cuts []float64
	for i := range batches {
		if i == batches/2 {
			continue
		}
		enters := p.Entry + float64(i-batches/2)*interval
		others = append(others, Company{Enters: enters, Leaves: enters + dwell, Draws: draws})
		cuts = append(cuts, enters, enters+dwell)
	}
	var stages []Stage
	for _, st := range p.Stages {
		chamber, ok := st.Exposure.Around.(*Chamber)
		if !ok {
			stages = append(stages, st)
			continue
		}
		own := st.Own
		from := st.Start
		for _, to := range append(between(cuts, st.Start, st.End), st.End) {
			piece, full := st, *chamber
			for _, c := range others {
				if c.Enters < to && c.Leaves > from {
					full.Others = append(full.Others, c)
				}
			}
			piece.Start, piece.End, piece.Own = from, to, own
			piece.Exposure.Around = &full
			stages = append(stages, piece)
			from, own = to, nil
		}
	}
	p.Stages = stages
	return p
}
