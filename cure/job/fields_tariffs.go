package job

func tariffFields() []Field {
	return []Field{
		Field{Path: "tariffs.energy_price_per_kWh",
			Low: 0.001, High: 1000, UsualLow: 0.05, UsualHigh: 0.4, Default: 0.2,
		}.in(perKilowattHour()),
		{Path: "tariffs.currency", Kind: KindText, Text: "EUR",
			High: 8,
		},
		Field{Path: "tariffs.carbon_kg_per_kWh",
			Low: 0, High: 3, UsualLow: 0.02, UsualHigh: 0.8, Default: 0.2,
		}.in(carbonIntensity()),
		Field{Path: "tariffs.heater_efficiency",
			Low: 0.1, High: 6, UsualLow: 0.6, UsualHigh: 1, Default: 0.9,
		}.in(fraction()),
	}
}
