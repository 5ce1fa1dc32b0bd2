package job

import "github.com/drywright/drywright/cure/words"

// fitFields are the texts and numbers that a fit carries along. They are written by adopting a fit and read by whoever wants to know
// how well a number is known; none of them changes a computation.
func fitFields() []Field {
	const at, value, pair, before = "fits[].", "fits[].values[].", "fits[].correlations[].", "fits[].before[]."
	text := func(path string, high float64) Field {
		return Field{Path: path, Kind: KindText, High: high, Source: theFit}
	}
	number := func(path string) Field {
		return Field{Path: path, Low: -1e36, High: 1e36, UsualLow: -1e36, UsualHigh: 1e36, Source: theFit}
	}
	optional := func(f Field) Field {
		f.Optional, f.Absent = true, true
		return f
	}
	name := text(at+"name", 100)
	name.Text = words.Told("Fit")
	spread := number(value + "standard_error")
	spread.Low, spread.UsualLow = 0, 0
	correlation := number(pair + "correlation")
	correlation.Low, correlation.High, correlation.UsualLow, correlation.UsualHigh = -1, 1, -1, 1
	return []Field{
		name,
		{Path: at + "kind", Text: string(WeightFit),
			Source: theFit, Choices: choices(WeightFit, RecorderFit, CureFit, SorptionFit),
		},
		text(at+"date", 40),
		text(at+"data", 200),
		text(at+"digest", 16),
		{Path: at + "points", Integer: true, Low: 0, High: 1e6, UsualLow: 0, UsualHigh: 1e6, Source: theFit},
		text(at+"note", 2000),
		text(value+"path", 120),
		number(value + "value"),
		optional(number(value + "low")),
		optional(number(value + "high")),
		spread,
		{Path: value + "logarithmic", Kind: KindSwitch, Source: theFit},
		text(pair+"first", 120),
		text(pair+"second", 120),
		correlation,
		text(before+"path", 120),
		text(before+"json", 8000),
	}
}

func fitBlocks() []Block {
	return []Block{
		{Path: "fits", List: true, MaxItems: 16},
		{Path: "fits[]"},
		{Path: "fits[].values", List: true, MaxItems: 16},
		{Path: "fits[].values[]"},
		{Path: "fits[].correlations", List: true, MaxItems: 120},
		{Path: "fits[].correlations[]"},
		{Path: "fits[].before", List: true, MaxItems: 32},
		{Path: "fits[].before[]"},
	}
}
