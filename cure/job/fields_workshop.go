package job

func workshopFields() []Field {
	fields := []Field{
		Field{Path: "workshop.pressure_Pa",
			Low: 60e3, High: 110e3, UsualLow: 90e3, UsualHigh: 103e3, Default: 101325,
		}.in(pressure()),
		Field{Path: "workshop.air[].time_s",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 1 * day, Default: 0,
			Source: commonPractice,
		}.in(hours()),
		Field{Path: "workshop.air[].temperature_K",
			Low: 273.15, High: 323.15, UsualLow: 288.15, UsualHigh: 298.15, Default: 293.15,
		}.in(temperature()),
	}
	fields = append(fields, humidityFields("workshop.air[].humidity", roomMoist())...)
	fields = append(fields, Field{Path: "workshop.wall_temperature_K",
		Low: 253.15, High: 333.15, UsualLow: 283.15, UsualHigh: 298.15, Default: 293.15,
		Optional: true, Absent: true,
		Source: commonPractice,
	}.in(temperature()))
	return append(fields, transferFields("workshop.transfer", airFlow{
		kind: Combined, coefficient: 4, usualCoefficient: [2]float64{2, 8}, velocity: 0.1,
		usualVelocity: [2]float64{0.05, 0.3}})...)
}

func roomFields() []Field {
	return []Field{
		deadlineField("room", 14*hour),
		horizonField("room"),
	}
}

func deadlineField(route string, value float64) Field {
	return Field{Path: route + ".deadline_s",
		Low: 60, High: 60 * day, UsualLow: hour, UsualHigh: 3 * day, Default: value,
	}.in(hours())
}

func horizonField(route string) Field {
	return Field{Path: route + ".horizon_s",
		Low: 600, High: 120 * day, UsualLow: day, UsualHigh: 21 * day, Default: 14 * day,
	}.in(days())
}
