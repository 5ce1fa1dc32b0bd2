package words

import (
	"slices"
	"strconv"
	"strings"
)

// A text on its way is what the physics has to say before anyone has chosen a language: a string in which sentences stand as
// templates or keys with their arguments, between control characters. Such texts can be joined, be arguments of each other and
// pass through any string of a result; Render, at the edge, puts them into words. Every other string renders as itself.
const (
	begin, end, split = "\x02", "\x03", "\x1f"

	kindTold   = 't' // a template in English
	kindKey    = 'k' // a key of the language file
	kindMaybe  = 'm' // a key that need not be there
	kindInside = 'i' // a label in the middle of a sentence
	kindNumber = 'n'
	kindAmount = 'a'

	bareSign, roughSign = "b", "r" // behind an amount
)

// Amount is a number with a unit, to be shown in the unit that the reader likes.
type Amount struct {
	Value float64 // SI
	Of    string  // a path pattern of the job, whose field says the units; without one, the unit chooses
	Unit  string  // SI
	Bare  bool    // the number alone; its unit follows later
	Rough bool    // a computed number, of which a few digits say enough
}

// Figure is a number as it is to be printed, with a point: "0.05".
type Figure string

// Told is a sentence by its template in English, for what is said beside the code: faults, cautions, notes. Arguments are pairs
// of name and value: texts (on their way or not), ints, float64s, Figures, Amounts.
func Told(template string, arguments ...any) string { return packed(kindTold, template, arguments) }

// Key is a message of the language file by its key.
func Key(key string, arguments ...any) string { return packed(kindKey, key, arguments) }

// Maybe is a message of the language file by its key, or nothing where there is none.
func Maybe(key string) string { return packed(kindMaybe, key, nil) }

// Inside is a label in the middle of a sentence, where some languages begin it with a small letter.
func Inside(label string) string { return packed(kindInside, label, nil) }

func packed(kind byte, text string, arguments []any) string {
	var b strings.Builder
	b.WriteString(begin)
	b.WriteByte(kind)
	b.WriteString(text)
	for i := 0; i+1 < len(arguments); i += 2 {
		name, _ := arguments[i].(string)
		b.WriteString(split + name + split + onItsWay(arguments[i+1]))
	}
	b.WriteString(end)
	return b.String()
}

// onItsWay is one argument as text.
func onItsWay(value any) string {
	switch v := value.(type) {
	case string:
		return v
	case int, float64:
		return begin + string(kindNumber) + digits(v) + end
	case Figure:
		return begin + string(kindNumber) + string(v) + end
	case Amount:
		text := begin + string(kindAmount) + strconv.FormatFloat(v.Value, 'g', -1, 64) + split + v.Of + split + v.Unit
		for _, mark := range []struct {
			set  bool
			sign string
		}{{v.Bare, bareSign}, {v.Rough, roughSign}} {
			if mark.set {
				text += split + mark.sign
			}
		}
		return text + end
	}
	return lost("?")
}

// Render puts a text on its way into words; show prints amounts.
func (w *Words) Render(text string, show func(Amount) string) string {
	if !strings.Contains(text, begin) {
		return text
	}
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(text, begin)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		n := closing(rest)
		if n < 1 { // no text on its way: somebody's control character
			text = rest
			continue
		}
		b.WriteString(w.piece(rest[0], parted(rest[1:n]), show))
		text = rest[n+1:]
	}
}

// piece puts one sentence, number or amount into words.
func (w *Words) piece(kind byte, parts []string, show func(Amount) string) string {
	switch kind {
	case kindNumber:
		return w.Number(parts[0])
	case kindMaybe:
		return w.Maybe(parts[0])
	case kindInside:
		return w.inside(w.Render(parts[0], show))
	case kindAmount:
		a := Amount{}
		a.Value, _ = strconv.ParseFloat(parts[0], 64) // as onItsWay printed it
		if len(parts) >= 3 {
			a.Of, a.Unit = parts[1], parts[2]
			a.Bare, a.Rough = slices.Contains(parts[3:], bareSign), slices.Contains(parts[3:], roughSign)
		}
		return show(a)
	}
	var arguments []any
	for i := 1; i+1 < len(parts); i += 2 {
		var value any
		if number, plain := numberIn(parts[i+1]); plain {
			value = number
		} else {
			value = w.Render(parts[i+1], show)
		}
		arguments = append(arguments, parts[i], value)
	}
	if kind == kindKey {
		return w.Say(parts[0], arguments...)
	}
	return w.Fault(parts[0], arguments...)
}

// numberIn reads an argument that is one number, by which plurals choose.
func numberIn(text string) (float64, bool) {
	rest, found := strings.CutPrefix(text, begin+string(kindNumber))
	if !found || !strings.HasSuffix(rest, end) {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.TrimSuffix(rest, end), 64)
	return v, err == nil
}

// closing is where the piece ends that has begun before rest; -1 where it does not.
func closing(rest string) int {
	depth := 1
	for i := range len(rest) {
		switch rest[i] {
		case begin[0]:
			depth++
		case end[0]:
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return -1
}

// parted splits a piece, and none of those inside it.
func parted(text string) []string {
	var parts []string
	depth, from := 0, 0
	for i := range len(text) {
		switch text[i] {
		case begin[0]:
			depth++
		case end[0]:
			depth--
		case split[0]:
			if depth == 0 {
				parts, from = append(parts, text[from:i]), i+1
			}
		}
	}
	return append(parts, text[from:])
}

// insideKey says how a label begins in the middle of a sentence: "lower" or "as_is".
const insideKey = "grammar.label_inside_a_sentence"

func (w *Words) inside(label string) string {
	if w.messages[insideKey] != "lower" || label == "" {
		return label
	}
	return strings.ToLower(label[:1]) + label[1:]
}

// English is a text on its way without any language file, for whoever reads an error where it was raised: templates as they stand,
// keys as they are, numbers in SI.
func English(text string) string {
	if !strings.Contains(text, begin) {
		return text
	}
	rules, _ := pluralRules(nil) // the built-in rule always reads
	w := Words{Mark: ".", plural: rules, messages: map[string]string{}, bare: true}
	return w.Render(text, func(a Amount) string {
		number := strconv.FormatFloat(a.Value, 'g', 6, 64)
		if a.Bare || a.Unit == "" {
			return number
		}
		return number + " " + a.Unit
	})
}
