package report

import (
	"math"
	"strconv"
	"strings"
)

// minus is the typographic minus sign. A hyphen would be read aloud as "dash" or not at all.
const minus = "\u2212"

// absent stands for a number that is not there or not finite.
const absent = "\u2013"

// step is one rung of the ladder of time units: a rounded value below limit is printed in this unit.
type step struct {
	seconds float64
	name    string
	limit   float64
}

// ladder returns the units of time. Two of the next unit is where one changes over, because "90 s" and "36 h" are said
// in a workshop, while "200 s" and "60 h" have to be converted in the head.
func ladder() [4]step {
	return [4]step{{1, "s", 120}, {60, "min", 120}, {3600, "h", 48}, {86400, "d", math.Inf(1)}}
}

// Duration prints a time [s] as a person in a workshop says it: "78 s", "5.4 min", "19.2 h", "10.3 d".
//
// The rule: seconds below 2 min, minutes below 2 h, hours below 48 h, else days; three significant digits, of which
// trailing zeros are dropped, and never finer than 0.01 of the unit. The unit is chosen by the rounded number, so that
// 119.96 s is "2 min" and 119.6 s is "1.99 min", never "120 s". A negative time (a margin) carries a minus sign; a number that is not finite
// prints as a dash.
func (w Speaker) Duration(seconds float64) string {
	if !finite(seconds) {
		return absent
	}
	size := math.Abs(seconds)
	for _, unit := range ladder() {
		if v := significant(size / unit.seconds); v < unit.limit {
			return sign(seconds, v) + w.plain(v) + " " + w.Say("unit."+unit.name)
		}
	}
	return absent // not reached: the last rung has no limit
}

// Temperature prints a temperature [K] in degrees with one decimal: "20.0 °C".
func (w Speaker) Temperature(kelvin float64) string { return w.decimals(kelvin, temperature, 1) }

// Difference prints a difference of temperature [K] with three significant digits: "2.5 K".
func (w Speaker) Difference(kelvin float64) string { return w.in(kelvin, temperatureStep) }

// Water prints a water content of the film [kg of water per kg of solids] with three significant digits: "23.4 g/kg". Grams,
// because the interesting contents lie between 10 and 1000 of them.
func (w Speaker) Water(ratio float64) string { return w.in(ratio, filmWater) }

// Humidity prints a humidity ratio of air [kg/kg] with three significant digits: "8.1 g/kg".
func (w Speaker) Humidity(ratio float64) string { return w.in(ratio, airHumidity) }

// Areal prints a mass per area [kg/m2] with three significant digits: "75 g/m²".
func (w Speaker) Areal(mass float64) string { return w.in(mass, coatWeight) }

// Percent prints a fraction [-] as a percentage with one decimal: "95.0 %".
func (w Speaker) Percent(fraction float64) string { return w.fixed(fraction*100, 1, "%") }

// Pressure prints a pressure [Pa] with three significant digits: "101 kPa".
func (w Speaker) Pressure(pascal float64) string { return w.in(pascal, pressure) }

// Thickness prints a length across the film [m] with three significant digits: "150 µm".
func (w Speaker) Thickness(metres float64) string { return w.in(metres, filmThickness) }

// Power prints heat per time [W] with three significant digits: "4.5 kW".
func (w Speaker) Power(watt float64) string { return w.in(watt, power) }

// Number prints a bare number with three significant digits: "12.5".
func (w Speaker) Number(v float64) string { return w.three(v, "") }

// Relative prints the relative error of a balance with one significant digit: "3e-13".
func (w Speaker) Relative(v float64) string {
	if !finite(v) {
		return absent
	}
	return w.number(strconv.FormatFloat(v, 'e', 0, 64))
}

// Quantity prints a value by the unit that a result names for it, in the unit that is read in a workshop. An unknown
// unit is printed as it stands, so that a new one shows up rather than vanishes.
func (w Speaker) Quantity(v float64, unit string) string {
	switch unit {
	case "K":
		return w.Temperature(v)
	case "Pa":
		return w.Pressure(v)
	case "m":
		return w.Thickness(v)
	case "kg/m2", "kg_per_m2":
		return w.Areal(v)
	case "kg/kg", "kg_per_kg":
		return w.Water(v)
	case "s":
		return w.Duration(v)
	case "W":
		return w.Power(v)
	case "share":
		return w.Percent(v)
	case "", "-", "1":
		return w.Number(v)
	}
	return w.three(v, unit)
}

// in prints a value in the unit of its quantity with three significant digits.
func (w Speaker) in(v float64, m measure) string {
	d := w.unit(m)
	return w.three(v*d.Factor+d.Offset, d.Symbol)
}

// decimals is in with a fixed number of decimals.
func (w Speaker) decimals(v float64, m measure, n int) string {
	d := w.unit(m)
	return w.fixed(v*d.Factor+d.Offset, n, d.Symbol)
}

// number puts the language's decimal mark into a printed number, whose minus is a typographic one already.
func (w Speaker) number(text string) string { return strings.Replace(text, ".", w.Mark, 1) }

// finite tells numbers from NaN and the infinities.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// significant rounds to three significant digits, and to 0.01 where that is coarser.
func significant(v float64) float64 {
	format, digits := byte('e'), 2
	if math.Abs(v) < 1 {
		format = 'f'
	}
	r, _ := strconv.ParseFloat(strconv.FormatFloat(v, format, digits, 64), 64) // its own output always parses
	return r
}

// three prints a value with three significant digits and no floor, for quantities that may be small.
func (w Speaker) three(v float64, unit string) string {
	if !finite(v) {
		return absent
	}
	r, _ := strconv.ParseFloat(strconv.FormatFloat(math.Abs(v), 'e', 2, 64), 64)
	format := byte('f')
	if r != 0 && (r < 1e-4 || r >= 1e7) {
		format = 'e'
	}
	return withUnit(sign(v, r)+w.number(strconv.FormatFloat(r, format, -1, 64)), unit)
}

// fixed prints a value with a fixed number of decimals.
func (w Speaker) fixed(v float64, decimals int, unit string) string {
	if !finite(v) {
		return absent
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	r, _ := strconv.ParseFloat(text, 64)
	return withUnit(sign(v, r)+w.number(text), unit)
}

// sign is the minus of a negative number whose printed size is not zero: there is no "−0 s".
func sign(v, printed float64) string {
	if v < 0 && printed != 0 {
		return minus
	}
	return ""
}

// plain prints a rounded number without an exponent and without trailing zeros.
func (w Speaker) plain(v float64) string { return w.number(strconv.FormatFloat(v, 'f', -1, 64)) }

// withUnit appends a unit.
func withUnit(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}
