package transfer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

// sides are the stable and the unstable coefficient of a horizontal face at a state, conduction included, from the
// published functions and the density difference alone.
func sides(a air.State, T, ys, L float64) (stable, unstable float64) {
	m := air.Mixture((T+a.T)/2, a.P, (ys+a.Y)/2)
	d, _ := Difference(a, T, ys)
	ra := Grashof(L/4, math.Abs(d), m.KinematicViscosity()) * m.Prandtl()
	with := func(nu float64) float64 {
		return math.Sqrt(math.Hypot(math.Pow(nu*m.Conductivity/(L/4), 2), math.Pow(ConductionDisc(m.Conductivity, L), 2)))
	}
	return with(NaturalHorizontalStable(ra, m.Prandtl())), with(NaturalHorizontalUnstable(ra, m.Prandtl()))
}

// The sign of the density difference, of temperature and vapour together, decides: light air over a face up and heavy
// air under a face down is unstable, the mirror images are stable. Where both parts pull the same way the law is within
// 3 % of the published one (2 % the pass, 0.5 % the sum, as documented); it never leaves the two by more. A vertical
// face asks for no sign.
func TestDensityDecides(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	seen := map[[3]bool]int{}
	for range 20000 {
		a := air.State{T: 278 + 150*r.Float64(), P: 101325, Real: true}
		a.Y = min(0.9, a.SaturatedFraction()) * r.Float64()
		T, L := 278+150*r.Float64(), 0.1*math.Pow(10, r.Float64())
		ys := min(0.9, air.SaturatedFraction(T, a.P, true)) * r.Float64()
		d, thermal := Difference(a, T, ys)
		if math.Abs(d) < 0.01 {
			continue // the pass, see TestNeutralBuoyancy
		}
		stable, unstable := sides(a, T, ys, L)
		up, down := Buoyant{L, FacingUp}.Coefficient(a, T, ys), Buoyant{L, FacingDown}.Coefficient(a, T, ys)
		// Light air at the face: up is the livelier, down the quieter.
		lively, quiet := up, down
		if d < 0 {
			lively, quiet = down, up
		}
		helping := thermal*(d-thermal) >= 0
		seen[[3]bool{d > 0, thermal > 0, helping}]++
		if lively <= quiet {
			t.Fatalf("face in air %+v at %g K, y %g: difference %g, up %g, down %g", a, T, ys, d, up, down)
		}
		if helping && (math.Abs(lively/unstable-1) > 0.03 || math.Abs(quiet/stable-1) > 0.15) {
			t.Fatalf("%g for unstable %g, %g for stable %g: air %+v at %g K, y %g, %g m", lively, unstable, quiet, stable, a, T, ys, L)
		}
	}
	// Warm and cold faces, light and heavy layers, helping and opposing.
	for _, kind := range [][3]bool{{true, true, true}, {true, true, false}, {true, false, false}, {false, false, true}, {false, false, false}, {false, true, false}} {
		if seen[kind] < 100 {
			t.Errorf("only %d states of light %v, warm %v, helping %v", seen[kind], kind[0], kind[1], kind[2])
		}
	}
}

// A vertical wall does not ask for the sign: a warm and a cold wall of the same density difference and the same film
// properties have the same coefficient.
func TestWarmAndColdWall(t *testing.T) {
	for _, y := range []float64{0, 0.1} {
		cold := Buoyant{0.5, Vertical}.Coefficient(air.State{T: 340, P: 101325, Y: y}, 300, y)
		warm := Buoyant{0.5, Vertical}.Coefficient(air.State{T: 300, P: 101325, Y: y}, 340, y)
		if math.Abs(warm/cold-1) > 1e-9 {
			t.Errorf("warm %g, cold %g", warm, cold)
		}
		// Vapour alone does what temperature alone does: light, wet air at a wall of the room's temperature rises.
		wet := Buoyant{0.5, Vertical}.Coefficient(air.State{T: 300, P: 101325, Y: y}, 300, y+0.05)
		still := Buoyant{0.5, Vertical}.Coefficient(air.State{T: 300, P: 101325, Y: y}, 300, y)
		if wet < 2*still {
			t.Errorf("vapour lifts the coefficient from %g to %g", still, wet)
		}
	}
	// A cold face up in humid oven air (dew) is quiet, the same face down lively; a hot dry part in a room the other
	// way round.
	oven := must(air.FromDewPoint(373.15, 101325, 333.15, true))
	dew := air.SaturatedFraction(300, oven.P, true)
	if up, down := (Buoyant{0.3, FacingUp}).Coefficient(oven, 300, dew), (Buoyant{0.3, FacingDown}).Coefficient(oven, 300, dew); up > down/2 {
		t.Errorf("dew: up %g, down %g", up, down)
	}
	room := must(air.FromRelativeHumidity(293.15, 101325, 0.5, true))
	if up, down := (Buoyant{0.3, FacingUp}).Coefficient(room, 380, 0), (Buoyant{0.3, FacingDown}).Coefficient(room, 380, 0); down > up/2 {
		t.Errorf("hot part: up %g, down %g", up, down)
	}
}

// h has no jump: along random straight lines of surface states, cut in 400, a step of more than 6 % of h shrinks as it
// is halved. Joins of correlations such as McAdams' or the VDI Heat Atlas's jump by 6 to 13 % wherever the line is cut.
func TestBuoyancyIsContinuous(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	const steps = 400
	for range 300 {
		a := air.State{T: 278 + 150*r.Float64(), P: 101325, Real: true}
		a.Y = min(0.9, a.SaturatedFraction()) * r.Float64()
		law := Buoyant{0.05 * math.Pow(80, r.Float64()), Orientation(r.IntN(3))}
		T0, T1, y0, y1 := 273+150*r.Float64(), 273+150*r.Float64(), 0.9*r.Float64(), 0.9*r.Float64()
		at := func(x float64) float64 { return law.Coefficient(a, T0+x*(T1-T0), y0+x*(y1-y0)) }
		last := at(0)
		for i := range steps {
			lo, hi := float64(i)/steps, float64(i+1)/steps
			h := at(hi)
			// Halving a smooth step halves it: eight halvings leave a jump as it is and of a slope 1/256.
			for from, n := last, 0; math.Abs(h-from) > 0.06*h && n < 8; n++ {
				mid := (lo + hi) / 2
				if v := at(mid); math.Abs(v-from) > math.Abs(h-v) {
					hi, h = mid, v
				} else {
					lo, from = mid, v
				}
				if n == 7 {
					t.Fatalf("%+v jumps to %g near %g", law, h, lo)
				}
			}
			last = at(float64(i+1) / steps)
		}
	}
}
