package material

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Fibres are the fibres that are flocked, each with its standard regain at 65 % relative humidity. The default pile leaves
// the fibre's water out, so that older jobs keep their answers; picking a record fills it in.
func Fibres() []Fibre {
	base := job.Default().Pile
	var records []Fibre
	for _, f := range []struct {
		id                    string
		density, heatCapacity float64
		regain                float64 // at 65 % relative humidity, kg/kg
	}{
		{"polyamide", 1140, 1600, 0.0425},
		{"polyester", 1380, 1200, 0.004},
		{"viscose", 1510, 1400, 0.12},
		{"acrylic", 1170, 1500, 0.015},
	} {
		p := *base
		p.Record, p.FibreDensity, p.FibreHeatCapacity, p.Regain = f.id, f.density, f.heatCapacity, f.regain
		at := "materials.fibre." + f.id + "."
		records = append(records, Fibre{ID: f.id, Label: words.Key(at + "label"), Note: words.Key(at + "note"), Source: words.Key(at + "source"),
			Cautions: []Caution{FibreDust},
			Sets: []string{"record", "fibre_density_kg_per_m3", "fibre_heat_capacity_J_per_kgK",
				"regain_at_65_percent_kg_per_kg"},
			Pile: p})
	}
	return records
}
