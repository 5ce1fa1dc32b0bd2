package validate

import (
	"github.com/drywright/drywright/cure/transfer"
)

// plates is forced flow along a plate, heat and mass.
func plates() cases {
	return cases{
		"CNV-INC-7.1": func(e *entry) {
			re := e.one("u_m_per_s") * e.one("L_m") / e.one("nu_m2_per_s")
			nu := transfer.FlatPlateLaminar(re, e.one("Pr"))
			h := nu * e.one("k") / e.one("L_m")
			e.check("Re", re)
			e.check("Nu", nu)
			e.check("h_W_per_m2K", h)
			e.check("q_W_per_m", h*e.one("L_m")*(e.one("T_inf_C")-e.one("T_s_C")))
		},
		"CNV-INC-7.2": func(e *entry) {
			u, l, nu, k, pr := e.one("u_m_per_s"), e.one("strip_m"), e.one("nu_m2_per_s"), e.one("k"), e.one("Pr")
			// Heat of the first n strips a metre of width: h x dT = Nu k dT.
			total := func(n float64) float64 {
				return transfer.FlatPlateMixed(u*n*l/nu, pr) * k * (e.one("T_s_C") - e.one("T_inf_C"))
			}
			e.check("Re_strip", u*l/nu)
			e.check("q1_W_per_m", total(1))
			e.check("q5_W_per_m", total(5)-total(4))
			e.check("q6_W_per_m", total(6)-total(5))
		},
		"CNV-INC-7.3": func(e *entry) {
			u, nu, d := e.one("u_m_per_s"), e.one("nu_m2_per_s"), e.one("D_m2_per_s")
			_, k := behindDryStart(u, e.one("unheated_m"), e.one("L_pool_m"), nu, d)
			e.check("Sc", nu/d)
			e.check("h_m_m_per_s", k)
			e.check("loss_kg_per_day", k*e.one("rho_sat_kg_per_m3")*(1-e.one("RH"))*e.one("L_pool_m")*e.one("w_m")*86400)
		},
		"EVA-04": func(e *entry) {
			re, k := behindDryStart(e.one("velocity_m_s"), e.one("dry_lead_in_m"), e.one("wet_length_m"), e.one("nu"), e.one("D"))
			flux := k * e.one("rho_sat_kg_m3") * (1 - e.one("RH"))
			e.check("Re_L", re)
			e.check("k_m_m_s", k)
			e.check("flux_kg_m2s", flux)
			e.check("loss_kg_day", flux*e.one("wet_length_m")*e.one("width_m")*86400)
		},
		"CNV-CEN-7.21": func(e *entry) {
			re := e.one("u_m_per_s") * e.one("L_m") / e.one("nu_m2_per_s")
			nu := transfer.FlatPlateMixed(re, e.one("Pr"))
			h := nu * e.one("k") / e.one("L_m")
			e.check("Re", re)
			e.check("Nu", nu)
			e.check("h_W_per_m2K", h)
			e.check("Q_W", h*e.one("sides")*e.one("L_m")*e.one("width_m")*(e.one("T_s_C")-e.one("T_inf_C")))
		},
		"CNV-CEN-7.17": func(e *entry) {
			re := e.one("u_m_per_s") * e.one("x_m") * e.one("rho") / e.one("mu_Pa_s")
			local, k := transfer.FlatPlateLaminarLocal(re, e.one("Pr")), e.one("k")/e.one("x_m")
			e.check("Re_x", re)
			e.check("Nu_x", local)
			e.check("h_x", local*k)
			e.check("h_avg", transfer.FlatPlateLaminar(re, e.one("Pr"))*k)
		},
		"CNV-HT-PLATE": func(e *entry) {
			re, pr := e.in("Re"), e.in("Pr")
			e.checkAt("Nu", e.texts("form"),
				transfer.FlatPlateLaminar(re[0], pr[0]),
				transfer.FlatPlateLaminarChurchillOzoe(re[1], pr[1]),
				transfer.FlatPlateTurbulentPetukhovPopov(re[2], pr[2]),
				transfer.FlatPlateTurbulentKreith(re[3], pr[3]))
		},
		"EVA-05": func(e *entry) {
			re := e.one("velocity_m_s") * e.one("length_m") / e.one("nu_m2_s")
			d, p := e.one("D_m2_s"), atmosphere
			k := transfer.FlatPlateLaminar(re, e.one("nu_m2_s")/d) * d / e.one("length_m")
			j, _ := transfer.StefanFlux(k, p, e.kelvin("film_T_C"), e.one("air_vapour_Pa")/p, e.one("surface_vapour_Pa")/p)
			e.check("Re", re)
			e.check("k_m_m_s", k)
			e.check("flux_kg_m2s", j)
		},
		"EVA-10": rowOfPlates,
	}
}

// behindDryStart is the Reynolds number over dry and wet length together and the mass transfer coefficient [m/s] of the
// wet one, turbulent from the edge.
func behindDryStart(u, dry, wet, nu, d float64) (re, k float64) {
	l := dry + wet
	re = u * l / nu
	return re, transfer.FlatPlateTurbulent(re, nu/d) * transfer.UnheatedStart(dry, l, true) * d / l
}

// rowOfPlates: wet plates behind each other; the boundary layer turns turbulent on one of them.
func rowOfPlates(e *entry) {
	u, l, nu, d := e.one("velocity_m_s"), e.one("plate_length_m"), e.one("nu"), e.one("D")
	whole := func(n float64) float64 {
		if n == 0 {
			return 0
		}
		return transfer.FlatPlateMixed(u*n*l/nu, nu/d) * d * e.one("rho_sat")
	}
	var rate []float64
	fastest := 0
	for n := range 10 {
		rate = append(rate, whole(float64(n+1))-whole(float64(n)))
		if rate[n] > rate[fastest] {
			fastest = n
		}
	}
	e.check("rate_plate1_kg_s_m", rate[0])
	e.check("rate_plate4_kg_s_m", rate[3])
	e.check("rate_plate5_kg_s_m", rate[4])
	e.check("fastest_plate_index", float64(fastest+1))
	e.check("x_transition_m", transfer.TransitionReynolds*nu/u)
}
