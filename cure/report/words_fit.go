package report

// fitWords is what the catalogue says of trials.
type fitWords struct {
	titles  map[string]string // by kind of trial
	trials  map[string]string // in a sentence: "a weighed coupon"
	doubts  map[string]string // by code
	summary string
	none    string // nothing could be fitted
	scatter string

	parameter, interval, unknown, before string
	rest, dated, headRest, cureTime      string
	headNumbers, headDoubts, headChoices string
	headResiduals, headNotes, headRecord string
	noDoubt, choice, chosen, resampled   string
	residual, largest, largestAlone      string
	equivalent, above, peak, noCrosslink string
	wideFactor, wideWidth, unfinished    string
	correlation                          string

	tells, needs map[string]string // by kind of trial
	quantities   map[string]string
	isotherms    map[string]string
	questions    map[string]asking // by member of the question; "kind/member" goes before
}

// asking is how a number of a question is asked for: its label, what it is, and what is taken where it is left empty.
type asking struct{ label, help, empty string }

// fitEnglish is the catalogue of British English, in the words of the trade.
func fitEnglish() fitWords {
	return fitWords{
		titles: map[string]string{"weight": "Coupon on a scale", "recorder": "Oven recorder", "cure": "Cure tests", "sorption": "Water held"},
		trials: map[string]string{"weight": "a weighed coupon", "recorder": "an oven recorder", "cure": "cure tests",
			"sorption": "sorption points"},
		doubts: map[string]string{
			"wide":     "This trial cannot tell “{first}” closely: {width}.",
			"prior":    "This trial cannot tell “{first}”: {share} of what was open is settled, the rest is what the job had before.",
			"bound":    "“{first}” stands at the end of its range: the data ask for more than the model allows. Check the conditions of the trial.",
			"together": "This trial tells “{first}” and “{second}” only together (correlation {value}): one makes up for the other.",
			"left":     "The data are met as well without “{first}”: this trial cannot tell it, and it stays as the job has it.",
			"few":      "There are no more data than numbers to tell: no interval can be given.",
			"bent":     "Resampling the data gives another interval for “{first}”: trust the wider of the two.",
			"astray": "The curve leaves the readings for long stretches (scatter {share} of what they run through): this is not the trial that the " +
				"job describes. Was the fibre weighed along, is time zero that of spraying, was the air as stated?",
			"outliers": "Far from the curve, and so counting for less: {count} of the readings.",
		},
		summary:     "{count} points tell {numbers}.",
		none:        "{count} readings; nothing was fitted.",
		scatter:     "Scatter about the curve {scatter}.",
		parameter:   "{label}: {value}{interval}; {before}",
		interval:    " ({low} to {high})",
		unknown:     " (no interval)",
		before:      "the job had {before}",
		rest:        "“{label}” rests on {trial}, “{fit}”{date}: {value}{interval}.",
		cureTime:    "At {temperature}, where the tests lie, {conversion} takes {time}{interval}.",
		dated:       " of {date}",
		headRest:    "Numbers from trials",
		resampled:   "resampled {low} to {high}",
		headNumbers: "Numbers, with 95 % intervals", headDoubts: "What this trial cannot tell", headChoices: "Sets that were compared (less is better)",
		headResiduals: "Residuals", headNotes: "How the data were taken", headRecord: "What this run did to the film",
		noDoubt: "Nothing stands out.", choice: "AICc {aicc}, BIC {bic}: {paths}", chosen: " (chosen)",
		residual: "standard deviation {scatter}", largest: "largest {residual} at {x} (line {line})", largestAlone: "largest {residual} at {x}",
		equivalent: "as much cure as {time} at {temperature}", above: "{time} above {limit}", peak: "{whose} at most {peak}",
		noCrosslink: "no crosslinker, no equivalent time", wideFactor: "its interval spans a factor of {value}", wideWidth: "its interval is {value} wide",
		unfinished:  "The search ended before it was done: the numbers are not the best ones.",
		correlation: "“{first}” and “{second}”: correlation {value}",
		tells: map[string]string{
			"weight":   "Tells how fast the air of that place dries, and, once the mass stands still, how slowly the film gives its last water.",
			"recorder": "Tells what this very run did to the film, and how fast each part of the oven heats.",
			"cure":     "Tells how fast the adhesive crosslinks, and how that changes with temperature.",
			"sorption": "Tells how much water the dry film holds at each humidity.",
		},
		needs: map[string]string{
			"weight":   "Time and mass of one or more coated coupons, weighed from spraying until the mass stands still; the coated area of one coupon.",
			"recorder": "Time and the temperature of the part, of the air beside it, or both, from entry to exit.",
			"cure":     "Time, temperature and outcome of each test: conversion from a data sheet, or pass and fail of your own rub, pull or solvent tests.",
			"sorption": "Relative humidity and the water that the film holds there, in balance.",
		},
		quantities: map[string]string{"time": "time", "mass": "mass", "coupon": "coupon", "air_temperature": "air temperature",
			"part_temperature": "part temperature", "temperature": "temperature", "start_temperature": "start temperature of a ramp",
			"conversion": "conversion", "passed": "pass or fail", "relative_humidity": "relative humidity", "water_content": "water content"},
		isotherms: map[string]string{"gab": "GAB", "flory_huggins": "Flory-Huggins"},
		questions: map[string]asking{
			"area_m2":          {"Coated area of one coupon", "Mass is counted on this area.", "a number is needed, since the job's part has no area"},
			"tare_kg":          {"Tare", "What the scale shows with the bare coupon.", "not known: the losses alone count"},
			"start_s":          {"Time zero of the table", "Counted from spraying.", "spraying"},
			"recorder/start_s": {"Time zero of the table", "Counted from spraying.", "the part enters the oven"},
			"reference_K":      {"Reference temperature", "The equivalent time is told at this temperature.", ""},
			"limit_K":          {"Limit", "The time above this temperature is told.", ""},
			"threshold":        {"Conversion that a passed test proves", "Used for pass and fail only.", ""},
			"repeatability":    {"Repeatability of a test", "Scatter of the time at which a test just passes; used for pass and fail only.", ""},
		},
	}
}
