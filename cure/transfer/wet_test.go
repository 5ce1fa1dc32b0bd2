package transfer_test

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

const atmosphere = 101325.

// families are rows that differ in their numbers only.
var families = map[string]check{
	"EVP-A-":   simple,
	"EVP-RAD-": simple,
	"EVP-ROOM": simple,
	"EVP-B-":   highFluxModel,
}

// ratioAt is the saturated humidity ratio, ideal as the rows mix.
func ratioAt(T float64) float64 {
	return air.State{T: T, P: atmosphere, Y: air.SaturatedFraction(T, atmosphere, false)}.HumidityRatio()
}

// face is our own surface for the air of an EVP row.
func face(r *row) *Surface {
	a := must(air.FromHumidityRatio(r.one("T_inf_C")+zero, atmosphere, r.one("W_inf"), false))
	s := &Surface{Air: a, Wall: a.T, Law: Given{r.one("h_W_per_m2K")}, Emissivity: r.one("eps"), Factor: 1}
	if _, ok := r.Inputs["T_wall_C"]; ok {
		s.Wall = r.one("T_wall_C") + zero
	}
	return s
}

// simple are closed balances with a low-flux law, m = h/(cp Le^(2/3)) (W_s - W). First the row's own model on our saturation
// pressure, latent heat and radiation, at the row's tolerance; then our exchange, which differs from it in three ways:
//   - Stefan flow and Ackermann's factor take 2 to 5 % off the flux (rows EVP-B);
//   - Le^(2/3) is that of the mixture at the mean state, 0.90 at 20 and 0.84 at 150 degC, not 0.9 throughout;
//   - cp and cp_v are those of the mean state, not of the free stream.
//
// Hence 4 % of the flux (seen: 3.6 % at 150 degC) and 0.5 K, because the first two act against each other in T: 1 % of the flux is
// 1 % of (W_s - W), which rises 5 to 6 % a kelvin. With Le^(2/3) = 1 in the row the model is another one and only the first check applies.
func simple(t *testing.T, r *row) {
	s := face(r)
	h, le, w := r.one("h_W_per_m2K"), r.one("Le23"), r.one("W_inf")
	flux := func(T float64) float64 { return h / ((1006 + 1860*w) * le) * (ratioAt(T) - w) }
	T := root(275, 370, func(T float64) float64 {
		return h*(s.Air.T-T) + Radiation(s.Emissivity, s.Wall, T) - flux(T)*air.LatentHeat(T)
	})
	r.check(t, "T_s_C", T-zero)
	r.check(t, "m_kg_per_m2s", flux(T))
	if le == 1 {
		return
	}
	T, e := adiabatic(s)
	r.within(t, "T_s_C", 0, 0.5, T-zero)
	r.within(t, "m_kg_per_m2s", 0.04, 0, e.Flux)
}

// highFluxModel are the same with film theory on humidity ratios, ln((1 + W_s)/(1 + W)), and Ackermann's factor; ours is on mole
// fractions at mean properties. What is left between the two is Le^(2/3) and the mean properties, which the heat balance turns mostly into
// temperature: 1 % (seen 0.2 %) and 0.35 K (seen 0.29 K at 200 degC).
func highFluxModel(t *testing.T, r *row) {
	s := face(r)
	h, le, w := r.one("h_W_per_m2K"), r.one("Le23"), r.one("W_inf")
	flux := func(T float64) float64 {
		return h / ((1006 + 1860*w) / (1 + w) * le) * math.Log((1+ratioAt(T))/(1+w))
	}
	phi := func(T float64) float64 { return flux(T) * 1900 / h }
	T := root(275, 370, func(T float64) float64 {
		return h*Ackermann(phi(T))*(s.Air.T-T) - flux(T)*air.LatentHeat(T)
	})
	r.check(t, "T_s_C", T-zero)
	r.check(t, "m_kg_per_m2s", flux(T))
	r.check(t, "phi", phi(T))
	r.check(t, "ackermann", Ackermann(phi(T)))
	T, e := adiabatic(s)
	r.within(t, "T_s_C", 0, 0.35, T-zero)
	r.within(t, "m_kg_per_m2s", 0.01, 0, e.Flux)
}

