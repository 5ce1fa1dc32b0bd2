package report

import "github.com/drywright/drywright/cure/result"

// words is the catalogue of one language. Sentences with numbers are patterns whose {names} are replaced by value.
type words struct {
	titles   map[result.Kind]string
	places   map[result.Kind]string      // the oven as it is left: "the tunnel"
	marks    map[result.MarkName]string  // names of the dry states
	holds    map[result.MarkName]string  // at the exit, the part is ...
	lacks    map[result.MarkName]string  // at the exit, the part is not yet ...
	last     map[result.MarkName]string  // what holds up "ready"
	stages   map[result.StageKind]string // names of the stages that no zone names
	risks    map[string][2]string        // as a notice, as a danger
	moment   map[string]string           // labels of profiles that are no marks
	grades   map[result.Severity]string  // how a risk is announced
	limitsOf map[string]string           // what a share is the share of
	column   [8]string                   // heads of the table of marks
	line     [phrases]string             // all other sentences
	fit      fitWords                    // of trials
}

// phrase names a sentence of the catalogue.
type phrase int

// The sentences, in the order of the catalogue.
const (
	readyAlone phrase = iota // no deadline is set
	readyEarly
	readyJust
	readyLate
	afterSpraying
	stillInside
	readyNever
	readyUnknown // not ready, and no mark says why
	comesLast
	leavesBoth // the oven, with something reached and something missing
	leavesOne  // the oven, with only one of them
	curedLater
	curedNever
	but
	moreRisks
	and
	inPlace
	notReached
	atHorizon
	afterBoiling
	incomplete
	yes
	no
	exitLine
	unknownRisk
	headRisks
	headBalances
	headWarnings
	noRisk
	riskLine
	balanceLine
	waterAccount
	heatAccount
	atSpot
	headAir
	airLine
	airDuty
	airFlammable
	headAmounts
	amountEvaporated
	amountThroughput
	amountCycle
	amountEnergy
	amountCost
	headLimits
	limitLine
	headSpots
	spotLine
	spotWorst
	phrases // how many there are
)

