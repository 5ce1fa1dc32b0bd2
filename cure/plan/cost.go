package plan

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// CostQuestion asks what a day's work costs on each route of a job, over the quantity of a day.
type CostQuestion struct {
	Job      *job.Job `json:"-"`
	Quantity *float64 `json:"quantity_m2_per_day"` // to be answered besides; null: none
	Highest  float64  `json:"highest_m2_per_day"`  // end of the curves; 0: what shows the crossings
	Points   int      `json:"points"`              // of each curve; 0: 121
}

// Costs is the cost of a day's work against its quantity, in square metres of coated faces, for every route of the job.
type Costs struct {
	Currency  string      `json:"currency"`
	PartArea  *float64    `json:"part_area_m2"`        // coated faces of one part; null: the job does not say
	Highest   float64     `json:"highest_m2_per_day"`  // end of the curves
	Quantity  []float64   `json:"quantity_m2_per_day"` // of the curves
	Routes    []RouteCost `json:"routes"`              // in the order of the job
	Cheapest  []Stretch   `json:"cheapest"`            // which route costs least from where to where; empty with fewer than two to compare
	Crossings []Crossing  `json:"crossings"`           // of any two routes, rising
	Asked     *AskedCost  `json:"asked"`               // the quantity that was asked about; null: none
	Complete  bool        `json:"complete"`            // false while capacities are still being looked for
	Runs      int         `json:"runs"`                // settings judged so far
	Text      string      `json:"text"`                // the answer in sentences
	Sentences []string    `json:"sentences"`           // the same one by one
}

// AskedCost is what one quantity costs.
type AskedCost struct {
	Quantity float64   `json:"quantity_m2_per_day"`
	Cost     []float64 `json:"cost_per_day"` // beside Routes
	Units    []int     `json:"units"`
	Cheapest int       `json:"cheapest"` // place in Routes of the cheapest that does what it should; -1: none does, or nothing is priced
	Text     string    `json:"text"`
}

// RouteCost is what one route costs.
type RouteCost struct {
	Route    result.Kind       `json:"route"`
	Met      bool              `json:"met"`                 // there is a load at which the route satisfies its goal; else it is in no comparison
	Fails    *result.Criterion `json:"fails"`               // what it does not satisfy; null where Met
	Capacity *float64          `json:"capacity_m2_per_day"` // of one room, oven or tunnel; null: the job does not limit it
	Basis    CapacityBasis     `json:"basis"`
	Charge   *float64          `json:"charge_m2"`       // of one full room or oven charge; null: a tunnel, or no limit
	Charges  int               `json:"charges_per_day"` // of one room or oven; 0: a tunnel
	Rate     *float64          `json:"rate_m2_per_s"`   // while it runs; null: a room
	Terms    []CostTerm        `json:"terms"`
	Missing  []string          `json:"missing"`      // what is not counted for want of a number: JSON paths of the job
	Cost     []float64         `json:"cost_per_day"` // beside Quantity
	Units    []int             `json:"units"`        // beside Quantity: rooms, ovens or tunnels
	Text     string            `json:"text"`
}

// CapacityBasis says where a route's capacity comes from.
type CapacityBasis string

// The bases.
const (
	LargestLoad CapacityBasis = "largest_load" // the largest load of the room that is ready by the deadline
	StatedLoad  CapacityBasis = "stated_load"  // what the job says is in the room or oven at once
	LineRate    CapacityBasis = "line_rate"    // coated area on a metre, times speed, times hours
	NoCapacity  CapacityBasis = "unlimited"    // the job does not say how much there is at once
)

// CostTerm is one kind of cost of a route.
type CostTerm struct {
	Name  TermName `json:"name"`
	Value float64  `json:"value"` // in the currency, for each Per
	Per   TermPer  `json:"per"`
	Text  string   `json:"text"`
}

// TermName names a kind of cost.
type TermName string

// The kinds of cost.
const (
	EnergyCost   TermName = "energy"
	LabourCost   TermName = "labour"
	AttendCost   TermName = "attendance"
	FloorCost    TermName = "floor"
	RackCost     TermName = "racks"
	Depreciation TermName = "depreciation"
)

// TermPer is what a cost is counted by.
type TermPer string

// What costs are counted by.
const (
	PerArea    TermPer = "m2"       // of coated faces
	PerCharge  TermPer = "charge"   // begun
	PerUnitDay TermPer = "unit_day" // of each room, oven or tunnel, used little or much
	PerHour    TermPer = "hour"     // in which an oven runs
)

// Stretch is a range of daily quantities in which one route costs least.
type Stretch struct {
	Low   float64     `json:"low_m2_per_day"`
	High  float64     `json:"high_m2_per_day"`
	Route result.Kind `json:"route"`
	Text  string      `json:"text"`
}

// Crossing is a daily quantity from which on one route costs less than another.
type Crossing struct {
	Quantity float64     `json:"quantity_m2_per_day"`
	Cheaper  result.Kind `json:"cheaper"` // beyond it
	Dearer   result.Kind `json:"dearer"`
	Jump     bool        `json:"jump"`         // not where two curves meet, but where one of them needs a further unit or charge
	Cost     float64     `json:"cost_per_day"` // of the cheaper one there
	Text     string      `json:"text"`
}
