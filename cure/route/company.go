package route

import (
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/transfer"
)

// Draws is what a load takes from an oven and gives to it, per square metre of coated face, against the time since it
// entered: straight lines through the middles of the steps of a run, and how the heats answer to air or walls that are
// warmer than they were in that run.
type Draws struct {
	air, walls, vapour num.Linear // [W/m2], [W/m2], [kg/(m2 s)]
	airWas, wallWas    num.Linear // [K]
	ease               num.Linear // W/(m2 K) between load and air
}

// Taken is what a load has taken altogether at one moment since it entered, and the oven then.
type Taken struct {
	Time            float64 // [s]
	Air, Walls      float64 // heat from the air and by radiation [J/m2]
	Water           float64 // given off [kg/m2]
	AirWas, WallWas float64 // [K]
	Ease            float64 // coefficient of heat transfer on the coated face [W/(m2 K)]
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
	for _, c := range []struct {
		to *num.Linear
		of func(a, b *Taken) float64
	}{
		{&d.air, rate(func(k *Taken) float64 { return k.Air })}, {&d.walls, rate(func(k *Taken) float64 { return k.Walls })},
		{&d.vapour, rate(func(k *Taken) float64 { return k.Water })}, {&d.airWas, mean(func(k *Taken) float64 { return k.AirWas })},
		{&d.wallWas, mean(func(k *Taken) float64 { return k.WallWas })}, {&d.ease, mean(func(k *Taken) float64 { return k.Ease })},
	} {
		var at, values []float64
		for i := 1; i < len(taken); i++ {
			a, b := &taken[i-1], &taken[i]
			at, values = append(at, (a.Time+b.Time)/2), append(values, c.of(a, b))
		}
		var err error
		if *c.to, err = num.NewLinear(at, values); err != nil {
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

// add sums up what the company draws at time t from air and walls of these temperatures.
func (c *Company) add(t, airT, wallT float64, d *film.Drawn) {
	if t < c.Enters || t > c.Leaves {
		return
	}
	since := t - c.Enters
	was := c.Draws.wallWas.At(since)
	d.FromAir += c.Draws.air.At(since) + c.Draws.ease.At(since)*(airT-c.Draws.airWas.At(since))
	d.FromWalls += c.Draws.walls.At(since) + 4*transfer.StefanBoltzmann*was*was*was*(wallT-was)
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
