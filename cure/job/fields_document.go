package job

import "github.com/drywright/drywright/cure/words"

// Where numbers come from, where many share it: keys below "sources". Another source is a word of its field.
const (
	commonPractice = "common_practice"
	fromMemory     = "from_memory"
	invoices       = "invoices"
	theFit         = "the_fit"
	freeText       = "free_text"
)

func documentFields() []Field {
	return []Field{
		{Path: "version", Group: "document", Integer: true,
			Low: 1, High: Version, UsualLow: 1, UsualHigh: Version, Default: Version,
		},
		{Path: "name", Group: "document", Kind: KindText, Text: words.Told("Untitled job"),
			High: 200,
		},
		{Path: "note", Group: "document", Kind: KindText,
			High: 4000,
		},
	}
}

func targetFields() []Field {
	return []Field{
		Field{Path: "targets.touch_water_kg_per_kg",
			Low: 0.002, High: 0.2, UsualLow: 0.02, UsualHigh: 0.05, Default: 0.03,
			Source: commonPractice,
		}.in(waterContent()),
		Field{Path: "targets.dry_water_kg_per_kg",
			Low: 0.002, High: 0.2, UsualLow: 0.01, UsualHigh: 0.04, Default: 0.02,
			Source: commonPractice,
		}.in(waterContent()),
		Field{Path: "targets.tack_conversion",
			Low: 0.01, High: 0.9, UsualLow: 0.1, UsualHigh: 0.6, Default: 0.2,
		}.in(fraction()),
		Field{Path: "targets.full_conversion",
			Low: 0.5, High: 0.999, UsualLow: 0.9, UsualHigh: 0.98, Default: 0.95,
			Source: commonPractice,
		}.in(fraction()),
		Field{Path: "targets.handling_temperature_K",
			Low: 283.15, High: 353.15, UsualLow: 303.15, UsualHigh: 318.15, Default: 313.15,
			Source: commonPractice,
		}.in(temperature()),
		Field{Path: "targets.open_layer_m",
			Low: 0.5e-6, High: 50e-6, UsualLow: 2e-6, UsualHigh: 10e-6, Default: 5e-6,
			Source: commonPractice,
		}.in(filmLength()),
		{Path: "targets.skin_number",
			Low: 1, High: 1000, UsualLow: 5, UsualHigh: 20, Default: 10,
		},
		Field{Path: "targets.dew_run_off_kg_per_m2",
			Low: 0.005, High: 1, UsualLow: 0.02, UsualHigh: 0.1, Default: 0.05,
			Source: commonPractice,
		}.in(coatWeight()),
		Field{Path: "targets.near_saturation",
			Low: 0.5, High: 0.99, UsualLow: 0.8, UsualHigh: 0.95, Default: 0.9,
			Source: commonPractice,
		}.in(fraction()),
	}
}

func numericsFields() []Field {
	return []Field{
		{Path: "numerics.film_cells", Integer: true,
			Low: 8, High: 200, UsualLow: 16, UsualHigh: 64, Default: 24,
		},
		{Path: "numerics.part_cells", Integer: true,
			Low: 2, High: 64, UsualLow: 4, UsualHigh: 16, Default: 8,
		},
		{Path: "numerics.relative_tolerance",
			Low: 1e-10, High: 1e-4, UsualLow: 1e-7, UsualHigh: 1e-4, Default: 2e-5,
		},
		{Path: "numerics.enhancement_factor", Kind: KindSwitch, On: true},
		{Path: "numerics.step_budget", Integer: true,
			Low: 1000, High: 1000000, UsualLow: 10000, UsualHigh: 200000, Default: 100000,
		},
	}
}
