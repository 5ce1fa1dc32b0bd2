package words

import (
	"encoding/json"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
)

// vectors are the cases that all implementations share.
type vectors struct {
	Languages map[string]struct {
		Mark   string            `json:"decimal_mark"`
		Plural map[string]string `json:"plural"`
	} `json:"languages"`
	Cases []struct {
		Language, Message, Want string
		Arguments               map[string]any
	} `json:"cases"`
	Malformed []string `json:"malformed"`
}

func TestSharedVectors(t *testing.T) {
	text, err := os.ReadFile("../../testdata/words/messages.json")
	if err != nil {
		t.Fatal(err)
	}
	var v vectors
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatal(err)
	}
	if len(v.Cases) < 30 || len(v.Malformed) < 10 {
		t.Fatalf("%d cases, %d malformed", len(v.Cases), len(v.Malformed))
	}
	for _, c := range v.Cases {
		l := v.Languages[c.Language]
		w := parsed(t, map[string]any{"tag": c.Language, "decimal_mark": l.Mark, "plural": l.Plural, "core": map[string]any{"group": map[string]any{"key": c.Message}}})
		var arguments []any
		for name, value := range c.Arguments {
			arguments = append(arguments, name, value)
		}
		if got := w.Say("group.key", arguments...); got != c.Want {
			t.Errorf("%s: %q with %v says %q, want %q", c.Language, c.Message, c.Arguments, got, c.Want)
		}
		if _, err := w.Check("group.key"); err != nil {
			t.Errorf("%q: %v", c.Message, err)
		}
	}
	for _, m := range v.Malformed {
		if names, err := Arguments(m); err == nil {
			t.Errorf("%q passes with %v", m, names)
		}
	}
}

func parsed(t *testing.T, f map[string]any) *Words {
	t.Helper()
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	w, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestWhatIsMissingShows(t *testing.T) {
	w := parsed(t, map[string]any{"tag": "xx", "decimal_mark": ".", "core": map[string]any{"bad": "{", "good": "fine",
		"faults": map[string]any{"{n} is too much": "too much: {n}"}}})
	for key, want := range map[string]string{"none": "⟦none⟧", "bad": "⟦bad⟧", "good": "fine"} {
		if got := w.Say(key); got != want {
			t.Errorf("%s says %q", key, got)
		}
	}
	if got := w.Fault("{n} is too much", "n", 3); got != "too much: 3" {
		t.Error(got)
	}
	if got := w.Fault("{n} is not enough", "n", 1.5); got != "1.5 is not enough" {
		t.Error(got)
	}
	if w.Maybe("none") != "" || w.Maybe("good") != "fine" || !w.Has("good") || w.Has("none") || len(w.Keys()) != 3 {
		t.Error(w.Keys())
	}
	for _, text := range []string{"", "{}", `{"tag":"x","decimal_mark":",","core":{"a":3}}`, `{"tag":"x","decimal_mark":",","core":[]}`,
		`{"tag":"x","decimal_mark":",","plural":{"one":"i is 1"},"core":{}}`, `{"tag":"x","decimal_mark":",","plural":{"one":"n = a"},"core":{}}`,
		`{"tag":"x","decimal_mark":",","plural":{"one":"n % z = 1"},"core":{}}`} {
		if _, err := Parse([]byte(text)); err == nil {
			t.Errorf("%s passes", text)
		}
	}
}

// No text breaks the reader, and a text with its braces quoted says itself.
func TestAnyMessage(t *testing.T) {
	w := parsed(t, map[string]any{"tag": "xx", "decimal_mark": ".", "core": map[string]any{}})
	signs := []rune("ab {}#',=1é plural other")
	dice := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		var b strings.Builder
		for range dice.IntN(20) {
			b.WriteRune(signs[dice.IntN(len(signs))])
		}
		m := b.String()
		w.Fault(m, "a", 1, "b", "x")
		quoted := strings.NewReplacer("{", "'{'", "}", "'}'", "'", "''").Replace(m)
		if got := w.Fault(quoted); got != m && !strings.Contains(m, "'") && !strings.Contains(quoted, "''") {
			t.Fatalf("%q says %q", quoted, got)
		}
	}
}

func TestTextsOnTheirWay(t *testing.T) {
	w := parsed(t, map[string]any{"tag": "de", "decimal_mark": ",", "core": map[string]any{
		"fields": map[string]any{"part.thickness_m": map[string]any{"label": "Dicke"}},
		"faults": map[string]any{"{n, plural, one {# entry} other {# entries}}": "{n, plural, one {# Eintrag} other {# Einträge}}",
			"{what} of {amount} at {where}": "{what} von {amount} bei {where}"}}})
	label := Key("fields.part.thickness_m.label")
	entries := Told("{n, plural, one {# entry} other {# entries}}", "n", 1)
	text := "(" + Told("{what} of {amount} at {where}", "what", Inside(label), "amount", Amount{Value: 1.5e-3, Of: "part.thickness_m", Unit: "m"}, "where", entries) + ")"
	show := func(a Amount) string { return w.Number(digits(a.Value*1e3)) + " mm" }
	if got := w.Render(text, show); got != "(Dicke von 1,5 mm bei 1 Eintrag)" {
		t.Error(got)
	}
	if got := English(text); got != "(part.thickness_m of 0.0015 m at 1 entry)" {
		t.Error(got)
	}
	w.messages[insideKey] = "lower"
	if got := w.Render(Inside(label), show); got != "dicke" {
		t.Error(got)
	}
	// Control characters of somebody else break nothing.
	for _, s := range []string{"plain", "a\x02b", "\x03", "\x02\x03", "\x02\x02t\x03", "\x02a\x03", "\x02n\x03", "\x02tx\x1fy\x03", "\x02z\x1f\x1f\x1f\x03"} {
		w.Render(s, show)
		English(s)
	}
}
