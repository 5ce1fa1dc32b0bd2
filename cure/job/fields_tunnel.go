package job

func tunnelFields() []Field {
	return []Field{
		Field{Path: "tunnel.entered_after_s", Label: "Entered after",
			Low: 0, High: 7 * day, UsualLow: 1 * minute, UsualHigh: 30 * minute, Default: 10 * minute,
			Source: commonPractice,
			Effect: "More water leaves in the workshop, less in the tunnel.",
			Help:   "Time from spraying to the tunnel's mouth.",
		}.in(minutes()),
		Field{Path: "tunnel.line_speed_m_per_s", Label: "Line speed",
			Low: 0.02 / 60, High: 30.0 / 60, UsualLow: 0.3 / 60, UsualHigh: 5.0 / 60, Default: 1.0 / 60,
			Source: commonPractice,
			Effect: "More parts an hour, less time in every zone.",
			Help:   "Speed of the conveyor.",
		}.in(lineSpeed()),
		deadlineField("tunnel", 14*hour),
		horizonField("tunnel"),
		Field{Path: "tunnel.coated_area_per_m_m2_per_m", Label: "Coated area on the line",
			Low: 0.001, High: 100, UsualLow: 0.2, UsualHigh: 5, Default: 1,
			Source: commonPractice,
			Effect: "More water and heat pass through every zone; no change where the air is given.",
			Help:   "Coated faces on one metre of the conveyor.",
		}.in(areaPerLength()),
		Field{Path: "tunnel.carrier_return_K", Label: "Carriers come back at",
			Low: 263.15, High: 473.15, UsualLow: 293.15, UsualHigh: 333.15, Default: 313.15,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "A warm carrier takes less heat from the first zone.",
			Help:   "Temperature of racks or hooks when the next part is put on; empty: that of the workshop's air.",
		}.in(temperature()),
		Field{Path: "tunnel.entry_leak_m3_per_s", Label: "Leak at the entry",
			Low: 0, High: 50, UsualLow: 0, UsualHigh: 0.5, Default: 0,
			Source: commonPractice,
			Effect: "The first zone gets drier and has more air to heat.",
			Help:   "Workshop air drawn in through the tunnel's mouth, as a volume at the workshop's own temperature.",
		}.in(volumeFlow()),
		Field{Path: "tunnel.exit_leak_m3_per_s", Label: "Leak at the exit",
			Low: 0, High: 50, UsualLow: 0, UsualHigh: 0.5, Default: 0,
			Source: commonPractice,
			Effect: "The last zone gets drier and has more air to heat.",
			Help:   "Workshop air drawn in through the tunnel's end, as a volume at the workshop's own temperature.",
		}.in(volumeFlow()),
	}
}

func zoneFields() []Field {
	const at = "tunnel.zones[]"
	fields := []Field{
		{Path: at + ".name", Kind: KindText, Label: "Name of the zone", Text: "Zone",
			High:   60,
			Source: "free text",
			Effect: "Appears in pictures and tables.",
			Help:   "What the zone is called.",
		},
		{Path: at + ".kind", Label: "Heats or cools", Text: string(Heated),
			Choices: []Choice{
				{string(Heated), "heated"},
				{string(Cooling), "cooling"},
			},
			Source: commonPractice,
			Effect: "Cooling is counted from the end of the last heated zone.",
			Help:   "Whether the zone heats the part or cools it.",
		},
		Field{Path: at + ".length_m", Label: "Length of the zone",
			Low: 0.05, High: 200, UsualLow: 1, UsualHigh: 10, Default: 4,
			Source: commonPractice,
			Effect: "More time in the zone at the same line speed.",
			Help:   "Heated or cooled length along the conveyor.",
		}.in(length()),
		Field{Path: at + ".air_temperature_K", Label: "Air temperature",
			Low: 273.15, High: 523.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 373.15,
			Source: commonPractice + " (metal and rubber 100 to 160 °C after a milder first zone at about 80 °C)",
			Effect: "Faster drying and cure; closer to the part's limit, and to boiling under a skin.",
			Help:   "Temperature of the zone's air.",
		}.in(temperature()),
	}
	fields = append(fields, humidityFields(at+".humidity", ovenMoist())...)
	fields = append(fields, Field{Path: at + ".wall_temperature_K", Label: "Wall temperature",
		Low: 273.15, High: 573.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 373.15,
		Optional: true, Absent: true,
		Source: commonPractice,
		Effect: "More heat by radiation.",
		Help:   "Mean temperature of the walls that the part sees; empty: that of the air.",
	}.in(temperature()))
	return append(fields, transferFields(at+".transfer", airFlow{
		kind: Given, coefficient: 35, usualCoefficient: [2]float64{15, 80}, velocity: 3, usualVelocity: [2]float64{1,
			15},
		coefficientSource:   fromMemory + " (circulating tunnels 20 to 60 W/(m²·K))",
		velocitySource:      commonPractice,
		velocityExplanation: "Speed of the air along the part."})...)
}

