package material

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// substance is one line of the table of part materials.
type substance struct {
	id           string
	density      float64 // kg/m3
	conductivity float64 // W/(m K)
	heatCapacity float64 // J/(kg K)
	emissivity   float64
	limit        float64 // degC
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
		at := "materials.part." + s.id + "."
		records = append(records, Part{ID: s.id, Label: words.Key(at + "label"), Note: words.Maybe(at + "note"), Source: words.Key(at + "source"), Cautions: cautions,
			Sets: []string{"record", "density_kg_per_m3", "heat_capacity_J_per_kgK", "conductivity_W_per_mK",
				"back_emissivity",
				"limit_temperature_K"},
			Part: p})
	}
	return records
}

func substances() []substance {
	plastic := []Caution{Decomposition}
	damp := []Caution{Decomposition, DampPlastic}
	pores := []Caution{OpenPores}
	return []substance{
		{"plywood", 700, 0.17, 1600, 0.9, 80, pores},
		{"mdf", 800, 0.18, 1700, 0.9, 80, pores},
		{"paperboard", 775, 0.12, 1400, 0.9, 110, pores},
		{"aluminium", 2800, 160, 880, 0.08, 150, nil},
		{"steel", 7800, 50, 450, 0.78, 200, nil},
		{"stainless", 7900, 17, 460, 0.16, 200, nil},
		{"glass", 2500, 1.0, 750, 0.9, 100, nil},
		{"abs", 1040, 0.25, 1300, 0.9, 70, plastic},
		{"pp", 910, 0.22, 1800, 0.9, 90, plastic},
		{"pe-hd", 980, 0.5, 1800, 0.9, 55, plastic},
		{"ps", 1050, 0.16, 1300, 0.9, 50, plastic},
		{"pc", 1200, 0.2, 1200, 0.9, 120, damp},
		{"pa", 1150, 0.25, 1600, 0.9, 80, damp},
		{"pvc-u", 1390, 0.17, 900, 0.9, 50, []Caution{Decomposition, HydrogenChloride}},
		{"epdm", 1150, 0.25, 1000, 0.9, 130, nil},
	}
}
