package job

import "slices"

// Blocks is the table of the objects and lists of a Job, in the order of the document.
func Blocks() []Block {
	return slices.Concat(filmBlocks(), partBlocks(), workshopBlocks(), ovenBlocks(), tunnelBlocks(), costBlocks(), []Block{
		{Path: "targets", Label: "Targets", Help: "Thresholds of the marks and risks."},
		{Path: "tariffs", Label: "Tariffs", Optional: true, Absent: true,
			Help: "What energy costs; none: energy is given without a price."},
		{Path: "numerics", Label: "Computation", Help: "Settings of the computation itself."},
	}, fitBlocks())
}

const humidityHelp = "How moist the air is; give exactly one of the five numbers."

func filmBlocks() []Block {
	const adhesive, cure = "film.adhesive", "film.adhesive.crosslinking"
	return []Block{
		{Path: "", Label: "Job", Help: "One coated part and the routes to compare."},
		{Path: "film", Label: "Film", Help: "The sprayed coat of adhesive."},
		{Path: adhesive, Label: "Adhesive", Help: "The dispersion adhesive in numbers; start from a record."},
		{Path: adhesive + ".transport", Label: "Late drying", Help: "How the last water leaves the film."},
		{Path: adhesive + ".sorption", Label: "Sorption",
			Help: "Water that the dry film holds in balance with the air."},
		{Path: adhesive + ".co_solvent", Label: "Co-solvent", Optional: true, Absent: true,
			Help: "What evaporates beside the water and can burn, for the check of the ventilation; none: water alone."},
		{Path: cure, Label: "Crosslinking", Optional: true, Help: "How fast the adhesive cures; none: it only dries."},
		{Path: cure + ".schedule", Label: "Cure schedule",
			Help: "Pairs of temperature and time from the data sheet. No pair: frequency factor and activation energy count as " +
				"they stand; one pair: it sets the frequency factor; two or more: they set both."},
		{Path: cure + ".schedule.pairs", Label: "Pairs", List: true, MaxItems: 24, Items: 1,
			Help: "Temperature and time that reach the stated conversion."},
		{Path: cure + ".schedule.pairs[]", Label: "Pair", Help: "One line of the cure schedule."},
		{Path: cure + ".autocatalysis", Label: "Autocatalysis", Optional: true, Absent: true,
			Help: "A second reaction that its own product speeds up; none: plain order."},
		{Path: cure + ".vitrification", Label: "Vitrification", Optional: true, Absent: true,
			Help: "A firm film turns glassy as it cures, and the cure stalls until it is warmed; none: the film stays rubbery."},
		{Path: "pile", Label: "Pile", Optional: true,
			Help: "The fibres that stand in the film; none: coated but not flocked."},
	}
}

func partBlocks() []Block {
	return []Block{
		{Path: "part", Label: "Part", Help: "The wall that carries the film."},
		{Path: "part.carrier", Label: "Carrier", Optional: true, Absent: true,
			Help: "Rack, hook or frame that warms and cools with the part."},
		{Path: "part.spots", Label: "Spots", List: true, MaxItems: 8,
			Help: "Places that dry unlike the open face: recesses, edges, overlaps of the spray. Each is computed, and the last to " +
				"be ready decides."},
		{Path: "part.spots[]", Label: "Spot", Help: "One place of its own."},
	}
}

func workshopBlocks() []Block {
	const space = "workshop.space"
	blocks := []Block{
		{Path: "workshop", Label: "Workshop",
			Help: "The room in which the part is sprayed, flocked, left overnight and cooled."},
		{Path: "workshop.air", Label: "Air over time", List: true, MinItems: 1, MaxItems: 96, Items: 1,
			Help: "State of the air at one or more times from spraying, the first at zero."},
		{Path: "workshop.air[]", Label: "Air", Help: "State of the air at one time."},
		{Path: "workshop.air[].humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
	}
	blocks = append(blocks, transferBlocks("workshop.transfer")...)
	return append(blocks, []Block{
		{Path: space, Label: "Full room", Optional: true, Absent: true,
			Help: "Many parts share the room's air: it takes up their water and the room cools. The air above is then where the " +
				"room starts. None: the air stays as stated."},
		{Path: space + ".outside", Label: "Outside air over time", List: true, MinItems: 1, MaxItems: 96, Items: 1,
			Help: "State of the air that comes in, at one or more times from spraying, the first at zero."},
		{Path: space + ".outside[]", Label: "Outside air", Help: "State of the outside air at one time."},
		{Path: space + ".outside[].humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
		{Path: space + ".heating", Label: "Heating", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "heat_balance", In: []string{"true"}},
			Help:     "Holds the room at a temperature, by night at a lower one; none: unheated."},
		{Path: space + ".dehumidifier", Label: "Dehumidifier", Optional: true, Absent: true,
			Help: "Takes water out of the room's air; none: air changes alone carry it off."},
		{Path: "room", Label: "Room overnight", Optional: true,
			Help: "The part stays in the workshop; none: not computed."},
	}...)
}

func ovenBlocks() []Block {
	blocks := []Block{
		{Path: "static_oven", Label: "Static oven", Optional: true, Absent: true,
			Help: "A box oven, loaded, held and unloaded; none: not computed."},
		{Path: "static_oven.humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
	}
	blocks = append(blocks, transferBlocks("static_oven.transfer")...)
	return append(blocks, Block{Path: "static_oven.chamber", Label: "Chamber",
		Help: "What makes the oven sag under a cold load and climb back."})
}

func tunnelBlocks() []Block {
	const zone = "tunnel.zones[]"
	blocks := []Block{
		{Path: "tunnel", Label: "Tunnel oven", Optional: true, Absent: true,
			Help: "Zones passed at one line speed; none: not computed."},
		{Path: "tunnel.zones", Label: "Zones", List: true, MinItems: 1, MaxItems: 12, Items: 1,
			Help: "In the order in which the part passes them, cooling zones last."},
		{Path: zone, Label: "Zone", Help: "One length of the tunnel with air of one state."},
		{Path: zone + ".humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
	}
	blocks = append(blocks, transferBlocks(zone+".transfer")...)
	return append(blocks, []Block{
		{Path: zone + ".infrared", Label: "Infrared", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(Heated)}},
			Help:     "Radiators that shine on the part; none: hot air alone."},
		{Path: zone + ".air", Label: "Air through the zone", Optional: true, Absent: true,
			Help: "Exhaust and make-up, from which the zone's humidity and heat follow; none: the humidity holds as given."},
	}...)
}

func transferBlocks(at string) []Block {
	return []Block{
		{Path: at, Label: "Air movement", Help: "How air meets the faces of the part."},
		{Path: at + ".fan", Label: "Fan", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(ParallelFlow), string(Combined)}},
			Help:     "Air flow and cross-section, from which the air speed follows; none: the speed counts as it stands."},
		{Path: at + ".nozzles", Label: "Nozzles", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(SlotNozzles), string(RoundNozzles)}},
			Help:     "Slots or round nozzles that blow straight at the face."},
	}
}
