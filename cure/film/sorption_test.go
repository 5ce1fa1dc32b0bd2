package film

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Row LTX-16: a polyurethane network takes up 8 % in saturated air, which means chi = 1.89 at 1100 kg/m3 and 1.83 at 1200.
// chi is printed to 0.005, which moves the uptake by 0.0006; the row itself allows 0.01.
func TestFloryHugginsRowLTX16(t *testing.T) {
	for rho, chi := range map[float64]float64{1100: 1.89, 1200: 1.83} {
		near(t, "uptake", FloryHuggins{Chi: chi, PolymerDensity: rho}.Water(1), 0.08, 6e-4)
	}
}

// randomIsotherm draws from the ranges that a job accepts.
func randomIsotherm(r *rand.Rand) Isotherm {
	if r.IntN(2) == 0 {
		return GAB{Monolayer: 0.001 + 0.2*r.Float64(), C: 1 + 99*r.Float64(), K: 0.3 + 0.68*r.Float64()}
	}
	return FloryHuggins{Chi: 0.7 + 7.3*r.Float64(), PolymerDensity: 900 + 600*r.Float64()}
}

// Flory and Huggins' law: its inverse meets the equation, rises, ends at 1, follows Henry's line where it is thin, and its
// slope is that of differences.
func TestFloryHugginsInverts(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range 3000 {
		f := FloryHuggins{Chi: 0.7 + 7.3*rng.Float64(), PolymerDensity: 900 + 600*rng.Float64()}
		a := math.Pow(10, -8*rng.Float64()*rng.Float64())
		x := f.Water(a)
		near(t, "activity of the water", f.Activity(x), a, 1e-12*a)
		v := x * f.PolymerDensity / 1000
		phi := v / (1 + v)
		near(t, "the law", math.Log(phi)+1-phi+f.Chi*(1-phi)*(1-phi), math.Log(a), 1e-12)
		if 2*f.Chi*phi >= 1 {
			t.Fatalf("%+v: at %g the water %g lies past the top of the curve", f, a, x)
		}
		const h = 1e-6
		if a < 1-h {
			relative(t, "slope", (f.Water(a+h*a)-f.Water(a-h*a))/(2*h*a), f.Slope(a), 1e-6)
		}
		if f.Activity(f.Water(1)*1.01) != 1 || f.Activity(1e3) != 1 {
			t.Fatalf("%+v: activity above saturation is not 1", f)
		}
		relative(t, "Henry's line", f.Water(1e-9), 1e-9*f.Slope(0), 1e-6)
		relative(t, "below zero", f.Water(-1e-9), -f.Water(1e-9), 1e-6)
	}
}

// The isotherm at any temperature: activity and water are inverse to each other between rest in dry and in saturated air,
// both rise, activity 1 is reached, the slope is that of differences everywhere (no corner), and warm films hold less.
func TestSorptionFollowsTheTemperature(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for range 3000 {
		c := Coat{Isotherm: randomIsotherm(rng), HeatOfSorption: 1e6 * rng.Float64()}
		T := 265 + 215*rng.Float64()
		s, a := c.sorption(T), rng.Float64()
		near(t, "activity of the water", s.Activity(s.Water(a)), a, 1e-10)
		if s.Activity(s.Water(1)*1.0001) != 1 {
			t.Fatalf("%+v at %g K: activity above saturation is %g", c, T, s.Activity(s.Water(1)*1.0001))
		}
		const h = 1e-6
		if lo, hi := s.Water(a-h), s.Water(a+h); math.Abs((hi-lo)/(2*h*s.Slope(a))-1) > 1e-3 && a > h {
			t.Fatalf("%+v at %g K: slope at %g is %g, differences %g", c, T, a, s.Slope(a), (hi-lo)/(2*h))
		}
		if warm := c.sorption(T + 1); warm.Water(a) > s.Water(a) {
			t.Fatalf("%+v: at %g K the film holds %g, a kelvin above %g", c, T, s.Water(a), warm.Water(a))
		}
	}
}

