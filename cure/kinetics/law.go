// Package kinetics is the crosslinking of a film: how fast the conversion of the reactive groups grows at a
// temperature and a water content, and how a data sheet's cure schedule becomes such a law.
//
//	d alpha/dt = (k1(T) + k2(T) alpha^m) (1 - alpha)^n g(X),   k_i = A_i exp(-E_i/(R T)),   g = 1/(1 + (X/X_g)^2)
//
// The bracket is the law of Kamal and Sourour (1973), Kinetics and thermal characterization of thermoset cure, Polymer
// Engineering and Science 13, 59-64; with k2 = 0 it is plain order n. The factor g holds the reaction back while water
// is in the film; it is a form of our own, of no published source, and X_g = +Inf switches it off. Where the growing network
// may turn to glass the bracket stands in series with the rate that diffusion allows (see Vitrification); soft dispersion
// adhesives stay rubbery far below room temperature and do without.
//
// All numbers are SI: kelvin, second, J/mol, 1/s, kilogram of water per kilogram of solids.
package kinetics

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// GasConstant is R [J/(mol K)], exact since the SI of 2019 (CODATA 2018: 8.314 462 618 153 24).
const GasConstant = 8.314462618

// Law is one cure law. A1, A2 are frequency factors [1/s], at least 0; E1, E2 activation energies [J/mol], at least 0;
// N the order in unreacted groups, above 0; M the autocatalytic exponent, above 0; HinderingWater is X_g [kg/kg], the
// water content that halves the rate, above 0, +Inf for none.
type Law struct {
	A1, E1, N      float64
	A2, E2, M      float64
	HinderingWater float64
	Vitrification  *Vitrification // nil: the film stays rubbery
}

// Below these distances from its end a power with an exponent under 1 runs straight to zero, because its own slope
// there is infinite: an integrator would creep. Order n is touched above 99.9 % conversion, the highest that a mark may ask
// for, the autocatalytic power below a conversion of 1e-8: neither moves a mark.
const (
	unreactedTail = 1e-3
	reactedTail   = 1e-8
)

// Rate is d alpha/dt [1/s] at temperature t [K], conversion alpha and water content x [kg/kg].
func (l Law) Rate(t, alpha, x float64) float64 {
	at := l.At(t)
	r, _, _ := at.Rate(alpha, x)
	return r
}

// Constants are the rate constants k1, k2 [1/s] of the chemical step at temperature t [K] > 0 (Arrhenius).
func (l Law) Constants(t float64) (k1, k2 float64) {
	k1 = l.A1 * num.Exp(-l.E1/(GasConstant*t))
	if l.A2 != 0 {
		k2 = l.A2 * num.Exp(-l.E2/(GasConstant*t))
	}
	return k1, k2
}

// ConstantsSlope is dk1/dT and dk2/dT [1/(s K)] at temperature t [K]: k E/(R T^2).
func (l Law) ConstantsSlope(t float64) (dk1, dk2 float64) {
	k1, k2 := l.Constants(t)
	rt2 := GasConstant * t * t
	return k1 * l.E1 / rt2, k2 * l.E2 / rt2
}

// RateAt is the rate [1/s] of the chemical step alone, for rate constants already known, with its partial derivatives in
// alpha [1/s] and x [kg/(kg s)]. It is linear in k1 and k2, so RateAt with (dk1, dk2) of ConstantsSlope is its derivative
// in T. With vitrification the rate is that of Law.At.
//
// An integrator's trial states may stray out of range, and the law goes on continuously there. Above alpha = 1 the factor
// (1 - alpha)^n turns negative and pulls back (an odd function of 1 - alpha). Below alpha = 0 the power alpha^m is zero, so
// that k1 alone pulls back; an odd power would run away downwards. At 0 the slope is that from above, where the film
// starts. g is even in x. Exponents below 1 end in a short straight tail (see unreactedTail).
func (l *Law) RateAt(k1, k2, alpha, x float64) (rate, dAlpha, dX float64) {
	left, dLeft := power(1-alpha, l.N, unreactedTail)
	k, dk := l.bracket(k1, k2, alpha)
	g, dg := l.Hindrance(x)
	return k * left * g, (dk*left - k*dLeft) * g, k * left * dg
}

// bracket is k1 + k2 alpha^m [1/s] and its derivative in alpha.
func (l *Law) bracket(k1, k2, alpha float64) (k, dAlpha float64) {
	k = k1
	if k2 != 0 && alpha >= 0 {
		p, dp := power(alpha, l.M, reactedTail)
		k += k2 * p
		dAlpha = k2 * dp
	}
	return k, dAlpha
}

// Hindrance is g(x) [-] and dg/dx [kg/kg]: the share of the dry film's rate that is left at water content x [kg/kg].
func (l *Law) Hindrance(x float64) (g, dg float64) {
	perWater := 1 / l.HinderingWater // 0 where nothing hinders
	q := x * perWater
	g = 1 / (1 + q*q)
	return g, -2 * q * perWater * g * g
}

// power is the odd continuation of u^e and its derivative, e > 0; with e < 1 it is a chord to zero inside the tail.
func power(u, e, tail float64) (p, dp float64) {
	switch {
	case e == 1:
		return u, 1
	case e == 2:
		return u * math.Abs(u), 2 * math.Abs(u)
	case e < 1 && math.Abs(u) < tail:
		slope := num.Pow(tail, e-1)
		return slope * u, slope
	case u == 0:
		return 0, 0
	}
	q := num.Pow(math.Abs(u), e-1)
	return q * u, e * q
}
