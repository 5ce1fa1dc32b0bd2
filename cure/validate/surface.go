package validate

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/transfer"
)

// surface is heat and mass together at a face: analogy, high-flux corrections, radiation, wet faces in moving air.
func surface() cases {
	return cases{
		"CNV-CC": func(e *entry) {
			m := gas(e, e.one("cp"))
			e.check("Le", m.Lewis())
			e.check("h_m_m_per_s", transfer.MassCoefficient(e.one("h_W_per_m2K"), m))
		},
		"CEN-14.12": func(e *entry) {
			e.check("h_W_per_m2K", e.one("h_mass_m_per_s")/transfer.MassCoefficient(1, gas(e, e.one("cp"))))
		},
		"CNV-INC-6.7": func(e *entry) {
			// A volatile liquid of its own molar mass: T_inf - T_s = h_fg (k/h) rho_sat(T_s), h cancels.
			ratio := transfer.MassCoefficient(1, gas(e, 1e3*e.one("cp_kJ")))
			T := root(250, 313, func(T float64) float64 {
				vapour := e.one("p_sat_Pa") * e.one("M") * 1e-3 / (e.one("R_kJ_per_kmolK") * T)
				return e.one("T_inf_C") + 273 - T - e.one("h_fg_kJ_per_kg")*1e3*ratio*vapour
			})
			e.check("T_s_C", T-273)
		},
		"CNV-INC-6.6": func(e *entry) {
			// Nu and Sh agree (Pr = Sc in the example), which is the analogy at Le = 1: D = alpha.
			m := air.Props{Density: 1, HeatCapacity: e.one("k") / e.one("D"), Conductivity: e.one("k"), Diffusivity: e.one("D")}
			h := e.one("q_W_per_m2") / (e.one("T_s_C") - e.one("T_inf_C")) * e.one("L1_m") / e.one("L2_m")
			e.check("N_kmol_per_m2s", transfer.MassCoefficient(h, m)*e.one("rho_sat")/e.one("M"))
		},
		"CNV-ACK": func(e *entry) {
			e.check("ackermann_phi_over_expphi_minus_1", each(e.in("phi_or_B"), transfer.Ackermann)...)
			// Spalding's ln(1 + B)/B is Stefan flow over its low-flux limit, B = (y_s - y)/(1 - y_s).
			e.check("ln1pB_over_B", each(e.in("phi_or_B"), func(b float64) float64 {
				l, _ := transfer.StefanLog(0, b/(1+b))
				return l / b
			})...)
		},
		"CNV-STEFAN": func(e *entry) {
			l, _ := transfer.StefanLog(e.one("y_bulk"), e.one("y_surface"))
			e.check("stefan_factor", l/(e.one("y_surface")-e.one("y_bulk")))
		},
		"RAD-1": func(e *entry) {
			e.check("q_W_per_m2", transfer.Radiation(e.one("eps"), e.kelvin("T_wall_C"), e.kelvin("T_s_C")))
		},
		"RAD-H": func(e *entry) {
			T := e.one("T_s_C")
			e.check("h_r_W_per_m2K", each(e.in("T_sur_C"), func(w float64) float64 {
				return transfer.Radiation(e.one("eps"), w+273, T+273) / (w - T)
			})...)
		},
		"INC-1.6": infrared,
		"EVA-01":  stagnantColumn, "EVA-02": stagnantColumn,
		"EVP-A-*": wetFace, "EVP-RAD-*": wetFace, "EVP-ROOM": wetFace,
		"EVP-A-80-010-1": atWetBulb, "EVP-A-120-020-1": atWetBulb, "EVP-A-150-030-1": atWetBulb, "EVP-A-150-100-1": atWetBulb,
		"EVP-B-*":   wetFaceHighFlux,
		"CEN-14.13": cannedDrink, "CEN-14.14": waterBath,
	}
}

// gas is an entry's own gas, its heat capacity given [J/(kg K)].
func gas(e *entry, cp float64) air.Props {
	rho := e.one("rho")
	return air.Props{Density: rho, HeatCapacity: cp, Conductivity: e.one("alpha") * rho * cp, Diffusivity: e.one("D")}
}

// infrared: a sealed coating under a lamp, in equilibrium with air and walls.
func infrared(e *entry) {
	face := func(h float64) transfer.Surface {
		return transfer.Surface{Air: dryAir(e.kelvin("T_inf_C")), Wall: e.kelvin("T_wall_C"), Law: transfer.Given{H: h},
			Emissivity: e.one("eps"), Factor: 1, AbsorbedFlux: e.one("absorptivity") * e.one("irradiation_W_per_m2")}
	}
	lamp := face(e.one("h_W_per_m2K"))
	e.check("T_s_C", root(300, 500, lamp.DryHeat)-zero)
	target := e.kelvin("T_target_C")
	e.check("h_for_target_W_per_m2K", root(1, 500, func(h float64) float64 { s := face(h); return s.DryHeat(target) }))
}

