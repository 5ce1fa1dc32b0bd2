package job

// outsideMoist is air of a cool day: 10 degC and 80 % has 6.1 g/kg, 6.7 degC dew point, 8.4 degC wet bulb, 7.5 g/m3. The low
// end is that of a dry winter.
func outsideMoist() moist {
	m := roomMoist()
	m.ratio, m.dewPoint, m.relative, m.wetBulb, m.density = 0.0061, 279.9, 0.8, 281.5, 0.0075
	m.usualRatio, m.usualDew, m.usualRH = [2]float64{0.002, 0.015}, [2]float64{263.15, 293.15}, [2]float64{0.5, 0.95}
	m.usualWetBulb, m.usualDensity = [2]float64{268.15, 295.15}, [2]float64{0.002, 0.017}
	return m
}

func spaceFields() []Field {
	const at = "workshop.space."
	balanced := &Condition{Path: "heat_balance", In: []string{"true"}}
	fields := []Field{
		Field{Path: at + "volume_m3", Label: "Volume of the room",
			Low: 1, High: 1e6, UsualLow: 30, UsualHigh: 3000, Default: 100,
			Source: commonPractice,
			Effect: "The first water of the parts raises the humidity less.",
			Help:   "Air in the room in which the parts dry.",
		}.in(volume()),
		Field{Path: at + "coated_area_m2", Label: "Coated area in the room",
			Low: 0.001, High: 1e5, UsualLow: 1, UsualHigh: 200, Default: 10,
			Source: commonPractice,
			Effect: "The air grows more humid and cooler: everything in the room dries later.",
			Help:   "Coated faces of all parts that dry in the room at once.",
		}.in(area()),
		Field{Path: at + "air_changes_per_s", Label: "Air changes",
			Low: 0, High: 10, UsualLow: 0.2 / hour, UsualHigh: 10 / hour, Default: 0.5 / hour,
			Source: commonPractice + " (closed rooms 0.3 to 1 per hour, with extraction 5 to 20)",
			Effect: "The water of the parts leaves sooner; in winter the room gets colder.",
			Help:   "How often in an hour outside air replaces the room's air.",
		}.in(airChanges()),
		Field{Path: at + "outside[].time_s", Label: "Time from spraying",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 1 * day, Default: 0,
			Source: commonPractice,
			Effect: "This state of the outside air is reached later.",
			Help: "When the outside air has this state. Points are joined by straight lines and the last one holds " +
				"on.",
		}.in(hours()),
		Field{Path: at + "outside[].temperature_K", Label: "Outside temperature",
			Low: 243.15, High: 323.15, UsualLow: 263.15, UsualHigh: 305.15, Default: 283.15,
			Source: commonPractice,
			Effect: "A warmer room, where its heat is balanced.",
			Help:   "Temperature of the air that comes into the room.",
		}.in(temperature()),
	}
	fields = append(fields, humidityFields(at+"outside[].humidity", outsideMoist())...)
	return append(fields, []Field{
		{Path: at + "heat_balance", Kind: KindSwitch, Label: "Balance the heat too",
			Source: commonPractice,
			Effect: "Evaporation, outside air and walls cool the room; heating warms it.",
			Help: "On: the room's temperature follows from its heat. Off: it follows the workshop's air over time, and only " +
				"the humidity is balanced.",
		},
		Field{Path: at + "wall_exchange_W_per_K", Label: "Exchange between air and walls",
			Low: 0, High: 1e7, UsualLow: 100, UsualHigh: 1e4, Default: 400,
			UsedWhen: balanced,
			Source:   fromMemory + " (130 m² of walls, floor and ceiling at 3 W/(m²·K))",
			Effect:   "The walls hold the air's temperature better.",
			Help:     "Heat that passes between the room's air and its walls per kelvin.",
		}.in(conductance()),
		Field{Path: at + "wall_heat_capacity_J_per_K", Label: "Heat capacity of the walls",
			Low: 1e3, High: 1e12, UsualLow: 1e6, UsualHigh: 1e9, Default: 12e6,
			UsedWhen: balanced,
			Source:   fromMemory + " (130 m², the inner 5 cm of masonry)",
			Effect:   "The room cools more slowly over a night.",
			Help:     "Heat to warm walls, floor and ceiling by one kelvin, as deep as a night reaches.",
		}.in(bodyHeatCapacity()),
		Field{Path: at + "wall_loss_W_per_K", Label: "Loss of the walls",
			Low: 0, High: 1e6, UsualLow: 20, UsualHigh: 5000, Default: 100,
			UsedWhen: balanced,
			Source:   fromMemory + " (130 m² at 0.8 W/(m²·K))",
			Effect:   "The room follows the weather more closely.",
			Help:     "Heat lost from the walls to the outside per kelvin.",
		}.in(conductance()),
	}...)
}