// wet are single rows of evaporating and dewing surfaces.
var wet = map[string]check{
	"EVP-GEA-9.6-3": func(t *testing.T, r *row) {
		a := must(air.FromHumidityRatio(r.one("T_inf_C")+zero, atmosphere, r.one("W"), false))
		g := r.one("u_m_per_s") * a.Density() * 3600
		h := 0.0204 * math.Pow(g, 0.8)
		rate := h * (r.one("T_inf_C") - r.one("T_wb_C")) / r.one("latent_J_per_kg") * 3600
		r.check(t, "v_H_m3_per_kg", a.SpecificVolume())
		r.check(t, "h_W_per_m2K", h)
		r.check(t, "rate_kg_per_m2h", rate)
		r.check(t, "total_kg_per_h", rate*r.one("pan_m")*r.one("pan_m"))
		// The book puts the surface at the wet bulb: 28.9 degC is ours to a tenth.
		if wb := a.WetBulb() - zero; math.Abs(wb-r.one("T_wb_C")) > 0.05 {
			t.Errorf("wet bulb %.2f", wb)
		}
		// Our surface lies below the wet bulb (Le^(2/3) 0.9), so the air gives it more heat, and the high-flux correction takes
		// about as much off: the book's rate within 2 %.
		_, e := adiabatic(&Surface{Air: a, Wall: a.T, Law: Given{h}, Factor: 1})
		r.within(t, "rate_kg_per_m2h", 0.02, 0, e.Flux*3600)
	},
	// A cold part in humid oven air. The rest of the row is the transient of part and dew, which package film computes.
	"EVP-COND": func(t *testing.T, r *row) {
		s := face(r)
		h, le, w := r.one("h_W_per_m2K"), r.one("Le23"), r.one("W_inf")
		T := r.one("T_part_0_C") + zero
		r.check(t, "T_dp_C", s.Air.DewPoint()-zero)
		m := h / ((1006 + 1860*w) * le) * (w - ratioAt(T))
		r.check(t, "m0_kg_per_m2s", m)
		r.check(t, "q0_W_per_m2", h*(s.Air.T-T)+m*air.LatentHeat(T))
		// Ours: high-flux correction and Le of the mean state as in the rows EVP-A; 5 % of each.
		e := s.Exchange(T, 1)
		r.within(t, "m0_kg_per_m2s", 0.05, 0, -e.Flux)
		r.within(t, "q0_W_per_m2", 0.05, 0, e.FilmHeat-e.Flux*air.LatentHeat(T))
		r.elsewhere("transient of part and dew: package film", "t_to_dewpoint_s", "peak_condensate_kg_per_m2", "t_dry_again_s",
			"T_dry_again_C")
	},
	// Warm water in still air, 25 % in prose. The book counts the heat part only in Gr and takes Nu = 0.75 Ra^(1/4).
	"EVA-06": func(t *testing.T, r *row) {
		a := must(air.FromDewPoint(r.one("T_air_C")+zero, atmosphere, air.SaturationTemperature(r.one("p_v_air_Pa")), false))
		s := &Surface{Air: a, Wall: a.T, Law: Buoyant{r.one("length_m"), FacingUp}, Factor: 1}
		e := s.Exchange(r.one("T_surface_C")+zero, 1)
		r.within(t, "flux_kg_m2s", 0.25, 0, e.Flux)
		r.within(t, "flux_kg_m2h", 0.25, 0, e.Flux*3600)
	},
	// An insulated wet plate in dry air with a given h; tolerances 5 % and 1.5 K in prose, the flux against the self-consistent
	// 7.8e-5 of the row's note (the printed 7.3e-5 keeps the saturation density of another temperature).
	"EVA-09": func(t *testing.T, r *row) {
		re := r.one("velocity_m_s") * r.one("length_m") / r.one("nu")
		h := 0.43 * math.Pow(re, 0.58) * math.Pow(0.707, 0.4) * r.one("k") / r.one("length_m")
		a := air.State{T: r.one("T_air_C") + zero, P: atmosphere}
		T, e := adiabatic(&Surface{Air: a, Wall: a.T, Law: Given{h}, Factor: 1})
		r.within(t, "h_W_m2K", 0.05, 0, h)
		r.within(t, "k_m_m_s", 0.05, 0, e.K)
		r.within(t, "T_surface_C", 0, 1.5, T-zero)
		if math.Abs(e.Flux/7.8e-5-1) > 0.05 {
			t.Errorf("flux %.3g, want 7.8e-5", e.Flux)
		}
		r.elsewhere("its saturation density is inconsistent; see above", "evap_kg_s")
	},
	"CRP-01": func(t *testing.T, r *row) {
		a := must(air.FromHumidityRatio(r.one("T_air_C")+zero, atmosphere, r.one("W_air"), false))
		h := 0.0204 * math.Pow(r.one("velocity_m_s")*a.Density()*3600, 0.8)
		T, e := adiabatic(&Surface{Air: a, Wall: a.T, Law: Given{h}, Factor: 1})
		r.within(t, "h_W_m2K", 0.02, 0, h)
		r.within(t, "flux_kg_m2h", 0.02, 0, e.Flux*3600) // 2 % in prose
		r.within(t, "flux_kg_m2s", 0.02, 0, e.Flux)
		r.within(t, "rate_kg_h", 0.02, 0, e.Flux*3600*r.one("pan_m")*r.one("pan_m"))
		// 0.3 K in prose, for the wet bulb at which the book puts the surface; ours is 0.5 to 1 K below it by its Lewis factor.
		r.within(t, "T_surface_C", 0, 0.3, a.WetBulb()-zero)
		if d := a.WetBulb() - T; d < 0.5 || d > 1 {
			t.Errorf("surface %.2f K below the wet bulb", d)
		}
	},
	// The book's changes of velocity and of air temperature, 3 % in prose. Its answer b keeps h at 62.45.
	"CRP-02": func(t *testing.T, r *row) {
		rate := func(celsius, velocity, h float64) float64 {
			a := must(air.FromHumidityRatio(celsius+zero, atmosphere, 0.010, false))
			if h == 0 {
				h = 0.0204 * math.Pow(velocity*a.Density()*3600, 0.8)
			}
			_, e := adiabatic(&Surface{Air: a, Wall: a.T, Law: Given{h}, Factor: 1})
			return e.Flux * 3600
		}
		r.within(t, "a_flux_kg_m2h", 0.03, 0, rate(65.6, 3.05, 0))
		r.within(t, "b_flux_kg_m2h", 0.03, 0, rate(76.7, 6.1, 62.45))
	},
	// An insulated pan under a radiator, 2 % and 0.6 K in prose for the low-flux balance (the row's own solution 31.8 degC, 2.553).
	"CRP-04": func(t *testing.T, r *row) {
		a := must(air.FromHumidityRatio(r.one("T_air_C")+zero, atmosphere, r.one("W_air"), false))
		h := 0.0204 * math.Pow(r.one("velocity_m_s")*a.Density()*3600, 0.8)
		T, e := adiabatic(&Surface{Air: a, Wall: r.one("T_radiator_C") + zero, Law: Given{h}, Emissivity: r.one("emissivity"), Factor: 1})
		r.within(t, "T_surface_C", 0, 0.6, T-zero)
		r.within(t, "flux_kg_m2h", 0.02, 0, e.Flux*3600)
	},
}

