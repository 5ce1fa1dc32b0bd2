package plan

import (
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// WindowQuestion asks which settings of two variables are good.
type WindowQuestion struct {
	Study  Study `json:"study"`
	X      Axis  `json:"x"`
	Y      Axis  `json:"y"`
	Points int   `json:"points"` // of the picture along each axis; 0: 60
}

// Axis is a variable and the stretch of it that is looked at, in SI units. Low and High both 0: where the trade usually is.
type Axis struct {
	Variable string  `json:"variable"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
}

// Window is the area of good settings, with what limits it. It comes from coarse to fine: the last one is Complete.
type Window struct {
	Route      result.Kind   `json:"route"`
	Goal       sim.Goal      `json:"goal"`
	X          Variable      `json:"x"`
	Y          Variable      `json:"y"`
	XLow       float64       `json:"x_low"`
	XHigh      float64       `json:"x_high"`
	YLow       float64       `json:"y_low"`
	YHigh      float64       `json:"y_high"`
	Limits     []WindowLimit `json:"limits"` // the criteria that fail somewhere in the picture
	Columns    int           `json:"columns"`
	Cells      []int         `json:"cells"`      // row by row from YLow, column by column from XLow: -1 good, else the place in Limits of what fails most
	Boundaries []Boundary    `json:"boundaries"` // where good ends
	Present    Spot          `json:"present"`
	Robust     *Spot         `json:"robust"` // the good setting farthest from every limit; null: none is good
	Good       float64       `json:"good"`   // share of the area
	Complete   bool          `json:"complete"`
	Runs       int           `json:"runs"`
	Text       string        `json:"text"`
	Detail     string        `json:"detail"` // how far the picture is resolved
}

// WindowLimit is one thing that fails somewhere in a window.
type WindowLimit struct {
	Name result.CriterionName `json:"name"`
	Text string               `json:"text"`
}

// Boundary is a line on which a criterion is just met, in the window's variables, where the setting beside it is good.
type Boundary struct {
	Limit int       `json:"limit"` // place in Limits
	X     []float64 `json:"x"`
	Y     []float64 `json:"y"`
}

// Spot is a setting of a window.
type Spot struct {
	X        float64  `json:"x"`
	Y        float64  `json:"y"`
	Standing Standing `json:"standing"` // its value is that of X
	Margin   float64  `json:"margin"`   // distance to the nearest boundary as a share of the picture's width or height; 0 where it is not good
}
