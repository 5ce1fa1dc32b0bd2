package transfer_test

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	. "github.com/drywright/drywright/cure/transfer"
)

// flow are the rows of forced and natural convection.
var flow = map[string]check{
	"CNV-INC-7.1": func(t *testing.T, r *row) {
		re := r.one("u_m_per_s") * r.one("L_m") / r.one("nu_m2_per_s")
		nu := FlatPlateLaminar(re, r.one("Pr"))
		h := nu * r.one("k") / r.one("L_m")
		r.check(t, "Re", re)
		r.check(t, "Nu", nu)
		r.check(t, "h_W_per_m2K", h)
		r.check(t, "q_W_per_m", h*r.one("L_m")*(r.one("T_inf_C")-r.one("T_s_C")))
	},
	"CNV-INC-7.2": func(t *testing.T, r *row) {
		u, l, nu, k, pr := r.one("u_m_per_s"), r.one("strip_m"), r.one("nu_m2_per_s"), r.one("k"), r.one("Pr")
		// Heat of the first n strips a metre of width: h x dT = Nu k dT.
		total := func(n float64) float64 {
			return FlatPlateMixed(u*n*l/nu, pr) * k * (r.one("T_s_C") - r.one("T_inf_C"))
		}
		r.check(t, "Re_strip", u*l/nu)
		r.check(t, "q1_W_per_m", total(1))
		r.check(t, "q5_W_per_m", total(5)-total(4))
		r.check(t, "q6_W_per_m", total(6)-total(5))
	},
	"CNV-INC-7.3": unheated,
	"EVA-04":      unheated,
	"CNV-CEN-7.21": func(t *testing.T, r *row) {
		re := r.one("u_m_per_s") * r.one("L_m") / r.one("nu_m2_per_s")
		nu := FlatPlateMixed(re, r.one("Pr"))
		h := nu * r.one("k") / r.one("L_m")
		r.check(t, "Re", re)
		r.check(t, "Nu", nu)
		r.check(t, "h_W_per_m2K", h)
		r.check(t, "Q_W", h*r.one("sides")*r.one("L_m")*r.one("width_m")*(r.one("T_s_C")-r.one("T_inf_C")))
	},
	"CNV-CEN-7.17": func(t *testing.T, r *row) {
		re := r.one("u_m_per_s") * r.one("x_m") * r.one("rho") / r.one("mu_Pa_s")
		local, k := FlatPlateLaminarLocal(re, r.one("Pr")), r.one("k")/r.one("x_m")
		r.check(t, "Re_x", re)
		r.check(t, "Nu_x", local)
		r.check(t, "h_x", local*k)
		r.check(t, "h_avg", FlatPlateLaminar(re, r.one("Pr"))*k)
	},
	"CNV-HT-PLATE": func(t *testing.T, r *row) {
		re, pr := r.in("Re"), r.in("Pr")
		r.check(t, "Nu",
			FlatPlateLaminar(re[0], pr[0]),
			FlatPlateLaminarChurchillOzoe(re[1], pr[1]),
			FlatPlateTurbulentPetukhovPopov(re[2], pr[2]),
			FlatPlateTurbulentKreith(re[3], pr[3]))
	},
	"CNV-INC-9.2": func(t *testing.T, r *row) {
		dT := r.one("T_s_C") - r.one("T_inf_C")
		l, nu := r.one("L_m"), r.one("nu_m2_per_s")
		// The book takes g = 9.81; Grashof has 9.80665, which the row's tolerance covers.
		ra := Grashof(l, r.one("beta")*dT, nu) * nu / r.one("alpha")
		n := NaturalVertical(ra, r.one("Pr"))
		h := n * r.one("k") / l
		r.check(t, "Ra", ra)
		r.check(t, "Nu", n)
		r.check(t, "h_W_per_m2K", h)
		r.check(t, "Q_W", h*l*r.one("w_m")*dT)
	},
	"CNV-INC-9.4": func(t *testing.T, r *row) {
		dT, d, nu := r.one("T_s_C")-r.one("T_inf_C"), r.one("D_m"), r.one("nu_m2_per_s")
		ra := Grashof(d, r.one("beta")*dT, nu) * nu / r.one("alpha")
		h := NaturalCylinder(ra, r.one("Pr")) * r.one("k") / d
		out := h*dT - Radiation(r.one("eps"), r.one("T_inf_C")+zero, r.one("T_s_C")+zero)
		r.check(t, "q_W_per_m", out*math.Pi*d)
	},
	"CNV-HT-HORIZ-7": horizontal,
	"CNV-HT-HORIZ-9": horizontal,
	"CNV-HT-MCADAMS-DOC": func(t *testing.T, r *row) {
		ra := r.one("Pr") * r.one("Gr")
		r.check(t, "Nu_up", NaturalHorizontalUnstableMcAdams(ra))
		r.check(t, "Nu_down", NaturalHorizontalStableMcAdams(ra))
	},
	"CNV-STATIC": func(t *testing.T, r *row) {
		l := r.one("L_m")
		gr := Grashof(l, (r.one("T_inf_C")-r.one("T_s_C"))/323.15, r.one("nu_m2_per_s"))
		n := NaturalVertical(gr*r.one("Pr"), r.one("Pr"))
		r.check(t, "Gr", gr)
		r.check(t, "Nu", n)
		r.check(t, "h_W_per_m2K", n*r.one("k")/l)
		// The law on the same plate in dry air. It differs by the density difference in place of beta dT (1 % of Gr, 0.3 %
		// of h) and by properties within 0.1 %.
		a := air.State{T: 353.15, P: 101325}
		r.within(t, "h_W_per_m2K", 0.005, 0, Buoyant{l, Vertical}.Coefficient(a, 293.15, 0))
	},
	"EVP-BUOY": func(t *testing.T, r *row) {
		// The row mixes ideally; its virtual temperatures are densities in another unit, T_v = p M_air/(R rho).
		virtual := func(s air.State) float64 { return s.P * air.AirMolarMass / (air.GasConstant * s.Density()) }
		room := must(air.FromHumidityRatio(r.one("T_inf_C")+zero, 101325, r.one("W_inf"), false))
		r.check(t, "Tv_inf_K", virtual(room))
		var surface []float64
		for _, c := range r.in("T_s_C") {
			surface = append(surface, virtual(must(air.FromRelativeHumidity(c+zero, 101325, 1, false))))
		}
		r.check(t, "Tv_surface_K", surface...)
		neutral := root(zero+10, zero+20, func(T float64) float64 {
			d, _ := Difference(room, T, air.SaturatedFraction(T, 101325, false))
			return -d
		})
		r.check(t, "T_s_neutral_C", neutral-zero)
	},
}

