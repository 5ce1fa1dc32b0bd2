package material

import "github.com/drywright/drywright/cure/job"

// Fibres are the fibres that are flocked.
func Fibres() []Fibre {
	base := job.Default().Pile
	var records []Fibre
	for _, f := range []struct {
		id, label             string
		density, heatCapacity float64
		note, source          string
	}{
		{"polyamide", "Polyamide 6.6", 1140, 1600,
			"The usual fibre on moulded parts: 0.5 to 1 mm, 3.3 dtex. Holds about 4 % of moisture.",
			"density: textile handbooks; heat capacity: " + designValues + " for polyamide"},
		{"polyester", "Polyester", 1380, 1200, "Hardly takes up moisture: 0.4 %.", "textile handbooks, from memory"},
		{"viscose", "Viscose", 1510, 1400, "Takes up 11 to 13 % of moisture and gives it off in the oven.",
			"textile handbooks, from memory"},
		{"acrylic", "Acrylic fibre", 1170, 1500, "Fast to light; holds 1.5 % of moisture.",
			"textile handbooks, from memory"},
	} {
		p := *base
		p.Record, p.FibreDensity, p.FibreHeatCapacity = f.id, f.density, f.heatCapacity
		records = append(records, Fibre{ID: f.id, Label: f.label, Note: f.note, Source: f.source,
			Cautions: []Caution{FibreDust},
			Sets:     []string{"record", "fibre_density_kg_per_m3", "fibre_heat_capacity_J_per_kgK"}, Pile: p})
	}
	return records
}
