package num

import "math"

// Exp, Log, Pow and Cbrt are those of package math to a few roundings, and the same to the last bit wherever arithmetic is: in
// native code as in WebAssembly. Package math has assembly for Exp and Log on some processors, which rounds otherwise, and a
// step of the integrator that is accepted here and refused there moves an answer by as much as the tolerance allows. All
// physics uses these. (Compilers that fuse multiplications and additions, as for ARM, still differ in the last bit.)
//
// They are one function each, without the calls of package math, which in WebAssembly cost more than the arithmetic. The
// rational approximations of Exp and Log are those of FreeBSD's e_exp.c and e_log.c, which package math uses, too: Copyright (C) 1993,
// 2004 by Sun Microsystems, Inc.; permission to use, copy, modify and distribute them is freely granted, provided that this notice is
// preserved.

const (
	ln2Hi = 6.93147180369123816490e-01 // ln 2 in two parts
	ln2Lo = 1.90821492927058770002e-10

	fractionBits = 52
	bias         = 1023 // of the exponent
)

// Exp returns e^x. Its relative error is about |x| roundings.
func Exp(x float64) float64 {
	const (
		p1 = 1.66666666666666657415e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08
	)
	x *= math.Log2E
	if !(x > 1-bias && x < bias) {
		return math.Exp2(x)
	}
	k := int(x + 0.5)
	if x < 0 {
		k = int(x - 0.5)
	}
	t := x - float64(k)
	hi, lo := t*ln2Hi, -t*ln2Lo
	r := hi - lo
	t = r * r
	c := r - t*(p1+t*(p2+t*(p3+t*(p4+t*p5))))
	y := 1 - ((lo - (r*c)/(2-c)) - hi)
	return y * math.Float64frombits(uint64(k+bias)<<fractionBits)
}

// Log returns the natural logarithm of x; NaN below zero.
func Log(x float64) float64 {
	const (
		l1 = 6.666666666666735130e-01
		l2 = 3.999999999940941908e-01
		l3 = 2.857142874366239149e-01
		l4 = 2.222219843214978396e-01
		l5 = 1.818357216161805012e-01
		l6 = 1.531383769920937332e-01
		l7 = 1.479819860511658591e-01

		normal = 0x1p-1022 // below it numbers have fewer digits
	)
	k := 0.0
	if !(x >= normal && x <= math.MaxFloat64) {
		if !(x > 0) || x > math.MaxFloat64 {
			return math.Log(x)
		}
		x, k = x*0x1p54, -54
	}
	bits := math.Float64bits(x)
	k += float64(int(bits>>fractionBits) - bias)
	f := math.Float64frombits(bits&(1<<fractionBits-1) | bias<<fractionBits) // 1 to 2
	if f > math.Sqrt2 {                                                      // so that nothing cancels near 1
		f, k = f/2, k+1
	}
	f--
	s := f / (2 + f)
	s2 := s * s
	s4 := s2 * s2
	r := s2*(l1+s4*(l3+s4*(l5+s4*l7))) + s4*(l2+s4*(l4+s4*l6))
	half := 0.5 * f * f
	return k*ln2Hi - ((half - (s*(half+r) + k*ln2Lo)) - f)
}

// Pow returns x^y for x >= 0.
func Pow(x, y float64) float64 {
	if x == 0 || y == 0 {
		return math.Pow(x, y)
	}
	return Exp(y * Log(x))
}

// Cbrt returns the cube root of x >= 0, without a division, which would cost as much as half of this. A third of the exponent, bits and
// all, gives y within 4 % of x^(-1/3); with r = 1 - x y^3 that root is y (1 - r)^(-1/3), whose series is summed to r^3, and then to r^2.
// Newton's method puts the last digits of x y^2 right.
func Cbrt(x float64) float64 {
	const third = 0x553ef0ff289dd796 // four thirds of the bias, placed for the least error
	if !(x > 0x1p-1000 && x < 0x1p1000) {
		return math.Cbrt(x)
	}
	y := math.Float64frombits(third - math.Float64bits(x)/3)
	r := 1 - x*y*(y*y)
	y += y * r * ((1./3 + r*(2./9)) + r*r*(14./81))
	r = 1 - x*y*(y*y)
	y += y * r * (1./3 + r*(2./9))
	root := x * y * y
	return root + (x-root*root*root)*(y*y)*(1./3)
}
