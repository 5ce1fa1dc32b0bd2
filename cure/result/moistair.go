package result

// MoistAir is one route on a moist-air chart: temperature against humidity ratio at the workshop's pressure, with the lines of
// the chart and what air and film go through on the way.
type MoistAir struct {
	Route    Kind    `json:"route"`
	Pressure float64 `json:"pressure_Pa"`
	// The frame. Vapour at the surface of a film near its boiling point may lie above it.
	Low  float64 `json:"low_K"`
	High float64 `json:"high_K"`
	Most float64 `json:"most_kg_per_kg"`

	Saturation ChartLine   `json:"saturation"`
	Humidities []ChartLine `json:"humidities"` // of constant relative humidity, rising
	WetBulbs   []ChartLine `json:"wet_bulbs"`  // of constant wet bulb, rising

	Stages []MoistStage `json:"stages"` // in the order of the route's; those that the run did not come to are missing
	Course MoistCourse  `json:"course"`
}

// ChartLine is a line of the chart, straight between its points, all inside the frame.
type ChartLine struct {
	Of          float64   `json:"of"` // relative humidity, or wet bulb in K
	Temperature []float64 `json:"temperature_K"`
	Humidity    []float64 `json:"humidity_ratio_kg_per_kg"`
}

// MoistStage is the places of one stage in the course.
type MoistStage struct {
	First int `json:"first"`
	Last  int `json:"last"`
}

// MoistCourse is what air and film surface go through, one entry per time from spraying.
type MoistCourse struct {
	Time             []float64  `json:"time_s"`
	AirTemperature   []float64  `json:"air_temperature_K"`
	AirHumidity      []float64  `json:"air_humidity_ratio_kg_per_kg"`
	RelativeHumidity []float64  `json:"air_relative_humidity"`
	DewPoint         []float64  `json:"air_dew_point_K"` // 0: bone-dry
	WetBulb          []float64  `json:"air_wet_bulb_K"`
	FilmTemperature  []float64  `json:"film_temperature_K"`
	SurfaceHumidity  []*float64 `json:"surface_humidity_ratio_kg_per_kg"` // of the air that touches the film; null: pure steam
}
