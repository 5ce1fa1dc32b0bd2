package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

// Moist is a Prepared whose fibre holds moisture and is at rest with the air at its tips: the mole fraction there is the
// fibre's own, not what the two layers would make of film and air. The film's vapour then crosses the pile alone, and what
// the tips give to the air crosses the air film alone:
//
//	j = g_pile ln((1 - y_o)/(1 - y_s)),  j_o = g_air ln((1 - y_a)/(1 - y_o))
//
// The heat follows the vapour that leaves the tips: it sets the Ackermann factors and, for the share that comes from the
// fibre, is warmed along the pile like the film's.
//
// The fibre's water is a state, and follows the film to its boiling point: there the driving force -ln(1 - y_o) goes on as a straight
// line from steamy on, as under a front in package film. Carried on to the last trace of air it would change by decades within
// less than any tolerance of the temperature, and an integrator would creep. The fibre passes its boiling point by 0.1 K or so.
type Moist struct {
	p       *Prepared
	y       float64 // at the tips, below 1
	level   float64 // -ln(1 - y_o) at the tips
	air     stream  // of the air film: j is j_o
	through float64 // g_pile in kg/m2 s
}

// steamy is the share of air at the tips, 1 - y_o, below which vapour's own pressure drives it.
const steamy = 1e-3

// Outside is the mole fraction of the air: the one at the film's surface with which nothing flows.
func (p *Prepared) Outside() float64 { return p.s.Air.Y }

// Hold is the face with the mole fraction y at the tips of its pile.
func (p *Prepared) Hold(y float64) Moist {
	m := Moist{p: p, y: y, level: -math.Log1p(-min(y, 1-steamy)), air: stream{tip: p.dryTip}}
	if 1-y < steamy {
		m.level += 1 - (1-y)/steamy
		m.y = -math.Expm1(-m.level)
	}
	s, f := p.s, &m.air
	force := m.level + num.Log(max(1-s.Air.Y, edge))
	for range passes {
		props := filmProps(s.Air, f.tip, m.y)
		f.h = s.Factor * coefficient(s.Law, s.Air, f.tip, m.y, props)
		f.k = MassCoefficient(f.h, props)
		f.j = conductance(f.k, s.Air.P, (f.tip+s.Air.T)/2) * force
		p.settle(f)
	}
	mean := (p.temperature + f.tip) / 2
	m.through = conductance(s.Pile.coefficient(mean, s.Air.P), s.Air.P, mean)
	return m
}

// Flux is Prepared.Flux of the film: the vapour that leaves it, for the tips or the fibre.
func (m *Moist) Flux(a float64) (j, slope float64) {
	l, dl := StefanLog(0, a*m.p.full)
	return m.through * (l - m.level), m.through * dl * m.p.full
}

// SaturatedFraction is that of Prepared.
func (m *Moist) SaturatedFraction() float64 { return m.p.full }

// Outside is the mole fraction at the tips, which is what the film meets.
func (m *Moist) Outside() float64 { return m.y }

// Given is the vapour that the tips give to the air, kg/m2 s.
func (m *Moist) Given() float64 { return m.air.j }

// Exchange is Prepared.Exchange; its VapourHeat is that of the vapour given to the air.
func (m *Moist) Exchange(a float64) Exchange {
	e := m.p.exchange(m.air)
	e.Flux, _ = m.Flux(a)
	return e
}

// coefficient is the mass transfer coefficient in m/s of a pile at the mean temperature T.
func (l *Pile) coefficient(T, P float64) float64 {
	return l.Porosity / (l.Tortuosity * l.Length) * air.Diffusivity(T, P)
}
