package job

// Room is the route that leaves the part in the workshop.
type Room struct {
	Deadline float64 `json:"deadline_s"` // when it must be ready, from spraying
	Horizon  float64 `json:"horizon_s"`  // how long the run goes on
}

// StaticOven is a box oven: loaded, held for the dwell, unloaded into the workshop's air.
type StaticOven struct {
	LoadedAfter   float64  `json:"loaded_after_s"` // from spraying
	Dwell         float64  `json:"dwell_s"`
	SetPoint      float64  `json:"set_point_K"`
	Humidity      Humidity `json:"humidity"`
	Transfer      Transfer `json:"transfer"`
	Chamber       Chamber  `json:"chamber"`
	Deadline      float64  `json:"deadline_s"`
	Horizon       float64  `json:"horizon_s"`
	Batches       int      `json:"batches"`                // loads that follow each other while the first is inside
	BatchInterval float64  `json:"batch_interval_s"`       // between them
	DoorOpen      float64  `json:"door_open_s"`            // per loading and unloading
	DoorExchange  float64  `json:"door_exchange_m3_per_s"` // workshop air that comes in meanwhile
	Turnaround    float64  `json:"turnaround_s"`           // from taking the parts out to loading the next
}

// Chamber is what makes the oven's air sag under a cold load and climb back.
type Chamber struct {
	VapourBalance    bool     `json:"vapour_balance"` // humidity starts as given and follows from evaporation and make-up; else it holds
	CoatedArea       float64  `json:"coated_area_m2"` // of one whole load
	HeaterPower      float64  `json:"heater_power_W"`
	ProportionalBand float64  `json:"proportional_band_K"`
	AirVolume        float64  `json:"air_volume_m3"`
	MakeUp           float64  `json:"make_up_m3_per_s"` // volume at the make-up (workshop) air's own state
	WallHeatCapacity float64  `json:"wall_heat_capacity_J_per_K"`
	WallExchange     float64  `json:"wall_exchange_W_per_K"` // between chamber air and wall
	WallLoss         float64  `json:"wall_loss_W_per_K"`     // between wall and workshop
	AirAtLoading     *float64 `json:"air_at_loading_K"`      // null: the set-point
	WallAtLoading    *float64 `json:"wall_at_loading_K"`     // null: the set-point
}

// ZoneKind says whether a zone heats or cools.
type ZoneKind string

// The kinds of zone.
const (
	Heated  ZoneKind = "heated"
	Cooling ZoneKind = "cooling"
)

// Tunnel is a row of zones passed at one line speed, then the workshop's air.
type Tunnel struct {
	EnteredAfter float64 `json:"entered_after_s"` // from spraying
	LineSpeed    float64 `json:"line_speed_m_per_s"`
	Zones        []Zone  `json:"zones"`
	Deadline     float64 `json:"deadline_s"`
	Horizon      float64 `json:"horizon_s"`

	CoatedPerLength float64  `json:"coated_area_per_m_m2_per_m"` // coated area on one metre of the line
	CarrierReturn   *float64 `json:"carrier_return_K"`           // carriers come back this warm; null: as the workshop's air
	EntryLeak       float64  `json:"entry_leak_m3_per_s"`        // workshop air drawn in at the entry
	ExitLeak        float64  `json:"exit_leak_m3_per_s"`         // and at the exit
}

// Zone is one length of the tunnel with air of one state.
type Zone struct {
	Name            string   `json:"name"`
	Kind            ZoneKind `json:"kind"`
	Length          float64  `json:"length_m"`
	AirTemperature  float64  `json:"air_temperature_K"`
	Humidity        Humidity `json:"humidity"`
	WallTemperature *float64 `json:"wall_temperature_K"` // null: as the air
	Transfer        Transfer `json:"transfer"`

	Infrared *Infrared `json:"infrared"` // null: none
	Air      *ZoneAir  `json:"air"`      // null: the humidity holds as given
}

// Infrared is a field of radiators.
type Infrared struct {
	Flux             float64 `json:"flux_W_per_m2"`       // arriving at the coated face
	Absorptivity     float64 `json:"absorptivity"`        // of the fibre tips, or of the bare film
	FilmShare        float64 `json:"share_reaching_film"` // of what is absorbed, past the tips
	BackFlux         float64 `json:"back_flux_W_per_m2"`
	BackAbsorptivity float64 `json:"back_absorptivity"`
}

// ZoneAir is the air that passes a zone; its humidity then follows from the water that evaporates there.
type ZoneAir struct {
	Exhaust     float64 `json:"exhaust_m3_per_s"`      // at the zone's own state
	MakeUp      float64 `json:"make_up_m3_per_s"`      // workshop air, at its own state
	LeakToNext  float64 `json:"leak_to_next_m3_per_s"` // net, at this zone's state; the last zone leaks to the workshop
	WallLoss    float64 `json:"wall_loss_W_per_K"`
	HeaterPower float64 `json:"heater_power_W"` // installed; 0: not checked
}
