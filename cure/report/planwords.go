package report

import (
	"github.com/drywright/drywright/cure/plan"
	"github.com/drywright/drywright/cure/result"
)

// planWords is the catalogue of one language for plans.
type planWords struct {
	failing map[result.CriterionName]string // what goes wrong
	shareOf map[result.CriterionName]string // what is used up
	limits  map[string][4]string            // by variable: at most, at least, must fall to, must rise to
	levers  map[string]string               // changes of plant and coat
	line    [planPhrases]string
}

// planPhrase names a sentence of the catalogue.
type planPhrase int

// The sentences, in the order of the catalogue.
const (
	limitUpTo planPhrase = iota
	limitDownTo
	limitMustFall
	limitMustRise
	limitBeyond
	limitNext
	limitNotNow
	limitNowhere
	limitRange
	limitRefused
	wantedYes
	wantedNo
	wantedAlso
	wantedRefused
	gainMore
	gainLess
	gainNothing
	gainNone
	failsUnknown
	atTheSpot
	later
	earlier
	up
	down
	goalLine
	goalExit
	goalDeadline
	goalSpared
	somewhere
	windowGood
	windowAt
	windowBad
	windowNear
	windowFine
	windowRefused
	windowRobust
	windowTo
	windowKey
	windowDetail
	planPhrases // how many there are
)

func englishPlans() planWords {
	return planWords{
		failing: map[result.CriterionName]string{
			result.TouchAtExit: "the film is still wet at the exit", result.TackFreeAtExit: "the film is still tacky at the exit",
			result.DryAtExit: "the film is not dry through at the exit", result.CuredAtExit: "the film is not cured at the exit",
			result.CoolAtExit: "the part is too warm to handle at the exit", result.ReadyInTime: "the parts are not ready by the deadline",
			result.NoBoiling: "the film boils under its skin", result.FilmFormed: "the film closes below its film-forming temperature",
			result.PartSpared: "the part gets hotter than it stands", result.NoDew: "dew runs off the film",
			result.FlockedInTime: "the film is closed before the fibre comes", result.HeatEnough: "the heater does not reach ({place})",
			result.NotFlammable: "co-solvent vapour passes a quarter of its flammable limit ({place})",
			result.Computed:     "the run cannot be followed to its end",
		},
		shareOf: map[result.CriterionName]string{
			result.TouchAtExit: "the time in the oven until touch-dry", result.TackFreeAtExit: "the time in the oven until tack-free",
			result.DryAtExit: "the time in the oven until dry through", result.CuredAtExit: "the time in the oven until cured",
			result.CoolAtExit: "the time in the oven until cool to handle", result.ReadyInTime: "the time to the deadline until ready",
			result.NoBoiling: "the air pressure by the water under the skin", result.FilmFormed: "the way to the film-forming temperature",
			result.PartSpared: "the way from the workshop to the part's limit", result.NoDew: "the dew that runs off",
			result.FlockedInTime: "the open time before the fibre comes", result.HeatEnough: "the heat installed ({place})",
			result.NotFlammable: "a quarter of the flammable limit ({place})", result.Computed: "the run",
		},
		limits: map[string][4]string{
			plan.LineSpeed: {"The line can run at {value} ({times} on today's {present}).", "The line may run as slowly as {value} (today {present}).",
				"The line must slow down to {value} ({times}).", "The line must run at {value} at least ({times})."},
			plan.SprayLater: {"The last parts can be sprayed {change} {way} than now.", "The parts may be sprayed {change} {way} than now.",
				"The last parts must be sprayed {change} {way} than now.", "The parts must be sprayed {change} {way} than now."},
			plan.ZonesInStep: {"All heated zones can be turned {way} by {change}.", "All heated zones can be turned {way} by {change}.",
				"All heated zones must be turned {way} by {change}.", "All heated zones must be turned {way} by {change}."},
			plan.RackLoad: {"The room takes {value} of coated faces in a night (now {present}).", "The room may hold as little as {value} (now {present}).",
				"The room takes {value} of coated faces in a night only (now {present}).", "The room must hold {value} at least (now {present})."},
			plan.ChargeArea: {"A charge can have {value} of coated faces (now {present}).", "A charge may have as little as {value} (now {present}).",
				"A charge may have {value} of coated faces only (now {present}).", "A charge must have {value} at least (now {present})."},
			plan.Coat: {"The wet coat can be {value} thick at most (now {present}).", "The wet coat may be as thin as {value} (now {present}).",
				"The wet coat must come down to {value} (now {present}).", "The wet coat must be {value} at least (now {present})."},
		},
		levers: map[string]string{
			"longer": "1 m more of {place}", "hotter": "10 K hotter", "exhaust": "10 % more exhaust and make-up", "thinner": "10 g/m² less coat",
			"warmer": "a room 2 K warmer", "drier": "air drier by 5 % relative humidity", "airing": "half as many air changes again",
			"lighter": "a tenth less in the room", "dwell": "5 min longer in the oven",
		},
		line: [planPhrases]string{
			limitUpTo:     "{label}: {value} at most (now {present}).",
			limitDownTo:   "{label}: {value} at least (now {present}).",
			limitMustFall: "{label}: it must come down to {value} (now {present}).",
			limitMustRise: "{label}: it must go up to {value} (now {present}).",
			limitBeyond:   "Beyond that {fails}.",
			limitNext:     "Next comes {of}, {share} used.",
			limitNotNow:   "As it is, {fails}.",
			limitNowhere:  "{label}: no value is good. As it is, {fails}.",
			limitRange:    "Nothing fails up to there, where the accepted range ends.",
			limitRefused:  "Nothing fails up to there; beyond it the job is not accepted: {why}",
			wantedYes:     "Yes: {value} ({times}) is good. The tightest is {of}, {share} used.",
			wantedNo:      "No: at {value} ({times}) {fails}.",
			wantedAlso:    "Also: {fails}.",
			wantedRefused: "No: {value} is not accepted. {why}",
			gainMore:      "{what}: {value}, better by {gain}.",
			gainLess:      "{what}: {value}, worse by {gain}.",
			gainNothing:   "{what}: no gain.",
			gainNone:      "{what}: no setting is good then, since {fails}.",
			failsUnknown:  "something fails",
			atTheSpot:     " (spot “{spot}”)",
			later:         "later",
			earlier:       "earlier",
			up:            "up",
			down:          "down",
			goalLine:      "{route}. Asked for: {goal}.",
			goalExit:      "{marks} when it leaves the oven",
			goalDeadline:  "ready by the deadline",
			goalSpared:    "nothing that spoils the part",
			somewhere:     "in one place at least",
			windowGood:    "{share} of the picture is good.",
			windowAt:      "{x}, {y}",
			windowBad:     "The present setting ({at}) is not: {fails}.",
			windowNear:    "The present setting ({at}) is good; its nearest limit is {margin} of the picture away.",
			windowFine:    "The present setting ({at}) is good.",
			windowRefused: "The present setting is not accepted: {why}",
			windowRobust:  "Most room on all sides: {at}, {margin} of the picture from every limit and from the edge; the tightest there is {of}, {share} used.",
			windowTo:      "  ...  {label}  ...  ",
			windowKey:     "good",
			windowDetail:  "{runs} settings were judged; limits are drawn to about a thousandth of the picture. A good area narrower than a quarter of it can be missed.",
		},
	}
}
