package result

// TrialForms are what the kinds of trial want to know, for a job, before one is fitted. Texts are filled by package report.
type TrialForms struct {
	MostBytes  int             `json:"most_bytes"` // of a table's text
	Kinds      []TrialForm     `json:"kinds"`
	Quantities []TrialQuantity `json:"quantities"` // that a column may hold, of all kinds
}

// TrialForm is what one kind of trial wants to know.
type TrialForm struct {
	Kind       string           `json:"kind"`
	Title      string           `json:"title"`
	Tells      string           `json:"tells"`      // what it tells
	Needs      string           `json:"needs"`      // what the table holds
	Routes     []Kind           `json:"routes"`     // places of the job where it may have been made; the first is taken when none is named
	Quantities []string         `json:"quantities"` // that it reads from columns
	Numbers    []TrialNumber    `json:"numbers"`
	Parameters []TrialParameter `json:"parameters"` // that it can tell; empty: it chooses by itself
	Isotherms  []TrialWord      `json:"isotherms"`
	Bare       bool             `json:"bare"` // asks whether the part was bare
}

// TrialNumber is one number of the question, in SI. Shown = value * Factor + Offset in Symbol.
type TrialNumber struct {
	Name      string   `json:"name"` // member of the question
	Label     string   `json:"label"`
	Help      string   `json:"help"`
	Empty     string   `json:"empty"` // what is taken when it is left empty
	Default   *float64 `json:"default"`
	Low       float64  `json:"low"`
	High      float64  `json:"high"`
	Dimension string   `json:"dimension"` // of the table of units
	Symbol    string   `json:"symbol"`
	Factor    float64  `json:"factor"`
	Offset    float64  `json:"offset"`
}

// TrialParameter is a number of the job that a trial can tell.
type TrialParameter struct {
	Path   string  `json:"path"`
	Label  string  `json:"label"`
	Route  Kind    `json:"route"` // of the place that it belongs to; empty: of any
	Value  float64 `json:"value"` // that the job has
	Symbol string  `json:"symbol"`
	Factor float64 `json:"factor"`
	Offset float64 `json:"offset"`
	Text   string  `json:"text"` // the value
}

// TrialQuantity is what a column may hold, with the units that it may be in.
type TrialQuantity struct {
	Name  string   `json:"name"`
	Label string   `json:"label"`
	Units []string `json:"units"`
}

// TrialWord is one word of a choice.
type TrialWord struct {
	Value string `json:"value"`
	Label string `json:"label"`
}
