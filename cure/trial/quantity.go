package trial

import (
	"strings"
)

// Quantity is what a column measures.
type Quantity string

// The quantities.
const (
	Unknown         Quantity = ""
	Time            Quantity = "time"
	Mass            Quantity = "mass"
	Coupon          Quantity = "coupon"
	AirTemperature  Quantity = "air_temperature"
	PartTemperature Quantity = "part_temperature"
	Temperature     Quantity = "temperature" // of the film in a cure test
	Start           Quantity = "start_temperature"
	Conversion      Quantity = "conversion"
	Passed          Quantity = "passed"
	Humidity        Quantity = "relative_humidity"
	Water           Quantity = "water_content"
	Ignored         Quantity = "ignored" // by choice only: the column counts for nothing
)

// Quantities lists all that a column may measure.
func Quantities() []Quantity {
	return []Quantity{Time, Mass, Coupon, AirTemperature, PartTemperature, Temperature, Start, Conversion, Passed, Humidity, Water}
}

// dimension groups the quantities that share units.
type dimension int

const (
	none dimension = iota
	duration
	mass
	temperature
	share
)

func (q Quantity) dimension() dimension {
	switch q {
	case Time:
		return duration
	case Mass:
		return mass
	case AirTemperature, PartTemperature, Temperature, Start:
		return temperature
	case Conversion, Humidity, Water:
		return share
	}
	return none
}

// Units are the symbols that a column of the quantity may be in, the smallest unit first; none for words.
func (q Quantity) Units() []string {
	all := map[dimension][]string{duration: {"s", "min", "h", "d"}, mass: {"mg", "g", "kg", "gr", "oz", "lb"}, temperature: {"°C", "°F", "K"},
		share: {"%", "1", "g/kg"}}[q.dimension()]
	return append([]string{}, all...)
}

// unit is one unit that a header may name: SI = value * factor + offset.
type unit struct {
	symbol         string
	of             dimension
	factor, offset float64
}

// units are the accepted symbols, in lower case. Definitions as in the units of package job: international pound of 1959,
// kelvin scale of 2019.
func units() map[string]unit {
	m := map[string]unit{}
	add := func(u unit, names ...string) {
		for _, n := range names {
			m[n] = u
		}
	}
	add(unit{"s", duration, 1, 0}, "s", "sec", "secs", "second", "seconds", "sek", "sekunden")
	add(unit{"min", duration, 60, 0}, "min", "mins", "minute", "minutes", "minuten")
	add(unit{"h", duration, 3600, 0}, "h", "hr", "hrs", "hour", "hours", "std", "stunden", "heures")
	add(unit{"d", duration, 86400, 0}, "d", "day", "days", "tage", "jours")
	add(unit{"mg", mass, 1e-6, 0}, "mg")
	add(unit{"g", mass, 1e-3, 0}, "g", "gram", "grams", "gramm")
	add(unit{"kg", mass, 1, 0}, "kg")
	add(unit{"oz", mass, 0.45359237 / 16, 0}, "oz")
	add(unit{"gr", mass, 0.45359237 / 7000, 0}, "gr", "grain", "grains")
	add(unit{"lb", mass, 0.45359237, 0}, "lb", "lbs")
	add(unit{"°C", temperature, 1, 273.15}, "°c", "degc", "deg c", "c", "celsius", "ºc", "℃", "grad c")
	add(unit{"°F", temperature, 5.0 / 9, 273.15 - 32*5.0/9}, "°f", "degf", "deg f", "f", "fahrenheit", "℉")
	add(unit{"K", temperature, 1, 0}, "k", "kelvin")
	add(unit{"%", share, 0.01, 0}, "%", "percent", "pct", "% rh", "%rh", "% r.h.", "% rf", "%rf", "wt%", "wt.%", "% dry", "prozent",
		"g/100g", "g/100 g")
	add(unit{"1", share, 1, 0}, "1", "-", "kg/kg", "g/g", "fraction")
	add(unit{"g/kg", share, 1e-3, 0}, "g/kg", "mg/g")
	return m
}

