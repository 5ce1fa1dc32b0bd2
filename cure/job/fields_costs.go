package job

const invoices = "an assumption: put in what the books say"

func costFields() []Field {
	const at = "costs."
	fields := []Field{
		Field{Path: at + "wage_per_h", Label: "Cost of an hour of work",
			Low: 0.01, High: 1e6, UsualLow: 15, UsualHigh: 60, Default: 35,
			Optional: true, Absent: true,
			Source: invoices,
			Effect: "Labour costs more, on every route that takes any.",
			Help:   "What one person costs in an hour, with everything that the employer pays; empty: labour is not counted.",
		}.in(perHour()),
		Field{Path: at + "floor_price_per_m2", Label: "Cost of floor a year",
			Low: 0.01, High: 1e6, UsualLow: 40, UsualHigh: 300, Default: 100,
			Optional: true, Absent: true,
			Source: invoices,
			Effect: "Routes that take much floor cost more.",
			Help:   "Rent, or what the floor is worth, for a square metre and a year; empty: floor is not counted.",
		}.in(perArea()),
		Field{Path: at + "rack_price", Label: "Price of a rack",
			Low: 0.01, High: 1e6, UsualLow: 100, UsualHigh: 2000, Default: 400,
			Optional: true, Absent: true,
			Source: invoices,
			Effect: "Routes that need many racks cost more.",
			Help:   "Price of one rack, trolley or set of hooks; empty: racks are not counted.",
		}.in(plain()),
		Field{Path: at + "rack_years", Label: "Life of a rack",
			Low: 0.5, High: 50, UsualLow: 3, UsualHigh: 12, Default: 8,
			Source: commonPractice,
			Effect: "Racks cost less a day.",
			Help:   "Years that a rack lasts.",
		}.in(number(3)),
		Field{Path: at + "days_per_year", Label: "Working days a year",
			Low: 1, High: 366, UsualLow: 200, UsualHigh: 300, Default: 230,
			Source: commonPractice,
			Effect: "What is paid by the year costs less a day.",
			Help:   "Days of the year on which parts are coated.",
		}.in(number(3)),
		Field{Path: at + "room.holds_m2", Label: "Room: places for coated faces",
			Low: 0.001, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 50,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "One room takes more, where its air carries the water off.",
			Help:   "Coated faces that find a place in one room, by its racks and floor; empty: only the room's air sets a limit.",
		}.in(area()),
	}
	fields = append(fields, unitCosts(at+"room.", "Room", "a night", "racks in and out, brushing off")...)
	for _, oven := range []struct{ path, label, per, work string }{
		{"static_oven.", "Static oven", "for each charge", "loading and unloading"},
		{"tunnel.", "Tunnel", "a day", "starting up and cleaning"}} {
		fields = append(fields,
			Field{Path: at + oven.path + "running_s", Label: oven.label + ": running time a day",
				Low: 600, High: day, UsualLow: 6 * hour, UsualHigh: 16 * hour, Default: 8 * hour,
				Source: commonPractice,
				Effect: "One oven carries more in a day.",
				Help:   "Time a day in which the oven is warm and can be loaded.",
			}.in(hours()),
			Field{Path: at + oven.path + "persons", Label: oven.label + ": people attending",
				Low: 0, High: 100, UsualLow: 0, UsualHigh: 3, Default: 1,
				Optional: true, Absent: true,
				Source: commonPractice,
				Effect: "Every hour in which the oven runs costs more.",
				Help:   "People who are busy with the oven while it runs, halves allowed; empty: not counted.",
			}.in(number(3)))
		fields = append(fields, unitCosts(at+oven.path, oven.label, oven.per, oven.work)...)
	}
	return fields
}

// unitCosts are what one room or oven takes whatever it carries, and the labour of filling it once.
func unitCosts(at, label, per, work string) []Field {
	return []Field{
		Field{Path: at + "labour_s", Label: label + ": working time " + per,
			Low: 0, High: 100 * hour, UsualLow: 2 * minute, UsualHigh: 4 * hour, Default: 20 * minute,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "Each one costs more.",
			Help:   "Working time of all people together " + per + ": " + work + "; empty: not counted.",
		}.in(minutes()),
		Field{Path: at + "floor_area_m2", Label: label + ": floor",
			Low: 0, High: 1e5, UsualLow: 5, UsualHigh: 300, Default: 30,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "Every one of them costs more, used or not.",
			Help:   "Floor that one of them takes, with the way around it; empty: not counted.",
		}.in(area()),
		Field{Path: at + "racks", Label: label + ": racks",
			Low: 0, High: 1e4, UsualLow: 1, UsualHigh: 40, Default: 10,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "Every one of them costs more, used or not.",
			Help:   "Racks, trolleys or sets of hooks that one of them needs; empty: not counted.",
		}.in(number(3)),
		Field{Path: at + "investment", Label: label + ": investment",
			Low: 0, High: 1e9, UsualLow: 1000, UsualHigh: 500e3, Default: 20e3,
			Optional: true, Absent: true,
			Source: invoices,
			Effect: "Every one of them costs more, used or not.",
			Help:   "Price of one of them, installed; empty: not counted.",
		}.in(number(6)),
		Field{Path: at + "investment_years", Label: label + ": written off over",
			Low: 0.5, High: 50, UsualLow: 5, UsualHigh: 15, Default: 10,
			Source: commonPractice,
			Effect: "The investment costs less a day.",
			Help:   "Years over which the investment is written off, in equal parts and without interest.",
		}.in(number(3)),
	}
}

func costBlocks() []Block {
	return []Block{
		{Path: "costs", Label: "Costs of a day", Optional: true, Absent: true,
			Help: "Labour, floor, racks and investment of each route, to set the cost of a day against its quantity; none: energy alone is priced."},
		{Path: "costs.room", Label: "Room", Help: "What one room takes in which parts dry overnight."},
		{Path: "costs.static_oven", Label: "Static oven", Help: "What one static oven takes."},
		{Path: "costs.tunnel", Label: "Tunnel oven", Help: "What one tunnel takes."},
	}
}