func infraredFields() []Field {
	const at = "tunnel.zones[].infrared."
	absorptivity := func(path, label, help string) Field {
		return Field{Path: at + path, Label: label,
			Low: 0, High: 1, UsualLow: 0.6, UsualHigh: 0.97, Default: 0.9,
			Source: fromMemory + " (adhesive, fibre and plastic 0.8 to 0.95 for medium and long waves; bright metal 0.1 to 0.3)",
			Effect: "More of the radiation warms the part.",
			Help:   help,
		}
	}
	return []Field{
		Field{Path: at + "flux_W_per_m2", Label: "Infrared at the face",
			Low: 0, High: 1e5, UsualLow: 2e3, UsualHigh: 20e3, Default: 5e3,
			Source: fromMemory + " (dark radiators 3 to 10 kW/m², bright ones up to 40)",
			Effect: "Faster warming and drying; closer to the part's limit, and to boiling under a skin.",
			Help: "Radiant heat that arrives at the coated face. Refused where the film could pass 325 °C: no more than its " +
				"absorbed heat can give in the zone's time, nor than the balance with radiation and a given coefficient.",
		}.in(heatFlux()),
		absorptivity("absorptivity", "Absorptivity of the face",
			"Share of the arriving infrared that the fibre tips, or the bare film, take up."),
		Field{Path: at + "share_reaching_film", Label: "Share that reaches the film",
			Low: 0, High: 1, UsualLow: 0, UsualHigh: 0.3, Default: 0.1,
			Source: commonPractice,
			Effect: "The film is warmed past the fibres: faster drying.",
			Help:   "Share of what is absorbed that passes between the fibre tips; without a pile all of it reaches the film.",
		}.in(fraction()),
		Field{Path: at + "back_flux_W_per_m2", Label: "Infrared at the back",
			Low: 0, High: 1e5, UsualLow: 0, UsualHigh: 10e3, Default: 0,
			Source: commonPractice,
			Effect: "The part warms from behind.",
			Help:   "Radiant heat that arrives at the uncoated back.",
		}.in(heatFlux()),
		absorptivity("back_absorptivity", "Absorptivity of the back",
			"Share of the arriving infrared that the uncoated back takes up."),
	}
}

func zoneAirFields() []Field {
	const at = "tunnel.zones[].air."
	return []Field{
		Field{Path: at + "exhaust_m3_per_s", Label: "Exhaust",
			Low: 0, High: 100, UsualLow: 0.03, UsualHigh: 3, Default: 0.3,
			Source: commonPractice,
			Effect: "Drier air, and more heat lost with it. Where flammable vapour is given off, the code in force sets its least " +
				"value.",
			Help: "Air drawn out of the zone, as a volume at the zone's own temperature.",
		}.in(volumeFlow()),
		Field{Path: at + "make_up_m3_per_s", Label: "Make-up air",
			Low: 0, High: 100, UsualLow: 0.03, UsualHigh: 3, Default: 0.25,
			Source: commonPractice,
			Effect: "Drier air, and more air to heat.",
			Help:   "Workshop air led into the zone, as a volume at the workshop's own temperature.",
		}.in(volumeFlow()),
		Field{Path: at + "leak_to_next_m3_per_s", Label: "Leak to the next zone",
			Low: -50, High: 50, UsualLow: -0.3, UsualHigh: 0.3, Default: 0,
			Source: commonPractice,
			Effect: "More of this zone's humid air reaches the next one.",
			Help: "Net flow to the next zone, as a volume at this zone's temperature; below zero it comes from there. The last " +
				"zone leaks to the workshop.",
		}.in(volumeFlow()),
		Field{Path: at + "wall_loss_W_per_K", Label: "Loss of the walls",
			Low: 0, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 40,
			Source: fromMemory + " (40 m² behind 50 to 100 mm of insulation, with bridges)",
			Effect: "More heat for the zone.",
			Help:   "Heat lost through the zone's walls to the workshop per kelvin.",
		}.in(conductance()),
		Field{Path: at + "heater_power_W", Label: "Installed heat",
			Low: 0, High: 1e7, UsualLow: 10e3, UsualHigh: 500e3, Default: 0,
			Source: "0: not checked",
			Effect: "The zone holds its temperature at a higher speed.",
			Help:   "The most that the zone's heater gives to its air; 0: the heat that it needs is not held against it.",
		}.in(power()),
	}
}
