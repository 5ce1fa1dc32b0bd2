package job

func crosslinkingFields() []Field {
	const at = "film.adhesive.crosslinking."
	return []Field{
		{Path: at + "order",
			Low: 0.5, High: 3, UsualLow: 1, UsualHigh: 2, Default: 1,
		},
		Field{Path: at + "frequency_factor_per_s",
			Low: 1e-8, High: 1e35, UsualLow: 1e4, UsualHigh: 1e12, Default: 1.2494e8,
		}.in(frequencyFactor()),
		Field{Path: at + "activation_energy_J_per_mol",
			Low: 10e3, High: 200e3, UsualLow: 45e3, UsualHigh: 120e3, Default: 76e3,
		}.in(molarEnergy()),
		Field{Path: at + "schedule.conversion",
			Low: 0.5, High: 0.999, UsualLow: 0.9, UsualHigh: 0.98, Default: 0.95,
			Source: commonPractice,
		}.in(fraction()),
		Field{Path: at + "schedule.pairs[].temperature_K",
			Low: 273.15, High: 523.15, UsualLow: 293.15, UsualHigh: 433.15, Default: 393.15,
			Source: commonPractice,
		}.in(temperature()),
		Field{Path: at + "schedule.pairs[].time_s",
			Low: 1, High: 90 * day, UsualLow: 120, UsualHigh: 7 * day, Default: 300,
		}.in(minutes()),
		Field{Path: at + "autocatalysis.frequency_factor_per_s",
			Low: 1e-8, High: 1e35, UsualLow: 1e4, UsualHigh: 1e12, Default: 1.2494e8,
		}.in(frequencyFactor()),
		Field{Path: at + "autocatalysis.activation_energy_J_per_mol",
			Low: 10e3, High: 200e3, UsualLow: 40e3, UsualHigh: 120e3, Default: 76e3,
		}.in(molarEnergy()),
		{Path: at + "autocatalysis.exponent",
			Low: 0.1, High: 3, UsualLow: 0.3, UsualHigh: 1.5, Default: 1,
		},
		Field{Path: at + "hindering_water_kg_per_kg",
			Low: 0.001, High: 10, UsualLow: 0.03, UsualHigh: 0.3, Default: 0.1,
			Optional: true,
		}.in(waterContent()),
	}
}

func vitrificationFields() []Field {
	const at = "film.adhesive.crosslinking.vitrification."
	return []Field{
		Field{Path: at + "tg_uncured_K",
			Low: 173.15, High: 373.15, UsualLow: 223.15, UsualHigh: 283.15, Default: 263.15,
		}.in(temperature()),
		Field{Path: at + "tg_cured_K",
			Low: 173.15, High: 523.15, UsualLow: 253.15, UsualHigh: 383.15, Default: 313.15,
		}.in(temperature()),
		{Path: at + "lambda",
			Low: 0.05, High: 1, UsualLow: 0.3, UsualHigh: 0.7, Default: 0.5,
		},
		Field{Path: at + "diffusion_rate_at_tg_per_s",
			Low: 1e-12, High: 1e6, UsualLow: 1e-6, UsualHigh: 1e-2, Default: 1e-4,
		}.in(frequencyFactor()),
		{Path: at + "wlf_c1",
			Low: 1, High: 60, UsualLow: 10, UsualHigh: 25, Default: 17.44,
		},
		Field{Path: at + "wlf_c2_K",
			Low: 5, High: 300, UsualLow: 30, UsualHigh: 100, Default: 51.6,
		}.in(temperatureStep()),
	}
}
