package job

func staticOvenFields() []Field {
	fields := []Field{
		Field{Path: "static_oven.loaded_after_s", Label: "Loaded after",
			Low: 0, High: 7 * day, UsualLow: 5 * minute, UsualHigh: 2 * hour, Default: 30 * minute,
			Source: commonPractice,
			Effect: "More water leaves in the workshop, less in the oven.",
			Help:   "Time from spraying to closing the oven's door.",
		}.in(minutes()),
		Field{Path: "static_oven.dwell_s", Label: "Time in the oven",
			Low: 30, High: 3 * day, UsualLow: 10 * minute, UsualHigh: hour, Default: 30 * minute,
			Source: commonPractice + " (plastics 60 to 90 °C for 15 to 40 min)",
			Effect: "Drier and further cured at the exit.",
			Help:   "Time from closing the door to taking the parts out.",
		}.in(minutes()),
		Field{Path: "static_oven.set_point_K", Label: "Set-point",
			Low: 273.15, High: 523.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 353.15,
			Source: commonPractice + " (plastics 60 to 90 °C, metal and rubber 100 to 160 °C)",
			Effect: "Faster drying and cure; closer to the part's limit, and to boiling under a skin.",
			Help:   "Air temperature that the oven's control holds.",
		}.in(temperature()),
	}
	fields = append(fields, humidityFields("static_oven.humidity", ovenMoist())...)
	fields = append(fields, transferFields("static_oven.transfer", airFlow{
		kind: Combined, coefficient: 15, usualCoefficient: [2]float64{8, 40}, velocity: 1.5,
		usualVelocity:       [2]float64{0.5, 5},
		coefficientSource:   fromMemory + " (circulating box ovens 10 to 30 W/(m²·K))",
		velocitySource:      commonPractice,
		velocityExplanation: "Speed of the circulating air along the part."})...)
	return append(fields, deadlineField("static_oven", 14*hour), horizonField("static_oven"))
}

func chamberFields() []Field {
	const at = "static_oven.chamber."
	return []Field{
		Field{Path: at + "coated_area_m2", Label: "Coated area in the oven",
			Low: 0.001, High: 500, UsualLow: 0.5, UsualHigh: 20, Default: 4,
			Source: commonPractice,
			Effect: "The cold load pulls the oven down further and for longer.",
			Help:   "Coated faces of the whole load, with the parts behind them.",
		}.in(area()),
		Field{Path: at + "heater_power_W", Label: "Heater power",
			Low: 100, High: 2e6, UsualLow: 3e3, UsualHigh: 60e3, Default: 12e3,
			Source: commonPractice,
			Effect: "The oven recovers faster from a cold load.",
			Help:   "The most that the heater gives to the air.",
		}.in(power()),
		Field{Path: at + "proportional_band_K", Label: "Proportional band",
			Low: 0.5, High: 100, UsualLow: 1, UsualHigh: 10, Default: 3,
			Source: commonPractice,
			Effect: "The heater eases off earlier; the air comes back more slowly.",
			Help:   "How far below the set-point the heater runs at full power.",
		}.in(temperatureStep()),
		Field{Path: at + "air_volume_m3", Label: "Air volume",
			Low: 0.01, High: 1000, UsualLow: 0.5, UsualHigh: 20, Default: 2,
			Source: commonPractice,
			Effect: "Hardly any: air holds little heat.",
			Help:   "Air inside the oven.",
		}.in(volume()),
		Field{Path: at + "make_up_m3_per_s", Label: "Make-up air",
			Low: 0, High: 20, UsualLow: 0.005, UsualHigh: 0.3, Default: 0.02,
			Source: commonPractice,
			Effect: "More heat is lost with the exhaust; the oven recovers more slowly.",
			Help: "Workshop air drawn in, as a volume at the workshop's own temperature; the same dry air leaves " +
				"as exhaust. Where flammable vapour is given off, the code in force sets its least value.",
		}.in(volumeFlow()),
		Field{Path: at + "wall_heat_capacity_J_per_K", Label: "Heat capacity of the walls",
			Low: 100, High: 1e9, UsualLow: 2e4, UsualHigh: 2e6, Default: 150e3,
			Source: fromMemory + " (about 300 kg of sheet, racks and insulation skin)",
			Effect: "Warm walls hold the oven up better under a cold load.",
			Help:   "Heat to warm the oven's inner walls and fittings by one kelvin.",
		}.in(bodyHeatCapacity()),
		Field{Path: at + "wall_exchange_W_per_K", Label: "Exchange between air and walls",
			Low: 0.1, High: 1e6, UsualLow: 20, UsualHigh: 2000, Default: 150,
			Source: fromMemory + " (10 m² at 15 W/(m²·K))",
			Effect: "The walls give their heat back faster.",
			Help:   "Heat that passes between oven air and walls per kelvin.",
		}.in(conductance()),
		Field{Path: at + "wall_loss_W_per_K", Label: "Loss of the walls",
			Low: 0, High: 1e5, UsualLow: 2, UsualHigh: 200, Default: 10,
			Source: fromMemory + " (10 m² behind 50 to 100 mm of insulation, with bridges)",
			Effect: "Less heater power is left for the load.",
			Help:   "Heat lost from the walls to the workshop per kelvin.",
		}.in(conductance()),
		Field{Path: at + "air_at_loading_K", Label: "Oven air at loading",
			Low: 273.15, High: 523.15, UsualLow: 313.15, UsualHigh: 433.15, Default: 343.15,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "The load warms sooner.",
			Help:   "Temperature of the oven air when the door has closed; empty: the set-point.",
		}.in(temperature()),
		Field{Path: at + "wall_at_loading_K", Label: "Oven walls at loading",
			Low: 273.15, High: 523.15, UsualLow: 313.15, UsualHigh: 433.15, Default: 348.15,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "The load warms sooner.",
			Help:   "Temperature of the oven's walls when the door has closed; empty: the set-point.",
		}.in(temperature()),
	}
}

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
