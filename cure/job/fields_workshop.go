package job

func workshopFields() []Field {
	fields := []Field{
		Field{Path: "workshop.pressure_Pa", Label: "Air pressure",
			Low: 60e3, High: 110e3, UsualLow: 90e3, UsualHigh: 103e3, Default: 101325,
			Source: "standard atmosphere at sea level; about 1.2 kPa less for each 100 m of height",
			Effect: "Slightly slower drying; boiling sets in hotter.",
			Help:   "Pressure of the air where the work is done.",
		}.in(pressure()),
		Field{Path: "workshop.air[].time_s", Label: "Time from spraying",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 1 * day, Default: 0,
			Source: commonPractice,
			Effect: "This state of the air is reached later.",
			Help:   "When the air has this state. Points are joined by straight lines and the last one holds on.",
		}.in(hours()),
		Field{Path: "workshop.air[].temperature_K", Label: "Air temperature",
			Low: 273.15, High: 323.15, UsualLow: 288.15, UsualHigh: 298.15, Default: 293.15,
			Source: commonPractice + " (flocking rooms 20 to 25 °C)",
			Effect: "Faster drying and cure; a shorter open time.",
			Help:   "Temperature of the workshop's air.",
		}.in(temperature()),
	}
	fields = append(fields, humidityFields("workshop.air[].humidity", roomMoist())...)
	fields = append(fields, Field{Path: "workshop.wall_temperature_K", Label: "Wall temperature",
		Low: 253.15, High: 333.15, UsualLow: 283.15, UsualHigh: 298.15, Default: 293.15,
		Optional: true, Absent: true,
		Source: commonPractice,
		Effect: "More heat reaches the film by radiation: faster drying.",
		Help:   "Mean temperature of walls and things around the part; empty: that of the air.",
	}.in(temperature()))
	return append(fields, transferFields("workshop.transfer", airFlow{
		kind: Combined, coefficient: 4, usualCoefficient: [2]float64{2, 8}, velocity: 0.1,
		usualVelocity:       [2]float64{0.05, 0.3},
		coefficientSource:   fromMemory + " (still rooms 2 to 6 W/(m²·K) without radiation)",
		velocitySource:      commonPractice + " (still rooms about 0.1 m/s)",
		velocityExplanation: "Draught along the part."})...)
}

func roomFields() []Field {
	return []Field{
		deadlineField("room", 14*hour),
		horizonField("room"),
	}
}

func deadlineField(route string, value float64) Field {
	return Field{Path: route + ".deadline_s", Label: "Needed after",
		Low: 60, High: 60 * day, UsualLow: hour, UsualHigh: 3 * day, Default: value,
		Source: "sprayed at 17:00, packed at 07:00",
		Effect: "More time: a wider margin.",
		Help:   "When the part must be ready, counted from spraying.",
	}.in(hours())
}

func horizonField(route string) Field {
	return Field{Path: route + ".horizon_s", Label: "Watched for",
		Low: 600, High: 120 * day, UsualLow: day, UsualHigh: 21 * day, Default: 14 * day,
		Source: "room cure takes 2 to 7 days (common practice, no source); twice that",
		Effect: "Late marks come into sight; the run takes a little longer.",
		Help:   "How long the computation goes on, counted from spraying. Marks beyond it are called not reached.",
	}.in(days())
}
