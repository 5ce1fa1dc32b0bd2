package job

// Blocks is the table of the objects and lists of a Job, in the order of the document.
func Blocks() []Block {
	const humidityHelp = "How moist the air is; give exactly one of the five numbers."
	const transferHelp = "How air meets the faces of the part."
	return []Block{
		{Path: "", Label: "Job", Help: "One coated part and the routes to compare."},
		{Path: "film", Label: "Film", Help: "The sprayed coat of adhesive."},
		{Path: "film.adhesive", Label: "Adhesive", Help: "The dispersion adhesive in numbers; start from a record."},
		{Path: "film.adhesive.sorption", Label: "Sorption",
			Help: "Water that the dry film holds in balance with the air (GAB isotherm)."},
		{Path: "film.adhesive.crosslinking", Label: "Crosslinking", Optional: true,
			Help: "How fast the adhesive cures; none: it only dries."},
		{Path: "film.adhesive.crosslinking.schedule", Label: "Cure schedule",
			Help: "Pairs of temperature and time from the data sheet. No pair: frequency factor and activation energy count as " +
				"they stand; one pair: it sets the frequency factor; two or more: they set both."},
		{Path: "film.adhesive.crosslinking.schedule.pairs", Label: "Pairs", List: true, MaxItems: 24, Items: 1,
			Help: "Temperature and time that reach the stated conversion."},
		{Path: "film.adhesive.crosslinking.schedule.pairs[]", Label: "Pair", Help: "One line of the cure schedule."},
		{Path: "film.adhesive.crosslinking.autocatalysis", Label: "Autocatalysis", Optional: true, Absent: true,
			Help: "A second reaction that its own product speeds up; none: plain order."},
		{Path: "pile", Label: "Pile", Optional: true,
			Help: "The fibres that stand in the film; none: coated but not flocked."},
		{Path: "part", Label: "Part", Help: "The wall that carries the film."},
		{Path: "part.carrier", Label: "Carrier", Optional: true, Absent: true,
			Help: "Rack, hook or frame that warms and cools with the part."},
		{Path: "workshop", Label: "Workshop",
			Help: "The room in which the part is sprayed, flocked, left overnight and cooled."},
		{Path: "workshop.air", Label: "Air over time", List: true, MinItems: 1, MaxItems: 96, Items: 1,
			Help: "State of the air at one or more times from spraying, the first at zero."},
		{Path: "workshop.air[]", Label: "Air", Help: "State of the air at one time."},
		{Path: "workshop.air[].humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
		{Path: "workshop.transfer", Label: "Air movement", Help: transferHelp},
		{Path: "room", Label: "Room overnight", Optional: true,
			Help: "The part stays in the workshop; none: not computed."},
		{Path: "static_oven", Label: "Static oven", Optional: true, Absent: true,
			Help: "A box oven, loaded, held and unloaded; none: not computed."},
		{Path: "static_oven.humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
		{Path: "static_oven.transfer", Label: "Air movement", Help: transferHelp},
		{Path: "static_oven.chamber", Label: "Chamber",
			Help: "What makes the oven sag under a cold load and climb back."},
		{Path: "tunnel", Label: "Tunnel oven", Optional: true, Absent: true,
			Help: "Zones passed at one line speed; none: not computed."},
		{Path: "tunnel.zones", Label: "Zones", List: true, MinItems: 1, MaxItems: 12, Items: 1,
			Help: "In the order in which the part passes them, cooling zones last."},
		{Path: "tunnel.zones[]", Label: "Zone", Help: "One length of the tunnel with air of one state."},
		{Path: "tunnel.zones[].humidity", Label: "Humidity", OneOf: true, Help: humidityHelp},
		{Path: "tunnel.zones[].transfer", Label: "Air movement", Help: transferHelp},
		{Path: "targets", Label: "Targets", Help: "Thresholds of the marks and risks."},
		{Path: "numerics", Label: "Computation", Help: "Settings of the computation itself."},
	}
}
