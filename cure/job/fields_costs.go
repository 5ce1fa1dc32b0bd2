package job

func costFields() []Field {
	const at = "costs."
	fields := []Field{
		Field{Path: at + "wage_per_h",
			Low: 0.01, High: 1e6, UsualLow: 15, UsualHigh: 60, Default: 35,
			Optional: true, Absent: true,
			Source: invoices,
		}.in(perHour()),
		Field{Path: at + "floor_price_per_m2",
			Low: 0.01, High: 1e6, UsualLow: 40, UsualHigh: 300, Default: 100,
			Optional: true, Absent: true,
			Source: invoices,
		}.in(perArea()),
		Field{Path: at + "rack_price",
			Low: 0.01, High: 1e6, UsualLow: 100, UsualHigh: 2000, Default: 400,
			Optional: true, Absent: true,
			Source: invoices,
		}.in(plain()),
		Field{Path: at + "rack_years",
			Low: 0.5, High: 50, UsualLow: 3, UsualHigh: 12, Default: 8,
			Source: commonPractice,
		}.in(number(3)),
		Field{Path: at + "days_per_year",
			Low: 1, High: 366, UsualLow: 200, UsualHigh: 300, Default: 230,
			Source: commonPractice,
		}.in(number(3)),
		Field{Path: at + "room.holds_m2",
			Low: 0.001, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 50,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(area()),
	}
	fields = append(fields, unitCosts(at+"room.")...)
	for _, oven := range []string{"static_oven.", "tunnel."} {
		fields = append(fields,
			Field{Path: at + oven + "running_s",
				Low: 600, High: day, UsualLow: 6 * hour, UsualHigh: 16 * hour, Default: 8 * hour,
				Source: commonPractice,
			}.in(hours()),
			Field{Path: at + oven + "persons",
				Low: 0, High: 100, UsualLow: 0, UsualHigh: 3, Default: 1,
				Optional: true, Absent: true,
				Source: commonPractice,
			}.in(number(3)))
		fields = append(fields, unitCosts(at+oven)...)
	}
	return fields
}

// unitCosts are what one room or oven takes whatever it carries, and the labour of filling it once.
func unitCosts(at string) []Field {
	return []Field{
		Field{Path: at + "labour_s",
			Low: 0, High: 100 * hour, UsualLow: 2 * minute, UsualHigh: 4 * hour, Default: 20 * minute,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(minutes()),
		Field{Path: at + "floor_area_m2",
			Low: 0, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 30,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(area()),
		Field{Path: at + "racks",
			Low: 0, High: 1e4, UsualLow: 1, UsualHigh: 40, Default: 10,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(number(3)),
		Field{Path: at + "investment",
			Low: 0, High: 1e9, UsualLow: 1000, UsualHigh: 500e3, Default: 20e3,
			Optional: true, Absent: true,
			Source: invoices,
		}.in(number(6)),
		Field{Path: at + "investment_years",
			Low: 0.5, High: 50, UsualLow: 5, UsualHigh: 15, Default: 10,
			Source: commonPractice,
		}.in(number(3)),
	}
}

func costBlocks() []Block {
	return []Block{
		{Path: "costs", Optional: true, Absent: true},
		{Path: "costs.room"},
		{Path: "costs.static_oven"},
		{Path: "costs.tunnel"},
	}
}
