package job

const kiil = "Kiil (2006), Progress in Organic Coatings 57, 236-250"

func transportFields() []Field {
	const at = "film.adhesive.transport."
	return []Field{
		{Path: at + "mechanism", Label: "How the last water leaves", Text: string(LiquidDiffusion),
			Choices: []Choice{
				{string(LiquidDiffusion), "through the closed polymer"},
				{string(PorousSkin), "as vapour through a dry, porous skin"},
			},
			Source: "late drying slows with the room's humidity under a porous skin and hardly otherwise (" + kiil + ")",
			Effect: "A porous skin makes the late drying hang on the humidity of the air.",
			Help: "Soft particles flow together and the last water diffuses through the polymer. Hard or filled ones leave " +
				"pores, through which it goes as vapour while a dry front moves inwards.",
		},
		Field{Path: at + "skin_vapour_diffusivity_m2_per_s", Label: "Diffusivity of vapour in the skin",
			Low: 1e-8, High: 2e-5, UsualLow: 5e-7, UsualHigh: 1e-6, Default: 7e-7,
			UsedWhen: &Condition{Path: "mechanism", In: []string{string(PorousSkin)}},
			Source:   "7e-7 m²/s, a factor of 1.4 either way, fitted to drying films (" + kiil + ")",
			Effect:   "The last water leaves sooner.",
			Help:     "Effective diffusivity of vapour in the dry part of the film; free air has 2.5e-5 m²/s.",
		}.in(diffusivity()),
		{Path: at + "reason", Kind: KindText, Label: "Why this mechanism",
			Text:   "Soft particles flow together as they pack, so that the last water has to diffuse through closed polymer.",
			High:   400,
			Source: "free text",
			Effect: "None: it is printed with the answer.",
			Help:   "Why the last water is taken to leave in this way.",
		},
	}
}

func coSolventFields() []Field {
	const at = "film.adhesive.co_solvent."
	return []Field{
		Field{Path: at + "fraction_of_wet_coat", Label: "Co-solvent: share",
			Low: 0, High: 0.5, UsualLow: 0.005, UsualHigh: 0.05, Default: 0.02,
			Source: commonPractice + " (film-forming aids and glycol ethers 0.5 to 5 %)",
			Effect: "More flammable vapour: more exhaust is needed.",
			Help:   "Volatile matter other than water, in parts of the wet mass; the safety data sheet has it.",
		}.in(fraction()),
		Field{Path: at + "lower_flammable_limit_kg_per_m3", Label: "Co-solvent: lower flammable limit",
			Low: 0.005, High: 0.5, UsualLow: 0.035, UsualHigh: 0.08, Default: 0.045,
			Source: fromMemory + " (most organic vapours 40 to 60 g/m³ at 20 °C)",
			Effect: "Less exhaust is needed to stay below a quarter of it.",
			Help: "Mass of its vapour in one cubic metre of air at 20 °C from which on it can burn; the safety data sheet has " +
				"it.",
		}.in(vapourDensity()),
	}
}

func sorptionFields() []Field {
	const at = "film.adhesive.sorption."
	gab := &Condition{Path: "isotherm", In: []string{string(IsothermGAB)}}
	return []Field{
		{Path: at + "isotherm", Label: "Sorption: isotherm", Text: string(IsothermGAB),
			Choices: []Choice{
				{string(IsothermGAB), "GAB: three constants of a measured curve"},
				{string(IsothermFloryHuggins), "Flory-Huggins: one number"},
			},
			Source: commonPractice,
			Effect: "Decides which of the numbers below count.",
			Help:   "Which law says how much water the dry film holds at a humidity.",
		},
		{Path: at + "chi", Label: "Sorption: interaction with water",
			Low: 0.7, High: 8, UsualLow: 1.7, UsualHigh: 4, Default: 2,
			UsedWhen: &Condition{Path: "isotherm", In: []string{string(IsothermFloryHuggins)}},
			Source: "1.83 to 1.89 for a polyurethane network that takes up 8 % in saturated air (Yu, Hearon, Wilson and Maitland " +
				"2011, Smart Materials and Structures 20, 085010); others " + fromMemory,
			Effect: "The dry film holds less water at every humidity.",
			Help:   "Flory and Huggins' parameter chi; one number serves where only the uptake at one humidity is known.",
		},
		Field{Path: at + "heat_of_sorption_J_per_kg", Label: "Sorption: heat",
			Low: 0, High: 1e6, UsualLow: 0, UsualHigh: 300e3, Default: 0,
			Source: fromMemory + " (up to a tenth of the heat of evaporation)",
			Effect: "Drying the last water takes more heat; the film holds less water when warm and more when cold.",
			Help:   "Heat that binds water to the film beyond that of condensation. The isotherm stands at 25 °C.",
		}.in(specificHeat()),
		Field{Path: at + "monolayer_kg_per_kg", Label: "Sorption: monolayer",
			Low: 0.001, High: 0.2, UsualLow: 0.005, UsualHigh: 0.04, Default: 0.015,
			UsedWhen: gab,
			Source:   fromMemory + " (soft acrylic films)",
			Effect:   "The dry film holds more water at every humidity.",
			Help:     "Monolayer water of the GAB isotherm, in parts of the dry mass.",
		}.in(waterContent()),
		{Path: at + "gab_c", Label: "Sorption: C",
			Low: 1, High: 100, UsualLow: 2, UsualHigh: 20, Default: 8,
			UsedWhen: gab,
			Source:   fromMemory,
			Effect:   "The first water is held more firmly.",
			Help:     "Constant C of the GAB isotherm.",
		},
		{Path: at + "gab_k", Label: "Sorption: K",
			Low: 0.3, High: 0.98, UsualLow: 0.7, UsualHigh: 0.92, Default: 0.85,
			UsedWhen: gab,
			Source:   fromMemory,
			Effect:   "The dry film takes up more water in humid air.",
			Help:     "Constant K of the GAB isotherm.",
		},
	}
}
