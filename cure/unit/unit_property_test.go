package unit

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// written draws a number as people write it: up to six figures, with a point or a comma, now and then with an exponent.
func written(t *rapid.T) (text string, decimal byte, value float64) {
	figures := rapid.IntRange(-999999, 999999).Draw(t, "figures")
	places := rapid.IntRange(0, 6).Draw(t, "places")
	value = float64(figures) / math.Pow10(places)
	text = strconv.FormatFloat(value, 'f', places, 64)
	decimal = '.'
	if rapid.Bool().Draw(t, "comma") {
		text, decimal = strings.Replace(text, ".", ",", 1), ','
	}
	if power := rapid.IntRange(-9, 9).Draw(t, "power"); rapid.Bool().Draw(t, "exponent") {
		text += "e" + strconv.Itoa(power)
		value *= math.Pow10(power)
	}
	return text, decimal, value
}

// Every unit of the table, by its symbol and by each of its spellings: what is written in it, read into the SI unit and shown in the same
// unit again is what was written. Four roundings of double precision lie on the way; a temperature loses as much of its zero.
func TestEveryUnitComesBack(t *testing.T) {
	for i := range table {
		s := &table[i]
		for k := range s.rows {
			r := &s.rows[k]
			t.Run(string(s.dimension)+" "+strings.ReplaceAll(r.symbol, "/", " per "), func(t *testing.T) {
				names := append([]string{r.symbol}, strings.Fields(r.names)...)
				rapid.Check(t, func(t *rapid.T) {
					text, decimal, value := written(t)
					name := rapid.SampledFrom(names).Draw(t, "name")
					space := rapid.SampledFrom([]string{" ", "", "\u00a0"}).Draw(t, "space")
					if name == "1" {
						name = "" // nobody writes "0.3 1"
					}
					if name != "" && name[0] >= '0' && name[0] <= '9' {
						space = " " // "5 1/s"; without the space it is another number
					}
					si, err := Parse(text+space+name, s.dimension, r.symbol, decimal)
					if err != nil {
						t.Fatalf("%q: %v", text+space+name, err)
					}
					u := r.unit()
					if back := u.Of(si); math.Abs(back-value) > 4*eps*(math.Abs(value)+2*math.Abs(u.Zero)) {
						t.Fatalf("%q is %g %s and comes back as %.17g", text+space+name, si, s.si, back)
					}
					symbol := r.symbol
					if symbol == "1" {
						symbol = "" // a share is shown as a plain number
					}
					shown := strings.Replace(strconv.FormatFloat(u.Of(si), 'g', 12, 64), ".", string(decimal), 1)
					again, err := Parse(shown+" "+symbol, s.dimension, r.symbol, decimal)
					if err != nil || math.Abs(again-si) > 1e-11*(math.Abs(si)+math.Abs(u.SI(0))) {
						t.Fatalf("%q is shown as %q, which is %g, %v", text+space+name, shown, again, err)
					}
				})
			})
		}
	}
}

// eps is the spacing of double precision at 1.
const eps = 2.220446049250313e-16
