package trial

import (
	"strings"

	"github.com/drywright/drywright/cure/unit"
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
	list := []string{}
	for _, m := range measures[q.dimension()] {
		list = append(list, m.symbol)
	}
	return list
}

// measure is a unit of the one table that a column may be in.
type measure struct {
	in     unit.Dimension
	symbol string
}

// measures are the accepted units. A share may be a ratio of masses, since tables of sorption are written in either.
var measures = [...][]measure{
	duration:    {{unit.Duration, "s"}, {unit.Duration, "min"}, {unit.Duration, "h"}, {unit.Duration, "d"}},
	mass:        {{unit.Mass, "mg"}, {unit.Mass, "g"}, {unit.Mass, "kg"}, {unit.Mass, "gr"}, {unit.Mass, "oz"}, {unit.Mass, "lb"}},
	temperature: {{unit.Temperature, "°C"}, {unit.Temperature, "°F"}, {unit.Temperature, "K"}},
	share:       {{unit.Share, "%"}, {unit.Share, "1"}, {unit.MassRatio, "g/kg"}},
}

// columnUnit is one unit that a header names, with what it measures.
type columnUnit struct {
	unit.Unit
	of dimension
}

// unitNamed finds the unit that a header means by a name.
func unitNamed(name string) (columnUnit, bool) {
	name = strings.TrimSpace(name)
	if name == "-" {
		name = "1" // heads of tables say so of numbers without a unit
	}
	if name == "" {
		return columnUnit{}, false
	}
	for of, list := range measures {
		for _, m := range list {
			if u, ok := unit.Named(m.in, name); ok && u.Symbol == m.symbol {
				return columnUnit{u, dimension(of)}, true
			}
		}
	}
	if u, ok := unit.Named(unit.MassRatio, name); ok && u.Symbol == "%" { // "g/100 g"
		u, _ = unit.Get(unit.Share, "%")
		return columnUnit{u, share}, true
	}
	return columnUnit{}, false
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
func named(name string, u columnUnit) Quantity {
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
func header(cell string) (name string, u columnUnit, found bool) {
	cell = strings.TrimSpace(strings.Trim(strings.TrimSpace(cell), `"'`))
	for _, b := range []string{"[]", "()", "{}"} {
		open, shut := strings.LastIndexByte(cell, b[0]), strings.LastIndexByte(cell, b[1])
		if open >= 0 && shut > open {
			if u, ok := unitNamed(cell[open+1 : shut]); ok {
				return strings.TrimSpace(cell[:open]), u, true
			}
			if clockFormat(cell[open+1 : shut]) {
				return strings.TrimSpace(cell[:open]), columnUnit{}, false
			}
		}
	}
	for _, mark := range []string{" in ", "/", ",", "_", " "} {
		if i := strings.LastIndex(cell, mark); i > 0 {
			rest := cell[i+len(mark):]
			if mark != "_" && mark != " " || len(strings.TrimSpace(rest)) > 0 {
				if u, ok := unitNamed(rest); ok && rest != "" && (mark != " " || u.Symbol != "1") {
					return strings.TrimSpace(cell[:i]), u, true
				}
			}
		}
	}
	return cell, columnUnit{}, false
}

// clockFormat recognises "hh:mm:ss" and its kin.
func clockFormat(s string) bool {
	s = strings.ToLower(strings.TrimSpace(s))
	return s == "hh:mm:ss" || s == "h:mm:ss" || s == "hh:mm" || s == "h:mm" || s == "mm:ss"
}
