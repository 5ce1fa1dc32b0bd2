package words

import (
	"errors"
	"strings"
)

// part is a piece of a message: a text, an argument, a choice by number, or the number that one is made by (#).
type part struct {
	text     string
	name     string
	branches []branch
	hash     bool
}

type branch struct {
	selector string // "=0" or a category
	parts    []part
}

// branch is the branch for a number that prints as exact and is of a category.
func (p *part) branch(exact, category string) []part {
	var found, other []part
	for _, b := range p.branches {
		switch b.selector {
		case "=" + exact:
			return b.parts
		case category:
			found = b.parts
		case "other":
			other = b.parts
		}
	}
	if found != nil {
		return found
	}
	return other
}

func namesOf(parts []part, names []string) []string {
	for i := range parts {
		if p := &parts[i]; p.name != "" {
			names = append(names, p.name)
		}
		for _, b := range parts[i].branches {
			names = namesOf(b.parts, names)
		}
	}
	return names
}

// The ways in which a message can be malformed.
var (
	errBrace  = errors.New("a brace without its partner")
	errName   = errors.New("an argument needs a name of letters, digits and underscores")
	errKind   = errors.New("only {name} and {name, plural, ...} are understood")
	errOther  = errors.New(`a plural needs the branch "other"`)
	errBranch = errors.New("a branch of a plural is =number or a category, then a message in braces")
)

// parse reads a message.
func parse(message string) ([]part, error) {
	r := reader{rest: message}
	parts, err := r.message(0)
	if err == nil && r.rest != "" {
		err = errBrace
	}
	return parts, err
}

// reader is what is left of a message.
type reader struct{ rest string }

// message reads up to the end or to a closing brace, which it leaves. In the branches of a plural, depth is 1 or more.
func (r *reader) message(depth int) ([]part, error) {
	parts := []part{} // not nil, so that an empty branch is a branch
	var text strings.Builder
	flush := func() {
		if text.Len() > 0 {
			parts = append(parts, part{text: text.String()})
			text.Reset()
		}
	}
	for r.rest != "" && r.rest[0] != '}' {
		switch c := r.rest[0]; {
		case c == '{':
			flush()
			p, err := r.argument(depth)
			if err != nil {
				return nil, err
			}
			parts = append(parts, p)
		case c == '#' && depth > 0:
			flush()
			parts = append(parts, part{hash: true})
			r.rest = r.rest[1:]
		case c == '\'':
			r.apostrophe(&text, depth)
		default:
			text.WriteByte(c)
			r.rest = r.rest[1:]
		}
	}
	flush()
	return parts, nil
}

// apostrophe reads one apostrophe and, where it quotes, all that it quotes.
func (r *reader) apostrophe(text *strings.Builder, depth int) {
	r.rest = r.rest[1:]
	switch {
	case strings.HasPrefix(r.rest, "'"):
		text.WriteByte('\'')
		r.rest = r.rest[1:]
		return
	case r.rest == "" || !strings.ContainsRune("{}", rune(r.rest[0])) && !(r.rest[0] == '#' && depth > 0):
		text.WriteByte('\'')
		return
	}
	for r.rest != "" {
		c := r.rest[0]
		r.rest = r.rest[1:]
		if c != '\'' {
			text.WriteByte(c)
			continue
		}
		if !strings.HasPrefix(r.rest, "'") {
			return
		}
		text.WriteByte('\'')
		r.rest = r.rest[1:]
	}
}

// argument reads what stands in braces.
func (r *reader) argument(depth int) (part, error) {
	r.rest = r.rest[1:]
	p := part{name: r.word()}
	if p.name == "" || p.name[0] >= '0' && p.name[0] <= '9' {
		return p, errName
	}
	switch r.next() {
	case '}':
		return p, nil
	case ',':
	default:
		return p, errName
	}
	if r.word() != "plural" || r.next() != ',' {
		return p, errKind
	}
	for {
		r.space()
		if strings.HasPrefix(r.rest, "}") {
			r.rest = r.rest[1:]
			break
		}
		b, err := r.branch(depth)
		if err != nil {
			return p, err
		}
		p.branches = append(p.branches, b)
	}
	for _, b := range p.branches {
		if b.selector == "other" {
			return p, nil
		}
	}
	return p, errOther
}

func (r *reader) branch(depth int) (branch, error) {
	sign := ""
	if strings.HasPrefix(r.rest, "=") {
		sign, r.rest = "=", r.rest[1:]
	}
	b := branch{selector: r.word()}
	if b.selector == "" || r.next() != '{' {
		return b, errBranch
	}
	b.selector = sign + b.selector
	var err error
	if b.parts, err = r.message(depth + 1); err != nil {
		return b, err
	}
	if r.next() != '}' {
		return b, errBrace
	}
	return b, nil
}

// word reads a name, with the white space around it.
func (r *reader) word() string {
	r.space()
	n := 0
	for n < len(r.rest) && (r.rest[n] == '_' || r.rest[n] >= '0' && r.rest[n] <= '9' || r.rest[n]|0x20 >= 'a' && r.rest[n]|0x20 <= 'z') {
		n++
	}
	w := r.rest[:n]
	r.rest = r.rest[n:]
	r.space()
	return w
}

// next takes one byte; 0 at the end.
func (r *reader) next() byte {
	if r.rest == "" {
		return 0
	}
	c := r.rest[0]
	r.rest = r.rest[1:]
	return c
}

func (r *reader) space() { r.rest = strings.TrimLeft(r.rest, " \t\r\n") }
