package report

import (
	"github.com/drywright/drywright/cure/words/languages"
	"math"
	"strings"
	"testing"
	"testing/quick"
)

func TestDuration(t *testing.T) {
	for _, c := range []struct {
		seconds float64
		want    string
	}{
		{0, "0 s"}, {0.004, "0 s"}, {0.006, "0.01 s"}, {0.123, "0.12 s"}, {0.999, "1 s"}, {math.Copysign(0, -1), "0 s"},
		{-0.004, "0 s"}, {1, "1 s"}, {9.996, "10 s"}, {59.96, "60 s"}, {78, "78 s"}, {78.04, "78 s"}, {78.06, "78.1 s"},
		{119.4, "119 s"}, {119.6, "1.99 min"}, {119.96, "2 min"}, {120, "2 min"}, {324, "5.4 min"}, {918, "15.3 min"}, {68 * 60, "68 min"},
		{119.4 * 60, "119 min"}, {119.6 * 60, "1.99 h"}, {119.96 * 60, "2 h"}, {7200, "2 h"}, {14 * 3600, "14 h"}, {19.2 * 3600, "19.2 h"},
		{47.94 * 3600, "47.9 h"}, {47.96 * 3600, "2 d"}, {48 * 3600, "2 d"}, {10.3 * 86400, "10.3 d"},
		{1234 * 86400, "1230 d"}, {-5.2 * 3600, "−5.2 h"}, {-119.96, "−2 min"},
		{math.NaN(), "–"}, {math.Inf(1), "–"}, {math.Inf(-1), "–"},
	} {
		if got := english().Duration(c.seconds); got != c.want {
			t.Errorf("Duration(%v) = %q, want %q", c.seconds, got, c.want)
		}
	}
}

// Whatever is printed means the time it was made from, to half of the last of three digits; and a longer time never
// prints in a smaller unit.
func TestDurationKeepsThreeDigits(t *testing.T) {
	back := func(text string) float64 {
		number, unit, _ := strings.Cut(text, " ")
		scale := map[string]float64{"s": 1, "min": 60, "h": 3600, "d": 86400}[unit]
		var v float64
		for _, c := range strings.ReplaceAll(number, ".", "") {
			v = 10*v + float64(c-'0')
		}
		if i := strings.IndexByte(number, '.'); i >= 0 {
			v /= math.Pow(10, float64(len(number)-i-1))
		}
		return v * scale
	}
	property := func(x float64) bool {
		seconds := math.Pow(10, math.Mod(math.Abs(x), 7)) // 1 s to 115 days
		return math.Abs(back(english().Duration(seconds))-seconds) <= 5.0001e-3*seconds
	}
	if err := quick.Check(property, &quick.Config{MaxCount: 2000}); err != nil {
		t.Error(err)
	}
}

func TestQuantities(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{english().Temperature(293.15), "20.0 °C"}, {english().Temperature(273.12), "0.0 °C"}, {english().Temperature(263.15), "−10.0 °C"},
		{english().Temperature(math.NaN()), "–"}, {english().Difference(2.504), "2.5 K"},
		{english().Water(1), "1000 g/kg"}, {english().Water(0.02344), "23.4 g/kg"}, {english().Water(0), "0 g/kg"}, {english().Water(1e-9), "1e-06 g/kg"},
		{english().Areal(0.075), "75 g/m²"}, {english().Percent(0.95), "95.0 %"}, {english().Percent(1), "100.0 %"}, {english().Pressure(101325), "101 kPa"},
		{english().Thickness(150e-6), "150 µm"}, {english().Number(12.54), "12.5"}, {english().Number(-0.5), "−0.5"}, {english().Number(1e7), "1e+07"},
		{english().Relative(3.4e-13), "3e-13"}, {english().Relative(0), "0e+00"}, {english().Relative(math.Inf(1)), "–"},
		{english().Quantity(300, "K"), "26.9 °C"}, {english().Quantity(101325, "Pa"), "101 kPa"}, {english().Quantity(2e-4, "m"), "200 µm"},
		{english().Quantity(0.03, "kg/m2"), "30 g/m²"}, {english().Quantity(0.03, "kg_per_m2"), "30 g/m²"}, {english().Quantity(0.5, "kg/kg"), "500 g/kg"},
		{english().Quantity(90, "s"), "90 s"}, {english().Quantity(10, ""), "10"}, {english().Quantity(3.14159, "furlong"), "3.14 furlong"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// english is a speaker as most tests read it.
func english() Speaker { return New(languages.English(), SI) }
