package validate

import "strings"

// suffix is a unit as the keys of the data end in it, and as it is printed.
type suffix struct{ key, unit string }

// suffixes lists the units of the data, longer ones before those that they end in.
var suffixes = [...]suffix{
	{"_J_per_kg_mixtureK", "J/(kg K)"}, {"_J_per_kgdaK", "J/(kg K)"}, {"_J_per_kgda", "J/kg dry air"},
	{"_m3_per_kgda", "m3/kg dry air"}, {"_m3_per_kg", "m3/kg"}, {"_kJ_per_kg", "kJ/kg"}, {"_J_per_kgK", "J/(kg K)"},
	{"_J_kgK", "J/(kg K)"}, {"_J_per_kg", "J/kg"}, {"_W_per_m2K4", "W/(m2 K4)"}, {"_W_per_m2K", "W/(m2 K)"},
	{"_W_m2K", "W/(m2 K)"}, {"_W_per_m2", "W/m2"}, {"_W_per_mK", "W/(m K)"}, {"_W_mK", "W/(m K)"}, {"_W_per_m", "W/m"},
	{"_kJ_m2K", "kJ/(m2 K)"}, {"_kmol_per_m2s", "kmol/(m2 s)"}, {"_kmol_m2s", "kmol/(m2 s)"},
	{"_kg_per_m2s", "kg/(m2 s)"}, {"_kg_m2s", "kg/(m2 s)"}, {"_kg_per_m2h", "kg/(m2 h)"}, {"_kg_m2h", "kg/(m2 h)"},
	{"_kg_s_m", "kg/(s m)"}, {"_kg_per_m2", "kg/m2"}, {"_kg_per_m3", "kg/m3"}, {"_kg_m3", "kg/m3"},
	{"_kg_per_h_at_saturation", "kg/h"}, {"_kg_per_day", "kg/day"}, {"_kg_day", "kg/day"}, {"_kg_per_h", "kg/h"},
	{"_kg_h", "kg/h"}, {"_kg_per_s", "kg/s"}, {"_kg_s", "kg/s"}, {"_kg_per_kg", "kg/kg"}, {"_kg_kg", "kg/kg"},
	{"_m3_per_h", "m3/h"}, {"_m2_per_s", "m2/s"}, {"_m2_s", "m2/s"}, {"_m_per_s2", "m/s2"}, {"_m_per_s", "m/s"},
	{"_m_m_s", "m/s"}, {"_m_s", "m/s"}, {"_J_per_molK", "J/(mol K)"}, {"_kJ_mol", "kJ/mol"}, {"_g_per_mol", "g/mol"},
	{"_g_m2", "g/m2"}, {"_g_cm3", "g/cm3"}, {"_1_per_ks", "1/ks"}, {"_per_s", "1/s"}, {"_s_m2_kg", "m2 s/kg"},
	{"_Pa_s", "Pa s"}, {"_Pa", "Pa"}, {"_um", "um"}, {"_mm", "mm"}, {"_pct", "%"}, {"_percent", "%"}, {"_days", "days"},
	{"_min", "min"}, {"_ks", "ks"}, {"_C", "degC"}, {"_K", "K"}, {"_W", "W"}, {"_h", "h"}, {"_s", "s"}, {"_m", "m"},
}

// whole lists keys that look as if they ended in a unit but do not, and those whose unit does not stand at the end.
var whole = [...]struct{ key, name, unit string }{
	{"T_s_C", "T_s", "degC"}, {"h_m_m_per_s", "h_m", "m/s"}, {"h_x", "h_x", "W/(m2 K)"}, {"h_avg", "h_avg", "W/(m2 K)"},
	{"rho", "rho", "kg/m3"}, {"diffusivity_1e-7_m2_s", "diffusivity", "1e-7 m2/s"}, {"kJ_m2K", "heat of a plate", "kJ/(m2 K)"},
	{"theta_s", "theta_s", ""}, {"example_25C_50RH_kg_m2h", "flux", "kg/(m2 h)"},
	{"residual_after_ambient_kg_per_kg", "residual after ambient", "kg/kg"},
	{"air_heating_W_at_207.79_kg_per_h", "air heating at 207.79 kg/h", "W"}, {"Y_out", "Y_out", "kg/kg"},
	{"W", "humidity ratio", "kg/kg"}, {"W_out", "W_out", "kg/kg"}, {"W_oven", "W_oven", "kg/kg"},
	{"W_room", "W_room", "kg/kg"}, {"W_sat", "W_sat", "kg/kg"}, {"W_steady", "W_steady", "kg/kg"}, {"R_m", "R", "m"},
	{"k", "k", "W/(m K)"}, {"D", "D", "m2/s"}, {"nu", "nu", "m2/s"},
}

// split divides a key of the data into the name of a quantity and its unit.
func split(key string) (name, unit string) {
	for _, w := range whole {
		if w.key == key {
			return w.name, w.unit
		}
	}
	for _, s := range suffixes {
		if n, ok := strings.CutSuffix(key, s.key); ok && n != "" {
			return n, s.unit
		}
	}
	return key, ""
}
