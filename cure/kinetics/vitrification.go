package kinetics

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Vitrification is what slows a cure as the glass transition of the growing network passes the film's temperature.
//
//	Tg(alpha) = Tg0 + (Tg1 - Tg0) lambda alpha/(1 - (1 - lambda) alpha)
//	k_d(T, alpha) = k_g 10^(C1 (T - Tg)/(C2 + |T - Tg|)),   1/k = 1/k_chem + 1/k_d,   k_chem = k1 + k2 alpha^m
//
// Sources: DiBenedetto's equation in the form of Pascault and Williams (1990), Relationships between glass transition
// temperature and conversion, J. Polymer Science B 28, 85-95; Williams, Landel and Ferry (1955), J. American Chemical
// Society 77, 3701-3707, carried on below Tg with |T - Tg|, where the equation itself has a pole (Simon and Gillham 1993,
// J. Applied Polymer Science 47, 461-485; from memory); the two steps in series by Rabinowitch (1937), Collision,
// co-ordination, diffusion and reaction velocity in condensed systems, Trans. Faraday Society 33, 1225-1233.
type Vitrification struct {
	TgUncured, TgCured float64 // Tg0, Tg1 [K]
	Lambda             float64 // ratio of the steps in heat capacity, cured over uncured, 0 < lambda <= 1 [-]
	DiffusionRate      float64 // k_g, what diffusion allows at Tg [1/s], above 0
	C1                 float64 // [-], for decadic logarithms
	C2                 float64 // [K], above 0
}

// GlassTransition is Tg [K] at the conversion alpha and dTg/d alpha [K]. Conversions of trial states outside [0, 1] count as
// the nearer end.
func (v *Vitrification) GlassTransition(alpha float64) (tg, slope float64) {
	rise := v.TgCured - v.TgUncured
	switch {
	case alpha <= 0:
		return v.TgUncured, 0
	case alpha >= 1:
		return v.TgCured, 0
	}
	d := 1 - (1-v.Lambda)*alpha
	return v.TgUncured + rise*v.Lambda*alpha/d, rise * v.Lambda / (d * d)
}

// Diffusion is k_d [1/s] at temperature t [K] and conversion alpha, with its derivatives in t and alpha.
func (v *Vitrification) Diffusion(t, alpha float64) (k, dT, dAlpha float64) {
	tg, slope := v.GlassTransition(alpha)
	above := t - tg
	room := v.C2 + math.Abs(above)
	k = v.DiffusionRate * num.Exp(math.Ln10*v.C1*above/room)
	dT = k * math.Ln10 * v.C1 * v.C2 / (room * room)
	return k, dT, -dT * slope
}

// steepness bounds |d ln k_d/dz|, z being the logit of the conversion: C1 ln 10/C2 by temperature times the largest dTg/dz,
// which is a quarter of the rise of Tg (at alpha = 1/(1 + lambda), since d alpha/dz = alpha (1 - alpha)).
func (v *Vitrification) steepness() float64 {
	return math.Ln10 * v.C1 / v.C2 * math.Abs(v.TgCured-v.TgUncured) / 4
}

// Isothermal is a law at one temperature: a film has one temperature and many cells.
type Isothermal struct {
	law      *Law
	t        float64
	k1, k2   float64
	dk1, dk2 float64 // by temperature
}

// At prepares the law for the temperature t [K] > 0.
func (l *Law) At(t float64) Isothermal {
	at := Isothermal{law: l, t: t}
	at.k1, at.k2 = l.Constants(t)
	rt2 := GasConstant * t * t
	at.dk1, at.dk2 = at.k1*l.E1/rt2, at.k2*l.E2/rt2
	return at
}

// Rate is d alpha/dt [1/s] at conversion alpha and water content x [kg/kg], with its partial derivatives in alpha [1/s]
// and x [kg/(kg s)]. Trial states out of range are answered as by Law.RateAt.
func (at *Isothermal) Rate(alpha, x float64) (rate, dAlpha, dX float64) {
	l := at.law
	if l.Vitrification == nil {
		return l.RateAt(at.k1, at.k2, alpha, x)
	}
	s := at.series(alpha)
	left, dLeft := power(1-alpha, l.N, unreactedTail)
	g, dg := l.Hindrance(x)
	return s.k * left * g, (s.dAlpha*left - s.k*dLeft) * g, s.k * left * dg
}

// Warming is the derivative of Rate's rate in temperature [1/(s K)].
func (at *Isothermal) Warming(alpha, x float64) float64 {
	l := at.law
	if l.Vitrification == nil {
		dT, _, _ := l.RateAt(at.dk1, at.dk2, alpha, x)
		return dT
	}
	s := at.series(alpha)
	left, _ := power(1-alpha, l.N, unreactedTail)
	g, _ := l.Hindrance(x)
	return s.dT * left * g
}

// series is the rate constant of the chemical step and diffusion one after the other.
type series struct{ k, dAlpha, dT float64 }

func (at *Isothermal) series(alpha float64) series {
	l := at.law
	k, dk := l.bracket(at.k1, at.k2, alpha)
	if k == 0 {
		return series{dAlpha: dk}
	}
	dkT, _ := l.bracket(at.dk1, at.dk2, alpha)
	d, dT, dAlpha := l.Vitrification.Diffusion(at.t, alpha)
	free := 1 / (1 + k/d) // share of the chemical rate that diffusion leaves; 0 where k_d has vanished
	chem, held := free*free, (1-free)*(1-free)
	return series{k: k * free, dAlpha: chem*dk + held*dAlpha, dT: chem*dkT + held*dT}
}
