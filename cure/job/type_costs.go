package job

// Costs are what a day's work takes besides energy, whose price stands in Tariffs. What is null is left out of every sum.
// Money is in the currency of the tariffs.
type Costs struct {
	Wage        *float64  `json:"wage_per_h"`         // of one person, with everything that the employer pays
	FloorPrice  *float64  `json:"floor_price_per_m2"` // a year
	RackPrice   *float64  `json:"rack_price"`         // of one
	RackYears   float64   `json:"rack_years"`         // that it lasts
	DaysPerYear float64   `json:"days_per_year"`      // worked
	Room        RoomCosts `json:"room"`
	StaticOven  OvenCosts `json:"static_oven"`
	Tunnel      OvenCosts `json:"tunnel"`
}

// RoomCosts are those of one room in which parts dry overnight.
type RoomCosts struct {
	Holds      *float64 `json:"holds_m2"`         // coated faces that find a place in it; null: what its air carries off counts alone
	Labour     *float64 `json:"labour_s"`         // working time a night: racks in and out, brushing off
	FloorArea  *float64 `json:"floor_area_m2"`    // that serves drying
	Racks      *float64 `json:"racks"`            // of one full room
	Investment *float64 `json:"investment"`       // for one room
	Years      float64  `json:"investment_years"` // over which it is written off
}

// OvenCosts are those of one oven.
type OvenCosts struct {
	RunningTime float64  `json:"running_s"`     // a day
	Labour      *float64 `json:"labour_s"`      // working time for each charge of a static oven; of a tunnel: for each day
	Persons     *float64 `json:"persons"`       // who attend while it runs
	FloorArea   *float64 `json:"floor_area_m2"` // oven, with the room around it
	Racks       *float64 `json:"racks"`         // racks or hooks of one oven
	Investment  *float64 `json:"investment"`    // for one oven, installed
	Years       float64  `json:"investment_years"`
}
