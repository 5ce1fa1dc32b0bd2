package unit

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// longest is the longest text that is read, in bytes; nobody types more for one number.
const longest = 80

// Parse reads a number of a dimension as a person types it, and gives it in the SI unit. symbol is the unit of a number that has
// none; decimal is the mark of decimals of the person's language, '.' or ',', by which "1,200" is refused or read. Errors are
// *fault.Fault without a path: Missing where nothing stands there, Type where it is no number, Choice where the unit is not known,
// Conflict where the unit measures something else or the text has two readings.
func Parse(text string, d Dimension, symbol string, decimal byte) (float64, error) {
	s := find(d)
	if s == nil {
		return 0, fault.New(fault.Choice, "", words.Told("{value} is no dimension", "value", strconv.Quote(string(d))), "")
	}
	t := plain(text)
	if t == "" {
		return 0, fault.New(fault.Missing, "", "", s.advice(symbol))
	}
	if len(text) > longest {
		return 0, fault.New(fault.Type, "", words.Told("a text of {count} characters is no number", "count", len(text)), s.advice(symbol))
	}
	sum, sign, last, terms := 0.0, 1.0, math.Inf(1), 0
	for t != "" {
		value, negative, rest, why := number(t, decimal)
		if why == "" && negative && terms > 0 {
			why = "the sign belongs in front"
		}
		if why != "" {
			return 0, s.refuse(text, why, symbol)
		}
		if negative {
			sign = -1
		}
		var name string
		name, t = unitText(rest)
		r, err := s.meant(name, symbol, terms > 0 || t != "")
		if err != nil {
			return 0, err
		}
		if terms > 0 && (r.zero != 0 || r.times/r.over >= last) {
			return 0, s.refuse(text, "parts stand from the large unit to the small one", symbol)
		}
		last = r.times / r.over
		if terms == 0 && t == "" {
			u := r.unit()
			sum, sign = u.SI(sign*value), 1
		} else if r.zero != 0 {
			return 0, s.refuse(text, "temperatures do not add up", symbol)
		} else {
			sum += value * r.times / r.over
		}
		terms++
	}
	if math.IsInf(sum, 0) || math.IsNaN(sum) {
		return 0, s.refuse(text, "it is too large", symbol)
	}
	return sign * sum, nil
}

// meant is the unit that a name stands for; an empty one stands for the field's own, unless there are several numbers.
func (s *scale) meant(name, symbol string, several bool) (*row, error) {
	if strings.TrimSpace(name) == "" && !several {
		for i := range s.rows {
			if s.rows[i].symbol == symbol {
				return &s.rows[i], nil
			}
		}
		return nil, fault.New(fault.Choice, "", words.Told("{symbol} is no unit of {dimension}", "symbol", strconv.Quote(symbol), "dimension", s.dimension.words()), "")
	}
	folded := Fold(name)
	if folded == "" {
		return nil, fault.New(fault.Type, "", words.Told("a number has no unit beside one that has"), s.advice(symbol))
	}
	if r := s.named(folded); r != nil {
		return r, nil
	}
	for i := range table {
		if table[i].named(folded) != nil {
			return nil, fault.New(fault.Conflict, "", words.Told("{name} is a unit of {dimension}, not of {dimension2}", "name", strconv.Quote(strings.TrimSpace(name)), "dimension", table[i].dimension.words(), "dimension2", s.dimension.words()), s.advice(symbol))
		}
	}
	return nil, fault.New(fault.Choice, "", words.Told("the unit {name} is not known", "name", strconv.Quote(strings.TrimSpace(name))), s.advice(symbol))
}

func (s *scale) refuse(text, why, symbol string) *fault.Fault {
	code := fault.Type
	if strings.HasPrefix(why, "it may be") {
		code = fault.Conflict
	}
	return fault.New(code, "", words.Told("{text} is not understood: {why}", "text", strconv.Quote(strings.TrimSpace(text)), "why", why), s.advice(symbol))
}

// advice says what can be written.
func (s *scale) advice(symbol string) string {
	var list []string
	for _, r := range s.rows {
		if r.symbol != "" && r.symbol != "1" {
			list = append(list, r.symbol)
		}
	}
	switch {
	case len(list) == 0:
		return "Write a number without a unit."
	case symbol == "":
		return fmt.Sprintf("Write a number, with one of the units %s.", strings.Join(list, ", "))
	}
	return fmt.Sprintf("Write a number in %s, or with one of the units %s.", symbol, strings.Join(list, ", "))
}

func (d Dimension) words() string { return strings.ReplaceAll(string(d), "_", " ") }

// number reads one number at the start of a plain text. why is empty where it is one.
func number(t string, decimal byte) (value float64, negative bool, rest, why string) {
	if t[0] == '-' || t[0] == '+' {
		negative = t[0] == '-'
		t = strings.TrimPrefix(t[1:], " ")
	}
	if v, rest, is := fraction(t); is {
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return 0, false, "", "a fraction of nothing"
		}
		return v, negative, rest, ""
	}
	end := run(t)
	digits, why := ungrouped(t[:end], decimal)
	if why != "" {
		return 0, false, "", why
	}
	end, digits = exponent(t, end, digits)
	v, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return 0, false, "", "it is too large"
	}
	return v, negative, t[end:], ""
}

