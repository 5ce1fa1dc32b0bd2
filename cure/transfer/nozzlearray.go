package transfer

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// The correlations of Martin 1977, Heat and mass transfer between impinging gas jets and solid surfaces, Advances in
// Heat Transfer 13, 1-60, as Incropera et al. 2007, 6th ed., section 7.7, carries them; all are averages over the face.
// The range of the single round nozzle is confirmed in two public sources, the other ranges are from memory. Nu and Re
// are on the hydraulic diameter of the nozzle: the diameter of a round one, twice the width of a slot. Re is that of
// the exit velocity, with the properties at the mean of nozzle and surface temperature.

// SlotArrayMartin is the average Nusselt number under a field of slots: open area f = W/S of width W and pitch S,
// distance = H/W.
//
//	Nu = (2/3) f0^(3/4) (2 Re/(f/f0 + f0/f))^(2/3) Pr^0.42,  f0 = (60 + 4 (H/(2W) - 2)^2)^(-1/2)
//
// Range 1500 <= Re <= 4e4, 2 <= H/W <= 80, 0.008 <= f <= 2.5 f0. Worked value (row CNV-ASN-1): Re 3824, W/S 1/14, H/W
// 10, Pr 0.7 gives 24.31.
func SlotArrayMartin(re, pr, f, distance float64) float64 {
	f0 := slotOptimum(distance)
	x := 2 * re / (f/f0 + f0/f)
	root := math.Sqrt(f0)
	return 2. / 3 * root * math.Sqrt(root) * num.Cbrt(x*x) * num.Pow(pr, 0.42)
}

// slotOptimum is f0, the open area that transfers best at the distance H/W.
func slotOptimum(distance float64) float64 {
	d := distance/2 - 2
	return 1 / math.Sqrt(60+4*d*d)
}

// RoundArrayMartin is the average Nusselt number under a field of round nozzles with the relative open area f and the
// distance H/D.
//
//	Nu = K G Re^(2/3)/2 Pr^0.42,  K = (1 + (H/D f^(1/2)/0.6)^6)^(-0.05)
//	G = 2 f^(1/2) (1 - 2.2 f^(1/2))/(1 + 0.2 (H/D - 6) f^(1/2))
//
// Range 2000 <= Re <= 1e5, 2 <= H/D <= 12, 0.004 <= f <= 0.04; G falls above f 0.05 and is negative above 0.2. Worked
// value (row CNV-ARN-1): Re 7930, f 0.02519, H/D 5, Pr 0.7073 gives 33.44.
func RoundArrayMartin(re, pr, f, distance float64) float64 {
	r := math.Sqrt(f)
	x := distance * r / 0.6
	x *= x * x
	k := num.Pow(1+x*x, -0.05)
	return k * roundGeometry(r, distance) * 0.5 * num.Cbrt(re*re) * num.Pow(pr, 0.42)
}

// roundGeometry is G for the root of the open area.
func roundGeometry(r, distance float64) float64 {
	return 2 * r * (1 - 2.2*r) / (1 + 0.2*(distance-6)*r)
}

// TriangularArea is the open area of round nozzles in equilateral triangles, pi D^2/(2 3^(1/2) S^2).
func TriangularArea(diameter, pitch float64) float64 {
	return math.Pi * diameter * diameter / (2 * math.Sqrt(3) * pitch * pitch)
}

// SingleRoundMartin is the average Nusselt number under one round nozzle over a disc of radius r: reach = r/D, distance
// = H/D.
//
//	Nu = 2 G Re^(1/2) (1 + 0.005 Re^0.55)^(1/2) Pr^0.42,  G = (D/r) (1 - 1.1 D/r)/(1 + 0.1 (H/D - 6) D/r)
//
// Range 2000 <= Re <= 4e5, 2 <= H/D <= 12, 2.5 <= r/D <= 7.5. Worked value (row CNV-SRN-1): Re 19826, r/D 4, H/D 6, Pr
// 0.7073 gives 64.78.
func SingleRoundMartin(re, pr, reach, distance float64) float64 {
	return 2 * roundGeometry(1/(2*reach), distance) * math.Sqrt(re*(1+0.005*num.Pow(re, 0.55))) * num.Pow(pr, 0.42)
}

// SingleSlotMartin is the average Nusselt number under one slot over the half width x on each side: reach = x/W,
// distance = H/W.
//
//	Nu = 3.06/(x/W + H/W + 2.78) Re^m Pr^0.42,  m = 0.695 - 1/(x/(2W) + (H/(2W))^1.33 + 3.06)
//
// Range 3000 <= Re <= 9e4, 4 <= H/W <= 20, 4 <= x/W <= 50 (2 to 10 and 2 to 25 on the length 2W; other textbooks print
// 2 to 10 for H/W itself, so keep to 4 to 10). Worked value (row CNV-SSN-1): Re 7930, x/W 8, H/W 6, Pr 0.7073 gives
// 36.72.
func SingleSlotMartin(re, pr, reach, distance float64) float64 {
	m := 0.695 - 1/(reach/2+num.Pow(distance/2, 1.33)+3.06)
	return 3.06 / (reach + distance + 2.78) * num.Pow(re, m) * num.Pow(pr, 0.42)
}
