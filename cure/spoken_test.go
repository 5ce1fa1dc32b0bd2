package cure_test

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/words/languages"
)

// said computes an example and prints it, as a table and as the texts of the document.
func said(t *testing.T, d job.Named, tag string, units report.Units) (table, document string) {
	t.Helper()
	w, err := languages.Open(tag)
	if err != nil {
		t.Fatal(err)
	}
	say := report.New(w, units)
	say.Tell(&d)
	r, err := cure.Predict(say, d.Job)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	return say.Table(r), string(text)
}

// englishWords are words that every English sentence of the core has one of, and no German one.
var englishWords = regexp.MustCompile(`(?i)\b(the|of|and|is|with|from|at|by|until|after|before|its|not|film's|oven|room|workshop|drying)\b`)

// values finds the texts of a document, without the names of its members.
var values = regexp.MustCompile(`"(?:text|label|where|name|title|note|place|stage|equation|source|ready_text|deadline_text)":"([^"]*)"`)

// sources stay as they were published, and so do names of kinds.
var published = regexp.MustCompile(`Int\. J\.|Ind\. Eng\.|Heat Mass Transfer|Heat and Mass Transfer|Adv\. Heat|Handbook of|J\. 23`)

// What the core says of the examples in German holds no English, no key without words and no text still on its way.
func TestGermanIsGerman(t *testing.T) {
	if testing.Short() {
		t.Skip("computes every example")
	}
	if !englishWords.MatchString("Leaves the oven 50 min after spraying") || englishWords.MatchString("Verlässt den Ofen 50 min nach dem Sprühen klebfrei") {
		t.Fatal("the words tell nothing apart")
	}
	for _, d := range job.Demos() {
		table, document := said(t, d, "de", report.SI)
		var lines []string
		for _, m := range values.FindAllStringSubmatch(document, -1) {
			lines = append(lines, m[1])
		}
		for _, line := range append(lines, strings.Split(table, "\n")...) {
			if found := englishWords.FindString(line); found != "" && !published.MatchString(line) && !named(line) {
				t.Errorf("%s: %q in %q", d.ID, found, line)
			}
		}
		if strings.ContainsAny(table, "\x02\x03\x1f⟦") || strings.Contains(document, `\u0002`) || strings.Contains(document, "⟦") {
			t.Errorf("%s: a text without words", d.ID)
		}
		if len(lines) < 50 {
			t.Errorf("%s: only %d texts", d.ID, len(lines))
		}
	}
}

// named reports whether a text is a name that documents use, as "film_forming" and "at".
func named(line string) bool { return !strings.Contains(line, " ") }

var number = regexp.MustCompile(`[−]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?`)

// numbers reads the numbers of a printed text with its decimal mark.
func numbers(text, mark string) []float64 {
	var all []float64
	for _, s := range number.FindAllString(text, -1) {
		v, err := strconv.ParseFloat(strings.NewReplacer(mark, ".", "−", "-").Replace(s), 64)
		if err == nil {
			all = append(all, v)
		}
	}
	return all
}

// A language changes words and decimal mark, and no number. The tables of the examples have no message in which a language puts
// its numbers in another order.
func TestLanguagesTellTheSameNumbers(t *testing.T) {
	d := job.Demos()[0]
	for _, units := range []report.Units{report.SI, report.US} {
		english, _ := said(t, d, "en", units)
		german, _ := said(t, d, "de", units)
		a, b := numbers(english, "."), numbers(german, ",")
		if len(a) < 100 || len(a) != len(b) {
			t.Fatalf("%s: %d numbers in English, %d in German", units, len(a), len(b))
		}
		for i := range a {
			if a[i] != b[i] {
				t.Errorf("%s: number %d is %g in English and %g in German", units, i, a[i], b[i])
			}
		}
	}
}

// Units change what is printed, and nothing that it stands for: a temperature printed in °F is the one printed in °C, to the
// tenth of a degree that both are printed to. Definition of the scales: 1.8 °F to the kelvin, 32 °F at 0 °C.
func TestUnitsTellTheSameTemperatures(t *testing.T) {
	d := job.Demos()[0]
	degrees := func(text, symbol string) []float64 {
		var all []float64
		for _, m := range regexp.MustCompile(`([−]?[\d.]+) `+symbol).FindAllStringSubmatch(text, -1) {
			all = append(all, numbers(m[1], ".")...)
		}
		return all
	}
	si, _ := said(t, d, "en", report.SI)
	us, _ := said(t, d, "en", report.US)
	c, f := degrees(si, "°C"), degrees(us, "°F")
	if len(c) < 20 || len(c) != len(f) {
		t.Fatalf("%d in °C, %d in °F", len(c), len(f))
	}
	for i := range c {
		if math.Abs(1.8*c[i]+32-f[i]) > 0.05+1.8*0.05+1e-9 {
			t.Errorf("%g °C and %g °F", c[i], f[i])
		}
	}
	for _, metric := range []string{"g/m²", "m²/h", "kJ/m²", "kWh/m²"} {
		if strings.Contains(us, metric) {
			t.Errorf("%s among US units", metric)
		}
	}
}
