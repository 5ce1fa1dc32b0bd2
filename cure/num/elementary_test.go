package num

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"runtime"
	"testing"
)

// Against package math: a product of x by log2(e) is off by half a rounding of itself, hence the error that grows with |x|.
func TestElementaryAgainstMath(t *testing.T) {
	const rounding = 1.2e-16
	for x := -700.0; x <= 700; x += 0.37 {
		if got, want := Exp(x), math.Exp(x); math.Abs(got-want) > (2+math.Abs(x))*rounding*want {
			t.Fatalf("Exp(%g) is %g, want %g", x, got, want)
		}
	}
	for x := 1e-300; x < 1e300; x *= 1.0037 {
		if got, want := Log(x), math.Log(x); math.Abs(got-want) > 4*rounding*math.Abs(want) {
			t.Fatalf("Log(%g) is %g, want %g", x, got, want)
		}
		if got, want := Cbrt(x), math.Cbrt(x); math.Abs(got-want) > 2*rounding*want {
			t.Fatalf("Cbrt(%g) is %g, want %g", x, got, want)
		}
		for _, y := range []float64{-2.5, -1. / 3, 0, 0.1, 1, 1.5} {
			want := math.Pow(x, y)
			if math.IsInf(want, 0) || want < 1e-300 {
				continue
			}
			if got := Pow(x, y); math.Abs(got-want) > (4+5*math.Abs(math.Log(want)))*rounding*want {
				t.Fatalf("Pow(%g, %g) is %g, want %g", x, y, got, want)
			}
		}
	}
	for _, d := range []float64{1e-16, 1e-9, -1e-16, -1e-9, 0.3, -0.3} {
		if got, want := Log(1+d), math.Log(1+d); math.Abs(got-want) > 4*rounding*math.Abs(want) {
			t.Errorf("Log(1 + %g) is %g, want %g", d, got, want)
		}
	}
}

func TestElementaryAtTheEnds(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"Exp(0)", Exp(0), 1}, {"Exp(-inf)", Exp(-inf), 0}, {"Exp(inf)", Exp(inf), inf}, {"Exp(1000)", Exp(1000), inf}, {"Exp(-1000)", Exp(-1000), 0},
		{"Exp(NaN)", Exp(math.NaN()), math.NaN()}, {"Log(0)", Log(0), -inf}, {"Log(1)", Log(1), 0}, {"Log(inf)", Log(inf), inf}, {"Log(-1)", Log(-1), math.NaN()},
		{"Log(NaN)", Log(math.NaN()), math.NaN()}, {"Log(least)", Log(5e-324), -744.4400719213812},
		{"Cbrt(0)", Cbrt(0), 0}, {"Cbrt(27)", Cbrt(27), 3}, {"Cbrt(-8)", Cbrt(-8), -2}, {"Cbrt(inf)", Cbrt(inf), inf}, {"Cbrt(NaN)", Cbrt(math.NaN()), math.NaN()},
		{"Pow(0, 2)", Pow(0, 2), 0}, {"Pow(0, -1)", Pow(0, -1), inf}, {"Pow(3, 0)", Pow(3, 0), 1}, {"Pow(-1, 0.5)", Pow(-1, 0.5), math.NaN()},
	} {
		if c.got != c.want && !(math.IsNaN(c.got) && math.IsNaN(c.want)) {
			t.Errorf("%s is %g, want %g", c.name, c.got, c.want)
		}
	}
}

// The same bits natively and in WebAssembly, where this test runs too: a digest of many values.
func TestElementaryToTheLastBit(t *testing.T) {
	if runtime.GOARCH != "amd64" && runtime.GOARCH != "wasm" {
		t.Skip("compilers for other processors may fuse multiplications and additions")
	}
	digest := sha256.New()
	put := func(x float64) {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], math.Float64bits(x))
		digest.Write(b[:])
	}
	for x := -50.0; x <= 50; x += 0.0137 {
		e := Exp(x)
		put(e)
		put(Log(e))
		put(Pow(e, 0.3))
		put(Cbrt(e))
	}
	const want = "1edae1309a9401a1"
	if got := hex.EncodeToString(digest.Sum(nil)[:8]); got != want {
		t.Errorf("digest %s, want %s", got, want)
	}
}