func digitsAt(t string, at int) int {
	n := 0
	for at+n < len(t) && t[at+n] >= '0' && t[at+n] <= '9' {
		n++
	}
	return n
}

// fraction reads "1/16" and "1 1/2" or "1-1/2".
func fraction(t string) (value float64, rest string, is bool) {
	whole, at := 0.0, 0
	n := digitsAt(t, 0)
	if n == 0 || n > 9 {
		return 0, "", false
	}
	if n < len(t) && (t[n] == ' ' || t[n] == '-') {
		whole, _ = strconv.ParseFloat(t[:n], 64) // digits alone
		at = n + 1
		n = digitsAt(t, at)
	}
	slash := at + n
	if n == 0 || n > 9 || slash >= len(t) || t[slash] != '/' {
		return 0, "", false
	}
	below := digitsAt(t, slash+1)
	if below == 0 || below > 9 {
		return 0, "", false
	}
	a, _ := strconv.ParseFloat(t[at:slash], 64)
	b, _ := strconv.ParseFloat(t[slash+1:slash+1+below], 64)
	return whole + a/b, t[slash+1+below:], true
}

// run is the length of the figures at the start of a text with their marks and, where three figures and no more follow, the
// spaces and apostrophes between them.
func run(t string) int {
	i := 0
	for i < len(t) {
		switch c := t[i]; {
		case c >= '0' && c <= '9', c == '.', c == ',':
			i++
		case (c == ' ' || c == '\'') && i > 0 && t[i-1] >= '0' && t[i-1] <= '9' && digitsAt(t, i+1) == 3:
			i++
		default:
			return i
		}
	}
	return i
}

// ungrouped takes the marks between thousands out of a number and makes its decimal mark a point.
func ungrouped(t string, decimal byte) (digits, why string) {
	const none = "a number is missing"
	spaced := strings.ContainsAny(t, " '")
	points, commas := strings.Count(t, "."), strings.Count(t, ",")
	if strings.Trim(t, ".,' ") == "" {
		return "", none
	}
	mark := "."
	if commas > 0 && (points == 0 || strings.LastIndexByte(t, ',') > strings.LastIndexByte(t, '.')) {
		mark = ","
	}
	group := map[string]string{".": ",", ",": "."}[mark]
	whole, decimals, _ := strings.Cut(t, mark)
	switch {
	case points+commas == 1 && !spaced:
		if mark[0] != decimal && len(decimals) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0' {
			return "", fmt.Sprintf("it may be %s.%s or %s%s", whole, decimals, whole, decimals)
		}
	case strings.Count(t, mark) > 1: // one mark, several times, groups
		whole, decimals, group = t, "", mark
	}
	if spaced {
		if strings.Contains(whole, group) || strings.ContainsAny(decimals, ".,' ") {
			return "", "marks between thousands of two kinds"
		}
		whole = strings.ReplaceAll(whole, "'", " ")
		group = " "
	}
	parts := strings.Split(whole, group)
	for i, p := range parts {
		if len(parts) > 1 && (i == 0 && (len(p) < 1 || len(p) > 3) || i > 0 && len(p) != 3) || strings.ContainsAny(p, ".,") {
			return "", "marks between figures that do not group thousands"
		}
	}
	if strings.ContainsAny(decimals, ".,' ") {
		return "", "marks between decimals"
	}
	return strings.Join(parts, "") + "." + decimals, ""
}

// exponent reads "e-12" behind the figures.
func exponent(t string, end int, digits string) (int, string) {
	if end < len(t) && t[end] == 'e' {
		at := end + 1
		if at < len(t) && (t[at] == '-' || t[at] == '+') {
			at++
		}
		if n := digitsAt(t, at); n > 0 {
			return at + n, digits + t[end:at+n]
		}
	}
	return end, digits
}

// unitText cuts the unit off, up to the next number. A figure belongs to the unit where it raises a letter ("m2", "h2o"), a one
// where it stands over something ("1/h"), and a hundred where it stands under something and counts a unit ("g/100g").
func unitText(t string) (name, rest string) {
	t = strings.TrimPrefix(t, " ")
	at := 0
	if strings.HasPrefix(t, "1/") && digitsAt(t, 2) == 0 {
		at = 2
	}
	for at < len(t) {
		c := t[at]
		digit := c >= '0' && c <= '9'
		raised := (c == '2' || c == '3') && at > 0 && (t[at-1] >= 'a' && t[at-1] <= 'z' || t[at-1] == '^') && digitsAt(t, at) == 1 &&
			!(at+2 < len(t) && (t[at+1] == '.' || t[at+1] == ',') && digitsAt(t, at+2) > 0)
		if at > 0 && t[at-1] == '/' && strings.HasPrefix(t[at:], "100") {
			if unit := strings.TrimPrefix(t[at+3:], " "); unit != "" && unit[0] >= 'a' && unit[0] <= 'z' {
				at += 3
				continue
			}
		}
		if digit && !raised || (c == '.' || c == ',') && digitsAt(t, at+1) > 0 {
			break
		}
		at++
	}
	return t[:at], t[at:]
}
