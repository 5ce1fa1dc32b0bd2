package job

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
