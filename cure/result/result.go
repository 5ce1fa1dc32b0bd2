// Package result is the answer: for each route the marks, risks, balances and curves, as one versioned JSON document.
// Times count from spraying, units are SI and stand in the field names. Text fields are made by package report, so
// that the page and the command print the same digits.
package result

// Version is the version of the document.
const Version = 1

// Result is the answer to one job.
type Result struct {
	Version  int         `json:"version"`
	JobName  string      `json:"job_name"`
	Routes   []Route     `json:"routes"`
	Warnings []Warning   `json:"warnings"` // of the job as a whole
	Rests    []FromTrial `json:"rests"`    // numbers of the job that a trial of the user's own has told
}

// Kind names a route.
type Kind string

// The routes, in the order in which they are reported.
const (
	Room       Kind = "room"
	StaticOven Kind = "static_oven"
	Tunnel     Kind = "tunnel"
)

// Route is what one way of drying does to the film.
type Route struct {
	Kind     Kind         `json:"kind"`
	Title    string       `json:"title"`
	Answer   Answer       `json:"answer"`
	Marks    []Mark       `json:"marks"` // always all seven, in the order of MarkNames
	Exit     *Exit        `json:"exit"`  // null for the room
	Stages   []Stage      `json:"stages"`
	Risks    []Risk       `json:"risks"`
	Balances Balances     `json:"balances"`
	Accounts []Account    `json:"accounts"` // of the air around the part: room, oven or each zone; empty where it is given
	Amounts  Amounts      `json:"amounts"`
	Spots    []SpotAnswer `json:"spots"`  // places of the part that dry unlike the open face; empty when none is stated
	Limits   []Limit      `json:"limits"` // what the tunnel runs out of, the tightest first; empty elsewhere
	Curves   Curves       `json:"curves"`
	Profiles []Profile    `json:"profiles"`
	Working  []Working    `json:"working"`
	Warnings []Warning    `json:"warnings"`
	Status   Status       `json:"status"`
}

// Answer is the route in one sentence, and its parts.
type Answer struct {
	Text         string   `json:"text"`
	Verdict      Verdict  `json:"verdict"`
	ReadyText    string   `json:"ready_text"`    // as printed; empty when not reached
	DeadlineText string   `json:"deadline_text"` // as printed
	MarginText   string   `json:"margin_text"`   // without its sign; empty when ready is not reached
	Ready        *float64 `json:"ready_s"`
	Deadline     float64  `json:"deadline_s"`
	Margin       *float64 `json:"margin_s"` // deadline minus ready; null when ready is not reached
	Spot         string   `json:"spot"`     // where the route is judged: the worst spot's name; empty for the open face
	Binding      string   `json:"binding"`  // the mark that comes last
}

// Verdict is the answer in one word.
type Verdict string

// The verdicts.
const (
	InTime     Verdict = "in_time"
	TooLate    Verdict = "too_late"
	NotReached Verdict = "not_reached"
	AtRisk     Verdict = "at_risk" // in time, but a risk that spoils the part has come true
)

// MarkName names a dry state.
type MarkName string

// The marks.
const (
	Open       MarkName = "open"
	Touch      MarkName = "touch"
	TackFree   MarkName = "tack_free"
	DryThrough MarkName = "dry_through"
	Cured      MarkName = "cured"
	Cool       MarkName = "cool"
	Ready      MarkName = "ready"
)

// MarkNames lists the marks in the order in which they are reported.
func MarkNames() []MarkName {
	return []MarkName{Open, Touch, TackFree, DryThrough, Cured, Cool, Ready}
}

// Mark is the first time that a condition holds, and the film's state there; at the horizon when it never holds.
type Mark struct {
	Name         MarkName `json:"name"`
	Label        string   `json:"label"`
	Time         *float64 `json:"time_s"` // null: not reached within the horizon
	Text         string   `json:"text"`   // the time as printed
	Where        string   `json:"where"`  // the stage in which it falls
	State        State    `json:"state"`
	AtExit       *bool    `json:"at_exit"` // holds when the part leaves the oven; null for the room and for open
	AfterBoiling bool     `json:"after_boiling"`
	Note         string   `json:"note"`
}