// words of headers, in the languages that instruments speak. The first entry that fits counts.
var vocabulary = []struct {
	kind  Quantity
	words []string
}{
	{Coupon, []string{"coupon", "sample", "specimen", "probe", "plate", "card", "nr", "no", "id", "échantillon"}},
	{Start, []string{"start temperature", "start temp", "starttemperatur", "from temperature", "initial temperature"}},
	{AirTemperature, []string{"air", "luft", "oven", "ofen", "chamber", "ambient", "four"}},
	{PartTemperature, []string{"part", "teil", "film", "surface", "oberfläche", "substrate", "panel", "pièce", "metal"}},
	{Temperature, []string{"temperature", "temp", "temperatur", "température", "t_c", "t/°c"}},
	{Time, []string{"time", "zeit", "elapsed", "duration", "dauer", "temps", "clock", "uhrzeit", "zeitpunkt", "date", "datum", "t"}},
	{Passed, []string{"pass", "passed", "pass/fail", "verdict", "ok", "bestanden", "rub", "pull"}},
	{Conversion, []string{"conversion", "umsatz", "alpha", "cure", "degree of cure", "gel", "result", "ergebnis"}},
	{Humidity, []string{"rh", "relative humidity", "humidity", "aw", "a_w", "water activity", "rf", "feuchte", "luftfeuchte", "activity"}},
	{Water, []string{"water", "water content", "moisture", "uptake", "emc", "regain", "x", "wassergehalt", "feuchtegehalt", "x_eq"}},
	{Mass, []string{"mass", "weight", "masse", "gewicht", "m", "w", "reading", "balance", "anzeige", "poids"}},
}

// named guesses the quantity from a header's words and its unit.
func named(name string, u unit) Quantity {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" _-.,/:;()[]#", r) })
	whole := strings.Join(words, " ")
	for _, v := range vocabulary {
		if d := v.kind.dimension(); u.of != none && d != none && d != u.of {
			continue
		}
		if u.of != none && v.kind.dimension() == none {
			continue // a coupon or a verdict has no unit
		}
		for _, w := range v.words {
			w = strings.Join(strings.FieldsFunc(w, func(r rune) bool { return strings.ContainsRune(" _-/", r) }), " ")
			if whole == w || strings.Contains(" "+whole+" ", " "+w+" ") {
				return v.kind
			}
		}
	}
	switch u.of { // the unit alone tells
	case duration:
		return Time
	case mass:
		return Mass
	case temperature:
		return Temperature
	}
	return Unknown
}

// header splits "Time [min]", "mass (g)", "t / s", "weight, g", "time_min" and "Temp. °C" into name and unit.
func header(cell string) (name string, u unit, found bool) {
	cell = strings.TrimSpace(strings.Trim(strings.TrimSpace(cell), `"'`))
	all := units()
	lookup := func(s string) (unit, bool) {
		s = strings.ToLower(strings.Join(strings.Fields(strings.TrimSpace(s)), " "))
		u, ok := all[s]
		return u, ok
	}
	for _, b := range []string{"[]", "()", "{}"} {
		open, shut := strings.LastIndexByte(cell, b[0]), strings.LastIndexByte(cell, b[1])
		if open >= 0 && shut > open {
			if u, ok := lookup(cell[open+1 : shut]); ok {
				return strings.TrimSpace(cell[:open]), u, true
			}
			if clockFormat(cell[open+1 : shut]) {
				return strings.TrimSpace(cell[:open]), unit{}, false
			}
		}
	}
	for _, mark := range []string{" in ", "/", ",", "_", " "} {
		if i := strings.LastIndex(cell, mark); i > 0 {
			rest := cell[i+len(mark):]
			if mark != "_" && mark != " " || len(strings.TrimSpace(rest)) > 0 {
				if u, ok := lookup(rest); ok && rest != "" && (mark != " " || u.symbol != "1") {
					return strings.TrimSpace(cell[:i]), u, true
				}
			}
		}
	}
	return cell, unit{}, false
}

// clockFormat recognises "hh:mm:ss" and its kin.
func clockFormat(s string) bool {
	s = strings.ToLower(strings.TrimSpace(s))
	return s == "hh:mm:ss" || s == "h:mm:ss" || s == "hh:mm" || s == "h:mm" || s == "mm:ss"
}
