package material

import "github.com/drywright/drywright/cure/job"

// substance is one line of the table of part materials.
type substance struct {
	id, label    string
	density      float64 // kg/m3
	conductivity float64 // W/(m K)
	heatCapacity float64 // J/(kg K)
	emissivity   float64
	limit        float64 // degC
	note, source string
	cautions     []Caution
}

// Parts are the materials that parts are made of. Emissivities are those of handbook tables (plastic, wood, rubber and
// paper 0.8 to 0.95, oxidised steel 0.74 to 0.82, stainless 0.16, bright aluminium 0.05 to 0.1).
func Parts() []Part {
	base := job.Default().Part
	var records []Part
	for _, s := range substances() {
		p := base
		p.Record, p.Density, p.Conductivity, p.HeatCapacity = s.id, s.density, s.conductivity, s.heatCapacity
		p.BackEmissivity, p.LimitTemperature = s.emissivity, celsius(s.limit)
		cautions := s.cautions
		if cautions == nil {
			cautions = []Caution{}
		}
		records = append(records, Part{ID: s.id, Label: s.label, Note: s.note, Source: s.source, Cautions: cautions,
			Sets: []string{"record", "density_kg_per_m3", "heat_capacity_J_per_kgK", "conductivity_W_per_mK",
				"back_emissivity",
				"limit_temperature_K"},
			Part: p})
	}
	return records
}

func substances() []substance {
	const board = "limit: glue and resin, " + fromMemory
	const metal = "limit: the flocked coat rather than the metal, " + fromMemory
	plastic := []Caution{Decomposition}
	damp := []Caution{Decomposition, DampPlastic}
	pores := []Caution{OpenPores}
	return []substance{
		{"plywood", "Plywood", 700, 0.17, 1600, 0.9, 80, "Birch is 650 to 700 kg/m³.", designValues + "; " + board,
			pores},
		{"mdf", "Fibreboard (MDF)", 800, 0.18, 1700, 0.9, 80,
			"Best at 5 to 7 % moisture: edges crack and steam delaminates it when heated fast.", designValues + "; " +
				board, pores},
		{"paperboard", "Paperboard", 775, 0.12, 1400, 0.9, 110, "Solid bleached board.",
			"density 700 to 850 kg/m³ (board handbooks, from memory); other numbers " + fromMemory, pores},
		{"aluminium", "Aluminium", 2800, 160, 880, 0.08, 150,
			"Bright sheet; anodised has an emissivity of 0.55 to 0.84.",
			designValues + "; " + metal, nil},
		{"steel", "Steel", 7800, 50, 450, 0.78, 200, "Oxidised surface.", designValues + "; " + metal, nil},
		{"stainless", "Stainless steel", 7900, 17, 460, 0.16, 200, "", designValues + "; " + metal, nil},
		{"glass", "Soda-lime glass", 2500, 1.0, 750, 0.9, 100, "Cracks when heated or cooled unevenly.",
			designValues + "; limit and emissivity " + fromMemory, nil},
		{"abs", "ABS", 1040, 0.25, 1300, 0.9, 70, "", crawford + "; " + handbookHeat, plastic},
		{"pp", "Polypropylene (PP)", 910, 0.22, 1800, 0.9, 90, "Needs a pretreatment to be wetted.", designValues +
			"; " + handbookHeat,
			plastic},
		{"pe-hd", "Polyethylene (PE-HD)", 980, 0.5, 1800, 0.9, 55,
			"Needs a pretreatment to be wetted; other tables give 0.25 W/(m·K).",
			designValues + "; " + handbookHeat, plastic},
		{"ps", "Polystyrene (PS)", 1050, 0.16, 1300, 0.9, 50, "", designValues + "; " + handbookHeat, plastic},
		{"pc", "Polycarbonate (PC)", 1200, 0.2, 1200, 0.9, 120, "", designValues + "; " + handbookHeat, damp},
		{"pa", "Polyamide (PA 6)", 1150, 0.25, 1600, 0.9, 80, "", designValues + "; " + handbookHeat, damp},
		{"pvc-u", "PVC, rigid", 1390, 0.17, 900, 0.9, 50, "", designValues + "; " + handbookHeat,
			[]Caution{Decomposition, HydrogenChloride}},
		{"epdm", "EPDM rubber", 1150, 0.25, 1000, 0.9, 130,
			"Sulfur-cured; peroxide-cured stands 160 °C. Unfilled rubber has up to 2000 J/(kg·K).",
			designValues + "; limit from rubber handbooks", nil},
	}
}
