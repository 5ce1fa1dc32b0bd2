package job

// FitKind is the kind of trial that a fit came from.
type FitKind string

// The kinds of fit.
const (
	WeightFit   FitKind = "weight"   // a coupon on a scale
	RecorderFit FitKind = "recorder" // an oven temperature recorder
	CureFit     FitKind = "cure"     // conversions, or rub, pull and solvent tests
	SorptionFit FitKind = "sorption" // water held at humidities
)

// Fit is a set of numbers of this job that a trial of the user's own has told. The numbers themselves stand where they belong in
// the job and are used from there; the fit says where they came from, how well they are known, and what stood there before. A
// number that was changed by hand afterwards no longer rests on the fit (see Resting).
type Fit struct {
	Name         string           `json:"name"`
	Kind         FitKind          `json:"kind"`
	Date         string           `json:"date"`   // of the trial, as the user writes it
	Data         string           `json:"data"`   // what was read: a file's name or a few words
	Digest       string           `json:"digest"` // of the data's bytes, FNV-1a of 64 bits in hexadecimal digits
	Points       int              `json:"points"` // how many rows were used
	Note         string           `json:"note"`
	Values       []FittedValue    `json:"values"`
	Correlations []FitCorrelation `json:"correlations"`
	Before       []FitBefore      `json:"before"`
}

// FittedValue is one number of a fit, in SI.
type FittedValue struct {
	Path          string   `json:"path"` // in the job
	Value         float64  `json:"value"`
	Low           *float64 `json:"low"` // of the 95 % interval; null: the trial gives none
	High          *float64 `json:"high"`
	StandardError float64  `json:"standard_error"` // of the natural logarithm where logarithmic
	Logarithmic   bool     `json:"logarithmic"`
}

// FitCorrelation is the correlation of two numbers of a fit, in the scales of their standard errors.
type FitCorrelation struct {
	First       string  `json:"first"` // paths
	Second      string  `json:"second"`
	Correlation float64 `json:"correlation"`
}

// FitBefore is what stood in one place before the fit was adopted, as JSON text.
type FitBefore struct {
	Path string `json:"path"`
	JSON string `json:"json"`
}
