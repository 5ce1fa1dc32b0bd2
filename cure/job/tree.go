package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// Limits of a document. A job with every list full is below 100 kB.
const (
	maxBytes  = 1 << 20
	maxDepth  = 16
	maxFaults = 100
)

// parse reads one JSON text. Its fault is a single one: where the text stops being JSON nothing after it has a meaning.
func parse(data []byte) (node, *fault.Fault) {
	if len(data) > maxBytes {
		return nil, fault.New(fault.Limit, "", words.Told("the document has {count} bytes", "count", len(data)),
			words.Told("A job has at most {max_bytes} bytes; is this the right file?", "max_bytes", maxBytes))
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // some editors put a byte order mark in front
	if at := firstBadByte(data); at >= 0 {
		return nil, syntaxFault(data, at, words.Told("a byte that is not UTF-8"))
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, syntaxFault(data, 0, words.Told("an empty document"))
	}
	if !json.Valid(data) {
		return nil, badSyntax(data)
	}
	r := reader{text: string(data)}
	root, err := r.value(0)
	if err != nil {
		return nil, syntaxFault(data, r.at, err.Error())
	}
	return root, nil
}

// badSyntax says where a text stops being JSON.
func badSyntax(data []byte) *fault.Fault {
	var whole json.RawMessage
	err := json.Unmarshal(data, &whole)
	at := len(data)
	var s *json.SyntaxError
	if errors.As(err, &s) {
		at = int(s.Offset) - 1 // the offset counts the offending byte itself
	}
	if s != nil && int(s.Offset) >= len(data) && err.Error() == "unexpected end of JSON input" {
		at = len(data)
	}
	return syntaxFault(data, at, err.Error())
}

func firstBadByte(data []byte) int {
	for i := 0; i < len(data); {
		r, n := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

// syntaxFault says where in the text, in lines and characters that count from one.
func syntaxFault(data []byte, at int, what string) *fault.Fault {
	at = max(0, min(at, len(data)))
	line := 1 + bytes.Count(data[:at], []byte("\n"))
	column := 1 + utf8.RuneCount(data[bytes.LastIndexByte(data[:at], '\n')+1:at])
	return fault.New(fault.Syntax, "", words.Told("line {line}, column {column}: {what}", "line", line, "column", column, "what", what),
		words.Told("The text must be one JSON object; check brackets, commas and quotation marks there."))
}

// kindName names a JSON value in a message.
func kindName(n node) string {
	switch v := n.(type) {
	case nil:
		return "null"
	case bool:
		return fmt.Sprint(v)
	case json.Number:
		return words.Told("the number {number}", "number", shorten(v.String()))
	case string:
		return words.Told("the text {text}", "text", strconv.Quote(shorten(v)))
	case []node:
		return words.Told("a list")
	default:
		return words.Told("an object")
	}
}

// shorten keeps a message on one line.
func shorten(text string) string {
	const most = 40
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	return string([]rune(text)[:most]) + "…"
}
