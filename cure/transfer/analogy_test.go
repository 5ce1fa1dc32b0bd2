package transfer_test

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

// analogy are the rows of mass transfer, high-flux corrections and radiation.
var analogy = map[string]check{
	"CNV-CC": func(t *testing.T, r *row) {
		rho, cp := r.one("rho"), r.one("cp")
		m := air.Props{Density: rho, HeatCapacity: cp, Conductivity: r.one("alpha") * rho * cp, Diffusivity: r.one("D")}
		r.check(t, "Le", m.Lewis())
		r.check(t, "h_m_m_per_s", MassCoefficient(r.one("h_W_per_m2K"), m))
	},
	"CNV-INC-6.7": func(t *testing.T, r *row) {
		rho, cp := r.one("rho"), r.one("cp_kJ")*1e3
		m := air.Props{Density: rho, HeatCapacity: cp, Conductivity: r.one("alpha") * rho * cp, Diffusivity: r.one("D")}
		// A volatile liquid of its own molar mass: T_inf - T_s = h_fg (k/h) rho_sat(T_s), h cancels.
		ratio := MassCoefficient(1, m)
		T := root(250, 313, func(T float64) float64 {
			vapour := r.one("p_sat_Pa") * r.one("M") * 1e-3 / (r.one("R_kJ_per_kmolK") * T)
			return r.one("T_inf_C") + 273 - T - r.one("h_fg_kJ_per_kg")*1e3*ratio*vapour
		})
		r.check(t, "T_s_C", T-273)
	},
	"CNV-INC-6.6": func(t *testing.T, r *row) {
		// Same Nu and Sh (Pr = Sc in the example): h_m = h D/k on length 1, and with length 2 for the blade in question.
		h := r.one("q_W_per_m2") / (r.one("T_s_C") - r.one("T_inf_C"))
		nu := h * r.one("L1_m") / r.one("k")
		hm := nu * r.one("D") / r.one("L2_m")
		r.check(t, "N_kmol_per_m2s", hm*r.one("rho_sat")/r.one("M"))
		// MassCoefficient at Le = 1 is that same analogy: k = h/(rho cp), and D = alpha.
		m := air.Props{Density: 1, HeatCapacity: r.one("k") / r.one("D"), Conductivity: r.one("k"), Diffusivity: r.one("D")}
		half := h * r.one("L1_m") / r.one("L2_m")
		r.check(t, "N_kmol_per_m2s", MassCoefficient(half, m)*r.one("rho_sat")/r.one("M"))
	},
	"CNV-ACK": func(t *testing.T, r *row) {
		var a, s []float64
		for _, phi := range r.in("phi_or_B") {
			a = append(a, Ackermann(phi))
			// Spalding's ln(1 + B)/B is Stefan flow over its low-flux limit, B = (y_s - y)/(1 - y_s).
			l, _ := StefanLog(0, phi/(1+phi))
			s = append(s, l/phi)
		}
		r.check(t, "ackermann_phi_over_expphi_minus_1", a...)
		r.check(t, "ln1pB_over_B", s...)
		if v := Ackermann(-0.5); math.Abs(v-1.2707) > 1e-4 { // the row's note
			t.Errorf("Ackermann(-0.5) = %g", v)
		}
	},
	"CNV-STEFAN": func(t *testing.T, r *row) {
		l, _ := StefanLog(r.one("y_bulk"), r.one("y_surface"))
		r.check(t, "stefan_factor", l/(r.one("y_surface")-r.one("y_bulk")))
	},
	"RAD-1": func(t *testing.T, r *row) {
		r.check(t, "q_W_per_m2", Radiation(r.one("eps"), r.one("T_wall_C")+zero, r.one("T_s_C")+zero))
	},
	"RAD-H": func(t *testing.T, r *row) {
		var h []float64
		for _, w := range r.in("T_sur_C") {
			h = append(h, Radiation(r.one("eps"), w+273, r.one("T_s_C")+273)/(w-r.one("T_s_C")))
		}
		r.check(t, "h_r_W_per_m2K", h...)
	},
	"EVA-01": stefanTube,
	"EVA-02": stefanTube,
	"EVA-05": func(t *testing.T, r *row) { // 10 % in prose
		re := r.one("velocity_m_s") * r.one("length_m") / r.one("nu_m2_s")
		d, p := r.one("D_m2_s"), 101325.
		k := FlatPlateLaminar(re, r.one("nu_m2_s")/d) * d / r.one("length_m")
		// "vapour 993 Pa" stands in the row's text.
		j, _ := StefanFlux(k, p, r.one("film_T_C")+zero, 993/p, r.one("surface_vapour_Pa")/p)
		r.within(t, "Re", 0.1, 0, re)
		r.within(t, "k_m_m_s", 0.1, 0, k)
		r.within(t, "flux_kg_m2s", 0.1, 0, j)
	},
	"EVA-10": func(t *testing.T, r *row) {
		u, l, nu, d := r.one("velocity_m_s"), r.one("plate_length_m"), r.one("nu"), 2.93e-5 // D and rho_sat of the row's note
		var rate []float64
		for n := 1.; n <= 10; n++ {
			whole := func(n float64) float64 {
				if n == 0 {
					return 0
				}
				return FlatPlateMixed(u*n*l/nu, nu/d) * d * 0.082
			}
			rate = append(rate, whole(n)-whole(n-1))
		}
		fastest := 0
		for i := range rate {
			if rate[i] > rate[fastest] {
				fastest = i
			}
		}
		// 15 % is the row's tolerance.
		r.within(t, "rate_plate1_kg_s_m", 0.15, 0, rate[0])
		r.within(t, "rate_plate4_kg_s_m", 0.15, 0, rate[3])
		r.within(t, "rate_plate5_kg_s_m", 0.15, 0, rate[4])
		r.within(t, "fastest_plate_index", 0, 0, float64(fastest+1))
		r.within(t, "x_transition_m", 0.15, 0, TransitionReynolds*nu/u)
	},
	"CRP-09": func(t *testing.T, r *row) { // 25 % in prose: rounded partial pressures in the source
		p := r.one("P_bar") * 1e5
		T, wet := r.one("T_air_C")+zero, r.one("T_wb_C")+zero
		a := must(air.FromRelativeHumidity(T, p, r.one("RH"), false))
		j, _ := StefanFlux(r.one("D_m2_s")/r.one("stagnant_film_m"), p, (T+wet)/2, a.Y, air.SaturatedFraction(wet, p, false))
		r.within(t, "flux_kg_m2s", 0.25, 0, j)
		r.within(t, "time_h", 0.25, 0, r.one("water_kg_m2")/j/3600)
	},
}

