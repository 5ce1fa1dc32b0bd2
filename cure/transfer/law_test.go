package transfer_test

import (
	"github.com/drywright/drywright/cure/words"
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

// Natural convection through zero density difference: h is positive and its slope in T bounded; the sign of the
// difference decides which orientation is the livelier.
func TestNeutralBuoyancy(t *testing.T) {
	room := must(air.FromHumidityRatio(293.15, 101325, 0.0073, true))
	for _, o := range []Orientation{Vertical, FacingUp, FacingDown} {
		law := Buoyant{0.3, o}
		h := func(T float64) float64 { return law.Coefficient(room, T, air.SaturatedFraction(T, 101325, true)) }
		for T := zero + 10; T < zero+28; T += 0.01 {
			slope := (h(T+1e-4) - h(T-1e-4)) / 2e-4
			// Seen: 1.0 W/m2K a kelvin, a third of the range of h over the two kelvin in which the layer turns over.
			// |d| without smoothing has no bound.
			if !(h(T) > 0.5) || math.Abs(slope) > 1.5 {
				t.Fatalf("orientation %d: h %g, slope %g at %.2f degC", o, h(T), slope, T-zero)
			}
		}
	}
	at := func(o Orientation, T float64) float64 {
		return Buoyant{0.3, o}.Coefficient(room, T, air.SaturatedFraction(T, 101325, true))
	}
	// Below 18.9 degC the layer over a face up is heavy and stable (row EVP-BUOY); a face down is mirrored.
	if cold := zero + 15; at(FacingUp, cold) >= at(FacingDown, cold) {
		t.Error("a cold wet face up should be the quieter")
	}
	if warm := zero + 24; at(FacingUp, warm) <= at(FacingDown, warm) {
		t.Error("a warm wet face up should be the livelier")
	}
	// Still air: a small disc at its own neutral point keeps conduction, 8 k/(pi D). The correlations, far below their range there,
	// die out only logarithmically and add 9 %.
	neutral := Buoyant{1e-3, FacingUp}.Coefficient(air.State{T: 293.15, P: 101325}, 293.15, 0)
	floor := ConductionDisc(air.Mixture(293.15, 101325, 0).Conductivity, 1e-3)
	if neutral < floor || neutral > 1.1*floor {
		t.Errorf("h %g over conduction of %g", neutral, floor)
	}
}

// Limits of the single laws.
func TestLaws(t *testing.T) {
	a := must(air.FromHumidityRatio(393.15, 101325, 0.02, true))
	f, n := Parallel{Velocity: 2, Length: 0.3}, Buoyant{0.3, Vertical}
	hf, hn := f.Coefficient(a, 320, 0.1), n.Coefficient(a, 320, 0.1)
	if h := (Combined{f, n}).Coefficient(a, 320, 0.1); math.Abs(h-math.Cbrt(hf*hf*hf+hn*hn*hn)) > 1e-12*h {
		t.Errorf("combined %g of %g and %g", h, hf, hn)
	}
	f.Velocity = 0
	if h := (Combined{f, n}).Coefficient(a, 320, 0.1); math.Abs(h/hn-1) > 1e-12 {
		t.Errorf("combined without draught %g, natural %g", h, hn)
	}
	m := air.Mixture((320+393.15)/2, 101325, (0.1+a.Y)/2) // film properties: mean temperature, mean mole fraction
	want := FlatPlateLaminar(2*0.3/m.KinematicViscosity(), m.Prandtl()) * m.Conductivity / 0.3
	if math.Abs(hf/want-1) > 1e-12 {
		t.Errorf("parallel %g, want %g", hf, want)
	}
	s := &Surface{Air: a, Wall: 400, Law: n, Emissivity: 0.3, Factor: 2}
	dry := 2*n.Coefficient(a, 320, a.Y)*(a.T-320) + Radiation(0.3, 400, 320)
	if got := s.DryHeat(320); math.Abs(got/dry-1) > 1e-12 {
		t.Errorf("dry heat %g, want %g", got, dry)
	}
	for i, c := range []struct {
		law  Law
		code string
	}{
		{Given{5}, ""},
		{Parallel{Velocity: 3, Length: 0.3}, ""},
		{Parallel{Velocity: 0.02, Length: 0.3}, "parallel_reynolds_low"},
		{Parallel{Velocity: 300, Length: 30}, "parallel_reynolds_high"},
		{Parallel{Velocity: 3, Length: 0.3, Tripped: true}, "parallel_tripped_short"},
		{n, ""},
		{Buoyant{20, Vertical}, "buoyant_rayleigh_high"},
		{Buoyant{5e-3, FacingUp}, "buoyant_rayleigh_low"},
		{Combined{Parallel{Velocity: 0.02, Length: 0.3}, n}, ""}, // the draught is too weak to matter
		{Combined{Parallel{Velocity: 3, Length: 0.3, Tripped: true}, n}, "parallel_tripped_short"},
	} {
		got := c.law.Check(a, 320, 0.1)
		for _, caution := range got {
			caution.Text = words.English(caution.Text)
			// The number that lies outside and the end of the range.
			if !strings.ContainsAny(caution.Text, "0123456789") || !strings.HasSuffix(caution.Text, ".") {
				t.Errorf("%q names no number", caution.Text)
			}
		}
		if c.code == "" && len(got) > 0 || c.code != "" && (len(got) != 1 || got[0].Code != c.code || got[0].Text == "") {
			t.Errorf("case %d: %v, want %q", i, got, c.code)
		}
		if h := c.law.Coefficient(a, 320, 0.1); !(h > 0) {
			t.Errorf("case %d gives no answer: %g", i, h)
		}
	}
	slow := &Surface{Air: a, Wall: a.T, Law: Parallel{Velocity: 0.02, Length: 0.3}, Pile: &flock, Factor: 1}
	if got := slow.Check(320, 1); len(got) != 1 {
		t.Errorf("surface check %v", got)
	}
	names := map[string]bool{}
	for _, p := range Methods() {
		p.Name, p.Equation, p.Source = words.English(p.Name), words.English(p.Equation), words.English(p.Source)
		// 300 signs are three lines of a narrow page.
		if p.Name == "" || p.Equation == "" || p.Source == "" || p.Range == "" || names[p.Name] || len(p.Equation) > 300 || len(p.Source) > 300 {
			t.Errorf("incomplete or double: %+v", p)
		}
		names[p.Name] = true
	}
	if len(names) != 9 {
		t.Errorf("%d methods", len(names))
	}
}
