package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/air"
)

// Pile is a layer of upright fibre on the film (flock): its height in m, its porosity (1 less the volume share of fibre),
// the tortuosity of the paths between fibres, its effective conductivity in W/m K and the emissivity of the tips.
//
// It lies in series with the air film. Vapour: 1/k + L tau/(eps D). Heat below the tips: h2 = k_p/L. Radiation and infrared
// act at the tips, whose temperature T_o balances
//
//	h1* (T_a - T_o) + eps_r sigma (T_w^4 - T_o^4) + absorbed = h2* (T_o - T) + j cp_v (T_o - T)
//
// with the Ackermann factor in each layer. The law works at the tips: their temperature and their mole fraction.
type Pile struct{ Length, Porosity, Tortuosity, Conductivity, Emissivity float64 }

// passes over law and tips. Each gains a factor of ten or more, because the law feels a tenth or less of an error in the
// tips' state; the test holds the result to the fixed point.
const passes = 3

// prepareTips finds the tips without vapour flux, where the passes start.
func (p *Prepared) prepareTips() {
	s := p.s
	p.pileHeat = s.Pile.Conductivity / s.Pile.Length
	tip, y := (p.T+s.Air.T)/2, s.Air.Y
	for range 2 {
		h := s.Factor * coefficient(s.Law, s.Air, tip, y, filmProps(s.Air, tip, y))
		tip = p.tipTemperature(h, 0, tip)
	}
	p.dryTip = tip
}

// tips goes from the dry tips to those of the activity a in a fixed number of passes, so that the flux is a smooth
// function of activity and temperature.
func (p *Prepared) tips(a float64) stream {
	s := p.s
	air1 := s.Air
	l, dl := StefanLog(air1.Y, a*p.full)
	f := stream{tip: p.dryTip}
	y := air1.Y
	for range passes {
		m := filmProps(air1, f.tip, y)
		f.h = s.Factor * coefficient(s.Law, air1, f.tip, y, m)
		f.k = MassCoefficient(f.h, m)
		outer := conductance(f.k, air1.P, (f.tip+air1.T)/2)
		mean := (p.T + f.tip) / 2
		pile := s.Pile.Porosity / (s.Pile.Tortuosity * s.Pile.Length) * air.Diffusivity(mean, air1.P)
		inner := conductance(pile, air1.P, mean)
		share := inner / (outer + inner)
		g := outer * share
		f.j, f.slope = g*l, g*dl*p.full
		y = 1 - max(1-air1.Y, edge)*math.Exp(-l*share)
		f.tip = p.tipTemperature(f.h, f.j, f.tip)
	}
	return f
}

// tipTemperature solves the balance at the tips for given h1 and j. The residual falls and is concave in T_o > 0, so Newton's
// method from anywhere goes past the root at most once and then comes down to it.
func (p *Prepared) tipTemperature(h, j, start float64) float64 {
	s := p.s
	jcp := j * p.cpVapour
	outer := highFlux(h, jcp)
	inner := highFlux(p.pileHeat, jcp) + jcp
	glow := s.Pile.Emissivity * StefanBoltzmann
	w2 := s.Wall * s.Wall
	gain := outer*s.Air.T + inner*p.T + glow*w2*w2 + s.AbsorbedFlux
	t := start
	for range 30 {
		t3 := glow * t * t * t
		step := (gain - (outer+inner+t3)*t) / (outer + inner + 4*t3)
		t += step
		if math.Abs(step) <= 1e-13*t {
			break
		}
	}
	return t
}
