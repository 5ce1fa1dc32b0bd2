package job

// moist is how the humidity of one place may be given: the accepted ranges and which of the five numbers is there by
// default. The ranges are wide; that the air is not beyond saturation is checked against its temperature.
type moist struct {
	ratioLow     float64
	ratioHigh    float64
	dewLow       float64
	dewHigh      float64
	relativeLow  float64
	ratio        float64
	dewPoint     float64
	relative     float64
	wetBulb      float64
	density      float64
	usualRatio   [2]float64
	usualDew     [2]float64
	usualRH      [2]float64
	usualWetBulb [2]float64
	usualDensity [2]float64
	given        string // json name of the field that is there by default
}

// roomMoist is air of a workshop: 20 degC and 50 % has 7.3 g/kg, 9.3 degC dew point, 13.8 degC wet bulb, 8.6 g/m3.
func roomMoist() moist {
	return moist{ratioLow: 0.0002, ratioHigh: 0.1, dewLow: 243.15, dewHigh: 323.15, relativeLow: 0.05,
		ratio: 0.0073, dewPoint: 282.4, relative: 0.5, wetBulb: 287.0, density: 0.0086,
		usualRatio: [2]float64{0.004, 0.014}, usualDew: [2]float64{275.15, 292.15}, usualRH: [2]float64{0.4, 0.65},
		usualWetBulb: [2]float64{281.15, 293.15}, usualDensity: [2]float64{0.005, 0.016}, given: "relative_humidity"}
}

// ovenMoist is air of an oven that breathes workshop air and holds some water of the load.
func ovenMoist() moist {
	return moist{ratioLow: 0.0005, ratioHigh: 1, dewLow: 243.15, dewHigh: 373.15, relativeLow: 0.0005,
		ratio: 0.02, dewPoint: 298.15, relative: 0.05, wetBulb: 308.15, density: 0.02,
		usualRatio: [2]float64{0.008, 0.08}, usualDew: [2]float64{283.15, 321.15}, usualRH: [2]float64{0.005, 0.2},
		usualWetBulb: [2]float64{303.15, 328.15}, usualDensity: [2]float64{0.008, 0.07},
		given: "humidity_ratio_kg_per_kg"}
}

func humidityFields(at string, m moist) []Field {
	fields := []Field{
		Field{Path: at + ".humidity_ratio_kg_per_kg",
			Low: m.ratioLow, High: m.ratioHigh, UsualLow: m.usualRatio[0], UsualHigh: m.usualRatio[1], Default: m.ratio,
		}.in(humidityRatio()),
		Field{Path: at + ".dew_point_K",
			Low: m.dewLow, High: m.dewHigh, UsualLow: m.usualDew[0], UsualHigh: m.usualDew[1], Default: m.dewPoint,
		}.in(temperature()),
		Field{Path: at + ".relative_humidity",
			Low: m.relativeLow, High: 0.98, UsualLow: m.usualRH[0], UsualHigh: m.usualRH[1], Default: m.relative,
		}.in(fraction()),
		Field{Path: at + ".wet_bulb_K",
			Low: 253.15, High: m.dewHigh, UsualLow: m.usualWetBulb[0], UsualHigh: m.usualWetBulb[1], Default: m.wetBulb,
		}.in(temperature()),
		Field{Path: at + ".vapour_density_kg_per_m3",
			Low: 0.0002, High: 0.6, UsualLow: m.usualDensity[0], UsualHigh: m.usualDensity[1], Default: m.density,
		}.in(vapourDensity()),
	}
	for i := range fields {
		fields[i].Optional, fields[i].Source = true, commonPractice
		fields[i].Absent = fields[i].Path != at+"."+m.given
	}
	return fields
}
