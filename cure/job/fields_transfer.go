package job

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
	fields := []Field{
		{Path: at + ".kind", Label: "How air meets the part", Text: string(a.kind),
			Choices: []Choice{
				{string(Given), "a measured coefficient"},
				{string(ParallelFlow), "air along the face"},
				{string(Natural), "still air"},
				{string(Combined), "still air and draught together"},
				{string(SlotNozzles), "slots blowing at the face"},
				{string(RoundNozzles), "round nozzles blowing at the face"},
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
			Help:     a.velocityExplanation + " A fan's flow, where given, goes before it.",
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
	fields = append(fields, Field{Path: at + ".multiplier", Label: "Multiplier of the coefficient",
		Low: 0.2, High: 5, UsualLow: 0.5, UsualHigh: 2, Default: 1,
		Optional: true, Absent: true,
		Source: "published laws differ by a factor of up to four for a real oven; fit it to a weighed coupon or a recorder's curve",
		Effect: "Faster drying and faster warming in this place; a skin closes sooner.",
		Help: "What the law's coefficient is multiplied by here, at face and back; it belongs to this place and says nothing of " +
			"others. A stated coefficient at the back is left alone. Empty: the law as it stands.",
	})
	fields = append(fields, fanFields(at+".fan.")...)
	return append(fields, nozzleFields(at+".nozzles.")...)
}

func fanFields(at string) []Field {
	return []Field{
		Field{Path: at + "air_flow_m3_per_s", Label: "Fan: air flow",
			Low: 1e-4, High: 500, UsualLow: 0.1, UsualHigh: 10, Default: 0.5,
			Source: commonPractice,
			Effect: "Faster air along the part.",
			Help:   "Air that the fan moves past the part; its name plate has the most.",
		}.in(volumeFlow()),
		Field{Path: at + "cross_section_m2", Label: "Fan: free cross-section",
			Low: 1e-4, High: 500, UsualLow: 0.1, UsualHigh: 10, Default: 1,
			Source: commonPractice,
			Effect: "Slower air along the part.",
			Help:   "Opening through which that air passes the part, less what the parts block.",
		}.in(area()),
	}
}

// nozzleFields has usual ranges about those in which the correlations hold; outside of them the result carries a warning.
func nozzleFields(at string) []Field {
	const martin = "Martin (1977), Advances in Heat Transfer 13, 1-60"
	return []Field{
		Field{Path: at + "width_m", Label: "Nozzles: width",
			Low: 0.2e-3, High: 0.3, UsualLow: 2e-3, UsualHigh: 20e-3, Default: 5e-3,
			Source: martin + ": slots 0.8 % of the pitch or more, round nozzles 7 to 21 % of it",
			Effect: "Faster drying, for more air.",
			Help:   "Width of a slot, or diameter of a round nozzle.",
		}.in(smallLength()),
		Field{Path: at + "pitch_m", Label: "Nozzles: pitch",
			Low: 1e-3, High: 3, UsualLow: 30e-3, UsualHigh: 250e-3, Default: 60e-3,
			Source: martin,
			Effect: "Fewer nozzles: slower drying, for less air.",
			Help: "Distance between the middles of neighbouring slots, or of round nozzles that stand in equal-sided " +
				"triangles.",
		}.in(smallLength()),
		Field{Path: at + "distance_m", Label: "Nozzles: distance",
			Low: 1e-3, High: 3, UsualLow: 20e-3, UsualHigh: 250e-3, Default: 50e-3,
			Source: martin + ": slots 2 to 80 widths, round nozzles 2 to 12 diameters; best near 5 to 6 diameters",
			Effect: "Slower drying.",
			Help:   "From nozzle to face.",
		}.in(smallLength()),
		Field{Path: at + "exit_velocity_m_per_s", Label: "Nozzles: air speed",
			Low: 0.2, High: 100, UsualLow: 5, UsualHigh: 40, Default: 15,
			UsedWhen: &Condition{Path: "pressure_Pa", In: []string{"null"}},
			Source: martin + ": slots with a Reynolds number of 1500 to 40 000 on twice the width, round nozzles 2000 to 100 000 on " +
				"the diameter",
			Effect: "Faster drying and warming; a skin closes sooner.",
			Help:   "Speed of the air where it leaves the nozzle.",
		}.in(airSpeed()),
		Field{Path: at + "pressure_Pa", Label: "Nozzles: pressure",
			Low: 0.1, High: 3000, UsualLow: 20, UsualHigh: 800, Default: 120,
			Optional: true, Absent: true,
			Source: commonPractice,
			Effect: "Faster air out of the nozzles, with the root of the pressure.",
			Help:   "Pressure before the nozzles above that in the zone; given, it sets the speed. Empty: the speed counts.",
		}.in(fanPressure()),
	}
}
