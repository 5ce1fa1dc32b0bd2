package route

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/transfer"
)

// Draws is what a load takes from an oven and gives to it, per square metre of coated face, against the time since it
// entered: straight lines through the middles of the steps of a run, and how the heats answer to air or walls that are
// warmer, and the vapour to air that is damper, than they were in that run.
type Draws struct {
	over num.Linear // the moments; every load of an oven looks all columns up in each evaluation, so they are looked up at once
	rows [][draws]float64
}

// The columns of Draws.
const (
	drawAir       = iota // heat from the air [W/m2]
	drawWalls            // and by radiation [W/m2]
	drawVapour           // [kg/(m2 s)]
	drawAirWas           // [K]
	drawWallWas          // [K]
	drawEase             // between load and air [W/(m2 K)]
	drawMoistWas         // mole fraction of vapour in the air
	drawMoistEase        // between load and air [kg/(m2 s)]
	draws
)

// Taken is what a load has taken altogether at one moment since it entered, and the oven then.
type Taken struct {
	Time            float64 // [s]
	Air, Walls      float64 // heat from the air and by radiation [J/m2]
	Water           float64 // given off [kg/m2]
	AirWas, WallWas float64 // [K]
	Ease            float64 // heat transfer between all of the load and the air [W/(m2 K)]
	MoistWas        float64 // mole fraction of vapour in the air
	MoistEase       float64 // transfer of vapour between load and air, for that fraction [kg/(m2 s)]
}

// NewDraws makes the draws of a load of what it has taken at rising times, two or more.
func NewDraws(taken []Taken) (*Draws, error) {
	d := &Draws{}
	rate := func(of func(*Taken) float64) func(a, b *Taken) float64 {
		return func(a, b *Taken) float64 { return (of(b) - of(a)) / (b.Time - a.Time) }
	}
	mean := func(of func(*Taken) float64) func(a, b *Taken) float64 {
		return func(a, b *Taken) float64 { return (of(a) + of(b)) / 2 }
	}
	columns := [draws]func(a, b *Taken) float64{
		drawAir:       rate(func(k *Taken) float64 { return k.Air }),
		drawWalls:     rate(func(k *Taken) float64 { return k.Walls }),
		drawVapour:    rate(func(k *Taken) float64 { return k.Water }),
		drawAirWas:    mean(func(k *Taken) float64 { return k.AirWas }),
		drawWallWas:   mean(func(k *Taken) float64 { return k.WallWas }),
		drawEase:      mean(func(k *Taken) float64 { return k.Ease }),
		drawMoistWas:  mean(func(k *Taken) float64 { return k.MoistWas }),
		drawMoistEase: mean(func(k *Taken) float64 { return k.MoistEase }),
	}
	d.rows = make([][draws]float64, max(0, len(taken)-1)) // none: NewLinear refuses it
	at, values := make([]float64, len(d.rows)), make([]float64, len(d.rows))
	for k, of := range columns {
		for i := range d.rows {
			a, b := &taken[i], &taken[i+1]
			at[i], values[i] = (a.Time+b.Time)/2, of(a, b)
			d.rows[i][k] = values[i]
		}
		var err error
		if d.over, err = num.NewLinear(at, values); err != nil {
			return nil, err
		}
	}
	return d, nil
}

// at are the columns at a time since entry, straight between the middles and held beyond the ends.
func (d *Draws) at(since float64) [draws]float64 {
	i, w := d.over.Place(since)
	row := d.rows[i]
	if w > 0 {
		next := &d.rows[i+1]
		for k := range row {
			row[k] = (1-w)*row[k] + w*next[k]
		}
	}
	return row
}

// Company is another load in the same oven: it enters and leaves at its own moments and draws as the judged one does.
type Company struct {
	Enters, Leaves float64 // from spraying of the judged load [s]
	Draws          *Draws
}

// add sums up what the company draws at time t from such air and walls.
func (c *Company) add(t float64, in *film.Climate, d *film.Drawn) {
	if t < c.Enters || t > c.Leaves {
		return
	}
	row := c.Draws.at(t - c.Enters)
	was := row[drawWallWas]
	d.FromAir += row[drawAir] + row[drawEase]*(in.Air.T-row[drawAirWas])
	d.FromWalls += row[drawWalls] + 4*transfer.StefanBoltzmann*was*was*was*(in.Wall-was)
	d.Vapour += row[drawVapour] - row[drawMoistEase]*(in.Air.Y-row[drawMoistWas])
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