// stefanTube: diffusion through a stagnant column, k = D/path. 1 % is the rows' tolerance.
func stefanTube(t *testing.T, r *row) {
	p := r.one("P_Pa")
	j, _ := StefanFlux(r.one("D_m2_s")/r.one("path_m"), p, r.one("T_K"), r.one("RH_top"), r.one("p_sat_Pa")/p)
	r.within(t, "flux_kg_m2s", 0.01, 0, j)
	if _, ok := r.Outputs["flux_kmol_m2s"]; ok {
		r.within(t, "flux_kmol_m2s", 0.01, 0, j/air.WaterMolarMass/1e3)
		return
	}
	d := r.one("diameter_m")
	r.within(t, "mass_rate_kg_s", 0.01, 0, j*math.Pi/4*d*d)
}

// Ackermann and the Stefan logarithm stay smooth through their series and continuation, and finite at the extremes.
func TestHighFluxLimits(t *testing.T) {
	for _, c := range []float64{-1e-4, 1e-4} {
		inside, outside := Ackermann(c*(1-1e-9)), Ackermann(c*(1+1e-9))
		// expm1 near 1e-4 keeps 12 digits of the quotient.
		if math.Abs(inside-outside) > 1e-12 {
			t.Errorf("series and function meet at %g with %g", c, inside-outside)
		}
	}
	if v := Ackermann(800); v != 0 {
		t.Errorf("Ackermann(800) = %g", v)
	}
	if v := Ackermann(-800); v != 800 {
		t.Errorf("Ackermann(-800) = %g", v)
	}
	if v := Ackermann(0); v != 1 {
		t.Errorf("Ackermann(0) = %g", v)
	}
	const edge = 1e-9
	below, slopeBelow := StefanLog(0.1, 1-edge*(1+1e-6))
	above, slopeAbove := StefanLog(0.1, 1-edge*(1-1e-6))
	// 1 - y near 1e-9 keeps 7 digits.
	if d := above - below; d < 0 || d > 4e-6 || math.Abs(slopeAbove/slopeBelow-1) > 1e-5 {
		t.Errorf("the logarithm jumps: %g, slopes %g %g", d, slopeBelow, slopeAbove)
	}
	for _, ys := range []float64{0, 0.5, 1, 3} {
		if l, s := StefanLog(1, ys); math.IsNaN(l) || math.IsInf(l, 0) || !(s > 0) {
			t.Errorf("pure steam over %g: %g, %g", ys, l, s)
		}
	}
	if l, _ := StefanLog(0.3, 0.3); l != 0 {
		t.Errorf("no difference gives %g", l)
	}
	// The slope is the derivative.
	for _, ys := range []float64{0.01, 0.2, 0.7} {
		j, s := StefanFlux(0.02, 101325, 320, 0.05, ys)
		k, _ := StefanFlux(0.02, 101325, 320, 0.05, ys+1e-6)
		if math.Abs((k-j)/1e-6/s-1) > 1e-5 {
			t.Errorf("slope %g at %g", s, ys)
		}
	}
}
