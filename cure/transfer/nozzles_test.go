package transfer

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
)

// Rows CNV-ASN-1, CNV-ARN-1, CNV-SRN-1 and CNV-SSN-1: Martin's formulas evaluated; tolerance of the rows 0.3 %.
func TestMartinsCorrelations(t *testing.T) {
	check := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got/want-1) > 0.003 {
			t.Errorf("%s: Nu = %.5g, row %.5g", what, got, want)
		}
	}
	check("slot field", SlotArrayMartin(3824.09, 0.7, 0.004/0.056, 10), 24.3103)
	check("round field", RoundArrayMartin(7930.21, 0.7073, TriangularArea(0.01, 0.06), 5), 33.4428)
	check("one round nozzle", SingleRoundMartin(25*0.02/2.522e-5, 0.7073, 4, 6), 64.7799)
	check("one slot", SingleSlotMartin(20*2*0.005/2.522e-5, 0.7073, 8, 6), 36.7155)
}

// A field blows several times harder than the same air along the part (row CNV-ASN-1: 91 against 17 W/m2 K), and says
// when it is asked outside its range.
func TestNozzleFieldsAsLaws(t *testing.T) {
	hot := air.State{T: 393.15, P: 101325, Y: 0.03}
	slots := SlotField{Width: 0.004, Pitch: 0.056, Distance: 0.04, Velocity: 10}
	round := RoundField{Diameter: 0.01, Pitch: 0.06, Distance: 0.05, Velocity: 20}
	along := Parallel{Velocity: 10, Length: 0.5}
	for _, l := range []Law{slots, round} {
		h := l.Coefficient(hot, 320, 0.1)
		if ratio := h / along.Coefficient(hot, 320, 0.1); ratio < 3 || ratio > 9 {
			t.Errorf("%s: %.0f W/m2 K, %.1f times parallel flow", l.Provenance().Name, h, ratio)
		}
		if c := l.Check(hot, 320, 0.1); len(c) != 0 {
			t.Errorf("%s: %v", l.Provenance().Name, c)
		}
	}
	slots.Distance, round.Velocity = 0.5, 1
	if c := slots.Check(hot, 320, 0.1); len(c) != 2 || c[0].Code != "slots_distance" {
		t.Errorf("a far slot field: %v", c)
	}
	if c := round.Check(hot, 320, 0.1); len(c) != 1 || c[0].Code != "round_reynolds" {
		t.Errorf("a slow round field: %v", c)
	}
}

// By hand: 100 Pa before a nozzle in air of 1.2 kg/m3 are 12.5 m/s; 0.9 m3/s through 0.6 m2 are 1.5 m/s.
func TestFanAndNozzleByHand(t *testing.T) {
	if v := JetVelocity(100, 1.2); math.Abs(v-12.52) > 0.01 {
		t.Errorf("jet at %.3f m/s", v)
	}
	if v := FreeVelocity(0.9, 0.6); v != 1.5 {
		t.Errorf("%g m/s", v)
	}
}
