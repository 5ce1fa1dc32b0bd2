package validate

import (
	"strings"

	"github.com/drywright/drywright/cure/air"
)

// moistAir is the state of moist air, from rooms to ovens.
func moistAir() cases {
	return cases{
		"PSY-*": moistState, "OVST-*": moistState, "OVWB-*": moistState,
		"PSY-SATW-IDEAL": byTemperature, "PSY-F*": byTemperature,
		"PSY-SATW-ASHRAE": func(e *entry) {
			e.check("W_sat", each(e.kelvins("T_C"), func(T float64) float64 { return saturatedRatio(T, e.pressure(), true) })...)
		},
		"PSY-SATH-ASHRAE": func(e *entry) {
			e.check("h_sat_J_per_kgda", each(e.kelvins("T_C"), func(T float64) float64 {
				return e.state(air.FromRelativeHumidity(T, e.pressure(), 1, true)).Enthalpy()
			})...)
		},
		"PSY-STULL-*": func(e *entry) {
			s := e.state(air.FromRelativeHumidity(e.kelvin("T_db_C"), e.pressure(), e.one("RH"), false))
			e.check("T_wb_thermodynamic_C", s.WetBulb()-zero)
		},
		"PSY-GEA-9.3-1": func(e *entry) {
			T, p := e.kelvin("T_C"), e.pressure()
			s := e.state(air.FromDewPoint(T, p, air.SaturationTemperature(e.one("p_v_Pa")), false))
			e.check("W", s.HumidityRatio())
			e.check("W_sat", saturatedRatio(T, p, false))
			e.check("RH", s.RelativeHumidity())
		},
		"PSY-GEA-9.3-2": func(e *entry) {
			s := e.state(air.FromDewPoint(e.kelvin("T_db_C"), e.pressure(), e.kelvin("T_dp_C"), false))
			e.check("W", s.HumidityRatio())
			// Humid heat counts per kilogram of dry air.
			e.check("cs_J_per_kgdaK", s.SpecificHeat()*(1+s.HumidityRatio()))
			e.check("v_m3_per_kgda", s.SpecificVolume())
		},
		"PSY-TRE-7.8": func(e *entry) {
			inlet := e.state(air.FromHumidityRatio(e.kelvin("T_db_C"), e.pressure(), e.one("W"), false))
			out := e.state(air.FromHumidityRatio(e.kelvin("T_out_C"), e.pressure(), e.one("W_out"), false))
			e.check("T_wb_difference_K", out.WetBulb()-inlet.WetBulb())
		},
		"PSY-03": func(e *entry) {
			s := e.state(air.FromWetBulb(e.kelvin("T_db_C"), e.pressure(), e.kelvin("T_wb_C"), true))
			e.check("W_kg_kg", s.HumidityRatio())
		},
		"PSY-04": func(e *entry) {
			e.check("W_kg_kg", wettedAir(e, e.kelvin("T_db_C"), e.kelvin("T_wb_C")).HumidityRatio())
		},
		"PSY-05": func(e *entry) {
			s := wettedAir(e, e.one("T_db_K"), e.one("T_wb_K"))
			e.check("W_kg_kg", s.HumidityRatio())
			e.check("RH", s.RelativeHumidity())
		},
		"PSY-06": func(e *entry) {
			wet := e.kelvin("T_wet_surface_C")
			e.richer("T_air_C", within(2.3), "the book takes the vapour's density at the surface's temperature, ours at the mean of "+
				"surface and air: 6 % of the difference of 37.5 K", root(wet+20, wet+60, func(T float64) float64 { return wet - sealed(e, dryAir(T), wick).Film })-zero)
		},
		"EVP-DEW": dewCriterion,
	}
}

// moistState runs entries that give a dry bulb with a humidity ratio or a wet bulb.
func moistState(e *entry) {
	T, p := e.kelvin("T_db_C"), e.pressure()
	// The computed entries mix ideally; those of ASHRAE RP-1485 are real-gas.
	real := strings.HasPrefix(e.ID, "OVST-RP1485")
	var s air.State
	if _, ok := e.Inputs["W"]; ok {
		s = e.state(air.FromHumidityRatio(T, p, e.one("W"), real))
	} else {
		s = e.state(air.FromWetBulb(T, p, e.kelvin("T_wb_C"), real))
	}
	checkState(e, s)
}

// checkState compares whatever outputs a state of moist air has.
func checkState(e *entry, s air.State) {
	for _, key := range sorted(e.Outputs) {
		if f := ofState(key); f != nil {
			e.check(key, f(s))
		}
	}
}

// ofState are the outputs of one state of moist air; nil for others.
func ofState(key string) func(s air.State) float64 {
	moist := func(f func(m *air.Props) float64) func(s air.State) float64 {
		return func(s air.State) float64 { m := s.Transport(); return f(&m) }
	}
	return map[string]func(s air.State) float64{
		"W":                    air.State.HumidityRatio,
		"T_dp_C":               func(s air.State) float64 { return s.DewPoint() - zero },
		"T_wb_C":               func(s air.State) float64 { return s.WetBulb() - zero },
		"RH":                   air.State.RelativeHumidity,
		"h_J_per_kgda":         air.State.Enthalpy,
		"v_m3_per_kgda":        air.State.SpecificVolume,
		"rho_kg_per_m3":        air.State.Density,
		"rho":                  air.State.Density,
		"cp_J_per_kg_mixtureK": air.State.SpecificHeat,
		"mu_Pa_s":              moist(func(m *air.Props) float64 { return m.Viscosity }),
		"k_W_per_mK":           moist(func(m *air.Props) float64 { return m.Conductivity }),
		"Pr":                   moist(func(m *air.Props) float64 { return m.Prandtl() }),
		"Sc":                   moist(func(m *air.Props) float64 { return m.Schmidt() }),
		"Le":                   moist(func(m *air.Props) float64 { return m.Lewis() }),
	}[key]
}

// wick is the coefficient of a wet wick in a stream of air [W/(m2 K)]; its temperature does not hang on it.
const wick = 30

// wettedAir is the air of temperature T in which a wet surface without radiation, as a wet bulb is, shows the temperature
// wet: a film is dried in one humidity after the other.
func wettedAir(e *entry, T, wet float64) air.State {
	p := e.pressure()
	full := saturatedRatio(wet, p, false)
	low := max(0, full-0.0006*(T-wet)) // 6e-4 per kelvin is more than cp/h_fg
	w := root(low, full, func(w float64) float64 {
		return wet - sealed(e, e.state(air.FromHumidityRatio(T, p, w, false)), wick).Film
	})
	return e.state(air.FromHumidityRatio(T, p, w, false))
}

// dewCriterion: a part takes dew when it is colder than the dew point.
func dewCriterion(e *entry) {
	part := e.kelvin("part_T_C")
	var dew, wet []float64
	for _, w := range e.in("W") {
		s := e.state(air.FromHumidityRatio(393.15, atmosphere, w, false))
		dew = append(dew, s.DewPoint()-zero)
		if s.DewPoint() > part {
			wet = append(wet, 1)
		} else {
			wet = append(wet, 0)
		}
	}
	e.check("T_dp_C", dew...)
	e.check("condenses", wet...)
}
