package validate

import "github.com/drywright/drywright/cure/air"

// saturation is the saturation line of water, its latent heat and enthalpies.
func saturation() cases {
	return cases{"SAT-*": byTemperature, "VAP-*": byTemperature,
		"VAP-CP":      func(e *entry) { e.check("cp_J_per_kgK", each(e.kelvins("T_C"), air.VapourHeatCapacity)...) },
		"SAT-IF97-36": boilingPoint, "SAT-BOIL": boilingPoint,
		"SAT-VISC": func(e *entry) { e.check("mu_Pa_s", each(e.kelvins("T_C"), air.WaterViscosity)...) },
	}
}

func boilingPoint(e *entry) { e.check("T_sat_K", each(e.in("p_Pa"), air.SaturationTemperature)...) }

// byTemperature runs entries whose outputs follow from one or more temperatures and a pressure.
func byTemperature(e *entry) {
	var T []float64
	if e.Inputs["T_C"] != nil {
		T = e.kelvins("T_C")
	} else {
		T = e.in("T_K")
	}
	p := e.pressure()
	for _, key := range sorted(e.Outputs) {
		if f := ofTemperature(key); f != nil {
			e.check(key, each(T, func(T float64) float64 { return f(T, p) })...)
		}
	}
}

// ofTemperature are the outputs that a temperature and a pressure determine; nil for others.
func ofTemperature(key string) func(T, p float64) float64 {
	alone := func(f func(T float64) float64) func(T, p float64) float64 {
		return func(T, _ float64) float64 { return f(T) }
	}
	dry := func(f func(m *air.Props) float64) func(T, p float64) float64 {
		return func(T, p float64) float64 { m := air.Mixture(T, p, 0); return f(&m) }
	}
	return map[string]func(T, p float64) float64{
		"p_sat_Pa":           alone(air.SaturationPressure),
		"h_fg_J_per_kg":      alone(air.LatentHeat),
		"h_vapour_kJ_per_kg": alone(func(T float64) float64 { return air.VapourEnthalpy(T) / 1e3 }),
		// Saturated vapour is liquid plus latent heat; VapourEnthalpy is the ideal-gas value and would be 0.5 % high at 1 bar.
		"h_liquid_sat_kJ_per_kg": alone(func(T float64) float64 { return air.LiquidEnthalpy(T) / 1e3 }),
		"h_vapour_sat_kJ_per_kg": alone(func(T float64) float64 { return (air.LiquidEnthalpy(T) + air.LatentHeat(T)) / 1e3 }),
		"enhancement_factor":     air.Enhancement,
		"W_sat":                  func(T, p float64) float64 { return saturatedRatio(T, p, false) },

		"rho":          dry(func(m *air.Props) float64 { return m.Density }),
		"mu_Pa_s":      dry(func(m *air.Props) float64 { return m.Viscosity }),
		"k_W_per_mK":   dry(func(m *air.Props) float64 { return m.Conductivity }),
		"cp_J_per_kgK": dry(func(m *air.Props) float64 { return m.HeatCapacity }),
		"Pr":           dry(func(m *air.Props) float64 { return m.Prandtl() }),
		"nu_m2_per_s":  dry(func(m *air.Props) float64 { return m.KinematicViscosity() }),
		"D_m2_per_s":   dry(func(m *air.Props) float64 { return m.Diffusivity }),
	}[key]
}

// saturatedRatio is the humidity ratio of saturated air; real includes the enhancement factor.
func saturatedRatio(T, p float64, real bool) float64 {
	return air.State{T: T, P: p, Y: air.SaturatedFraction(T, p, real)}.HumidityRatio()
}