// State is the film and part at one moment.
type State struct {
	Time            float64 `json:"time_s"`
	MeanWater       float64 `json:"mean_water_kg_per_kg"`
	OuterWater      float64 `json:"outer_water_kg_per_kg"` // mean over the outer 5 % of the solids
	SurfaceWater    float64 `json:"surface_water_kg_per_kg"`
	Equilibrium     float64 `json:"equilibrium_water_kg_per_kg"`
	MeanConversion  float64 `json:"mean_conversion"`
	LeastConversion float64 `json:"least_conversion"`
	FilmTemperature float64 `json:"film_temperature_K"`
	PartHottest     float64 `json:"part_hottest_K"`
	AirTemperature  float64 `json:"air_temperature_K"`
	Flux            float64 `json:"flux_kg_per_m2s"`
}

// Exit is the moment of leaving the oven.
type Exit struct {
	Time  float64    `json:"time_s"`
	Text  string     `json:"text"`
	State State      `json:"state"`
	Holds []MarkName `json:"holds"`
	Lacks []MarkName `json:"lacks"`
}

// StageKind says what surrounds the part in a stage.
type StageKind string

// The kinds of stage.
const (
	Wait        StageKind = "wait"    // in the workshop, before the oven or the night
	Oven        StageKind = "oven"    // static oven
	HeatedZone  StageKind = "heated"  // of a tunnel
	CoolingZone StageKind = "cooling" // of a tunnel
	Rest        StageKind = "rest"    // in the workshop, for good
)

// Stage is one stretch of the route with one kind of air.
type Stage struct {
	Name     string    `json:"name"`
	Kind     StageKind `json:"kind"`
	Start    float64   `json:"start_s"`
	End      float64   `json:"end_s"`
	Position *float64  `json:"position_m"` // of the zone's entry along the tunnel
	Length   *float64  `json:"length_m"`
	Infrared bool      `json:"infrared"` // radiators shine on the part
}

// Severity grades a risk.
type Severity string

// The grades.
const (
	Notice Severity = "notice" // worth knowing
	Danger Severity = "danger" // spoils the part
)

// Risk is something that goes wrong on the way: where, when and by how much.
type Risk struct {
	Name     string   `json:"name"` // flocked_late, boiling, film_forming, part_limit, dew, skin, near_saturation, crack_thickness, heat_short, flammable
	Severity Severity `json:"severity"`
	Text     string   `json:"text"`
	Where    string   `json:"where"`
	Start    float64  `json:"start_s"`
	Worst    float64  `json:"worst"` // value at its worst
	Limit    float64  `json:"limit"`
	Unit     string   `json:"unit"`
}

// Balances close the accounts of water and heat over the whole run, per coated area.
type Balances struct {
	Water Balance `json:"water_kg_per_m2"`
	Heat  Balance `json:"heat_J_per_m2"`
}

// Balance is one account: In = Out + Kept + Error.
type Balance struct {
	In       float64 `json:"in"`
	Out      float64 `json:"out"`
	Kept     float64 `json:"kept"`
	Error    float64 `json:"error"`
	Relative float64 `json:"relative"` // |Error| over the largest term
	Terms    []Term  `json:"terms"`
}

// Term is one line of an account.
type Term struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
}

// Curves are the histories, one entry per time. PartBack is the temperature of the back face.
type Curves struct {
	Time            []float64 `json:"time_s"`
	MeanWater       []float64 `json:"mean_water_kg_per_kg"`
	OuterWater      []float64 `json:"outer_water_kg_per_kg"`
	SurfaceWater    []float64 `json:"surface_water_kg_per_kg"`
	InnerWater      []float64 `json:"inner_water_kg_per_kg"`
	Equilibrium     []float64 `json:"equilibrium_water_kg_per_kg"`
	MeanConversion  []float64 `json:"mean_conversion"`
	LeastConversion []float64 `json:"least_conversion"`
	FilmTemperature []float64 `json:"film_temperature_K"`
	PartBack        []float64 `json:"part_back_K"`
	AirTemperature  []float64 `json:"air_temperature_K"`
	AirHumidity     []float64 `json:"air_humidity_ratio_kg_per_kg"`
	Flux            []float64 `json:"flux_kg_per_m2s"`
	Thickness       []float64 `json:"thickness_m"`
}

