package job

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
