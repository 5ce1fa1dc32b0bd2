package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

// StefanBoltzmann constant, W/m2 K4, CODATA 2018.
const StefanBoltzmann = 5.670374419e-8

// steamy is the share of air, 1 - y, below which the vapour's own pressure drives it. A film comes to it 0.03 K below its boiling
// point, since the pressure of its vapour rises by some 3.6 % a kelvin. Carried on to the last trace of air the force would change by
// decades within less than any tolerance of a temperature: an integrator would jump between boiling and drying, and take a film for
// boiling long after its heat is gone. The size is ours.
const (
	steamy      = 1e-3
	steamyForce = 3 * math.Ln10 // Force there
)

// Radiation is the net flux in W/m2 that a small body of emissivity eps at Ts takes from a large enclosure at Tw.
//
//	q = eps sigma (Tw^4 - Ts^4)
func Radiation(eps, Tw, Ts float64) float64 {
	return eps * StefanBoltzmann * (Tw*Tw + Ts*Ts) * (Tw + Ts) * (Tw - Ts)
}

// MassCoefficient is the mass transfer coefficient k in m/s that belongs to the heat transfer coefficient h in W/m2 K.
//
//	k = h / (rho cp Le^(2/3)),  Le = alpha/D
//
// Chilton and Colburn 1934, Ind. Eng. Chem. 26, 1183; Incropera et al. equation 6.60. Range 0.6 < Pr < 60, 0.6 < Sc < 3000.
func MassCoefficient(h float64, m air.Props) float64 {
	c := m.Density * m.HeatCapacity
	le := m.Conductivity / (c * m.Diffusivity)
	return h / (c * num.Cbrt(le*le))
}

// Force is -ln(1 - y), whose differences drive vapour through stagnant air (Stefan flow), and its slope in the mole fraction y. For
// 1 - y < 1e-3 it goes on linearly with the same slope, through pure steam and past it.
func Force(y float64) (f, slope float64) {
	if 1-y >= steamy {
		return -math.Log1p(-y), 1 / (1 - y)
	}
	return (y-1)/steamy + 1 + steamyForce, 1 / steamy
}

// Fraction is the mole fraction at which Force is f, and its slope in f.
func Fraction(f float64) (y, slope float64) {
	if f > steamyForce {
		return 1 - steamy*(1-(f-steamyForce)), steamy
	}
	y = -math.Expm1(-f)
	return y, 1 - y
}

// StefanLog is the difference of Force between a surface and the air, ln((1 - yInf)/(1 - ys)), and its derivative in ys.
func StefanLog(yInf, ys float64) (l, slope float64) {
	far, near := 1-yInf, 1-ys
	if near >= steamy && far >= steamy {
		return math.Log1p((far - near) / near), 1 / near // exact where the two hardly differ
	}
	outer, _ := Force(yInf)
	inner, slope := Force(ys)
	return inner - outer, slope
}

// downstream is the mole fraction from whose Force that of y differs by l.
func downstream(y, l float64) float64 {
	f, _ := Force(y)
	y, _ = Fraction(f + l)
	return y
}

// StefanFlux is the vapour flux j in kg/m2 s from a surface of mole fraction ys to air of yInf, and dj/dys at constant k.
//
//	j = k p Mw/(R Tm) ln((1 - yInf)/(1 - ys))
//
// k in m/s, p in Pa, Tm the mean of surface and air in K; for the logarithm see StefanLog. Bird, Stewart and Lightfoot 2002,
// Transport Phenomena, 2nd ed., section 18.2.
func StefanFlux(k, p, Tm, yInf, ys float64) (j, slope float64) {
	l, dl := StefanLog(yInf, ys)
	g := conductance(k, p, Tm)
	return g * l, g * dl
}

// MoistEase is -dj/dyInf of StefanFlux for air of the state a, its surface left as it is [kg/(m2 s)].
func MoistEase(k float64, a air.State) float64 {
	_, slope := Force(a.Y)
	return conductance(k, a.P, a.T) * slope
}

// conductance k p Mw/(R T), kg/m2 s.
func conductance(k, p, T float64) float64 {
	return k * p * air.WaterMolarMass / (air.GasConstant * T)
}

// Ackermann is the factor phi/(exp(phi) - 1) by which a vapour flux, phi = j cp_v/h, changes the heat that reaches the
// surface: 1 at rest, below 1 while drying, above 1 while dew falls.
//
// Ackermann 1937, VDI-Forschungsheft 382; Bird, Stewart and Lightfoot section 22.8. Worked value: phi 0.5 gives 0.7707.
func Ackermann(phi float64) float64 {
	if math.Abs(phi) < 1e-4 {
		return 1 - phi*(1./2-phi*(1./12)) // next term phi^4/720 < 2e-19
	}
	return phi / math.Expm1(phi)
}

// highFlux is h times Ackermann of j cp/h, 0 when h is 0 as the limit of drying is.
func highFlux(h, jcp float64) float64 {
	if h <= 0 {
		return max(-jcp, 0)
	}
	return h * Ackermann(jcp/h)
}
