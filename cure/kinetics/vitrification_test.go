package kinetics

import (
	"math"
	"math/rand/v2"
	"testing"
)

// firm is an invented firm adhesive: Tg from -10 to 40 degC, universal WLF constants.
func firm() *Vitrification {
	return &Vitrification{TgUncured: 263.15, TgCured: 313.15, Lambda: 0.5, DiffusionRate: 1e-4, C1: 17.44, C2: 51.6}
}

// Worked by hand: half cured 50 x 0.25/0.75 = 16.667 K above the start; at Tg diffusion allows k_g, at Tg + C2 10^(C1/2)
// times as much, at Tg - C2 as much less. The chemical rate is halved where diffusion allows just as much.
func TestVitrificationByHand(t *testing.T) {
	v := firm()
	tg, slope := v.GlassTransition(0.5)
	near(t, "Tg", tg, 263.15+50./3, 1e-14)
	near(t, "dTg/dalpha", slope, 25/0.5625, 1e-14)
	for above, want := range map[float64]float64{0: 1e-4, 51.6: 1e-4 * math.Pow(10, 8.72), -51.6: 1e-4 * math.Pow(10, -8.72)} {
		k, _, _ := v.Diffusion(tg+above, 0.5)
		near(t, "k_d", k, want, 1e-12)
	}
	law := Law{A1: 1e-4, N: 1, HinderingWater: math.Inf(1), Vitrification: v}
	near(t, "halved rate", law.Rate(tg, 0.5, 0), 1e-4/2*0.5, 1e-14)
}

// Fast diffusion is the plain law, a deep glass does not cure.
func TestVitrificationLimits(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 1000 {
		law := randomLaw(r)
		plain := law
		temperature, alpha, x := 290+150*r.Float64(), r.Float64(), 0.3*r.Float64()
		law.Vitrification = &Vitrification{TgUncured: 200, TgCured: 250, Lambda: 0.5, DiffusionRate: 1e250, C1: 17.44, C2: 51.6}
		near(t, "fast diffusion", law.Rate(temperature, alpha, x), plain.Rate(temperature, alpha, x), 1e-14)
		law.Vitrification = &Vitrification{TgUncured: 700, TgCured: 750, Lambda: 0.5, DiffusionRate: 1, C1: 60, C2: 5}
		// 250 K below Tg: 10^(-60 x 250/255), 10^-58.
		if rate := law.Rate(temperature, alpha, x); !(rate >= 0 && rate < 1e-50) {
			t.Fatalf("%+v: a deep glass cures at %g per second", law, rate)
		}
		law.Vitrification.DiffusionRate = 0 // what an underflow leaves
		if rate := law.Rate(temperature, alpha, x); rate != 0 {
			t.Fatalf("%+v: without diffusion the rate is %g", law, rate)
		}
	}
}

// The analytic derivatives against central differences; bounds as in TestDerivatives.
func TestVitrificationDerivatives(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 3000 {
		law := randomLaw(r)
		law.Vitrification = &Vitrification{TgUncured: 220 + 60*r.Float64(), TgCured: 290 + 100*r.Float64(),
			Lambda: 0.2 + 0.8*r.Float64(), DiffusionRate: math.Pow(10, -6+8*r.Float64()), C1: 5 + 20*r.Float64(), C2: 30 + 70*r.Float64()}
		temperature, alpha, x := 290+150*r.Float64(), 0.01+0.98*r.Float64(), r.Float64()
		at := law.At(temperature)
		rate, dAlpha, dX := at.Rate(alpha, x)
		const h = 1e-5
		scale := math.Abs(rate) + math.Abs(dAlpha) + math.Abs(dX)
		if d := (law.Rate(temperature, alpha+h, x) - law.Rate(temperature, alpha-h, x)) / (2 * h); math.Abs(d-dAlpha) > 1e-5*scale {
			t.Fatalf("%+v %+v: d/dalpha %g, differences %g", law, law.Vitrification, dAlpha, d)
		}
		if d := (law.Rate(temperature, alpha, x+h) - law.Rate(temperature, alpha, x-h)) / (2 * h); math.Abs(d-dX) > 1e-5*scale {
			t.Fatalf("%+v: d/dx %g, differences %g", law, dX, d)
		}
		slope := at.Warming(alpha, x)
		d := (law.Rate(temperature+1e-3, alpha, x) - law.Rate(temperature-1e-3, alpha, x)) / 2e-3
		if math.Abs(d-slope) > 1e-5*math.Abs(slope)+1e-9*math.Abs(rate) {
			t.Fatalf("%+v: d/dT %g, differences %g", law, slope, d)
		}
	}
}

// Two roads to the same time: quadrature over the conversion, and marching in time. As in TestIsothermalClosedForms the
// march leaves 1e-8 or so; the sharp turn into the glass costs it two digits more.
func TestVitrifiedTimeMeetsTheMarch(t *testing.T) {
	for _, plain := range []Law{FromPair(393.15, 300, 0.95, 76e3, 1.5),
		{A1: 1e5, E1: 60e3, N: 1.3, A2: 4e7, E2: 62e3, M: 0.8, HinderingWater: math.Inf(1)}} {
		law := plain
		law.Vitrification = firm()
		for _, temperature := range []float64{300, 330, 390} {
			time := law.IsothermalTime(temperature, 0.9)
			near(t, "conversion", march(law, constant(temperature), time, 20000), 0.9, 1e-6)
			if time <= plain.IsothermalTime(temperature, 0.9) {
				t.Errorf("at %g K vitrification does not slow the cure", temperature)
			}
		}
	}
}

