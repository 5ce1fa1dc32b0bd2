package job

// Where a number comes from, in the words that the page prints.
const (
	commonPractice = "common practice, no source"
	fromMemory     = "typical, from memory"
)

func documentFields() []Field {
	return []Field{
		{Path: "version", Group: "document", Label: "Version", Integer: true,
			Low: 1, High: Version, UsualLow: 1, UsualHigh: Version, Default: Version,
			Source: "this program",
			Effect: "Later versions know more fields; older documents are read for ever.",
			Help:   "Version of the document's form. Every document states it.",
		},
		{Path: "name", Group: "document", Kind: KindText, Label: "Name", Text: "Untitled job",
			High:   200,
			Source: "free text",
			Effect: "Appears on the printed sheet and in the list of jobs.",
			Help:   "What the job is called.",
		},
		{Path: "note", Group: "document", Kind: KindText, Label: "Note",
			High:   4000,
			Source: "free text",
			Effect: "Printed with the job, not used in the computation.",
			Help:   "Anything worth keeping with the job: the part, the lot, who measured what.",
		},
	}
}

func targetFields() []Field {
	return []Field{
		Field{Path: "targets.touch_water_kg_per_kg", Label: "Dry to touch: water above equilibrium",
			Low: 0.002, High: 0.2, UsualLow: 0.02, UsualHigh: 0.05, Default: 0.03,
			Source: commonPractice,
			Effect: "The film counts as dry to touch earlier.",
			Help: "The film is dry to touch when the outer twentieth of its solids holds no more water than it " +
				"would in balance with the air, plus this much, in parts of its dry mass.",
		}.in(waterContent()),
		Field{Path: "targets.dry_water_kg_per_kg", Label: "Dry through: water above equilibrium",
			Low: 0.002, High: 0.2, UsualLow: 0.01, UsualHigh: 0.04, Default: 0.02,
			Source: commonPractice,
			Effect: "The film counts as dry through earlier.",
			Help: "The film is dry through when its mean water content is no more than its balance with the air " +
				"plus this much, in parts of its dry mass.",
		}.in(waterContent()),
		Field{Path: "targets.tack_conversion", Label: "Tack-free: conversion",
			Low: 0.01, High: 0.9, UsualLow: 0.1, UsualHigh: 0.6, Default: 0.2,
			Source: commonPractice + "; epoxy-amine coatings were found tack-free from 0.6 on (Bashir 2023, " +
				"Coatings 13(3) 592)",
			Effect: "Tack-free comes later, most of all in a cold room.",
			Help:   "Share of the crosslinker that must have reacted in the outer film before it stops being tacky.",
		}.in(fraction()),
		Field{Path: "targets.full_conversion", Label: "Cured: conversion",
			Low: 0.5, High: 0.999, UsualLow: 0.9, UsualHigh: 0.98, Default: 0.95,
			Source: commonPractice,
			Effect: "Cured comes later; each further nine takes as long as the first.",
			Help:   "Share of the crosslinker that must have reacted everywhere before the film counts as cured.",
		}.in(fraction()),
		Field{Path: "targets.handling_temperature_K", Label: "Cool enough to handle",
			Low: 283.15, High: 353.15, UsualLow: 303.15, UsualHigh: 318.15, Default: 313.15,
			Source: commonPractice,
			Effect: "The part counts as cool earlier.",
			Help:   "The whole part must be below this before it is brushed, stacked or packed.",
		}.in(temperature()),
		Field{Path: "targets.open_layer_m", Label: "Packed layer that keeps fibres out",
			Low: 0.5e-6, High: 50e-6, UsualLow: 2e-6, UsualHigh: 10e-6, Default: 5e-6,
			Source: commonPractice,
			Effect: "The open time grows.",
			Help: "Open time ends when the particles at the surface have packed together over this depth, so that " +
				"fibres no longer enter.",
		}.in(filmLength()),
		{Path: "targets.skin_number", Label: "Skin number",
			Low: 1, High: 1000, UsualLow: 5, UsualHigh: 20, Default: 10,
			Source: "ratio of drying to particle diffusion, after Routh and Zimmerman (2004), Chemical Engineering " +
				"Science 59, 2961-2968; the limit is common practice, no source",
			Effect: "Skinning is reported later, or not at all.",
			Help: "Drying speed times wet thickness over the diffusivity of the particles. Above this number a " +
				"skin forms before the film below has dried.",
		},
		Field{Path: "targets.dew_run_off_kg_per_m2", Label: "Dew that runs off",
			Low: 0.005, High: 1, UsualLow: 0.02, UsualHigh: 0.1, Default: 0.05,
			Source: commonPractice,
			Effect: "Condensation is reported later.",
			Help:   "Water condensed on a cold part entering a humid oven, from which on it runs and marks the film.",
		}.in(coatWeight()),
		Field{Path: "targets.near_saturation", Label: "Nearly saturated air",
			Low: 0.5, High: 0.99, UsualLow: 0.8, UsualHigh: 0.95, Default: 0.9,
			Source: commonPractice,
			Effect: "Humid air is reported later.",
			Help:   "Relative humidity from which on the air is reported as too humid to dry in.",
		}.in(fraction()),
	}
}

func numericsFields() []Field {
	return []Field{
		{Path: "numerics.film_cells", Label: "Cells through the film", Integer: true,
			Low: 8, High: 200, UsualLow: 16, UsualHigh: 64, Default: 24,
			Source: "24 cells hold the marks within 0.4 %, 48 within 0.1 % (own study of the grid)",
			Effect: "Finer and slower.",
			Help:   "In how many layers the film is computed.",
		},
		{Path: "numerics.part_cells", Label: "Cells through the part", Integer: true,
			Low: 2, High: 64, UsualLow: 4, UsualHigh: 16, Default: 8,
			Source: "own study of the grid",
			Effect: "Finer and slower.",
			Help:   "In how many layers the part's wall is computed.",
		},
		{Path: "numerics.relative_tolerance", Label: "Relative tolerance",
			Low: 1e-10, High: 1e-4, UsualLow: 1e-7, UsualHigh: 1e-4, Default: 1e-5,
			Source: "holds every mark within 0.1 % of a run at 1e-10 (own study); above 1e-4 large particles near packing are lost in the error",
			Effect: "Faster and coarser.",
			Help:   "Error that the integration in time allows in each step.",
		},
		{Path: "numerics.enhancement_factor", Kind: KindSwitch, Label: "Real-gas saturation pressure", On: true,
			Source: "1.004 at 20 °C and atmospheric pressure",
			Effect: "Saturated air holds about 0.4 % more vapour; switch off to compare with tables for ideal gases.",
			Help:   "Corrects the saturation pressure of water for the presence of air.",
		},
		{Path: "numerics.step_budget", Label: "Step budget", Integer: true,
			Low: 1000, High: 1000000, UsualLow: 10000, UsualHigh: 200000, Default: 100000,
			Source: "a run takes some hundreds to thousands of steps",
			Effect: "A run may take longer before it is given up.",
			Help:   "After this many steps a run is ended and said to be unfinished.",
		},
	}
}
