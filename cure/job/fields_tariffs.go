package job

func tariffFields() []Field {
	return []Field{
		Field{Path: "tariffs.energy_price_per_kWh", Label: "Energy price",
			Low: 0.001, High: 1000, UsualLow: 0.05, UsualHigh: 0.4, Default: 0.2,
			Source: "an assumption: put in what the last bill says",
			Effect: "Heat costs more.",
			Help:   "Price of one kilowatt-hour of the energy that heats, in the currency below.",
		}.in(perKilowattHour()),
		{Path: "tariffs.currency", Kind: KindText, Label: "Currency", Text: "EUR",
			High:   8,
			Source: "ISO 4217 code or any other sign",
			Effect: "Stands beside every price.",
			Help:   "What the prices are in.",
		},
		Field{Path: "tariffs.carbon_kg_per_kWh", Label: "Carbon dioxide",
			Low: 0, High: 3, UsualLow: 0.02, UsualHigh: 0.8, Default: 0.2,
			Source: fromMemory + " (natural gas 0.2 kg/kWh; electricity 0.02 to 0.8 by where it comes from)",
			Effect: "More carbon dioxide for the same heat.",
			Help:   "Carbon dioxide given off for one kilowatt-hour of the energy that heats.",
		}.in(carbonIntensity()),
		Field{Path: "tariffs.heater_efficiency", Label: "Efficiency of the heater",
			Low: 0.1, High: 6, UsualLow: 0.6, UsualHigh: 1, Default: 0.9,
			Source: fromMemory + " (electric 1, gas with a heat exchanger 0.8 to 0.92)",
			Effect: "Less energy to pay for.",
			Help:   "Heat given to the air over the energy paid for; a heat pump counts with its coefficient of performance.",
		}.in(fraction()),
	}
}
