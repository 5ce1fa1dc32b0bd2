package transfer

import "github.com/drywright/drywright/cure/air"

// Moist is a Prepared whose fibre holds moisture and is at rest with the air at its tips: the mole fraction there is the
// fibre's own, not what the two layers would make of film and air. The film's vapour then crosses the pile alone, and what
// the tips give to the air crosses the air film alone:
//
//	j = g_pile ln((1 - y_o)/(1 - y_s)),  j_o = g_air ln((1 - y_a)/(1 - y_o))
//
// The heat follows the vapour that leaves the tips: it sets the Ackermann factors and, for the share that comes from the
// fibre, is warmed along the pile like the film's.
//
// The fibre's water is a state, and follows the film to its boiling point, which it passes by 0.1 K or so (see Force).
type Moist struct {
	p       *Prepared
	y       float64 // at the tips
	level   float64 // Force there
	air     stream  // of the air film: j is j_o
	through float64 // g_pile in kg/m2 s
}

// Outside is the mole fraction of the air: the one at the film's surface with which nothing flows.
func (p *Prepared) Outside() float64 { return p.s.Air.Y }

// Hold is the face with the mole fraction y at the tips of its pile.
func (p *Prepared) Hold(y float64) Moist {
	m := Moist{p: p, y: y, air: stream{tip: p.dryTip}}
	m.level, _ = Force(y)
	s, f := p.s, &m.air
	force, _ := StefanLog(s.Air.Y, y)
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
