package film

import (
	"math"
	"math/rand/v2"
	"testing"
)

// typical is the adhesive of the orders of magnitude in the package's reference jobs.
func typical() Diffusion {
	return Diffusion{PolymerDensity: 1080, ParticleDiameter: 200e-9, Packing: 0.64, Closing: 0.74,
		Capillary: 1e-9, Dry: 5e-12, Activation: 40e3}
}

// integral is the composite Gauss-Legendre integral of D rho_s^2 over X, in pieces between the kinks.
func integral(p *Potential, d Diffusion, from, to float64) float64 {
	nodes := [5]float64{0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640}
	weights := [5]float64{0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891}
	sum := 0.0
	cuts := []float64{from}
	for _, c := range []float64{d.Water(d.Closing), d.Water(p.join)} {
		if c > from && c < to {
			cuts = append(cuts, c)
		}
	}
	cuts = append(cuts, to)
	for i := 0; i+1 < len(cuts); i++ {
		const n = 6000 // the spike at the packing fraction is steep
		w := (cuts[i+1] - cuts[i]) / n
		for k := range n {
			mid := cuts[i] + (float64(k)+0.5)*w
			for j, x := range nodes {
				sum += weights[j] * w / 2 * p.Slope(mid+x*w/2)
			}
		}
	}
	return sum
}

// The closed form against quadrature of the diffusivity: 1e-9 is what the quadrature holds in the steep regime 1.
func TestPotentialIsTheIntegral(t *testing.T) {
	d := typical()
	for _, T := range []float64{278.15, 298.15, 333.15, 393.15, 433.15, 480} {
		p := d.At(T)
		for _, x := range []float64{0.001, 0.02, 0.1, 0.3, d.Water(0.74), 0.4, d.Water(0.64), 0.53, 0.6, 1, 3} {
			got, want := p.Value(x), integral(&p, d, 0, x)
			if math.Abs(got-want) > 1e-9*want {
				t.Errorf("T %g, X %g: F = %.12g, quadrature %.12g (%.2g)", T, x, got, want, got/want-1)
			}
		}
	}
}

func TestDiffusivityIsContinuousAndCapped(t *testing.T) {
	d := typical()
	for T := 274.0; T < 520; T += 7 {
		p := d.At(T)
		for _, phi := range []float64{d.Closing, d.Packing, p.join} {
			lo, hi := p.Diffusivity(d.Water(phi+1e-10)), p.Diffusivity(d.Water(phi-1e-10))
			if math.Abs(hi/lo-1) > 1e-6 {
				t.Errorf("T %g: D jumps from %g to %g at phi = %g", T, hi, lo, phi)
			}
		}
		for x := 0.0; x < 4; x += 0.01 {
			if v := p.Diffusivity(x); !(v > 0 && v <= d.Capillary*(1+1e-12)) {
				t.Errorf("T %g, X %g: D = %g", T, x, v)
			}
		}
	}
	// Equal diffusivities make kappa zero, where the closed form degenerates to D phi.
	d.Dry, d.Activation = d.Capillary, 0
	p := d.At(300)
	want := d.Capillary * d.PolymerDensity * WaterDensity * (1 - d.Fraction(0.1))
	if got := p.Value(0.1); math.Abs(got-want) > 1e-12*want {
		t.Errorf("F at constant D = %g, want %g", got, want)
	}
}

func TestPotentialRises(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		d := typical()
		d.Dry = math.Pow(10, -14+4*rng.Float64())
		d.Packing = 0.55 + 0.15*rng.Float64()
		d.Closing = d.Packing + 0.02 + (0.97-d.Packing-0.02)*rng.Float64()
		d.ParticleDiameter = math.Pow(10, -7.3+1.3*rng.Float64())
		p := d.At(275 + 240*rng.Float64())
		x := 2 * rng.Float64()
		dx := 1e-3 + rng.Float64()
		if lo, hi := p.Value(x), p.Value(x+dx); !(hi > lo) || math.IsNaN(lo) {
			t.Fatalf("%+v: F(%g) = %g, F(%g) = %g", d, x, lo, x+dx, hi)
		}
	}
}

func TestIsothermInverts(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		g := GAB{Monolayer: 0.002 + 0.1*rng.Float64(), C: 0.3 + 30*rng.Float64(), K: 0.3 + 0.68*rng.Float64()}
		a := rng.Float64()
		if got := g.Activity(g.Water(a)); math.Abs(got-a) > 1e-10 {
			t.Fatalf("%+v: activity of the water at %g is %g", g, a, got)
		}
		h := 1e-6
		if slope := (g.Water(a+h) - g.Water(a-h)) / (2 * h); math.Abs(slope/g.Slope(a)-1) > 1e-5 {
			t.Fatalf("%+v: slope at %g is %g, difference quotient %g", g, a, g.Slope(a), slope)
		}
	}
}

func TestGridKeepsTheOuterEdge(t *testing.T) {
	for n := 8; n <= 200; n++ {
		g := NewGrid(0.075, n)
		if math.Abs(g.Edge[g.Outer]-0.95*0.075) > 1e-15 || g.Edge[0] != 0 || g.Edge[n] != 0.075 {
			t.Fatalf("%d cells: edges %v, outer from %d", n, g.Edge, g.Outer)
		}
		for i, w := range g.Width {
			if !(w > 0) {
				t.Fatalf("%d cells: width %d is %g", n, i, w)
			}
		}
	}
}

// slopes are the differences of Value in water and temperature, in all three regimes: central differences over 0.02 K and
// 2e-6 kg/kg leave 1e-6 of the largest value, unless a join lies between.
func TestPotentialSlopesAreItsDifferences(t *testing.T) {
	d := acrylic().Diffusion
	for _, T := range []float64{283.15, 313.15, 353.15, 393.15, 500} {
		p, colder, warmer := d.At(T), d.At(T-0.01), d.At(T+0.01)
		d.warm(&p, T)
		steepest, largest := p.slopes(1)
		for x := 0.005; x < 1.2; x *= 1.3 {
			byWater, byT := p.slopes(x)
			steepest, largest = math.Max(steepest, byWater), math.Max(largest, math.Abs(byT))
			if want := (warmer.Value(x) - colder.Value(x)) / 0.02; math.Abs(byT-want) > 1e-6*largest {
				t.Errorf("at %g K, %g kg/kg: %g a kelvin, differences %g", T, x, byT, want)
			}
			if want := (p.Value(x+1e-6) - p.Value(x-1e-6)) / 2e-6; math.Abs(byWater-want) > 1e-6*steepest {
				t.Errorf("at %g K, %g kg/kg: %g, differences %g", T, x, byWater, want)
			}
			if _, slope := p.ValueSlope(x); math.Abs(slope-byWater) > 1e-14*steepest {
				t.Errorf("at %g K, %g kg/kg: slopes %g and %g", T, x, slope, byWater)
			}
		}
	}
}
