package words

import (
	"strings"
	"testing"
)

// Whatever a translator writes, a message is read or refused, and what is read says something for any arguments.
func FuzzMessage(f *testing.F) {
	for _, seed := range []string{"", "{n} days", "{n, plural, =0 {none} one {# day} other {# days}}", "'{'quoted'}'", "the maker's", "{", "{n, plural,", "{n, plural, other {{n}}}",
		"{n, plural, one {a}}", "{a}{b}{a}", "{n,plural,other{{m,plural,other{#}}}}"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, message string) {
		if len(message) > 4096 {
			return
		}
		if _, err := parse(message); err != nil && strings.TrimSpace(err.Error()) == "" {
			t.Error("refused without a reason")
		}
	})
}