func heatingFields() []Field {
	const at = "workshop.space.heating."
	return []Field{
		Field{Path: at + "power_W", Label: "Heating: power",
			Low: 10, High: 1e7, UsualLow: 1e3, UsualHigh: 100e3, Default: 6e3,
			Source: commonPractice,
			Effect: "The set-point is held in colder weather and with more parts.",
			Help:   "The most that the heating gives to the room's air.",
		}.in(power()),
		Field{Path: at + "set_point_K", Label: "Heating: set-point",
			Low: 273.15, High: 323.15, UsualLow: 288.15, UsualHigh: 298.15, Default: 293.15,
			Source: commonPractice + " (flocking rooms 20 to 25 °C)",
			Effect: "Faster drying and cure.",
			Help:   "Room temperature that the heating holds as far as its power reaches.",
		}.in(temperature()),
		Field{Path: at + "set_back_at_s", Label: "Heating: set back after",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 12 * hour, Default: 3 * hour,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "The room stays warm for longer.",
			Help:   "Time from spraying at which the heating goes down for the night; empty: never.",
		}.in(hours()),
		Field{Path: at + "set_back_K", Label: "Heating: set back to",
			Low: 273.15, High: 323.15, UsualLow: 278.15, UsualHigh: 291.15, Default: 287.15,
			Source: commonPractice,
			Effect: "A warmer night: faster drying.",
			Help:   "Room temperature that the heating holds while it is set back.",
		}.in(temperature()),
		Field{Path: at + "resume_at_s", Label: "Heating: resumes after",
			Low: 0, High: 60 * day, UsualLow: 8 * hour, UsualHigh: 16 * hour, Default: 13 * hour,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "The room warms up later in the morning.",
			Help:   "Time from spraying at which the heating goes back to its set-point, for good; empty: never.",
		}.in(hours()),
	}
}

func dehumidifierFields() []Field {
	const at = "workshop.space.dehumidifier."
	return []Field{
		Field{Path: at + "capacity_kg_per_s", Label: "Dehumidifier: capacity",
			Low: 1e-6, High: 0.1, UsualLow: 10 / day, UsualHigh: 150 / day, Default: 30 / day,
			Source: commonPractice + " (portable ones 10 to 80 kg a day)",
			Effect: "The room stays drier with many parts in it.",
			Help:   "Water that it takes out of air of 80 % relative humidity; less in drier air.",
		}.in(waterFlow()),
		Field{Path: at + "set_relative_humidity", Label: "Dehumidifier: setting",
			Low: 0.2, High: 0.75, UsualLow: 0.4, UsualHigh: 0.6, Default: 0.5,
			Source: commonPractice,
			Effect: "It starts later, and the room stays more humid.",
			Help:   "Relative humidity above which it runs.",
		}.in(fraction()),
		Field{Path: at + "power_W", Label: "Dehumidifier: power",
			Low: 0, High: 1e6, UsualLow: 200, UsualHigh: 5e3, Default: 600,
			Source: commonPractice + " (1 to 3 MJ for each kilogram of water)",
			Effect: "A warmer room, where its heat is balanced.",
			Help:   "Electric power; all of it warms the room, and so does the heat of the water that it condenses.",
		}.in(power()),
	}
}
