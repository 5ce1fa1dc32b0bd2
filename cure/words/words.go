package words

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
)

// Words are the sentences of one language. They do not change after Parse.
type Words struct {
	Tag  string // BCP 47: "de"
	Name string // of the language, in itself: "Deutsch"
	Mark string // decimal mark

	plural   []rule
	messages map[string]string // by key, nested keys joined by dots
	bare     bool              // without a file: keys stand for themselves, without the group before and the word behind
}

// file is a language file.
type file struct {
	Tag    string            `json:"tag"`
	Name   string            `json:"name"`
	Mark   string            `json:"decimal_mark"`
	Plural map[string]string `json:"plural"`
	Core   json.RawMessage   `json:"core"`
}

// Parse reads a language file and keeps its messages for the core. Messages are looked at when they are said; Check tells
// of malformed ones.
func Parse(text []byte) (*Words, error) {
	var f file
	if err := json.Unmarshal(text, &f); err != nil {
		return nil, fmt.Errorf("words: a language file: %w", err)
	}
	if f.Tag == "" || f.Mark == "" || len(f.Core) == 0 {
		return nil, fmt.Errorf(`words: a language file needs "tag", "decimal_mark" and "core"; this one has %q, %q and %d bytes`, f.Tag, f.Mark, len(f.Core))
	}
	rules, err := pluralRules(f.Plural)
	if err != nil {
		return nil, err
	}
	var core map[string]any
	if err := json.Unmarshal(f.Core, &core); err != nil {
		return nil, fmt.Errorf("words: core of %s: %w", f.Tag, err)
	}
	w := &Words{Tag: f.Tag, Name: f.Name, Mark: f.Mark, plural: rules, messages: map[string]string{}}
	return w, w.gather("", core)
}

// gather joins nested keys.
func (w *Words) gather(prefix string, group map[string]any) error {
	for key, value := range group {
		switch v := value.(type) {
		case string:
			w.messages[prefix+key] = v
		case map[string]any:
			if err := w.gather(prefix+key+".", v); err != nil {
				return err
			}
		default:
			return fmt.Errorf("words: %s of %s is neither a message nor a group", prefix+key, w.Tag)
		}
	}
	return nil
}

// Say is the message of a key with its arguments, given as pairs of name and value: texts, ints or float64s.
func (w *Words) Say(key string, arguments ...any) string {
	message, known := w.find(key)
	switch {
	case w.bare:
		_, rest, _ := strings.Cut(key, ".")
		return rest[:max(0, strings.LastIndexByte(rest, '.'))]
	case !known:
		return lost(key)
	}
	return w.format(key, message, arguments)
}

// Maybe is Say, and "" where there is no such key.
func (w *Words) Maybe(key string, arguments ...any) string {
	if !w.Has(key) {
		return ""
	}
	return w.Say(key, arguments...)
}

// Fault says a template that stands in the code in English. The key is the template itself; where the language has none, as
// English has, it is said as it stands.
func (w *Words) Fault(template string, arguments ...any) string {
	if message, known := w.messages[faults+template]; known {
		template = message
	}
	return w.format(template, template, arguments)
}

const faults = "faults."

// Has reports whether there is a message.
func (w *Words) Has(key string) bool {
	_, known := w.find(key)
	return known
}

// find looks a key up; what is the same in several places stands once, with a star for the place: "fields.*.humidity.dew_point_K.help"
// serves "fields.workshop.air[].humidity.dew_point_K.help".
func (w *Words) find(key string) (message string, known bool) {
	if message, known = w.messages[key]; known {
		return message, true
	}
	group, path, deeper := strings.Cut(key, ".")
	for deeper {
		if _, path, deeper = strings.Cut(path, "."); deeper {
			if message, known = w.messages[group+".*."+path]; known {
				return message, true
			}
		}
	}
	return "", false
}

// Keys lists all keys in alphabetical order.
func (w *Words) Keys() []string {
	keys := make([]string, 0, len(w.messages))
	for k := range w.messages {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Check lists the arguments of a message in alphabetical order, or says what is wrong with it.
func (w *Words) Check(key string) ([]string, error) { return Arguments(w.messages[key]) }

// Arguments lists the arguments of a message in alphabetical order, or says what is wrong with it.
func Arguments(message string) ([]string, error) {
	parts, err := parse(message)
	if err != nil {
		return nil, err
	}
	names := namesOf(parts, nil)
	slices.Sort(names)
	return slices.Compact(names), nil
}

func (w *Words) format(key, message string, arguments []any) string {
	parts, err := parse(message)
	if err != nil {
		return lost(key)
	}
	var b strings.Builder
	w.write(&b, parts, arguments, "")
	return b.String()
}

// write says parts; number is what # stands for.
func (w *Words) write(b *strings.Builder, parts []part, arguments []any, number string) {
	for i := range parts {
		p := &parts[i]
		switch {
		case p.hash:
			b.WriteString(number)
		case p.name == "":
			b.WriteString(p.text)
		case p.branches == nil:
			b.WriteString(w.argument(p.name, arguments))
		default:
			shown := w.argument(p.name, arguments)
			w.write(b, p.branch(w.category(value(p.name, arguments))), arguments, shown)
		}
	}
}

// value finds an argument by its name; nil where it is missing.
func value(name string, arguments []any) any {
	for i := 0; i+1 < len(arguments); i += 2 {
		if arguments[i] == name {
			return arguments[i+1]
		}
	}
	return nil
}

// argument prints an argument.
func (w *Words) argument(name string, arguments []any) string {
	switch v := value(name, arguments).(type) {
	case string:
		return v
	case int, float64:
		return w.Number(digits(v))
	}
	return lost(name)
}

// Number puts the language's decimal mark and, in front, a typographic minus into a number as Go prints it.
func (w *Words) Number(text string) string {
	if w.bare {
		return text
	}
	text = strings.Replace(text, ".", w.Mark, 1)
	if positive, negative := strings.CutPrefix(text, "-"); negative {
		return "\u2212" + positive
	}
	return text
}

// lost marks what is missing.
func lost(name string) string { return "\u27e6" + name + "\u27e7" }
