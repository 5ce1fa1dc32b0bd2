package job

// TransferKind says where a coefficient comes from.
type TransferKind string

// The kinds of transfer.
const (
	Given        TransferKind = "given"         // measured or assumed by the user
	ParallelFlow TransferKind = "parallel_flow" // forced along the face
	Natural      TransferKind = "natural"       // buoyancy of heat and vapour only
	Combined     TransferKind = "combined"      // forced and natural, cubes added
	SlotNozzles  TransferKind = "slot_nozzles"  // rows of slots blowing at the face
	RoundNozzles TransferKind = "round_nozzles" // a field of round nozzles blowing at the face
)

// Transfer is how air meets the faces of the part in one place.
type Transfer struct {
	Kind            TransferKind `json:"kind"`
	Coefficient     float64      `json:"coefficient_W_per_m2K"`      // used when kind is given
	Velocity        float64      `json:"velocity_m_per_s"`           // used by parallel_flow and combined
	Tripped         bool         `json:"tripped"`                    // turbulent from the leading edge
	BackCoefficient *float64     `json:"back_coefficient_W_per_m2K"` // null: the same law at the back face
	Multiplier      *float64     `json:"multiplier"`                 // of the law here, as a trial has told; null: the law as it stands
	Fan             *Fan         `json:"fan"`                        // null: the velocity counts as it stands
	Nozzles         *Nozzles     `json:"nozzles"`                    // used by slot_nozzles and round_nozzles
}

// Fan gives the velocity along the face from an air flow and the free cross-section.
type Fan struct {
	AirFlow      float64 `json:"air_flow_m3_per_s"`
	CrossSection float64 `json:"cross_section_m2"`
}

// Nozzles is a field of slots, or of round nozzles in equal-sided triangles, that blows at the face.
type Nozzles struct {
	Width        float64  `json:"width_m"` // slot width, or diameter of a round nozzle
	Pitch        float64  `json:"pitch_m"`
	Distance     float64  `json:"distance_m"` // from nozzle to face
	ExitVelocity float64  `json:"exit_velocity_m_per_s"`
	Pressure     *float64 `json:"pressure_Pa"` // before the nozzle; given, it sets the exit velocity
}

// Humidity says how moist air is, by exactly one of its fields.
type Humidity struct {
	HumidityRatio    *float64 `json:"humidity_ratio_kg_per_kg"`
	DewPoint         *float64 `json:"dew_point_K"`
	RelativeHumidity *float64 `json:"relative_humidity"`
	WetBulb          *float64 `json:"wet_bulb_K"`
	VapourDensity    *float64 `json:"vapour_density_kg_per_m3"`
}

// Workshop is the room in which the part is sprayed, flocked, left overnight and cooled.
type Workshop struct {
	Pressure        float64    `json:"pressure_Pa"`
	Air             []AirPoint `json:"air"`                // joined linearly, the last one holds on
	WallTemperature *float64   `json:"wall_temperature_K"` // null: as the air
	Transfer        Transfer   `json:"transfer"`
	Space           *Space     `json:"space"` // null: the air stays as stated, however many parts dry in it
}

// Space is the workshop as a closed room: its air takes up the water of the parts, and evaporation draws its heat. The
// workshop's air is then where the room starts; what comes in is the outside air. Without the heat balance the temperature
// follows the workshop's schedule and humidity alone is balanced.
type Space struct {
	Volume       float64       `json:"volume_m3"`
	CoatedArea   float64       `json:"coated_area_m2"` // of all parts that dry in it at once
	AirChanges   float64       `json:"air_changes_per_s"`
	Outside      []AirPoint    `json:"outside"` // joined linearly, the last one holds on
	HeatBalance  bool          `json:"heat_balance"`
	WallExchange float64       `json:"wall_exchange_W_per_K"` // between room air and walls
	WallCapacity float64       `json:"wall_heat_capacity_J_per_K"`
	WallLoss     float64       `json:"wall_loss_W_per_K"` // between walls and outside
	Heating      *Heating      `json:"heating"`           // null: none
	Dehumidifier *Dehumidifier `json:"dehumidifier"`      // null: none
}

// Heating holds the room at a set-point as far as its power reaches; from the set-back on at the lower one.
type Heating struct {
	Power     float64  `json:"power_W"`
	SetPoint  float64  `json:"set_point_K"`
	SetBackAt *float64 `json:"set_back_at_s"` // from spraying; null: never
	SetBack   float64  `json:"set_back_K"`
	ResumeAt  *float64 `json:"resume_at_s"` // null: never
}

// Dehumidifier takes water out of the room's air above a set humidity.
type Dehumidifier struct {
	Capacity         float64 `json:"capacity_kg_per_s"` // at 80 % relative humidity
	RelativeHumidity float64 `json:"set_relative_humidity"`
	Power            float64 `json:"power_W"` // all of it warms the room, with the heat of condensation
}

// AirPoint is the workshop's air at one moment, counted from spraying.
type AirPoint struct {
	Time        float64  `json:"time_s"`
	Temperature float64  `json:"temperature_K"`
	Humidity    Humidity `json:"humidity"`
}
