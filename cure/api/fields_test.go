package api

import (
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// Every input says what it is called, what it is, where its default and ranges come from and what raising it does; a number has a unit
// that can be typed and ranges that hold its default.
func TestEveryFieldIsExplained(t *testing.T) {
	r := send(t, Request{Op: Describe})
	if !r.OK {
		t.Fatal(r.Faults, r.Message)
	}
	if n := len(r.Catalogue.Fields); n < 200 {
		t.Fatalf("only %d fields", n)
	}
	units := map[string]bool{}
	for _, s := range r.Catalogue.Units {
		for _, u := range s.Units {
			units[string(s.Dimension)+" "+u.Symbol] = true
		}
	}
	for _, f := range r.Catalogue.Fields {
		for what, text := range map[string]string{"label": f.Label, "source": f.Source, "effect": f.Effect, "help": f.Help} {
			if strings.TrimSpace(text) == "" || strings.ContainsAny(text, "\x02\x03⟦") {
				t.Errorf("%s has no %s: %q", f.Path, what, text)
			}
		}
		if f.Kind != job.KindNumber {
			continue
		}
		for _, d := range []job.Display{f.Display, f.USDisplay} {
			if !units[string(d.Dimension)+" "+d.Symbol] {
				t.Errorf("%s is shown in %q, which nobody can type", f.Path, d.Symbol)
			}
		}
		if f.Low > f.High || f.UsualLow < f.Low || f.UsualHigh > f.High || f.UsualLow > f.UsualHigh {
			t.Errorf("%s: usually %g to %g of %g to %g", f.Path, f.UsualLow, f.UsualHigh, f.Low, f.High)
		}
		if f.Default < f.Low || f.Default > f.High {
			t.Errorf("%s: the default %g is outside of %g to %g", f.Path, f.Default, f.Low, f.High)
		}
	}
}