// Profile is the film cut through at one moment: water and conversion against the share of solids below.
type Profile struct {
	Time       float64   `json:"time_s"`
	Label      string    `json:"label"`
	Depth      []float64 `json:"solids_share"` // 0 at the part, 1 at the surface
	Water      []float64 `json:"water_kg_per_kg"`
	Conversion []float64 `json:"conversion"`
}

// Working is one line of how a number came about.
type Working struct {
	Stage    string  `json:"stage"`
	Name     string  `json:"name"`
	Value    float64 `json:"value"`
	Unit     string  `json:"unit"`
	Equation string  `json:"equation"`
	Source   string  `json:"source"`
}

// Warning is a limit that was passed without spoiling the run.
type Warning struct {
	Code string `json:"code"`
	Text string `json:"text"`
}

// Per says what an account is counted over.
type Per string

// What accounts are counted over.
const (
	PerSecond Per = "second" // of steady running
	PerRun    Per = "run"    // the time that the part is there
)

// Account is the water and heat of the air in one place: what comes in and out with air, parts, walls and heaters.
type Account struct {
	Place         string   `json:"place"`
	Per           Per      `json:"per"`
	Water         Balance  `json:"water_kg"`
	Heat          Balance  `json:"heat_J"`
	HumidityRatio float64  `json:"humidity_ratio_kg_per_kg"` // of the zone, or at its highest
	DewPoint      float64  `json:"dew_point_K"`              // at that humidity
	Duty          float64  `json:"duty_J"`                   // from the heater
	Installed     *float64 `json:"installed_W"`              // null: not stated
	Share         *float64 `json:"share_of_installed"`       // the duty, on the mean, over the installed power
	Flammable     *float64 `json:"share_of_flammable_limit"` // co-solvent vapour; null where there is none
}

// Amounts are what the route takes, per square metre of coated face.
type Amounts struct {
	Evaporated  float64  `json:"evaporated_kg_per_m2"`
	Throughput  *float64 `json:"throughput_m2_per_h"` // null where the job does not state how much is coated
	PerShift    *float64 `json:"per_shift_m2"`        // eight hours
	Cycle       *float64 `json:"cycle_s"`             // of a static oven
	Energy      *float64 `json:"energy_J_per_m2"`     // from heaters; null where no place is balanced
	EnergyTerms []Term   `json:"energy_terms_J_per_m2"`
	Cost        *float64 `json:"cost_per_m2"`
	Currency    string   `json:"currency"`
	Carbon      *float64 `json:"carbon_kg_per_m2"`
	Part        *PerPart `json:"per_part"` // null where the area of a part is not stated
}

// PerPart is what one part takes.
type PerPart struct {
	Evaporated float64  `json:"evaporated_kg"`
	PerHour    *float64 `json:"parts_per_hour"`
	PerShift   *float64 `json:"parts_per_shift"`
	Energy     *float64 `json:"energy_J"`
	Cost       *float64 `json:"cost"`
	Carbon     *float64 `json:"carbon_kg"`
}

// SpotAnswer is the route judged at one place of the part.
type SpotAnswer struct {
	Name   string `json:"name"`
	Answer Answer `json:"answer"`
	Marks  []Mark `json:"marks"`
	Risks  []Risk `json:"risks"`
	Worst  bool   `json:"worst"` // of all spots and the open face
}

// Limit is one thing that a tunnel can run out of, as the share of it that is used: 1 is the end.
type Limit struct {
	Name  string  `json:"name"` // dwell, heat, exhaust, part_temperature, flammable
	Place string  `json:"place"`
	Share float64 `json:"share"`
	Text  string  `json:"text"`
}

// Status says how the run went. Steps that another run of the job had taken before are counted as steps, and as nothing else.
type Status struct {
	Complete       bool `json:"complete"`
	Steps          int  `json:"steps"`
	Rejected       int  `json:"rejected"`
	Derivatives    int  `json:"derivatives"`
	Jacobians      int  `json:"jacobians"`
	Factorisations int  `json:"factorisations"`
}
