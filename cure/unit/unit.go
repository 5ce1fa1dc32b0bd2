package unit

import "strings"

// Unit is one unit of a dimension: SI = (value + Zero) · Times / Over. Names are its further spellings, as Fold leaves them.
type Unit struct {
	Symbol string   `json:"symbol"` // as it is shown
	Times  float64  `json:"times"`
	Over   float64  `json:"over"`
	Zero   float64  `json:"zero"` // 0 except in temperatures
	Names  []string `json:"names"`
}

// SI is a value of the unit in the SI unit of its dimension.
func (u Unit) SI(value float64) float64 { return (value + u.Zero) * u.Times / u.Over }

// Of is a value in the SI unit, in this unit.
func (u Unit) Of(si float64) float64 { return si*u.Factor() - u.Zero }

// Factor is how many of the unit make one SI unit, where there is no zero to shift.
func (u Unit) Factor() float64 { return u.Over / u.Times }

// Scale is a dimension with the units that it may be read in; SI is the symbol of the unit in which the core counts.
type Scale struct {
	Dimension Dimension `json:"dimension"`
	SI        string    `json:"si"`
	Units     []Unit    `json:"units"`
}

// Scales lists all dimensions with their units.
func Scales() []Scale {
	all := make([]Scale, len(table))
	for i, s := range table {
		all[i] = Scale{s.dimension, s.si, make([]Unit, len(s.rows))}
		for n, r := range s.rows {
			all[i].Units[n] = r.unit()
		}
	}
	return all
}

// Get is the unit of a dimension that is shown under a symbol.
func Get(d Dimension, symbol string) (Unit, bool) {
	if s := find(d); s != nil {
		for _, r := range s.rows {
			if r.symbol == symbol {
				return r.unit(), true
			}
		}
	}
	return Unit{}, false
}

// SI is the symbol of the SI unit of a dimension.
func (d Dimension) SI() string {
	if s := find(d); s != nil {
		return s.si
	}
	return ""
}

// Step is the dimension of a difference of two values: of two temperatures, a difference; of anything else, the same.
func (d Dimension) Step() Dimension {
	if d == Temperature {
		return TemperatureStep
	}
	return d
}

// Named is the unit of a dimension that a person means by a name, in any of its spellings.
func Named(d Dimension, name string) (Unit, bool) {
	if s := find(d); s != nil {
		if r := s.named(Fold(name)); r != nil {
			return r.unit(), true
		}
	}
	return Unit{}, false
}

// scale and row are the table as it is written: names in one text, separated by spaces.
type scale struct {
	dimension Dimension
	si        string
	rows      []row
}

type row struct {
	symbol            string
	times, over, zero float64
	names             string
}

func (r *row) unit() Unit {
	return Unit{r.symbol, r.times, r.over, r.zero, append([]string{}, strings.Fields(r.names)...)}
}

func find(d Dimension) *scale {
	for i := range table {
		if table[i].dimension == d {
			return &table[i]
		}
	}
	return nil
}

// named finds a folded name.
func (s *scale) named(name string) *row {
	for i := range s.rows {
		r := &s.rows[i]
		if Fold(r.symbol) == name {
			return r
		}
		for _, n := range strings.Fields(r.names) {
			if n == name {
				return r
			}
		}
	}
	return nil
}

// letters writes signs that are typed in several ways in one.
var letters = strings.NewReplacer("\u2212", "-", "\u2013", "-", "\u2012", "-", "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"²", "2", "³", "3", "µ", "u", "μ", "u", "℃", "°c", "℉", "°f", "⁄", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8",
	"⅝", " 5/8", "⅞", " 7/8", "⅓", " 1/3", "⅔", " 2/3", "\u00a0", " ", "\u2009", " ", "\u202f", " ")

// plain is a text in small letters with one sign for each thing and single spaces.
func plain(text string) string {
	return strings.ReplaceAll(strings.ToLower(strings.Join(strings.Fields(letters.Replace(text)), " ")), "''", `"`)
}

// marks make no difference in a unit.
var marks = strings.NewReplacer(" per ", "/", " ", "", ".", "", ",", "", "(", "", ")", "", "[", "", "]", "", "^", "", "*", "", "·", "", "⋅", "", "°", "",
	"º", "", "˚", "", "₂", "2")

// Fold is a unit's name as it is compared: without case, spaces, full stops, brackets, points of multiplication and degree signs, with
// raised figures on the line.
func Fold(name string) string { return marks.Replace(plain(name)) }
