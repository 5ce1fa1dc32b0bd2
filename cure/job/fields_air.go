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
	const effect = "Slower drying, and more water left in the film at the end."
	const source = commonPractice
	fields := []Field{
		Field{Path: at + ".humidity_ratio_kg_per_kg", Label: "Humidity ratio",
			Low: m.ratioLow, High: m.ratioHigh, UsualLow: m.usualRatio[0], UsualHigh: m.usualRatio[1], Default: m.ratio,
			Source: source,
			Effect: effect,
			Help: "Mass of vapour per mass of dry air. Heating does not change it, so the workshop's value is a " +
				"lower bound for an oven.",
		}.in(humidityRatio()),
		Field{Path: at + ".dew_point_K", Label: "Dew point",
			Low: m.dewLow, High: m.dewHigh, UsualLow: m.usualDew[0], UsualHigh: m.usualDew[1], Default: m.dewPoint,
			Source: source,
			Effect: effect,
			Help:   "Temperature at which dew would form; parts colder than this get wet.",
		}.in(temperature()),
		Field{Path: at + ".relative_humidity", Label: "Relative humidity",
			Low: m.relativeLow, High: 0.98, UsualLow: m.usualRH[0], UsualHigh: m.usualRH[1], Default: m.relative,
			Source: source,
			Effect: effect,
			Help: "Share of the vapour that the air could hold. Above 100 °C a poor measure: give the dew point or " +
				"the humidity ratio.",
		}.in(fraction()),
		Field{Path: at + ".wet_bulb_K", Label: "Wet bulb",
			Low: 253.15, High: m.dewHigh, UsualLow: m.usualWetBulb[0], UsualHigh: m.usualWetBulb[1], Default: m.wetBulb,
			Source: source,
			Effect: effect,
			Help:   "Thermodynamic wet-bulb temperature, as an aspirated psychrometer shows it.",
		}.in(temperature()),
		Field{Path: at + ".vapour_density_kg_per_m3", Label: "Absolute humidity",
			Low: 0.0002, High: 0.6, UsualLow: m.usualDensity[0], UsualHigh: m.usualDensity[1], Default: m.density,
			Source: source,
			Effect: effect,
			Help:   "Mass of vapour in one cubic metre of air.",
		}.in(vapourDensity()),
	}
	for i := range fields {
		fields[i].Optional = true
		fields[i].Absent = fields[i].Path != at+"."+m.given
	}
	return fields
}

// airFlow is how air usually meets a part in one place.
type airFlow struct {
	kind                TransferKind
	coefficient         float64
	usualCoefficient    [2]float64
	velocity            float64
	usualVelocity       [2]float64
	coefficientSource   string
	velocitySource      string
	velocityExplanation string
}

func transferFields(at string, a airFlow) []Field {
	flowing := &Condition{Path: "kind", In: []string{string(ParallelFlow), string(Combined)}}
	return []Field{
		{Path: at + ".kind", Label: "How air meets the part", Text: string(a.kind),
			Choices: []Choice{
				{string(Given), "a measured coefficient"},
				{string(ParallelFlow), "air along the face"},
				{string(Natural), "still air"},
				{string(Combined), "still air and draught together"},
			},
			Source: commonPractice,
			Effect: "Decides which of the numbers below count.",
			Help:   "Where the heat transfer coefficient comes from.",
		},
		Field{Path: at + ".coefficient_W_per_m2K", Label: "Heat transfer coefficient",
			Low: 0.5, High: 500, UsualLow: a.usualCoefficient[0], UsualHigh: a.usualCoefficient[1], Default: a.coefficient,
			UsedWhen: &Condition{Path: "kind", In: []string{string(Given)}},
			Source:   a.coefficientSource,
			Effect:   "Faster drying and faster warming; a skin closes sooner.",
			Help: "Heat passed from air to the film by convection alone, without radiation. Weigh a wet coupon to " +
				"measure it.",
		}.in(transferCoefficient()),
		Field{Path: at + ".velocity_m_per_s", Label: "Air speed",
			Low: 0, High: 30, UsualLow: a.usualVelocity[0], UsualHigh: a.usualVelocity[1], Default: a.velocity,
			UsedWhen: flowing,
			Source:   a.velocitySource,
			Effect:   "Faster drying and faster warming; a shorter open time.",
			Help:     a.velocityExplanation,
		}.in(airSpeed()),
		{Path: at + ".tripped", Kind: KindSwitch, Label: "Turbulent from the edge",
			UsedWhen: flowing,
			Source:   commonPractice,
			Effect:   "Faster drying at moderate air speeds.",
			Help:     "Whether a sharp edge, a fan or fibres make the air turbulent over the whole face.",
		},
		Field{Path: at + ".back_coefficient_W_per_m2K", Label: "Coefficient at the back",
			Low: 0, High: 500, UsualLow: a.usualCoefficient[0], UsualHigh: a.usualCoefficient[1], Default: a.coefficient,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "The part follows the air faster.",
			Help:   "Heat transfer coefficient at the uncoated back; empty: the same law as at the face.",
		}.in(transferCoefficient()),
	}
}
