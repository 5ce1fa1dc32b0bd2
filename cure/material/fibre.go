package material

import "github.com/drywright/drywright/cure/job"

// Fibres are the fibres that are flocked, each with its standard regain at 65 % relative humidity. The default pile leaves
// the fibre's water out, so that older jobs keep their answers; picking a record fills it in.
func Fibres() []Fibre {
	base := job.Default().Pile
	var records []Fibre
	for _, f := range []struct {
		id, label             string
		density, heatCapacity float64
		regain                float64 // at 65 % relative humidity, kg/kg
		note, source          string
	}{
		{"polyamide", "Polyamide 6.6", 1140, 1600, 0.0425,
			"The usual fibre on moulded parts: 0.5 to 1 mm, 3.3 dtex. Holds 4.0 to 4.5 % of moisture.",
			"density: textile handbooks; heat capacity: " + designValues + " for polyamide; regain: " + handbookRegain},
		{"polyester", "Polyester", 1380, 1200, 0.004, "Hardly takes up moisture: 0.4 %.", handbookRegain},
		{"viscose", "Viscose", 1510, 1400, 0.12, "Takes up 11 to 13 % of moisture and gives it off in the oven.",
			handbookRegain},
		{"acrylic", "Acrylic fibre", 1170, 1500, 0.015, "Fast to light; holds 1.5 % of moisture.", handbookRegain},
	} {
		p := *base
		p.Record, p.FibreDensity, p.FibreHeatCapacity, p.Regain = f.id, f.density, f.heatCapacity, f.regain
		records = append(records, Fibre{ID: f.id, Label: f.label, Note: f.note, Source: f.source,
			Cautions: []Caution{FibreDust},
			Sets: []string{"record", "fibre_density_kg_per_m3", "fibre_heat_capacity_J_per_kgK",
				"regain_at_65_percent_kg_per_kg"},
			Pile: p})
	}
	return records
}

const handbookRegain = "textile handbooks, from memory"
