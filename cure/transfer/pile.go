package transfer

import "math"

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
// tips' state. Against the fixed point two leave 4e-5 of the flux for forced flow (1e-3 for dew from pure steam), 2e-4 for natural
// convection in a room and 0.15 % in an oven; only dew from pure steam in still air is worse.
const passes = 2

// prepareTips finds the tips without vapour flux and how the two vapour resistances share there: where the passes start.
func (p *Prepared) prepareTips() {
	s := p.s
	p.pileHeat = s.Pile.Conductivity / s.Pile.Length
	tip, y := (p.temperature+s.Air.T)/2, s.Air.Y
	m := filmProps(s.Air, tip, y)
	h := s.Factor * coefficient(s.Law, s.Air, tip, y, m)
	p.dryTip = p.tipTemperature(h, 0, tip)
	p.dryShare, _ = p.series(MassCoefficient(h, m), p.dryTip)
}

// series is the share of the air film in the resistance to vapour, and the conductance of air film and pile together in
// kg/m2 s, each at the mean temperature of its own layer.
func (p *Prepared) series(k, tip float64) (share, total float64) {
	s := p.s
	outer := conductance(k, s.Air.P, (tip+s.Air.T)/2)
	mean := (p.temperature + tip) / 2
	inner := conductance(s.Pile.coefficient(mean, s.Air.P), s.Air.P, mean)
	share = inner / (outer + inner)
	return share, outer * share
}

// tips goes from the dry tips to those of the activity a in a fixed number of passes, so that the flux is a smooth
// function of activity and temperature.
//
// Law and tips follow the vapour as far as seenByTips lets them, so that under strong suction neither hangs on the activity. The
// tip temperature of the stream is that of the last pass's law; settle closes the balance at the tips exactly.
func (p *Prepared) tips(a float64) stream {
	s := p.s
	l, dl := StefanLog(s.Air.Y, a*p.full)
	seen := p.seenByTips(l)
	f := stream{tip: p.dryTip}
	share := p.dryShare
	var g float64
	for pass := range passes {
		if pass > 0 {
			f.tip = p.tipTemperature(f.h, g*seen, f.tip)
		}
		y := downstream(s.Air.Y, seen*share)
		m := filmProps(s.Air, f.tip, y)
		f.h = s.Factor * coefficient(s.Law, s.Air, f.tip, y, m)
		f.k = MassCoefficient(f.h, m)
		share, g = p.series(f.k, f.tip)
		f.j, f.slope = g*l, g*dl*p.full
	}
	return f
}

// settle solves the tips' balance for the stream's own coefficient and flux.
func (p *Prepared) settle(f *stream) {
	if p.s.Pile != nil {
		f.tip = p.tipTemperature(f.h, f.j, f.tip)
	}
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
	gain := outer*s.Air.T + inner*p.temperature + glow*w2*w2 + s.AbsorbedFlux
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