// The cure of a film held at one temperature stops where Tg passes it: after a thousand times the chemical time constant Tg
// lies above the film's temperature, by no more than the thousandfold slower diffusion needs: C1 D/(C2 + D) = 3 decades gives
// D = 10.7 K, and the order of magnitude that k_g lies above or below the chemical rate gives some kelvins either way.
func TestCureStopsWhereTgPassesTheTemperature(t *testing.T) {
	const temperature = 290.0
	law := FromPair(temperature, 3e4, 0.95, 76e3, 1) // the chemical rate constant is 1e-4, as k_g
	law.Vitrification = firm()
	k, _ := law.Constants(temperature)
	end := march(law, constant(temperature), 1000/k, 400000)
	tg, _ := law.Vitrification.GlassTransition(end)
	t.Logf("conversion %.3f, Tg %.1f K at a film of %g K", end, tg, temperature)
	if !(tg > temperature && tg < temperature+15) {
		t.Errorf("the cure stops at conversion %g with Tg = %g K, film at %g K", end, tg, temperature)
	}
}

// Row K28: activation energy 73 kJ/mol, Tg of the cured network 109 degC; above that the plain law predicts the cure, below
// it vitrification stops it. The row does not give the other constants: Tg of the monomer and k_g are of our choosing.
func TestVitrificationRowK28(t *testing.T) {
	row := published(t, "K28")
	energy, cured := row.numbers(t, row.Outputs["Ea_kJ_mol"])[0]*1e3, row.numbers(t, row.Outputs["Tg_inf_C"])[0]+273.15
	plain := FromPair(393.15, 3600, 0.95, energy, 1.5)
	law := plain
	law.Vitrification = &Vitrification{TgUncured: 240, TgCured: cured, Lambda: 0.5, DiffusionRate: 1e-2, C1: 17.44, C2: 51.6}
	slower := func(celsius float64) float64 {
		T := celsius + 273.15
		return law.IsothermalTime(T, 0.98) / plain.IsothermalTime(T, 0.98)
	}
	if s := slower(130); s > 1.05 {
		t.Errorf("21 K above Tg the time to 98 %% is %g times that of the plain law", s)
	}
	if s := slower(70); s < 30 {
		t.Errorf("39 K below Tg the time to 98 %% is only %g times that of the plain law", s)
	}
	t.Logf("time to 98 %% against the plain law: %.3f at 130, %.2f at 109, %.3g at 70 degC", slower(130), slower(109), slower(70))
}

// Row K24: an epoxy follows the law of Kamal with 44 and 57 kJ/mol, m + n = 2.5 to 3, up to vitrification; a diffusion factor
// is needed after. Rate constants and Tg are of our choosing.
func TestVitrificationRowK24(t *testing.T) {
	row := published(t, "K24")
	e, order := row.numbers(t, row.Outputs["Ea_k1_k2_kJ_mol"]), row.numbers(t, row.Outputs["m_plus_n"])
	for _, sum := range order {
		plain := Law{A1: 1e3, E1: e[0] * 1e3, A2: 1e6, E2: e[1] * 1e3, M: sum - 1.8, N: 1.8, HinderingWater: math.Inf(1)}
		law := plain
		law.Vitrification = &Vitrification{TgUncured: 233, TgCured: 413, Lambda: 0.4, DiffusionRate: 1e-2, C1: 17.44, C2: 51.6}
		for _, celsius := range []float64{60, 85, 110} {
			T := celsius + 273.15
			for alpha := 0.02; alpha < 1; alpha += 0.02 {
				tg, _ := law.Vitrification.GlassTransition(alpha)
				share := law.Rate(T, alpha, 0) / plain.Rate(T, alpha, 0)
				if tg < T-10 && share < 0.98 {
					t.Errorf("%g degC, Tg %g K: only %g of Kamal's rate before vitrification", celsius, tg, share)
				}
				if tg > T+20 && share > 0.1 {
					t.Errorf("%g degC, Tg %g K: still %g of Kamal's rate in the glass", celsius, tg, share)
				}
			}
		}
	}
}

// Row K47: the factor f = 1/(1 + exp(C (alpha - alpha_c))) of Chern and Poehlein, C = 20 to 50, alpha_c linear in
// temperature, is what ours comes to near half of the rate: C = d ln(k_chem/k_d)/d alpha there, and alpha_c rises with
// temperature.
func TestVitrificationRowK47(t *testing.T) {
	row := published(t, "K47")
	typical := row.numbers(t, row.Outputs["C_typical"])
	law := FromPair(393.15, 300, 0.95, 76e3, 1)
	law.Vitrification = firm()
	last := 0.0
	for _, T := range []float64{275, 280, 285, 290} {
		at := law.At(T)
		half := 0.0
		for at.series(half).k > at.k1/2 {
			half += 1e-4
		}
		k, _, dAlpha := law.Vitrification.Diffusion(T, half)
		c := -dAlpha / k
		t.Logf("%g K: alpha_c %.3f, C %.1f", T, half, c)
		if c < typical[0] || c > typical[1] {
			t.Errorf("at %g K the factor falls with C = %g, published %v", T, c, typical)
		}
		if half <= last {
			t.Errorf("at %g K alpha_c = %g does not rise", T, half)
		}
		last = half
	}
}
