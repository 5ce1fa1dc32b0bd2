package report

import (
	"math"
	"strconv"
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
func Duration(seconds float64) string {
	if !finite(seconds) {
		return absent
	}
	size := math.Abs(seconds)
	for _, unit := range ladder() {
		if v := significant(size / unit.seconds); v < unit.limit {
			return sign(seconds, v) + plain(v) + " " + unit.name
		}
	}
	return absent // not reached: the last rung has no limit
}

// Temperature prints a temperature [K] in degrees Celsius with one decimal: "20.0 °C".
func Temperature(kelvin float64) string { return fixed(kelvin-273.15, 1, "°C") }

// Difference prints a difference of temperature [K] with three significant digits: "2.5 K".
func Difference(kelvin float64) string { return three(kelvin, "K") }

// Water prints a water content [kg of water per kg of solids] in grams per kilogram with three significant digits:
// "23.4 g/kg". Grams, because the interesting contents lie between 10 and 1000 of them.
func Water(ratio float64) string { return three(ratio*1e3, "g/kg") }

// Areal prints a mass per area [kg/m2] in grams with three significant digits: "75 g/m²".
func Areal(mass float64) string { return three(mass*1e3, "g/m²") }

// Percent prints a fraction [-] as a percentage with one decimal: "95.0 %".
func Percent(fraction float64) string { return fixed(fraction*100, 1, "%") }

// Pressure prints a pressure [Pa] in kilopascals with three significant digits: "101 kPa".
func Pressure(pascal float64) string { return three(pascal*1e-3, "kPa") }

// Thickness prints a length across the film [m] in micrometres with three significant digits: "150 µm".
func Thickness(metres float64) string { return three(metres*1e6, "µm") }

// Number prints a bare number with three significant digits: "12.5".
func Number(v float64) string { return three(v, "") }

// Relative prints the relative error of a balance with one significant digit: "3e-13".
func Relative(v float64) string {
	if !finite(v) {
		return absent
	}
	return strconv.FormatFloat(v, 'e', 0, 64)
}

// Quantity prints a value by the unit that a result names for it, in the unit that is read in a workshop. An unknown
// unit is printed as it stands, so that a new one shows up rather than vanishes.
func Quantity(v float64, unit string) string {
	switch unit {
	case "K":
		return Temperature(v)
	case "Pa":
		return Pressure(v)
	case "m":
		return Thickness(v)
	case "kg/m2", "kg_per_m2":
		return Areal(v)
	case "kg/kg", "kg_per_kg":
		return Water(v)
	case "s":
		return Duration(v)
	case "", "-", "1":
		return Number(v)
	}
	return three(v, unit)
}

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
func three(v float64, unit string) string {
	if !finite(v) {
		return absent
	}
	r, _ := strconv.ParseFloat(strconv.FormatFloat(math.Abs(v), 'e', 2, 64), 64)
	format := byte('f')
	if r != 0 && (r < 1e-4 || r >= 1e7) {
		format = 'e'
	}
	return withUnit(sign(v, r)+strconv.FormatFloat(r, format, -1, 64), unit)
}

// fixed prints a value with a fixed number of decimals.
func fixed(v float64, decimals int, unit string) string {
	if !finite(v) {
		return absent
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', decimals, 64)
	r, _ := strconv.ParseFloat(text, 64)
	return withUnit(sign(v, r)+text, unit)
}

// sign is the minus of a negative number whose printed size is not zero: there is no "−0 s".
func sign(v, printed float64) string {
	if v < 0 && printed != 0 {
		return minus
	}
	return ""
}

// plain prints a rounded number without an exponent and without trailing zeros.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// withUnit appends a unit.
func withUnit(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}
