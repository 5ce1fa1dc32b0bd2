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
	Tariffs    *Tariffs    `json:"tariffs"` // null: no prices
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
	Transport           Transport     `json:"transport"`
	CoSolvent           *CoSolvent    `json:"co_solvent"`   // null: water alone evaporates
	Crosslinking        *Crosslinking `json:"crosslinking"` // null: no crosslinker
}

// Mechanism says how the last water leaves the film.
type Mechanism string

// The mechanisms.
const (
	LiquidDiffusion Mechanism = "diffusion"   // through the closed polymer: soft, film-forming adhesives
	PorousSkin      Mechanism = "porous_skin" // as vapour through dry pores, a front receding: hard or filled films
)

// Transport is the mechanism of drying and, for a porous skin, the effective diffusivity of vapour in it.
type Transport struct {
	Mechanism     Mechanism `json:"mechanism"`
	SkinDiffusion float64   `json:"skin_vapour_diffusivity_m2_per_s"` // D_e, used with porous_skin
	Reason        string    `json:"reason"`                           // why this mechanism
}

// CoSolvent is what else evaporates and may burn.
type CoSolvent struct {
	Fraction float64 `json:"fraction_of_wet_coat"`
	LFL      float64 `json:"lower_flammable_limit_kg_per_m3"` // at 20 degC
}

// IsothermKind names a sorption isotherm.
type IsothermKind string

// The isotherms.
const (
	IsothermGAB          IsothermKind = "gab"
	IsothermFloryHuggins IsothermKind = "flory_huggins"
)

// Sorption is the isotherm of the dry film. HeatOfSorption is the heat of binding beyond condensation; the isotherm's
// water activity follows the temperature by it (Clausius-Clapeyron), 25 degC being where the isotherm stands.
type Sorption struct {
	Isotherm       IsothermKind `json:"isotherm"`
	Chi            float64      `json:"chi"`                       // Flory-Huggins interaction
	HeatOfSorption float64      `json:"heat_of_sorption_J_per_kg"` // beyond that of condensation
	Monolayer      float64      `json:"monolayer_kg_per_kg"`
	GABC           float64      `json:"gab_c"`
	GABK           float64      `json:"gab_k"`
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
	Vitrification    *Vitrification `json:"vitrification"` // null: the film stays rubbery
}

// Vitrification slows the cure as the glass transition of the growing network passes the film's temperature: Tg by
// DiBenedetto, a diffusion step by WLF in series with the chemical rate (Rabinowitch).
type Vitrification struct {
	TgUncured     float64 `json:"tg_uncured_K"`
	TgCured       float64 `json:"tg_cured_K"`
	Lambda        float64 `json:"lambda"`
	DiffusionRate float64 `json:"diffusion_rate_at_tg_per_s"`
	WLFC1         float64 `json:"wlf_c1"` // for decadic logarithms
	WLFC2         float64 `json:"wlf_c2_K"`
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
	Regain            float64 `json:"regain_at_65_percent_kg_per_kg"` // water that the dry fibre holds at 65 % RH; 0: none
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
	Spots            []Spot      `json:"spots"`               // places that dry unlike the open face; empty: none
	CoatedArea       *float64    `json:"coated_area_m2"`      // of one part, both faces where both are coated; null: amounts per part are left out
}

// Spot is a named place on the part: the coefficient of heat transfer and the coat, as multiples of the open face's.
type Spot struct {
	Name           string  `json:"name"`
	TransferFactor float64 `json:"transfer_factor"`
	CoatFactor     float64 `json:"coat_factor"`
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

// Tariffs price the energy.
type Tariffs struct {
	EnergyPrice      float64 `json:"energy_price_per_kWh"`
	Currency         string  `json:"currency"`
	Carbon           float64 `json:"carbon_kg_per_kWh"`
	HeaterEfficiency float64 `json:"heater_efficiency"`
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
