package job

// fitFields are the texts and numbers that a fit carries along. They are written by adopting a fit and read by whoever wants to know
// how well a number is known; none of them changes a computation.
func fitFields() []Field {
	const at, value, pair, before = "fits[].", "fits[].values[].", "fits[].correlations[].", "fits[].before[]."
	const source, none = "the fit", "None: it tells where numbers came from."
	text := func(path, label, help string, high float64) Field {
		return Field{Path: path, Kind: KindText, Label: label, High: high, Source: source, Effect: none, Help: help}
	}
	number := func(path, label, help string) Field {
		return Field{Path: path, Label: label, Low: -1e36, High: 1e36, UsualLow: -1e36, UsualHigh: 1e36, Source: source, Effect: none, Help: help}
	}
	optional := func(f Field) Field {
		f.Optional, f.Absent = true, true
		return f
	}
	name := text(at+"name", "Name", "What the fit is called; each has its own name.", 100)
	name.Text = "Fit"
	spread := number(value+"standard_error", "Standard error", "Spread of the number; of its natural logarithm where it is known to a factor.")
	spread.Low, spread.UsualLow = 0, 0
	correlation := number(pair+"correlation", "Correlation", "How far the two go together: 1 or -1 means that the trial tells only one of them.")
	correlation.Low, correlation.High, correlation.UsualLow, correlation.UsualHigh = -1, 1, -1, 1
	return []Field{
		name,
		{Path: at + "kind", Label: "Kind of trial", Text: string(WeightFit),
			Choices: []Choice{
				{string(WeightFit), "a coupon on a scale"},
				{string(RecorderFit), "an oven temperature recorder"},
				{string(CureFit), "cure tests"},
				{string(SorptionFit), "water held at humidities"},
			},
			Source: source, Effect: "Says what the numbers were told by.", Help: "The trial that was fitted."},
		text(at+"date", "Date", "When the trial was made.", 40),
		text(at+"data", "Data", "What was read: the name of a file or a few words.", 200),
		text(at+"digest", "Digest of the data", "Fingerprint of the data's bytes (FNV-1a, 64 bits): the same data give the same digits.", 16),
		{Path: at + "points", Label: "Points", Integer: true, Low: 0, High: 1e6, UsualLow: 0, UsualHigh: 1e6, Source: source, Effect: none,
			Help: "How many rows of the data were used."},
		text(at+"note", "Note", "How well the curve meets the data, in words.", 2000),
		text(value+"path", "Place", "Where the number stands in the job.", 120),
		number(value+"value", "Value", "The fitted number, in the job's unit."),
		optional(number(value+"low", "Lower end", "Lower end of its 95 % interval; empty: the trial gives none.")),
		optional(number(value+"high", "Upper end", "Upper end of its 95 % interval; empty: the trial gives none.")),
		spread,
		{Path: value + "logarithmic", Kind: KindSwitch, Label: "Known to a factor", Source: source, Effect: "The standard error is that of the logarithm.",
			Help: "Whether the number was fitted in its logarithm."},
		text(pair+"first", "First", "Place of the first number.", 120),
		text(pair+"second", "Second", "Place of the second number.", 120),
		correlation,
		text(before+"path", "Place", "Where something was changed.", 120),
		text(before+"json", "Before", "What stood there before, as JSON.", 8000),
	}
}

func fitBlocks() []Block {
	return []Block{
		{Path: "fits", Label: "Fits", List: true, MaxItems: 16,
			Help: "Sets of numbers that trials of the user's own have told; adopted and dropped as a whole."},
		{Path: "fits[]", Label: "Fit", Help: "One trial and the numbers that it told."},
		{Path: "fits[].values", Label: "Fitted numbers", List: true, MaxItems: 16, Help: "The numbers of the job that rest on the trial."},
		{Path: "fits[].values[]", Label: "Fitted number", Help: "One number with its interval."},
		{Path: "fits[].correlations", Label: "Correlations", List: true, MaxItems: 120, Help: "How the fitted numbers go together, pair by pair."},
		{Path: "fits[].correlations[]", Label: "Pair", Help: "Two fitted numbers."},
		{Path: "fits[].before", Label: "Before the fit", List: true, MaxItems: 32, Help: "What to put back when the fit is dropped."},
		{Path: "fits[].before[]", Label: "Place", Help: "One place and what stood there."},
	}
}
