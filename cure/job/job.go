// Package job is the question: a coated part, the air around it and the routes that might dry it.
//
// A Job is a versioned JSON document in SI units; the unit stands in each field's name. What each field means, its
// default, accepted and usual range, source and effect is written once, in the Fields table, from which the JSON
// Schema, the TypeScript types, the validation and the page's form are all made. Decode reads a document over the
// defaults, so a document may leave out whatever it does not care about, and reports every fault at once.
package job

// Version is the version of the document that this build writes.
const Version = 1

// Job is one coated part and the routes to compare. A route that is null is not computed.
type Job struct {
	Version    int         `json:"version"`
	Name       string      `json:"name"`
	Note       string      `json:"note"`
	Film       Film        `json:"film"`
	Pile       *Pile       `json:"pile"` // null: the part is coated but not flocked
	Part       Part        `json:"part"`
	Workshop   Workshop    `json:"workshop"`
	Room       *Room       `json:"room"`
	StaticOven *StaticOven `json:"static_oven"`
	Tunnel     *Tunnel     `json:"tunnel"`
	Targets    Targets     `json:"targets"`
	Numerics   Numerics    `json:"numerics"`
}

// Film is the sprayed coat.
type Film struct {
	WetCoat  float64  `json:"wet_coat_kg_per_m2"`
	Adhesive Adhesive `json:"adhesive"`
}

// Adhesive is one dispersion adhesive. Record names the entry of package material that the numbers came from; the
// numbers themselves travel with the job, so that a job means the same for ever.
type Adhesive struct {
	Record              string        `json:"record"`
	Solids              float64       `json:"solids_fraction"`
	PolymerDensity      float64       `json:"polymer_density_kg_per_m3"`
	SolidsHeatCapacity  float64       `json:"solids_heat_capacity_J_per_kgK"`
	Conductivity        float64       `json:"conductivity_W_per_mK"`
	Emissivity          float64       `json:"emissivity"`
	ParticleDiameter    float64       `json:"particle_diameter_m"`
	Packing             float64       `json:"packing_fraction"` // phi_m, polymer volume fraction where particles touch
	Closing             float64       `json:"closing_fraction"` // phi_c, where the water paths close
	CapillaryDiffusion  float64       `json:"capillary_diffusivity_m2_per_s"`
	DryDiffusion        float64       `json:"dry_diffusivity_at_25C_m2_per_s"`
	DiffusionActivation float64       `json:"diffusion_activation_energy_J_per_mol"`
	Sorption            Sorption      `json:"sorption"`
	FilmForming         float64       `json:"minimum_film_forming_temperature_K"`
	HealsWhenWarmed     bool          `json:"heals_when_warmed"` // later warming above the MFFT closes the film
	CrackThickness      float64       `json:"crack_wet_thickness_m"`
	Crosslinking        *Crosslinking `json:"crosslinking"` // null: no crosslinker
}

// Sorption is the GAB isotherm of the dry film.
type Sorption struct {
	Monolayer float64 `json:"monolayer_kg_per_kg"`
	GABC      float64 `json:"gab_c"`
	GABK      float64 `json:"gab_k"`
}

// Crosslinking is the cure law. With an empty schedule, frequency factor and activation energy are used as they stand.
// With one pair the frequency factor follows from the pair; with two or more both are fitted.
type Crosslinking struct {
	Order            float64        `json:"order"`
	FrequencyFactor  float64        `json:"frequency_factor_per_s"`
	ActivationEnergy float64        `json:"activation_energy_J_per_mol"`
	Schedule         Schedule       `json:"schedule"`
	Autocatalysis    *Autocatalysis `json:"autocatalysis"` // null: plain order n
	HinderingWater   *float64       `json:"hindering_water_kg_per_kg"`
}

// Schedule is a data sheet's cure schedule: pairs of temperature and time that reach one stated conversion.
type Schedule struct {
	Conversion float64        `json:"conversion"`
	Pairs      []SchedulePair `json:"pairs"`
}

// SchedulePair is one line of a cure schedule.
type SchedulePair struct {
	Temperature float64 `json:"temperature_K"`
	Time        float64 `json:"time_s"`
}

// Autocatalysis is the second rate constant k2 and its exponent m.
type Autocatalysis struct {
	FrequencyFactor  float64 `json:"frequency_factor_per_s"`
	ActivationEnergy float64 `json:"activation_energy_J_per_mol"`
	Exponent         float64 `json:"exponent"`
}

// Pile is the layer of upright fibre, there from the moment of flocking on.
type Pile struct {
	Record            string  `json:"record"`
	AppliedAfter      float64 `json:"applied_after_s"` // from spraying
	Length            float64 `json:"length_m"`
	Porosity          float64 `json:"porosity"`
	Tortuosity        float64 `json:"tortuosity"`
	Conductivity      float64 `json:"conductivity_W_per_mK"`
	FibreDensity      float64 `json:"fibre_density_kg_per_m3"`
	FibreHeatCapacity float64 `json:"fibre_heat_capacity_J_per_kgK"`
	Emissivity        float64 `json:"emissivity"`
}

