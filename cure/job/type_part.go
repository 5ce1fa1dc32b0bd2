package job

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
