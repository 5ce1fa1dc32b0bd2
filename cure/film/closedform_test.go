package film

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/kinetics"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/ode"
)

// The wet plateau without radiation has a closed form (Stefan flow and Ackermann combined):
// 1 + cp_v (T_a - T_s)/h_fg = ((1 - y_a)/(1 - y_s))^n, n = cp_v k p M_w/(R T_m h).
// Bounds: 0.2 K and 0.5 %, as the project promises; found 0.01 K, 0.05 %.
func TestWetPlateauMeetsItsClosedForm(t *testing.T) {
	for _, c := range []struct{ T, rh, h float64 }{{293.15, 0.5, 5}, {333.15, 0.1, 25}, {353.15, 0.02, 40}, {393.15, 0.01, 60}} {
		a, err := air.FromRelativeHumidity(c.T, 101325, c.rh, true)
		if err != nil {
			t.Fatal(err)
		}
		const p, M, R = 101325, 0.01801528, 8.314462618
		surface := func(Ts float64) (miss, flux float64) {
			ys := air.SaturatedFraction(Ts, p, true)
			m := air.Mixture((Ts+c.T)/2, p, (ys+a.Y)/2)
			lewis := m.Conductivity / (m.Density * m.HeatCapacity * m.Diffusivity)
			k := c.h / (m.Density * m.HeatCapacity * math.Pow(lewis, 2./3))
			cpv := air.VapourHeatCapacity((Ts + c.T) / 2)
			n := cpv * k * p * M / (R * (Ts + c.T) / 2 * c.h)
			flux = k * p * M / (R * (Ts + c.T) / 2) * math.Log((1-a.Y)/(1-ys))
			return 1 + cpv*(c.T-Ts)/air.LatentHeat(Ts) - math.Pow((1-a.Y)/(1-ys), n), flux
		}
		want, err := num.Root(func(Ts float64) float64 { m, _ := surface(Ts); return m }, 270, math.Min(c.T, 372), 1e-9)
		if err != nil {
			t.Fatal(err)
		}
		_, flux := surface(want)

		coat := acrylic()
		coat.Solids = 0.1
		coat.Diffusion.ParticleDiameter = 20e-9 // fine particles diffuse fast: the surface stays wet for long
		r := newRig(coat, foil(Insulated), 24, 1.5, want+0.5, &still{air: a}, c.h)
		s, at, y := r.run(t, 0.2*0.1*1.5/flux, nil)
		got := s.Read(at, y)
		if !got.SurfaceWet {
			t.Fatalf("%+v: the surface is no longer wet", c)
		}
		near(t, "plateau temperature", got.Film, want, 0.2)
		relative(t, "plateau flux", got.Flux, flux, 0.005)
		t.Logf("%.0f degC: %.3f degC against %.3f, flux off by %.2g", c.T-273.15, got.Film-273.15, want-273.15, got.Flux/flux-1)
	}
}

// Isothermal cure of a dry film: order n has a closed form. Promise: 0.05 %.
func TestIsothermalCureMeetsItsClosedForm(t *testing.T) {
	for _, n := range []float64{1, 1.5, 2} {
		law := kinetics.FromPair(393.15, 300, 0.95, 76e3, n)
		coat := acrylic()
		coat.Cure = &law
		r := newRig(coat, foil(Exposed), 8, 0, 353.15, &still{air: dryAir(353.15)}, 50)
		k, _ := law.Constants(353.15)
		want := kinetics.OrderIntegral(0.8, n) / k
		done := ode.Event{Dir: ode.Rising, G: nil}
		s := NewSystem(&r.coat, &r.grid, &r.part, &r.exposure)
		done.G = func(_ float64, y []float64) float64 { return s.LeastConversion(y) - 0.8 }
		_, at, _ := r.run(t, 10*want, &done)
		relative(t, "time to 80 % conversion", at, want, 5e-4)
	}
}
