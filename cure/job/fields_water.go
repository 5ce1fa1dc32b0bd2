package job

import "github.com/drywright/drywright/cure/words"

func transportFields() []Field {
	const at = "film.adhesive.transport."
	return []Field{
		{Path: at + "mechanism", Text: string(LiquidDiffusion),
			Choices: choices(LiquidDiffusion, PorousSkin),
		},
		Field{Path: at + "skin_vapour_diffusivity_m2_per_s",
			Low: 1e-8, High: 2e-5, UsualLow: 5e-7, UsualHigh: 1e-6, Default: 7e-7,
			UsedWhen: &Condition{Path: "mechanism", In: []string{string(PorousSkin)}},
		}.in(diffusivity()),
		{Path: at + "reason", Kind: KindText,
			Text: words.Told("Soft particles flow together as they pack, so that the last water has to diffuse through closed polymer."),
			High: 400,
		},
	}
}

func coSolventFields() []Field {
	const at = "film.adhesive.co_solvent."
	return []Field{
		Field{Path: at + "fraction_of_wet_coat",
			Low: 0, High: 0.5, UsualLow: 0.005, UsualHigh: 0.05, Default: 0.02,
		}.in(fraction()),
		Field{Path: at + "lower_flammable_limit_kg_per_m3",
			Low: 0.005, High: 0.5, UsualLow: 0.035, UsualHigh: 0.08, Default: 0.045,
		}.in(vapourDensity()),
	}
}

func sorptionFields() []Field {
	const at = "film.adhesive.sorption."
	gab := &Condition{Path: "isotherm", In: []string{string(IsothermGAB)}}
	return []Field{
		{Path: at + "isotherm", Text: string(IsothermGAB),
			Choices: choices(IsothermGAB, IsothermFloryHuggins),
			Source:  commonPractice,
		},
		{Path: at + "chi",
			Low: 0.7, High: 8, UsualLow: 1.7, UsualHigh: 4, Default: 2,
			UsedWhen: &Condition{Path: "isotherm", In: []string{string(IsothermFloryHuggins)}},
		},
		Field{Path: at + "heat_of_sorption_J_per_kg",
			Low: 0, High: 1e6, UsualLow: 0, UsualHigh: 300e3, Default: 0,
		}.in(specificHeat()),
		Field{Path: at + "monolayer_kg_per_kg",
			Low: 0.001, High: 0.2, UsualLow: 0.005, UsualHigh: 0.04, Default: 0.015,
			UsedWhen: gab,
		}.in(waterContent()),
		{Path: at + "gab_c",
			Low: 1, High: 100, UsualLow: 2, UsualHigh: 20, Default: 8,
			UsedWhen: gab,
			Source:   fromMemory,
		},
		{Path: at + "gab_k",
			Low: 0.3, High: 0.98, UsualLow: 0.7, UsualHigh: 0.92, Default: 0.85,
			UsedWhen: gab,
			Source:   fromMemory,
		},
	}
}
