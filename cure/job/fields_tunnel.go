package job

import "github.com/drywright/drywright/cure/words"

func tunnelFields() []Field {
	return []Field{
		Field{Path: "tunnel.entered_after_s",
			Low: 0, High: 7 * day, UsualLow: 1 * minute, UsualHigh: 30 * minute, Default: 10 * minute,
			Source: commonPractice,
		}.in(minutes()),
		Field{Path: "tunnel.line_speed_m_per_s",
			Low: 0.02 / 60, High: 30.0 / 60, UsualLow: 0.3 / 60, UsualHigh: 5.0 / 60, Default: 1.0 / 60,
			Source: commonPractice,
		}.in(lineSpeed()),
		deadlineField("tunnel", 14*hour),
		horizonField("tunnel"),
		Field{Path: "tunnel.coated_area_per_m_m2_per_m",
			Low: 0.001, High: 100, UsualLow: 0.2, UsualHigh: 5, Default: 1,
			Source: commonPractice,
		}.in(areaPerLength()),
		Field{Path: "tunnel.carrier_return_K",
			Low: 263.15, High: 473.15, UsualLow: 293.15, UsualHigh: 333.15, Default: 313.15,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(temperature()),
		Field{Path: "tunnel.entry_leak_m3_per_s",
			Low: 0, High: 50, UsualLow: 0, UsualHigh: 0.5, Default: 0,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: "tunnel.exit_leak_m3_per_s",
			Low: 0, High: 50, UsualLow: 0, UsualHigh: 0.5, Default: 0,
			Source: commonPractice,
		}.in(volumeFlow()),
	}
}

func zoneFields() []Field {
	const at = "tunnel.zones[]"
	fields := []Field{
		{Path: at + ".name", Kind: KindText, Text: words.Told("Zone"),
			High: 60,
		},
		{Path: at + ".kind", Text: string(Heated),
			Choices: choices(Heated, Cooling),
			Source:  commonPractice,
		},
		Field{Path: at + ".length_m",
			Low: 0.05, High: 200, UsualLow: 1, UsualHigh: 10, Default: 4,
			Source: commonPractice,
		}.in(length()),
		Field{Path: at + ".air_temperature_K",
			Low: 273.15, High: 523.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 373.15,
		}.in(temperature()),
	}
	fields = append(fields, humidityFields(at+".humidity", ovenMoist())...)
	fields = append(fields, Field{Path: at + ".wall_temperature_K",
		Low: 273.15, High: 573.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 373.15,
		Optional: true, Absent: true,
		Source: commonPractice,
	}.in(temperature()))
	return append(fields, transferFields(at+".transfer", airFlow{
		kind: Given, coefficient: 35, usualCoefficient: [2]float64{15, 80}, velocity: 3, usualVelocity: [2]float64{1,
			15}})...)
}

func infraredFields() []Field {
	const at = "tunnel.zones[].infrared."
	absorptivity := func(path string) Field {
		return Field{Path: at + path,
			Low: 0, High: 1, UsualLow: 0.6, UsualHigh: 0.97, Default: 0.9,
		}
	}
	return []Field{
		Field{Path: at + "flux_W_per_m2",
			Low: 0, High: 1e5, UsualLow: 2e3, UsualHigh: 20e3, Default: 5e3,
		}.in(heatFlux()),
		absorptivity("absorptivity"),
		Field{Path: at + "share_reaching_film",
			Low: 0, High: 1, UsualLow: 0, UsualHigh: 0.3, Default: 0.1,
			Source: commonPractice,
		}.in(fraction()),
		Field{Path: at + "back_flux_W_per_m2",
			Low: 0, High: 1e5, UsualLow: 0, UsualHigh: 10e3, Default: 0,
			Source: commonPractice,
		}.in(heatFlux()),
		absorptivity("back_absorptivity"),
	}
}

func zoneAirFields() []Field {
	const at = "tunnel.zones[].air."
	return []Field{
		Field{Path: at + "exhaust_m3_per_s",
			Low: 0, High: 100, UsualLow: 0.03, UsualHigh: 3, Default: 0.3,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: at + "make_up_m3_per_s",
			Low: 0, High: 100, UsualLow: 0.03, UsualHigh: 3, Default: 0.25,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: at + "leak_to_next_m3_per_s",
			Low: -50, High: 50, UsualLow: -0.3, UsualHigh: 0.3, Default: 0,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: at + "wall_loss_W_per_K",
			Low: 0, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 40,
		}.in(conductance()),
		Field{Path: at + "heater_power_W",
			Low: 0, High: 1e7, UsualLow: 10e3, UsualHigh: 500e3, Default: 0,
		}.in(power()),
	}
}