// measured are trends and spreads from experiments.
var measured = map[string]check{
	// The flux per hour that the older still-air laws span at 25 degC and 50 % RH, with the 25 % that the row asks of any still-air
	// prediction, for a square metre pool.
	"EVA-13": func(t *testing.T, r *row) {
		a := must(air.FromRelativeHumidity(298.15, atmosphere, 0.5, true))
		s := &Surface{Air: a, Wall: a.T, Law: Buoyant{1, FacingUp}, Factor: 1}
		got, span := s.Exchange(298.15, 1).Flux*3600, r.Outputs["example_25C_50RH_kg_m2h"].([]any)
		if got < 0.75*span[0].(float64) || got > 1.25*span[1].(float64) {
			t.Errorf("%g kg/m2h outside %v and 25 %%", got, span)
		}
		r.elsewhere("statistics of the source, no prediction", "mean_abs_dev_Shah", "mean_abs_dev_Boelter")
		r.checked["example_25C_50RH_kg_m2h"] = true
	},
	// d ln(flux)/d ln(U) over a turbulent surface: measured 0.86, accepted 0.71 to 0.90.
	"EVA-14": func(t *testing.T, r *row) {
		a := must(air.FromRelativeHumidity(298.15, atmosphere, 0.5, true))
		rate := func(u float64) float64 {
			s := &Surface{Air: a, Wall: a.T, Law: Parallel{u, 0.5, true}, Factor: 1}
			return s.Exchange(295, 1).Flux
		}
		if n := math.Log(rate(4)/rate(2)) / math.Ln2; n < 0.71 || n > 0.90 {
			t.Errorf("exponent %g", n)
		}
		r.checked["exponent_of_velocity"] = true
	},
	// Diffusion from a wet disc in still air: 10 % for R <= 3 mm, a lower bound above, where buoyancy adds. The analogy gives the
	// disc 5 % too little (Le^(1/3)), which the tolerance covers.
	"EVA-16": func(t *testing.T, r *row) {
		a := must(air.FromRelativeHumidity(r.one("T_C")+zero, atmosphere, r.one("RH"), false))
		for i, radius := range r.in("R_m") {
			want := r.Outputs["flux_kg_m2s"].([]any)[i].(float64)
			s := &Surface{Air: a, Wall: a.T, Law: Buoyant{2 * radius, FacingUp}, Factor: 1}
			got := s.Exchange(a.T, 1).Flux
			if got < 0.9*want || radius <= 3e-3 && got > 1.1*want {
				t.Errorf("R %g m: %g, pure diffusion %g", radius, got, want)
			}
		}
		r.checked["flux_kg_m2s"] = true
	},
	// Below the inversion temperature (near 250 degC) more humid air dries more slowly at the same speed.
	"EVA-18": func(t *testing.T, r *row) {
		for _, celsius := range []float64{25, 80, 120, 150} {
			last := math.Inf(1)
			for _, w := range []float64{0.002, 0.01, 0.018} {
				a := must(air.FromHumidityRatio(celsius+zero, atmosphere, w, true))
				_, e := adiabatic(&Surface{Air: a, Wall: a.T, Law: Parallel{3, 0.3, true}, Factor: 1})
				if e.Flux >= last {
					t.Errorf("%g degC: flux rises with humidity", celsius)
				}
				last = e.Flux
			}
		}
		r.elsewhere("checked as signs above", "d_evap_d_humidity", "steam_accuracy")
	},
}
