package trial

import (
	"bytes"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// line is one line of the text that is not blank.
type line struct {
	number int // in the text, from one
	text   string
}

// decode turns bytes into text: UTF-8 with or without its mark, UTF-16 with its mark, else Latin-1 (a degree sign of an old
// instrument is no reason to refuse a table).
func decode(data []byte) (text, encoding string) {
	switch {
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}):
		return utf16Text(data[2:], 0, 1), "UTF-16"
	case bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		return utf16Text(data[2:], 1, 0), "UTF-16"
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if utf8.Valid(data) {
		return string(data), "UTF-8"
	}
	runes := make([]rune, len(data))
	for i, b := range data {
		runes[i] = rune(b)
	}
	return string(runes), "Latin-1"
}

// utf16Text reads pairs of bytes, of which low is the lesser one.
func utf16Text(data []byte, low, high int) string {
	units := make([]uint16, len(data)/2)
	for i := range units {
		units[i] = uint16(data[2*i+low]) | uint16(data[2*i+high])<<8
	}
	return string(utf16.Decode(units))
}

// lines splits at every kind of line end and drops what is blank, or a remark that starts with #.
func (t *Table) lines(data []byte) ([]line, error) {
	if len(data) > MaxBytes {
		n := 1 + bytes.Count(data[:MaxBytes], []byte("\n"))
		return nil, at(n, fault.Limit, words.Told("the text goes on to {count} bytes", "count", len(data)),
			words.Told("Give at most {max_bytes} bytes: keep every tenth row, the fit does not need more.", "max_bytes", MaxBytes))
	}
	text, encoding := decode(data)
	t.Encoding = encoding
	if i := strings.IndexByte(text, 0); i >= 0 {
		return nil, at(1+strings.Count(text[:i], "\n"), fault.Syntax, words.Told("a zero byte"), words.Told("This is no text: export the table as CSV."))
	}
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	var found []line
	blank, remarks := 0, 0
	for i, s := range strings.Split(text, "\n") {
		switch trimmed := strings.TrimSpace(s); {
		case strings.Trim(trimmed, ";,\t| ") == "":
			blank++
		case trimmed[0] == '#':
			remarks++
		default:
			found = append(found, line{i + 1, s})
		}
	}
	if remarks > 0 {
		t.note(words.Told("{count, plural, one {# line with '#' in front skipped.} other {# lines with '#' in front skipped.}}", "count", remarks))
	}
	if len(found) == 0 {
		return nil, at(1, fault.Missing, "", words.Told("The text holds no rows: give a table with two columns or more."))
	}
	if blank > 1 { // the last line end makes one
		t.note(words.Told("{count, plural, one {# blank line skipped.} other {# blank lines skipped.}}", "count", blank-1))
	}
	return found, nil
}

// split cuts a line into cells; a separator inside quotation marks does not count.
func split(s string, separator byte) []string {
	if separator == ' ' {
		return strings.Fields(s)
	}
	var cells []string
	quoted := false
	from := 0
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '"':
			quoted = !quoted
		case s[i] == separator && !quoted:
			cells, from = append(cells, strings.TrimSpace(s[from:i])), i+1
		}
	}
	return append(cells, strings.TrimSpace(s[from:]))
}