// Without a heat of sorption the isotherm stands at every temperature, to the last digit.
func TestNoHeatOfSorptionNoChange(t *testing.T) {
	c := acrylic()
	for _, T := range []float64{270, 298.15, 400} {
		for a := 0.0; a <= 1; a += 0.125 {
			if c.sorption(T).Water(a) != c.Isotherm.Water(a) || c.sorption(T).Slope(a) != c.Isotherm.Slope(a) {
				t.Fatalf("at %g K the isotherm moves", T)
			}
		}
	}
}

// Clausius and Clapeyron: the pressure over a film of one water content rises with temperature as the heat of evaporation plus
// the heat of sorption says, d ln p/d(1/T) = -(h_fg + q) M/R. Vapour is ideal in that equation, which h_fg's own saturation curve
// misses by 1 % at 80 degC, so the difference to pure water is taken: there it is exact.
func TestSorptionHeatIsThatOfTheSlope(t *testing.T) {
	c := acrylic()
	c.HeatOfSorption = 250e3
	const T, h = 330.0, 0.01
	x := c.Isotherm.Water(0.4)
	lnP := func(T float64) float64 { return math.Log(c.sorption(T).Activity(x)) }
	got := (lnP(T+h) - lnP(T-h)) / (1/(T+h) - 1/(T-h)) * -8.314462618 / 0.01801528
	relative(t, "heat from the slope of the pressure", got, 250e3, 1e-6)
}

// The heat of binding is a function of the film's water: its slope is q where all is bound, 0 where water is free, and it
// is continuous with its slope.
func TestBindingIsAFunctionOfState(t *testing.T) {
	c := acrylic()
	c.HeatOfSorption = 250e3
	most := c.Solids * c.Isotherm.Water(1)
	heat, slope := c.binding(most * 0.5)
	relative(t, "heat of half the bound water", heat, 250e3*most*0.5, 1e-14)
	relative(t, "its slope", slope, 250e3, 1e-14)
	heat, slope = c.binding(most * 3)
	relative(t, "heat of all bound water", heat, 250e3*most, 1e-14)
	near(t, "slope past saturation", slope, 0, 0)
	for z := 0.7; z < 1.3; z += 0.01 {
		lo, _ := c.binding(most * (z - 1e-6))
		hi, _ := c.binding(most * (z + 1e-6))
		_, slope := c.binding(most * z)
		near(t, "slope", (hi-lo)/(2e-6*most), slope, 250e3*1e-5)
	}
}

// Drying a film that binds its water takes the bound water's heat on top: with the same film, part and air at the end, the heat
// taken up differs by q times what was bound and left. Both transports close their accounts to rounding.
func TestBoundWaterCostsItsHeat(t *testing.T) {
	const T, x0 = 313.15, 0.3
	for _, transport := range []Transport{LiquidDiffusion{}, PorousSkin{Diffusivity: 7e-7}} {
		taken := func(q float64) (heat, bound float64) {
			coat := acrylic()
			coat.Transport, coat.HeatOfSorption = transport, q
			sheet := Part{Thickness: 0.001, Density: 2700, HeatCapacity: 900, Conductivity: 200, Back: Insulated, Cells: 2}
			r := newRig(coat, sheet, 24, x0, T, &still{air: dryAir(T)}, 30)
			r.state.Dry = 0.01
			before := r.state
			before.Part = append([]float64(nil), before.Part...)
			s, _, y := r.run(t, 20000, nil)
			s.Unpack(y, &r.state)
			l := r.state.Ledger
			open := l.Convected + l.Radiated - l.Vapour - (r.state.Heat(&r.part) - before.Heat(&r.part))
			near(t, "open heat account", open/l.Convected, 0, 1e-11)
			near(t, "temperature at the end", s.Temperature(y), T, 0.05)
			b0, _ := coat.bound(before.Mass)
			b1, _ := coat.bound(r.state.Mass)
			return l.Convected - (l.Vapour - (before.Mass-r.state.Mass)*vapourEnthalpy(T)), b0 - b1
		}
		plain, _ := taken(0)
		more, bound := taken(300e3)
		relative(t, "heat of binding", more-plain, 300e3*bound, 0.02)
	}
}
