package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Gravity is the standard acceleration, m/s2.
const Gravity = 9.80665

// Grashof number from a relative density difference (rho_inf - rho_s)/rho_mean, which is beta dT when only temperature
// differs; L in m, kinematic viscosity nu in m2/s.
func Grashof(L, difference, nu float64) float64 {
	return Gravity * L * L * L * difference / (nu * nu)
}

// churchillUsagi is 1 + (c/Pr)^(9/16), the interpolation between Prandtl numbers that the natural-convection equations share.
func churchillUsagi(c, Pr float64) float64 {
	// (c/Pr)^(9/16) by four square roots: a tenth of the cost of a power.
	r := c / Pr
	s := math.Sqrt(r)
	return 1 + s*math.Sqrt(math.Sqrt(math.Sqrt(s)))
}

// NaturalVertical is the average Nusselt number over the height of a vertical plate, laminar and turbulent.
//
//	Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2
//
// Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1323. Range Ra <= 1e12, all Pr. Worked value: Pr 0.69, Gr 2.63e9
// gives 147.2 (Incropera, example 9.2). The laminar form of the same paper lies a few per cent lower.
func NaturalVertical(Ra, Pr float64) float64 {
	n := 0.825 + 0.387*math.Sqrt(num.Cbrt(Ra))/num.Pow(churchillUsagi(0.492, Pr), 8./27)
	return n * n
}

// NaturalCylinder is the average Nusselt number, on the diameter, of a long horizontal cylinder.
//
//	Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2
//
// Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1049. Range Ra <= 1e12.
func NaturalCylinder(Ra, Pr float64) float64 {
	n := 0.60 + 0.387*math.Sqrt(num.Cbrt(Ra))/num.Pow(churchillUsagi(0.559, Pr), 8./27)
	return n * n
}

// NaturalHorizontalUnstable is the average Nusselt number of a horizontal plate whose layer rises off it: a hot or vapour-
// light face up, or a cold, heavy one down. Characteristic length: area over perimeter (a quarter of a square's side).
//
//	Nu_T = 0.835 C Ra^(1/4),  C = 0.671/(1 + (0.492/Pr)^(9/16))^(4/9)
//	Nu_l = 1.4/ln(1 + 1.4/Nu_T),  Nu_t = 0.14 Ra^(1/3) (1 + 0.0107 Pr)/(1 + 0.01 Pr)
//	Nu = (Nu_l^10 + Nu_t^10)^(1/10)
//
// Raithby and Hollands, chapter 4 of Rohsenow, Hartnett and Cho 1998, Handbook of Heat Transfer, 3rd ed.; structure checked
// in a public library that cites it, C and the Prandtl factor of Nu_t from memory (1.0005 in air). Range 1 < Ra < 1e10.
// Preferred to McAdams' pair because it is continuous.
func NaturalHorizontalUnstable(Ra, Pr float64) float64 {
	c := 0.671 * num.Pow(churchillUsagi(0.492, Pr), -4./9)
	thin := 0.835 * c * math.Sqrt(math.Sqrt(Ra))
	laminar := 1.4 / math.Log1p(1.4/thin)
	turbulent := 0.14 * num.Cbrt(Ra) * (1 + 0.0107*Pr) / (1 + 0.01*Pr)
	r := turbulent / laminar
	r *= r
	r5 := r * r * r * r * r
	return laminar * num.Pow(1+r5, 0.1)
}

// NaturalHorizontalStable is the average Nusselt number of a horizontal plate under or over a layer that lies stably on it
// and drains over the edges: a cold, heavy face up, or a hot, light one down. Characteristic length: area over perimeter.
//
//	Nu_T = 0.527 Ra^(1/5)/(1 + (1.9/Pr)^(9/10))^(2/9),  Nu = 2.5/ln(1 + 2.5/Nu_T)
//
// Raithby and Hollands, as NaturalHorizontalUnstable. Range 1e3 < Ra < 1e10.
func NaturalHorizontalStable(Ra, Pr float64) float64 {
	thin := 0.527 * num.Pow(Ra, 0.2) * num.Pow(1+num.Pow(1.9/Pr, 0.9), -2./9)
	return 2.5 / math.Log1p(2.5/thin)
}

// NaturalHorizontalUnstableMcAdams is Nu = 0.54 Ra^(1/4) to Ra 1e7, 0.15 Ra^(1/3) above, where it jumps by 6 %. McAdams
// 1954, Heat Transmission, 3rd ed. Range 1e5 to 3e10; characteristic length the side, with McAdams.
func NaturalHorizontalUnstableMcAdams(Ra float64) float64 {
	if Ra <= 1e7 {
		return 0.54 * math.Sqrt(math.Sqrt(Ra))
	}
	return 0.15 * num.Cbrt(Ra)
}

// NaturalHorizontalStableMcAdams is Nu = 0.27 Ra^(1/4), as NaturalHorizontalUnstableMcAdams. Range 3e5 to 3e10.
func NaturalHorizontalStableMcAdams(Ra float64) float64 { return 0.27 * math.Sqrt(math.Sqrt(Ra)) }

// NaturalHorizontalUnstableVDI is the pair of VDI Heat Atlas (2010), section F2, characteristic length a b/(2 (a + b)).
//
//	Nu = 0.766 (Ra f)^(1/5) to Ra f = 7e4, 0.15 (Ra f)^(1/3) above;  f = (1 + (0.322/Pr)^(11/20))^(-20/11)
//
// The join jumps by 13 %. A public library prints f with the exponent +20/11, which makes Nu 1.8 times too large in air.
func NaturalHorizontalUnstableVDI(Ra, Pr float64) float64 {
	x := Ra * num.Pow(1+num.Pow(0.322/Pr, 0.55), -20./11)
	if x <= 7e4 {
		return 0.766 * num.Pow(x, 0.2)
	}
	return 0.15 * num.Cbrt(x)
}

// NaturalHorizontalStableVDI is Nu = 0.6 (Ra (1 + (0.492/Pr)^(9/16))^(-16/9))^(1/5), as NaturalHorizontalUnstableVDI. Range
// 1e3 < Ra f < 1e10.
func NaturalHorizontalStableVDI(Ra, Pr float64) float64 {
	return 0.6 * num.Pow(Ra*num.Pow(churchillUsagi(0.492, Pr), -16./9), 0.2)
}

// ConductionDisc is the coefficient of one face of an isothermal disc of diameter D in still, unbounded air: shape factor 2 D
// a face (4 D for both), h = 8 k/(pi D). Incropera et al., table 4.1, case 13. It is what remains when nothing moves.
func ConductionDisc(k, D float64) float64 { return 8 / math.Pi * k / D }
