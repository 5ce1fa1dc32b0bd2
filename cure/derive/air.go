package derive

import (
	"slices"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// MeanSpeed is the mean speed [m/s] of a volume flow [m3/s] through a free cross-section [m2].
func MeanSpeed(flow, area float64) float64 { return flow / area }

// humidities are the ways of giving a humidity, by the name of the field.
var humidities = map[string]func(air.State) float64{
	"humidity_ratio_kg_per_kg": air.State.HumidityRatio,
	"dew_point_K":              air.State.DewPoint,
	"relative_humidity":        air.State.RelativeHumidity,
	"wet_bulb_K":               air.State.WetBulb,
	"vapour_density_kg_per_m3": air.State.VapourDensity,
}

// humidityPlaces are the fields of all humidities but the one that is measured, each with the temperature beside it.
func humidityPlaces(measured string) []Place {
	temperatures := ending(".temperature_K", ".air_temperature_K", "static_oven.set_point_K")
	var places []Place
	for _, path := range ending(".humidity_ratio_kg_per_kg", ".dew_point_K", ".relative_humidity", ".wet_bulb_K", ".vapour_density_kg_per_m3") {
		block, name, _ := strings.Cut(path, ".humidity.")
		if _, known := humidities[name]; !known || name == measured {
			continue
		}
		at := slices.IndexFunc(temperatures, func(t string) bool { return strings.TrimSuffix(t, t[strings.LastIndexByte(t, '.'):]) == block })
		if at < 0 {
			continue
		}
		places = append(places, Place{path, []string{temperatures[at], "", "workshop.pressure_Pa"}})
	}
	return places
}

// humidityEntry is a helper that finds a state of air and gives it as the field wants it.
func humidityEntry(h Helper, measured string, given func(x *float64) job.Humidity) entry {
	h.For = humidityPlaces(measured)
	return entry{h, func(x []float64, at string) (float64, []Step, error) {
		if x[1] > x[0] {
			return 0, nil, contradiction(h.Inputs[1].Name, "it is warmer than the air itself", "Exchange the two numbers, or measure again.")
		}
		// The state as the job computes it, with the enhancement factor of moist air.
		s, err := given(&x[1]).State(x[0], x[2], true)
		if err != nil {
			return 0, nil, contradiction(h.Inputs[1].Name, "no moist air of this temperature has it", "Measure again; a wet bulb is never colder than in bone-dry air.")
		}
		return humidities[at[strings.LastIndexByte(at, '.')+1:]](s), []Step{
			step("φ", "Relative humidity", s.RelativeHumidity(), unit.Share, "%", "%"),
			step("Y", "Humidity ratio", s.HumidityRatio(), unit.MassRatio, "g/kg", "gr/lb")}, nil
	}}
}

func airEntries() []entry {
	temperature := ask("temperature_K", "T", "Temperature of the air", unit.Temperature, "°C", "°F", air.LowTemperature, air.HighTemperature)
	pressure := ask("pressure_Pa", "p", "Air pressure", unit.Pressure, "kPa", "inHg", air.LowPressure, air.HighPressure).usually(101325)
	flows := ending(".transfer.velocity_m_per_s")
	places := make([]Place, len(flows))
	for i, path := range flows {
		places[i] = Place{path, []string{"", ""}}
	}
	return []entry{
		{Helper{Kind: Flow, For: places,
			Title:     words.Told("Air speed from fan flow and cross-section"),
			Procedure: words.Told("Take the flow from the fan's curve at the pressure that it works against, or from a measurement in the duct. The free cross-section is that of the channel over the parts, less what parts and carriers block."),
			Equation:  "v = V̇ / A",
			Source:    words.Told("Continuity; the mean over the cross-section."),
			Caution:   words.Told("Air takes the easy way: over the parts it may be half or twice the mean. An anemometer at the parts is better."),
			Inputs: []Input{
				ask("flow_m3_per_s", "V̇", "Volume flow at the temperature of the oven", unit.VolumeFlow, "m³/h", "ft³/min", 1e-5, 1000),
				ask("area_m2", "A", "Free cross-section", unit.Area, "m²", "ft²", 1e-4, 1000)}},
			func(x []float64, _ string) (float64, []Step, error) { return MeanSpeed(x[0], x[1]), nil, nil }},
		humidityEntry(Helper{Kind: WetBulb,
			Title:     words.Told("Humidity from a wet bulb"),
			Procedure: words.Told("Wet the wick with clean water, draw air over it at 3 m/s or more, and read both thermometers once they rest, before the wick dries."),
			Equation:  "h(T, Y) = h(T_w, Y_w) − (Y_w − Y) · h_water(T_w)",
			Source:    words.Told("Adiabatic saturation: ASHRAE Handbook Fundamentals, psychrometrics; saturation by IAPWS-95, as in the rest of the computation."),
			Caution:   words.Told("A wick in still air reads too warm, and the air then seems damper than it is."),
			Inputs: []Input{temperature,
				ask("wet_bulb_K", "T_w", "Wet bulb", unit.Temperature, "°C", "°F", air.LowTemperature, air.HighTemperature), pressure}},
			"wet_bulb_K", func(x *float64) job.Humidity { return job.Humidity{WetBulb: x} }),
		humidityEntry(Helper{Kind: DewPoint,
			Title:     words.Told("Humidity from a dew point"),
			Procedure: words.Told("Read the dew point off a mirror or a sensor in the same air as the temperature."),
			Equation:  "Y = 0.622 · p_s(T_d) / (p − p_s(T_d))",
			Source:    words.Told("Definition of the dew point; saturation by IAPWS-95 with the enhancement factor of moist air."),
			Caution:   "",
			Inputs: []Input{temperature,
				ask("dew_point_K", "T_d", "Dew point", unit.Temperature, "°C", "°F", 233.15, air.HighTemperature), pressure}},
			"dew_point_K", func(x *float64) job.Humidity { return job.Humidity{DewPoint: x} }),
	}
}