// Back is what the uncoated side of the part sees.
type Back string

// The kinds of back.
const (
	BackExposed   Back = "exposed"   // the same air, with its own coefficient
	BackInsulated Back = "insulated" // no exchange (stacked, taped, on a pad)
	BackCoated    Back = "coated"    // the same coat on both faces
)

// Orientation is how the coated face hangs or lies.
type Orientation string

// The orientations.
const (
	Vertical   Orientation = "vertical"
	FacingUp   Orientation = "facing_up"
	FacingDown Orientation = "facing_down"
)

// Part is a flat wall that carries the film.
type Part struct {
	Record           string      `json:"record"`
	Thickness        float64     `json:"thickness_m"`
	Density          float64     `json:"density_kg_per_m3"`
	HeatCapacity     float64     `json:"heat_capacity_J_per_kgK"`
	Conductivity     float64     `json:"conductivity_W_per_mK"`
	BackEmissivity   float64     `json:"back_emissivity"`
	Back             Back        `json:"back"`
	Orientation      Orientation `json:"orientation"`
	Length           float64     `json:"length_m"`            // along the air flow, or the height of a hanging part
	LimitTemperature float64     `json:"limit_temperature_K"` // above it the part suffers
	StartTemperature *float64    `json:"start_temperature_K"` // null: the workshop's air when spraying
	Carrier          *Carrier    `json:"carrier"`             // null: none
}

// Carrier is the share of rack, hook or frame that belongs to one square metre of coated face.
type Carrier struct {
	Mass         float64 `json:"mass_kg_per_m2"`
	HeatCapacity float64 `json:"heat_capacity_J_per_kgK"`
	Contact      float64 `json:"contact_W_per_m2K"` // between carrier and the part's back
	AirSide      float64 `json:"air_side_W_per_m2K"`
}

// TransferKind says where a coefficient comes from.
type TransferKind string

// The kinds of transfer.
const (
	Given        TransferKind = "given"         // measured or assumed by the user
	ParallelFlow TransferKind = "parallel_flow" // forced along the face
	Natural      TransferKind = "natural"       // buoyancy of heat and vapour only
	Combined     TransferKind = "combined"      // forced and natural, cubes added
)

// Transfer is how air meets the faces of the part in one place.
type Transfer struct {
	Kind            TransferKind `json:"kind"`
	Coefficient     float64      `json:"coefficient_W_per_m2K"`      // used when kind is given
	Velocity        float64      `json:"velocity_m_per_s"`           // used by parallel_flow and combined
	Tripped         bool         `json:"tripped"`                    // turbulent from the leading edge
	BackCoefficient *float64     `json:"back_coefficient_W_per_m2K"` // null: the same law at the back face
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
}

// AirPoint is the workshop's air at one moment, counted from spraying.
type AirPoint struct {
	Time        float64  `json:"time_s"`
	Temperature float64  `json:"temperature_K"`
	Humidity    Humidity `json:"humidity"`
}

// Room is the route that leaves the part in the workshop.
type Room struct {
	Deadline float64 `json:"deadline_s"` // when it must be ready, from spraying
	Horizon  float64 `json:"horizon_s"`  // how long the run goes on
}

// StaticOven is a box oven: loaded, held for the dwell, unloaded into the workshop's air.
type StaticOven struct {
	LoadedAfter float64  `json:"loaded_after_s"` // from spraying
	Dwell       float64  `json:"dwell_s"`
	SetPoint    float64  `json:"set_point_K"`
	Humidity    Humidity `json:"humidity"`
	Transfer    Transfer `json:"transfer"`
	Chamber     Chamber  `json:"chamber"`
	Deadline    float64  `json:"deadline_s"`
	Horizon     float64  `json:"horizon_s"`
}

// Chamber is what makes the oven's air sag under a cold load and climb back.
type Chamber struct {
	CoatedArea       float64  `json:"coated_area_m2"` // of the whole load
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
}

// Targets are the thresholds of the marks and risks.
type Targets struct {
	TouchWater          float64 `json:"touch_water_kg_per_kg"` // above equilibrium, outer 5 % of the solids
	DryWater            float64 `json:"dry_water_kg_per_kg"`   // above equilibrium, mean
	TackConversion      float64 `json:"tack_conversion"`
	FullConversion      float64 `json:"full_conversion"`
	HandlingTemperature float64 `json:"handling_temperature_K"`
	OpenLayer           float64 `json:"open_layer_m"` // packed layer that keeps fibres out
	SkinNumber          float64 `json:"skin_number"`
	DewRunOff           float64 `json:"dew_run_off_kg_per_m2"`
	NearSaturation      float64 `json:"near_saturation"` // relative humidity from which air is called nearly saturated
}

// Numerics are the settings of the computation itself.
type Numerics struct {
	FilmCells         int     `json:"film_cells"`
	PartCells         int     `json:"part_cells"`
	RelativeTolerance float64 `json:"relative_tolerance"`
	EnhancementFactor bool    `json:"enhancement_factor"` // real-gas correction of the saturation pressure
	StepBudget        int     `json:"step_budget"`
}