// unheated is Incropera example 7.3, a water surface behind a dry run-up; it stands in both collections.
func unheated(t *testing.T, r *row) {
	get := func(keys ...string) float64 {
		for _, k := range keys {
			if _, ok := r.Inputs[k]; ok {
				return r.one(k)
			}
		}
		panic(keys[0])
	}
	u, nu, d := get("u_m_per_s", "velocity_m_s"), get("nu_m2_per_s", "nu"), get("D_m2_per_s", "D")
	lead, wetted, width := get("unheated_m", "dry_lead_in_m"), get("L_pool_m", "wet_length_m"), get("w_m", "width_m")
	l := lead + wetted
	re, sc := u*l/nu, nu/d
	k := FlatPlateTurbulent(re, sc) * UnheatedStart(lead, l, true) * d / l
	flux := k * get("rho_sat_kg_per_m3", "rho_sat_kg_m3") * (1 - r.one("RH"))
	loss := flux * wetted * width * 86400
	if r.ID == "EVA-04" { // 5 % in prose
		r.within(t, "Re_L", 0.05, 0, re)
		r.within(t, "k_m_m_s", 0.05, 0, k)
		r.within(t, "flux_kg_m2s", 0.05, 0, flux)
		r.within(t, "loss_kg_day", 0.05, 0, loss)
		return
	}
	r.check(t, "Sc", sc)
	r.check(t, "h_m_m_per_s", k)
	r.check(t, "loss_kg_per_day", loss)
}

func horizontal(t *testing.T, r *row) {
	pr := r.one("Pr")
	ra := pr * r.one("Gr")
	r.check(t, "Nu_McAdams_up", NaturalHorizontalUnstableMcAdams(ra))
	r.check(t, "Nu_McAdams_down", NaturalHorizontalStableMcAdams(ra))
	r.check(t, "Nu_VDI_down", NaturalHorizontalStableVDI(ra, pr))
	r.check(t, "Nu_vertical_ChurchillChu", NaturalVertical(ra, pr))
	// The row's Nu_VDI_up comes from a library whose Prandtl factor has the exponent +20/11; the VDI Heat Atlas has -20/11 (as
	// five independent public implementations do). The number is reproduced with the library's exponent, and ours is smaller
	// by the ratio of the factors to the power 1/3: 21.2 and 98.2 in place of 38.9 and 180.6.
	factor := math.Pow(1+math.Pow(0.322/pr, 0.55), 20./11)
	ours := NaturalHorizontalUnstableVDI(ra, pr)
	r.check(t, "Nu_VDI_up", ours*math.Cbrt(factor*factor))
	if ours > 0.6*r.Outputs["Nu_VDI_up"].(float64) {
		t.Errorf("the Prandtl factor has the wrong sign: %g", ours)
	}
}

// TestPlateContinuity: the mixed average meets the laminar one at the transition and McAdams' jump is no part of a law.
func TestPlateContinuity(t *testing.T) {
	below, above := FlatPlateMixed(TransitionReynolds, 0.7), FlatPlateMixed(TransitionReynolds*(1+1e-12), 0.7)
	if math.Abs(above/below-1) > 1e-9 {
		t.Errorf("%g below, %g above", below, above)
	}
	// Raithby and Hollands against McAdams at the same area-over-perimeter length, as Lloyd and Moran 1974 use it (Incropera
	// 9.30 to 9.32): two published laws; unstable within 15 %, from memory of that comparison.
	for _, ra := range []float64{1e5, 1e6, 1e7, 1e9} {
		a, b := NaturalHorizontalUnstable(ra, 0.71), NaturalHorizontalUnstableMcAdams(ra)
		if math.Abs(a/b-1) > 0.15 {
			t.Errorf("Ra %g: %g against McAdams' %g", ra, a, b)
		}
	}
	// Stable: Radziemska and Lewandowski 2001, 0.52 Ra^(1/5) for 1e4 <= Ra <= 1e9 (Incropera 7th ed. 9.32), within 30 %: the
	// published stable laws differ that much.
	for _, ra := range []float64{1e4, 1e6, 1e9} {
		a, b := NaturalHorizontalStable(ra, 0.71), 0.52*math.Pow(ra, 0.2)
		if math.Abs(a/b-1) > 0.3 {
			t.Errorf("Ra %g: stable %g against %g", ra, a, b)
		}
	}
	// The documented example of Raithby and Hollands' stable law in a library that cites it: Pr 5.54, Gr 3.21e8.
	if nu := NaturalHorizontalStable(5.54*3.21e8, 5.54); math.Abs(nu-35.95799244863986) > 1e-9 {
		t.Errorf("stable %g", nu)
	}
}