// english is the catalogue of British English, in the words of the trade.
func english() words {
	return words{
		fit: fitEnglish(),
		titles: map[result.Kind]string{
			result.Room: "Room, overnight", result.StaticOven: "Static oven", result.Tunnel: "Tunnel oven",
		},
		places: map[result.Kind]string{result.StaticOven: "the oven", result.Tunnel: "the tunnel"},
		marks: map[result.MarkName]string{
			result.Open: "open time", result.Touch: "touch-dry", result.TackFree: "tack-free",
			result.DryThrough: "dry through", result.Cured: "cured", result.Cool: "cool to handle",
			result.Ready: "ready to handle",
		},
		holds: map[result.MarkName]string{
			result.Touch: "touch-dry", result.TackFree: "tack-free", result.DryThrough: "dry through",
			result.Cured: "cured", result.Cool: "cool",
		},
		lacks: map[result.MarkName]string{
			result.Touch: "still wet at the surface", result.TackFree: "still tacky",
			result.DryThrough: "not dry through", result.Cured: "not cured", result.Cool: "still too warm to handle",
		},
		last: map[result.MarkName]string{
			result.Touch: "touch-dry", result.TackFree: "tack-free", result.DryThrough: "dry through",
			result.Cured: "cured", result.Cool: "cooling down",
		},
		stages: map[result.StageKind]string{
			result.Wait: "Wait for flocking", result.Oven: "Oven", result.HeatedZone: "Heated zone",
			result.CoolingZone: "Cooling zone", result.Rest: "Workshop",
		},
		risks: map[string][2]string{
			"flocked_late": {
				"The fibre comes {worst} after spraying and the film takes fibre for {limit}: little time is left.",
				"The fibre comes {worst} after spraying, but the film takes fibre for {limit} only: it will not anchor.",
			},
			"boiling": {
				"The film comes close to boiling{where}: its water would push with {worst}, the air with {limit}.",
				"The film boils under its skin{where}, {start} after spraying: its water pushes with {worst}, " +
					"the air with {limit}. Expect blisters, and doubt every later mark.",
			},
			"film_forming": {
				"The film closes at {worst}{where}, below its film-forming temperature of {limit}; later warmth heals it.",
				"The film closes at {worst}{where}, below its film-forming temperature of {limit}: it stays weak and chalky.",
			},
			"part_limit": {
				"The part reaches {worst}{where}, near its limit of {limit}.",
				"The part gets too hot{where}, from {start} after spraying: {worst}, its limit is {limit}.",
			},
			"dew": {
				"Dew settles on the film{where}: {worst} at most, it would run off from {limit}.",
				"Dew settles on the film{where}: {worst}, and it runs off from {limit}.",
			},
			"skin": {
				"The film dries from the outside{where}: skin number {worst}, a skin is likely above {limit}.",
				"The film skins over{where}: skin number {worst}, a skin is likely above {limit}.",
			},
			"heat_short": {
				"The heater is nearly at its end{where}: {worst} asked of {limit}.",
				"The heater does not reach{where}: {worst} asked, {limit} installed. The zone will run colder than stated.",
			},
			"flammable": {
				"Co-solvent vapour{where} reaches {worst} of its lower flammable limit.",
				"Co-solvent vapour{where} reaches {worst} of its lower flammable limit, above {limit}: more exhaust, before anything else.",
			},
			"near_saturation": {
				"The air is nearly saturated{where}: {worst} relative humidity, drying slows to a crawl from {limit}.",
				"The air is saturated{where}: {worst} relative humidity, drying stalls from {limit}.",
			},
			"crack_thickness": {
				"The wet film is {worst} thick; above {limit} this adhesive may crack as it dries.",
				"The wet film is {worst} thick; above {limit} this adhesive cracks as it dries.",
			},
		},
		moment: map[string]string{"sprayed": "as sprayed", "exit": "at the exit"},
		grades: map[result.Severity]string{result.Notice: "note", result.Danger: "DANGER"},
		limitsOf: map[string]string{
			"dwell":            "of the time in the tunnel until {place}",
			"heat":             "of the heat installed in {place}",
			"exhaust":          "of the water that the air of {place} can hold",
			"part_temperature": "of the way from the workshop to the part's limit",
			"flammable":        "of the flammable vapour that {place} may hold",
		},
		column: [8]string{"", "time", "where", "at exit", "water", "conversion", "film", "remark"},
		line: [phrases]string{
			readyAlone:    "Ready to handle {when}",
			readyEarly:    "Ready to handle {when}, {margin} before the deadline of {deadline}",
			readyJust:     "Ready to handle {when}, just at the deadline of {deadline}",
			readyLate:     "Ready to handle {when}: {margin} too late for the deadline of {deadline}",
			afterSpraying: "{ready} after spraying",
			stillInside:   "{ready} after spraying (still inside)",
			readyNever:    "Not ready within {horizon}: by then {lacks}.",
			readyUnknown:  "Not ready within {horizon}.",
			comesLast:     "{sentence}; {mark} comes last.",
			leavesBoth:    "Leaves {place} {exit} after spraying {holds}, but {lacks}.",
			leavesOne:     "Leaves {place} {exit} after spraying {state}.",
			curedLater:    "Cured after {cured}.",
			curedNever:    "Not cured within {horizon}.",
			but:           "But: {risk}",
			moreRisks:     "Further dangers: {count}.",
			and:           "and",
			inPlace:       " ({place})",
			notReached:    "not reached",
			atHorizon:     "not within {horizon}; the state then",
			afterBoiling:  "after boiling, doubtful",
			incomplete:    "The run ended early, {time} after spraying, without an answer to everything.",
			yes:           "yes",
			no:            "no",
			exitLine: "Exit {exit} after spraying: water {water}, conversion {conversion}, film {film}, " +
				"part at most {part}",
			unknownRisk:      "{name}{where}: {worst}, limit {limit}.",
			headRisks:        "Risks",
			headBalances:     "Balances, in = out + kept",
			headWarnings:     "Warnings",
			noRisk:           "none",
			riskLine:         "{grade}: {text}",
			balanceLine:      "{account}: in {in}, out {out}, kept {kept}, open by {relative} of the largest term",
			waterAccount:     "water",
			heatAccount:      "heat",
			atSpot:           "Judged at the spot “{spot}”, which comes last: {sentence}",
			headAir:          "Air",
			airLine:          "{place}: {humidity} at most, dew point {dew}",
			airDuty:          "heater at {share} of {installed}",
			airFlammable:     "co-solvent at {share} of its lower flammable limit (25 % is the usual end, NFPA 86; the local code first)",
			headAmounts:      "Amounts",
			amountEvaporated: "{water} of water evaporate",
			amountThroughput: "{rate} m²/h, {shift} m² in a shift of eight hours",
			amountCycle:      "a charge every {cycle}",
			amountEnergy:     "{energy} from heaters",
			amountCost:       "{cost} {currency}/m², {carbon} of CO₂",
			headLimits:       "What is used up, the tightest first",
			limitLine:        "{share} {text}",
			headSpots:        "Spots",
			spotLine:         "{name}: {text}",
			spotWorst:        "{name} (worst): {text}",
		},
	}
}
