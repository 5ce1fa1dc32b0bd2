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
		Field{Path: at + "volume_m3",
			Low: 1, High: 1e6, UsualLow: 30, UsualHigh: 3000, Default: 100,
			Source: commonPractice,
		}.in(volume()),
		Field{Path: at + "coated_area_m2",
			Low: 0.001, High: 1e5, UsualLow: 1, UsualHigh: 200, Default: 10,
			Source: commonPractice,
		}.in(area()),
		Field{Path: at + "air_changes_per_s",
			Low: 0, High: 10, UsualLow: 0.2 / hour, UsualHigh: 10 / hour, Default: 0.5 / hour,
		}.in(airChanges()),
		Field{Path: at + "outside[].time_s",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 1 * day, Default: 0,
			Source: commonPractice,
		}.in(hours()),
		Field{Path: at + "outside[].temperature_K",
			Low: 243.15, High: 323.15, UsualLow: 263.15, UsualHigh: 305.15, Default: 283.15,
			Source: commonPractice,
		}.in(temperature()),
	}
	fields = append(fields, humidityFields(at+"outside[].humidity", outsideMoist())...)
	return append(fields, []Field{
		{Path: at + "heat_balance", Kind: KindSwitch,
			Source: commonPractice,
		},
		Field{Path: at + "wall_exchange_W_per_K",
			Low: 0, High: 1e7, UsualLow: 100, UsualHigh: 1e4, Default: 400,
			UsedWhen: balanced,
		}.in(conductance()),
		Field{Path: at + "wall_heat_capacity_J_per_K",
			Low: 1e3, High: 1e12, UsualLow: 1e6, UsualHigh: 1e9, Default: 12e6,
			UsedWhen: balanced,
		}.in(bodyHeatCapacity()),
		Field{Path: at + "wall_loss_W_per_K",
			Low: 0, High: 1e6, UsualLow: 20, UsualHigh: 5000, Default: 100,
			UsedWhen: balanced,
		}.in(conductance()),
	}...)
}

func heatingFields() []Field {
	const at = "workshop.space.heating."
	return []Field{
		Field{Path: at + "power_W",
			Low: 10, High: 1e7, UsualLow: 1e3, UsualHigh: 100e3, Default: 6e3,
			Source: commonPractice,
		}.in(power()),
		Field{Path: at + "set_point_K",
			Low: 273.15, High: 323.15, UsualLow: 288.15, UsualHigh: 298.15, Default: 293.15,
		}.in(temperature()),
		Field{Path: at + "set_back_at_s",
			Low: 0, High: 60 * day, UsualLow: 0, UsualHigh: 12 * hour, Default: 3 * hour,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(hours()),
		Field{Path: at + "set_back_K",
			Low: 273.15, High: 323.15, UsualLow: 278.15, UsualHigh: 291.15, Default: 287.15,
			Source: commonPractice,
		}.in(temperature()),
		Field{Path: at + "resume_at_s",
			Low: 0, High: 60 * day, UsualLow: 8 * hour, UsualHigh: 16 * hour, Default: 13 * hour,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(hours()),
	}
}

func dehumidifierFields() []Field {
	const at = "workshop.space.dehumidifier."
	return []Field{
		Field{Path: at + "capacity_kg_per_s",
			Low: 1e-6, High: 0.1, UsualLow: 10 / day, UsualHigh: 150 / day, Default: 30 / day,
		}.in(waterFlow()),
		Field{Path: at + "set_relative_humidity",
			Low: 0.2, High: 0.75, UsualLow: 0.4, UsualHigh: 0.6, Default: 0.5,
			Source: commonPractice,
		}.in(fraction()),
		Field{Path: at + "power_W",
			Low: 0, High: 1e6, UsualLow: 200, UsualHigh: 5e3, Default: 600,
		}.in(power()),
	}
}
