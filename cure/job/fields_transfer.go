package job

// airFlow is how air usually meets a part in one place.
type airFlow struct {
	kind             TransferKind
	coefficient      float64
	usualCoefficient [2]float64
	velocity         float64
	usualVelocity    [2]float64
}

func transferFields(at string, a airFlow) []Field {
	flowing := &Condition{Path: "kind", In: []string{string(ParallelFlow), string(Combined)}}
	fields := []Field{
		{Path: at + ".kind", Text: string(a.kind),
			Choices: choices(Given, ParallelFlow, Natural, Combined, SlotNozzles, RoundNozzles),
			Source:  commonPractice,
		},
		Field{Path: at + ".coefficient_W_per_m2K",
			Low: 0.5, High: 500, UsualLow: a.usualCoefficient[0], UsualHigh: a.usualCoefficient[1], Default: a.coefficient,
			UsedWhen: &Condition{Path: "kind", In: []string{string(Given)}},
		}.in(transferCoefficient()),
		Field{Path: at + ".velocity_m_per_s",
			Low: 0, High: 30, UsualLow: a.usualVelocity[0], UsualHigh: a.usualVelocity[1], Default: a.velocity,
			UsedWhen: flowing,
		}.in(airSpeed()),
		{Path: at + ".tripped", Kind: KindSwitch,
			UsedWhen: flowing,
			Source:   commonPractice,
		},
		Field{Path: at + ".back_coefficient_W_per_m2K",
			Low: 0, High: 500, UsualLow: a.usualCoefficient[0], UsualHigh: a.usualCoefficient[1], Default: a.coefficient,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(transferCoefficient()),
	}
	fields = append(fields, Field{Path: at + ".multiplier",
		Low: 0.2, High: 5, UsualLow: 0.5, UsualHigh: 2, Default: 1,
		Optional: true, Absent: true,
	})
	fields = append(fields, fanFields(at+".fan.")...)
	return append(fields, nozzleFields(at+".nozzles.")...)
}

func fanFields(at string) []Field {
	return []Field{
		Field{Path: at + "air_flow_m3_per_s",
			Low: 1e-4, High: 500, UsualLow: 0.1, UsualHigh: 10, Default: 0.5,
			Source: commonPractice,
		}.in(volumeFlow()),
		Field{Path: at + "cross_section_m2",
			Low: 1e-4, High: 500, UsualLow: 0.1, UsualHigh: 10, Default: 1,
			Source: commonPractice,
		}.in(area()),
	}
}

// nozzleFields has usual ranges about those in which the correlations hold; outside of them the result carries a warning.
func nozzleFields(at string) []Field {
	return []Field{
		Field{Path: at + "width_m",
			Low: 0.2e-3, High: 0.3, UsualLow: 2e-3, UsualHigh: 20e-3, Default: 5e-3,
		}.in(smallLength()),
		Field{Path: at + "pitch_m",
			Low: 1e-3, High: 3, UsualLow: 30e-3, UsualHigh: 250e-3, Default: 60e-3,
		}.in(smallLength()),
		Field{Path: at + "distance_m",
			Low: 1e-3, High: 3, UsualLow: 20e-3, UsualHigh: 250e-3, Default: 50e-3,
		}.in(smallLength()),
		Field{Path: at + "exit_velocity_m_per_s",
			Low: 0.2, High: 100, UsualLow: 5, UsualHigh: 40, Default: 15,
			UsedWhen: &Condition{Path: "pressure_Pa", In: []string{"null"}},
		}.in(airSpeed()),
		Field{Path: at + "pressure_Pa",
			Low: 0.1, High: 3000, UsualLow: 20, UsualHigh: 800, Default: 120,
			Optional: true, Absent: true,
			Source: commonPractice,
		}.in(fanPressure()),
	}
}
