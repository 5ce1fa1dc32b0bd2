package job

import (
	"encoding/json"
	"fmt"
	"strings"
)

// node is one JSON value: nil, bool, json.Number, string, []node, or an object.
type node any

// object keeps the order of its entries and those that come twice.
type object []entry

type entry struct {
	key   string
	value node
}

// reader makes nodes of a text that is known to be JSON, so that a value is told by its first letter. Every key that is typed
// into reads a whole job; the library's reader of single tokens, which knows nothing of the text, takes eight times as long.
type reader struct {
	text string
	at   int
}

// value reads the next value; its error is one of too much nesting.
func (r *reader) value(depth int) (node, error) {
	first := r.next()
	if depth > maxDepth {
		return nil, fmt.Errorf("more than %d levels of nesting", maxDepth)
	}
	switch first {
	case '{':
		return r.object(depth)
	case '[':
		return r.list(depth)
	case '"':
		return r.string(), nil
	}
	switch word := r.word(); word {
	case "null":
		return nil, nil
	case "true", "false":
		return word == "true", nil
	default:
		return json.Number(word), nil
	}
}

func (r *reader) object(depth int) (node, error) {
	entries := object{}
	for r.more('}') {
		key := r.string()
		r.next()
		r.at++ // the colon
		value, err := r.value(depth + 1)
		if err != nil {
			return nil, err
		}
		entries = append(entries, entry{key, value})
	}
	return entries, nil
}

func (r *reader) list(depth int) (node, error) {
	items := []node{}
	for r.more(']') {
		item, err := r.value(depth + 1)
		if err != nil {
			return nil, err
		}
		items = append(items, item)
	}
	return items, nil
}

// more goes past a bracket or comma to the next entry; at the closing bracket it goes past that and says that there is none.
func (r *reader) more(closing byte) bool {
	if r.next() != closing {
		r.at++
		if r.next() != closing {
			return true
		}
	}
	r.at++
	return false
}

// next goes to the next byte that is no space.
func (r *reader) next() byte {
	for strings.IndexByte(" \t\r\n", r.text[r.at]) >= 0 {
		r.at++
	}
	return r.text[r.at]
}

// string reads a text in quotation marks.
func (r *reader) string() string {
	begin := r.at
	escaped := false
	for r.at++; r.text[r.at] != '"'; r.at++ {
		if r.text[r.at] == '\\' {
			escaped = true
			r.at++
		}
	}
	r.at++
	quoted := r.text[begin:r.at]
	if !escaped {
		return quoted[1 : len(quoted)-1]
	}
	var s string
	_ = json.Unmarshal([]byte(quoted), &s) // it is JSON
	return s
}

// word reads a number, null, true or false.
func (r *reader) word() string {
	begin := r.at
	for r.at < len(r.text) && strings.IndexByte(",]} \t\r\n", r.text[r.at]) < 0 {
		r.at++
	}
	return r.text[begin:r.at]
}