// stagnantColumn: diffusion through a column of air, k = D/path.
func stagnantColumn(e *entry) {
	p := e.pressure()
	j, _ := transfer.StefanFlux(e.one("D_m2_s")/e.one("path_m"), p, e.one("T_K"), e.one("RH_top"), e.one("p_sat_Pa")/p)
	e.check("flux_kg_m2s", j)
	if _, ok := e.Outputs["flux_kmol_m2s"]; ok {
		e.check("flux_kmol_m2s", j/air.WaterMolarMass/1e3)
		return
	}
	d := e.one("diameter_m")
	e.check("mass_rate_kg_s", j*math.Pi/4*d*d)
}

// wetAir is the air of an EVP entry, which mixes ideally.
func wetAir(e *entry) air.State {
	return e.state(air.FromHumidityRatio(e.kelvin("T_inf_C"), atmosphere, e.one("W_inf"), false))
}

// dryingFace dries a wet film behind which nothing is, at an EVP entry's coefficient and emissivity.
func dryingFace(e *entry) film.Reading {
	around := stillAir{air: wetAir(e)}
	around.wall = around.air.T
	if _, ok := e.Inputs["T_wall_C"]; ok {
		around.wall = e.kelvin("T_wall_C")
	}
	face := given(e.one("h_W_per_m2K"))
	face.Emissivity = e.one("eps")
	return plateau(e, face, around, foil(film.Insulated), film.Face{})
}

// wetFace are balances with a low-flux law, m = h/(cp Le^(2/3)) (W_s - W). The film differs from it in three ways:
//   - Stefan flow and Ackermann's factor take 2 to 5 % off the flux (rows EVP-B);
//   - Le^(2/3) is that of the mixture at the mean state, 0.90 at 20 and 0.84 at 150 degC, not 0.9 throughout;
//   - cp and cp_v are those of the mean state, not of the free stream.
//
// Hence 4 % of the flux (seen: 3.6 % at 150 degC) and 0.5 K, because the first two act against each other in T: 1 % of the
// flux is 1 % of (W_s - W), which rises 5 to 6 % a kelvin.
func wetFace(e *entry) {
	const reason = "the row leaves out Stefan flow and Ackermann's factor and holds Le^(2/3) at 0.9: 4 % and 0.5 K"
	r := dryingFace(e)
	e.richer("T_s_C", within(0.5), reason, r.Film-zero)
	e.richer("m_kg_per_m2s", relative(0.04), reason, r.Flux)
}

// atWetBulb: with Le^(2/3) = 1 the surface of a low-flux model sits at the thermodynamic wet bulb.
func atWetBulb(e *entry) { e.check("T_s_C", wetAir(e).WetBulb()-zero) }

// wetFaceHighFlux are the same with film theory on humidity ratios, ln((1 + W_s)/(1 + W)), and Ackermann's factor; ours is on
// mole fractions at mean properties. What is left between the two is Le^(2/3) and the mean properties, which the heat
// balance turns mostly into temperature: 1 % (seen 0.2 %) and 0.35 K (seen 0.29 K at 200 degC). phi follows the flux and
// the heat capacity of vapour, 1900 in the row and 1 % less in ours: 2 %.
func wetFaceHighFlux(e *entry) {
	const reason = "the row takes film theory on humidity ratios and holds Le^(2/3) at 0.9: 1 % and 0.35 K"
	r := dryingFace(e)
	phi := r.Flux * air.VapourHeatCapacity((r.Film+e.kelvin("T_inf_C"))/2) / e.one("h_W_per_m2K")
	e.richer("T_s_C", within(0.35), reason, r.Film-zero)
	e.richer("m_kg_per_m2s", relative(0.01), reason, r.Flux)
	e.richer("phi", relative(0.02), "and cp of vapour at the mean temperature", phi)
	e.richer("ackermann", relative(0.002), "and cp of vapour at the mean temperature", transfer.Ackermann(phi))
}

// cannedDrink: a wet cloth in a fan's air, no radiation; any coefficient gives the same temperature.
func cannedDrink(e *entry) {
	a := e.state(air.FromRelativeHumidity(e.kelvin("T_inf_C"), e.pressure(), e.one("RH"), false))
	e.check("T_s_C", sealed(e, a, 30).Film-zero)
}

// waterBath: hot water open to a room, natural convection by the densities of the two mixtures.
func waterBath(e *entry) {
	l, w, T := e.one("length_m"), e.one("width_m"), e.kelvin("T_s_C")
	a := e.state(air.FromRelativeHumidity(e.kelvin("T_inf_C"), e.pressure(), e.one("RH"), false))
	size := l * w / (2 * (l + w)) // area over perimeter
	// The law counts a horizontal face as a square of four times that size.
	face := transfer.Surface{Air: a, Wall: e.kelvin("T_wall_C"), Emissivity: e.one("eps"), Factor: 1,
		Law: transfer.Buoyant{Length: 4 * size, Orientation: transfer.FacingUp}}
	x := face.Exchange(T, 1)
	ys := air.SaturatedFraction(T, a.P, a.Real)
	d, _ := transfer.Difference(a, T, ys)
	m := air.Mixture((T+a.T)/2, a.P, (ys+a.Y)/2)
	e.check("Gr", transfer.Grashof(size, d, m.KinematicViscosity()))
	e.check("h_W_per_m2K", x.H)
	e.check("Q_conv_W", x.H*l*w*(T-a.T))
	e.check("Q_rad_W", -x.Radiated*l*w)
	e.check("evaporation_kg_per_s", x.Flux*l*w)
}
