package result

// FromTrial is one number of the job that rests on a trial of the user's own. Text says so in words.
type FromTrial struct {
	Path   string   `json:"path"`
	Label  string   `json:"label"`
	Fit    string   `json:"fit"`  // name of the fit
	Kind   string   `json:"kind"` // of the trial
	Date   string   `json:"date"`
	Value  float64  `json:"value"` // in the job's unit
	Low    *float64 `json:"low"`   // of the 95 % interval; null: none
	High   *float64 `json:"high"`
	Symbol string   `json:"symbol"` // shown = value * Factor + Offset in Symbol
	Factor float64  `json:"factor"`
	Offset float64  `json:"offset"`
	Text   string   `json:"text"`
}

// Fit is what a trial tells.
type Fit struct {
	Version      int              `json:"version"`
	Kind         string           `json:"kind"` // weight, recorder, cure, sorption
	Parameters   []FitParameter   `json:"parameters"`
	Correlations []FitCorrelation `json:"correlations"`
	Points       []FitPoint       `json:"points"` // the data with what the curve makes of them
	Curves       []FitCurve       `json:"curves"` // the fitted curves with their bands
	Axes         FitAxes          `json:"axes"`
	Count        int              `json:"count"`   // points that were used
	Freedom      float64          `json:"freedom"` // points less numbers that they tell
	Scatter      float64          `json:"scatter"` // standard deviation of the points about the curve, in the unit of the axis; 0: not known
	AICc         *float64         `json:"aicc"`    // criteria by which sets of parameters are compared: less is better; null: too few points
	BIC          *float64         `json:"bic"`
	Choices      []FitChoice      `json:"choices"` // the sets that were compared, if any
	Doubts       []FitDoubt       `json:"doubts"`  // what this trial cannot tell
	Notes        []string         `json:"notes"`   // what was taken for granted in the data
	Recorded     *Recorded        `json:"recorded"`
	CureTime     *FitTime         `json:"cure_time"` // what rate and activation energy come to where the tests lie; null for other trials
	Converged    bool             `json:"converged"`
	Text         string           `json:"text"`          // the whole in one sentence
	ResidualText string           `json:"residual_text"` // standard deviation, and the largest residual; empty: nothing was fitted
}

// FitParameter is one number that the trial tells. Shown = value * Factor + Offset in Symbol.
type FitParameter struct {
	Path          string   `json:"path"` // in the job
	Label         string   `json:"label"`
	Value         float64  `json:"value"` // in the job's unit
	Low           *float64 `json:"low"`   // 95 % interval from the Jacobian; null: none
	High          *float64 `json:"high"`
	BootstrapLow  *float64 `json:"bootstrap_low"` // the same by resampling; null: not asked for
	BootstrapHigh *float64 `json:"bootstrap_high"`
	StandardError float64  `json:"standard_error"` // of the natural logarithm where Logarithmic
	Logarithmic   bool     `json:"logarithmic"`
	Before        float64  `json:"before"` // what the job had
	Learnt        float64  `json:"learnt"` // share of what was open before that the trial has settled: 0 nothing, 1 all
	Symbol        string   `json:"symbol"`
	Factor        float64  `json:"factor"`
	Offset        float64  `json:"offset"`
	Text          string   `json:"text"`
	ValueText     string   `json:"value_text"`
	IntervalText  string   `json:"interval_text"`  // "low to high", in the unit of the value
	BeforeText    string   `json:"before_text"`    // what the job had
	LearntText    string   `json:"learnt_text"`    // the share as a percentage
	BootstrapText string   `json:"bootstrap_text"` // empty: not asked for
}

// FitCorrelation is the correlation of two parameters.
type FitCorrelation struct {
	First  string  `json:"first"` // paths
	Second string  `json:"second"`
	Value  float64 `json:"value"`
	Text   string  `json:"text"`
}

// FitPoint is one datum. For pass or fail Y is 1 or 0 and Predicted the chance to pass.
type FitPoint struct {
	Series    string  `json:"series"` // coupon, part, test temperature; empty where there is one
	Line      int     `json:"line"`   // of the text
	X         float64 `json:"x"`
	Y         float64 `json:"y"`
	Predicted float64 `json:"predicted"`
	Residual  float64 `json:"residual"`
	Weight    float64 `json:"weight"` // 1, or less where the point counts as an outlier
}

// FitCurve is a fitted curve with its band.
type FitCurve struct {
	Series string    `json:"series"`
	X      []float64 `json:"x"`
	Y      []float64 `json:"y"`
	Low    []float64 `json:"low"` // of the 95 % band of the mean
	High   []float64 `json:"high"`
}

// FitAxes name what is drawn, in SI.
type FitAxes struct {
	X     string `json:"x"`
	XUnit string `json:"x_unit"`
	Y     string `json:"y"`
	YUnit string `json:"y_unit"`
}

// FitTime is how long a conversion takes at a temperature, with its 95 % interval.
type FitTime struct {
	Temperature float64  `json:"temperature_K"`
	Conversion  float64  `json:"conversion"`
	Time        float64  `json:"time_s"`
	Low         *float64 `json:"low_s"` // null: no interval
	High        *float64 `json:"high_s"`
	Text        string   `json:"text"`
}

// FitChoice is one set of parameters that was tried.
type FitChoice struct {
	Paths  []string `json:"paths"`
	AICc   *float64 `json:"aicc"`
	BIC    float64  `json:"bic"`
	Chosen bool     `json:"chosen"`
	Text   string   `json:"text"`
}

// FitDoubt is one thing that the trial cannot tell. Code is one of wide, prior, bound, left, together, few, bent, outliers, astray.
type FitDoubt struct {
	Code   string   `json:"code"`
	Paths  []string `json:"paths"`
	Labels []string `json:"labels"` // of the paths
	Value  float64  `json:"value"`  // factor or width of the interval, share learnt, correlation, or a count
	Text   string   `json:"text"`
}

// Recorded is what a recorded run did to the film.
type Recorded struct {
	Route            Route    `json:"route"`
	EquivalentTime   *float64 `json:"equivalent_time_s"` // at the reference temperature; null without a crosslinker
	Reference        float64  `json:"reference_K"`
	TimeAbove        float64  `json:"time_above_s"` // of the film or part above the limit
	Limit            float64  `json:"limit_K"`
	Peak             float64  `json:"peak_K"`
	EquivalentText   string   `json:"equivalent_text"`
	TimeAboveText    string   `json:"time_above_text"`
	PeakText         string   `json:"peak_text"`
	WhoseTemperature string   `json:"whose_temperature"` // part or film: recorded or computed
}
