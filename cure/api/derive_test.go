package api

import (
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/derive"
	"github.com/drywright/drywright/cure/fault"
)

// Helpers come with their words said, and are carried out without a job.
func TestDerive(t *testing.T) {
	r := send(t, Request{Op: Describe})
	if !r.OK || len(r.Catalogue.Helpers) < 8 {
		t.Fatalf("too few helpers: %v %s", r.Faults, r.Message)
	}
	for _, h := range r.Catalogue.Helpers {
		if strings.ContainsAny(h.Title+h.Procedure+h.Source+h.Caution+h.Inputs[0].Label, "\x02\x03⟦") {
			t.Errorf("%s is not in words: %q", h.Kind, h.Title)
		}
	}
	ask := &derive.Question{Kind: derive.Sprayed, Path: "film.wet_coat_kg_per_m2",
		Inputs: map[string]float64{"mass_kg": 0.012, "area_m2": 0.05, "overspray": 0.25}}
	r = send(t, Request{Op: Derive, Derive: ask})
	if !r.OK || r.Derived == nil || math.Abs(r.Derived.Value-0.18) > 1e-12 || r.Derived.Outside || len(r.Derived.Steps) != 1 {
		t.Errorf("12 g on a twentieth of a square metre, a quarter lost: %+v %v", r.Derived, r.Faults)
	}
	delete(ask.Inputs, "mass_kg")
	r = send(t, Request{Op: Derive, Derive: ask})
	if r.OK || len(r.Faults) != 1 || r.Faults[0].Path != "inputs.mass_kg" || r.Faults[0].Code != fault.Missing {
		t.Errorf("without a mass: %+v", r.Faults)
	}
	if r = send(t, Request{Op: Derive}); r.OK || len(r.Faults) != 1 {
		t.Errorf("without a question: %+v", r)
	}
}
