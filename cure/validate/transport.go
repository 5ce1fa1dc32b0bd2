package validate

import "github.com/drywright/drywright/cure/air"

// transport is viscosity, conductivity and diffusivity of air, steam and their mixture.
func transport() cases {
	steam := func(e *entry, T []float64) {
		e.check("mu_Pa_s", each(T, func(T float64) float64 { return air.Mixture(T, 100, 1).Viscosity })...)
		e.check("k_W_per_mK", each(T, func(T float64) float64 { return air.Mixture(T, 100, 1).Conductivity })...)
	}
	return cases{
		"TRN-*": byTemperature,
		"TRN-MIX-*": func(e *entry) {
			checkState(e, e.state(air.FromHumidityRatio(e.kelvin("T_C"), e.pressure(), e.one("W"), false)))
		},
		"TRN-STEAM":     func(e *entry) { steam(e, e.kelvins("T_C")) },
		"TRN-INC-STEAM": func(e *entry) { steam(e, e.in("T_K")) },
		"TRN-CEN-14.15": func(e *entry) {
			T, p := e.in("T_K"), e.in("p_Pa")
			e.check("D_m2_per_s", air.Mixture(T[0], p[0], 0).Diffusivity, air.Mixture(T[1], p[1], 0).Diffusivity)
		},
		// Rival fits. Ours, Marrero and Mason's, may lie as far from them as the literature says that the fits differ: 4 % for
		// Massman's, 12 % above Fuller's at 150 degC.
		"TRN-D-MASSMAN": func(e *entry) { rivalDiffusivity(e, relative(0.05), "another fit than ours; the two differ by 4 %") },
		"TRN-D-FULLER": func(e *entry) {
			rivalDiffusivity(e, relative(0.125), "another fit than ours, 11 % below it at 150 degC as its note says")
		},
	}
}

func rivalDiffusivity(e *entry, t tolerance, reason string) {
	e.richer("D_m2_per_s", t, reason, each(e.kelvins("T_C"), func(T float64) float64 {
		return air.Mixture(T, e.pressure(), 0).Diffusivity
	})...)
}
