package num

import "math"

// Exp, Log and Pow are those of package math to a few roundings, and the same to the last bit wherever arithmetic is: in
// native code as in WebAssembly. Package math has assembly for Exp and Log on some processors, which rounds otherwise, and a
// step of the integrator that is accepted here and refused there moves an answer by as much as the tolerance allows. All
// physics uses these. (Compilers that fuse multiplications and additions, as for ARM, still differ in the last bit.)

// Exp returns e^x. Its relative error is about |x| roundings.
func Exp(x float64) float64 { return math.Exp2(x * math.Log2E) }

// Log returns the natural logarithm of x; NaN below zero.
func Log(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 1) {
		return math.Log(x)
	}
	f, e := math.Frexp(x)
	if f < math.Sqrt2/2 { // so that nothing cancels near 1
		f, e = 2*f, e-1
	}
	return math.Log1p(f-1) + float64(e)*math.Ln2
}

// Pow returns x^y for x >= 0.
func Pow(x, y float64) float64 {
	if x == 0 || y == 0 {
		return math.Pow(x, y)
	}
	return Exp(y * Log(x))
}
