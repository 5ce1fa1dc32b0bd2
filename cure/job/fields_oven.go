package job

func staticOvenFields() []Field {
	fields := []Field{
		Field{Path: "static_oven.loaded_after_s",
			Low: 0, High: 7 * day, UsualLow: 5 * minute, UsualHigh: 2 * hour, Default: 30 * minute,
			Source: commonPractice,
		}.in(minutes()),
		Field{Path: "static_oven.dwell_s",
			Low: 30, High: 3 * day, UsualLow: 10 * minute, UsualHigh: hour, Default: 30 * minute,
		}.in(minutes()),
		Field{Path: "static_oven.set_point_K",
			Low: 273.15, High: 523.15, UsualLow: 333.15, UsualHigh: 433.15, Default: 353.15,
		}.in(temperature()),
	}
	fields = append(fields, humidityFields("static_oven.humidity", ovenMoist())...)
	fields = append(fields, transferFields("static_oven.transfer", airFlow{
		kind: Combined, coefficient: 15, usualCoefficient: [2]float64{8, 40}, velocity: 1.5,
		usualVelocity: [2]float64{0.5, 5}})...)
	fields = append(fields, deadlineField("static_oven", 14*hour), horizonField("static_oven"))
	return append(fields, loadingFields()...)
}

// loadingFields is how loads follow each other into the oven, and what its open door does.
func loadingFields() []Field {
	return []Field{
		{Path: "static_oven.batches", Integer: true,
			Low: 1, High: 50, UsualLow: 1, UsualHigh: 8, Default: 1,
			Source: commonPractice,
		},
		Field{Path: "static_oven.batch_interval_s",
			Low: 0, High: 3 * day, UsualLow: 3 * minute, UsualHigh: 30 * minute, Default: 10 * minute,
			Source: commonPractice,
		}.in(minutes()),
		Field{Path: "static_oven.door_open_s",
			Low: 0, High: 1 * hour, UsualLow: 20, UsualHigh: 180, Default: 0,
		}.in(minutes()),
		Field{Path: "static_oven.door_exchange_m3_per_s",
			Low: 0, High: 50, UsualLow: 0.05, UsualHigh: 2, Default: 0.3,
		}.in(volumeFlow()),
		Field{Path: "static_oven.turnaround_s",
			Low: 0, High: 1 * day, UsualLow: 2 * minute, UsualHigh: 20 * minute, Default: 5 * minute,
			Source: commonPractice,
		}.in(minutes()),
	}
}

func chamberFields() []Field {
	const at = "static_oven.chamber."
	return []Field{
		{Path: at + "vapour_balance", Kind: KindSwitch,
			Source: commonPractice,
		},
		Field{Path: at + "coated_area_m2",
			Low: 0.001, High: 500, UsualLow: 0.5, UsualHigh: 20, Default: 4,
			Source: commonPractice,
		}.in(area()),
		Field{Path: at + "heater_power_W",
			Low: 100, High: 2e6, UsualLow: 3e3, UsualHigh: 60e3, Default: 12e3,
			Source: commonPractice,
		}.in(power()),
		Field{Path: at + "proportional_band_K",
			Low: 0.5, High: 100, UsualLow: 1, UsualHigh: 10, Default: 3,
			Source: commonPractice,
		}.in(temperatureStep()),
		Field{Path: at + "air_volume_m3",
			Low: 0.01, High: 1000, UsualLow: 0.5, UsualHigh: 20, Default: 2,
			Source: commonPractice,
		}.in(volume()),
		Field{Path: at + "make_up_m3_per_s",
			Low: 0, High: 20, UsualLow: 0.005, UsualHigh: 0.3, Default: 0.02,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: at + "wall_heat_capacity_J_per_K",
			Low: 100, High: 1e9, UsualLow: 2e4, UsualHigh: 2e6, Default: 150e3,
		}.in(bodyHeatCapacity()),
		Field{Path: at + "wall_exchange_W_per_K",
			Low: 0.1, High: 1e6, UsualLow: 20, UsualHigh: 2000, Default: 150,
		}.in(conductance()),
		Field{Path: at + "wall_loss_W_per_K",
			Low: 0, High: 1e5, UsualLow: 2, UsualHigh: 200, Default: 10,
		}.in(conductance()),
		Field{Path: at + "air_at_loading_K",
			Low: 273.15, High: 523.15, UsualLow: 313.15, UsualHigh: 433.15, Default: 343.15,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(temperature()),
		Field{Path: at + "wall_at_loading_K",
			Low: 273.15, High: 523.15, UsualLow: 313.15, UsualHigh: 433.15, Default: 348.15,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(temperature()),
	}
}
