package job

import "slices"

// Blocks is the table of the objects and lists of a Job, in the order of the document.
func Blocks() []Block {
	all := blockEntries()
	for i := range all {
		all[i] = all[i].worded()
	}
	return all
}

// blockEntries is Blocks without the words.
func blockEntries() []Block {
	return slices.Concat(filmBlocks(), partBlocks(), workshopBlocks(), ovenBlocks(), tunnelBlocks(), costBlocks(), []Block{
		{Path: "targets"},
		{Path: "tariffs", Optional: true, Absent: true},
		{Path: "numerics"},
	}, fitBlocks())
}

func filmBlocks() []Block {
	const adhesive, cure = "film.adhesive", "film.adhesive.crosslinking"
	return []Block{
		{Path: ""},
		{Path: "film"},
		{Path: adhesive},
		{Path: adhesive + ".transport"},
		{Path: adhesive + ".sorption"},
		{Path: adhesive + ".co_solvent", Optional: true, Absent: true},
		{Path: cure, Optional: true},
		{Path: cure + ".schedule"},
		{Path: cure + ".schedule.pairs", List: true, MaxItems: 24, Items: 1},
		{Path: cure + ".schedule.pairs[]"},
		{Path: cure + ".autocatalysis", Optional: true, Absent: true},
		{Path: cure + ".vitrification", Optional: true, Absent: true},
		{Path: "pile", Optional: true},
	}
}

func partBlocks() []Block {
	return []Block{
		{Path: "part"},
		{Path: "part.carrier", Optional: true, Absent: true},
		{Path: "part.spots", List: true, MaxItems: 8},
		{Path: "part.spots[]"},
	}
}

func workshopBlocks() []Block {
	const space = "workshop.space"
	blocks := []Block{
		{Path: "workshop"},
		{Path: "workshop.air", List: true, MinItems: 1, MaxItems: 96, Items: 1},
		{Path: "workshop.air[]"},
		{Path: "workshop.air[].humidity", OneOf: true},
	}
	blocks = append(blocks, transferBlocks("workshop.transfer")...)
	return append(blocks, []Block{
		{Path: space, Optional: true, Absent: true},
		{Path: space + ".outside", List: true, MinItems: 1, MaxItems: 96, Items: 1},
		{Path: space + ".outside[]"},
		{Path: space + ".outside[].humidity", OneOf: true},
		{Path: space + ".heating", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "heat_balance", In: []string{"true"}},
		},
		{Path: space + ".dehumidifier", Optional: true, Absent: true},
		{Path: "room", Optional: true},
	}...)
}

func ovenBlocks() []Block {
	blocks := []Block{
		{Path: "static_oven", Optional: true, Absent: true},
		{Path: "static_oven.humidity", OneOf: true},
	}
	blocks = append(blocks, transferBlocks("static_oven.transfer")...)
	return append(blocks, Block{Path: "static_oven.chamber"})
}

func tunnelBlocks() []Block {
	const zone = "tunnel.zones[]"
	blocks := []Block{
		{Path: "tunnel", Optional: true, Absent: true},
		{Path: "tunnel.zones", List: true, MinItems: 1, MaxItems: 12, Items: 1},
		{Path: zone},
		{Path: zone + ".humidity", OneOf: true},
	}
	blocks = append(blocks, transferBlocks(zone+".transfer")...)
	return append(blocks, []Block{
		{Path: zone + ".infrared", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(Heated)}},
		},
		{Path: zone + ".air", Optional: true, Absent: true},
	}...)
}

func transferBlocks(at string) []Block {
	return []Block{
		{Path: at},
		{Path: at + ".fan", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(ParallelFlow), string(Combined)}},
		},
		{Path: at + ".nozzles", Optional: true, Absent: true,
			UsedWhen: &Condition{Path: "kind", In: []string{string(SlotNozzles), string(RoundNozzles)}},
		},
	}
}
