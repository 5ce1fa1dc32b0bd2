package report

import (
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/result"
)

// series is one column of the curves, named as in the JSON document.
type series struct {
	name   string
	values []float64
}

// seriesOf lists the columns in the order of the document.
func seriesOf(c result.Curves) []series {
	return []series{
		{"time_s", c.Time},
		{"mean_water_kg_per_kg", c.MeanWater},
		{"outer_water_kg_per_kg", c.OuterWater},
		{"surface_water_kg_per_kg", c.SurfaceWater},
		{"inner_water_kg_per_kg", c.InnerWater},
		{"equilibrium_water_kg_per_kg", c.Equilibrium},
		{"mean_conversion", c.MeanConversion},
		{"least_conversion", c.LeastConversion},
		{"film_temperature_K", c.FilmTemperature},
		{"part_back_K", c.PartBack},
		{"air_temperature_K", c.AirTemperature},
		{"air_humidity_ratio_kg_per_kg", c.AirHumidity},
		{"flux_kg_per_m2s", c.Flux},
		{"thickness_m", c.Thickness},
	}
}

// CSV writes the curves of all routes as comma-separated values with a decimal point (RFC 4180, 2005, with lines ended
// by a single line feed): one line per route and time, SI units, nine significant digits, which is more than the
// integration promises. A value that a curve lacks stays empty.
func CSV(r result.Result) string {
	var b strings.Builder
	b.WriteString("route")
	for _, s := range seriesOf(result.Curves{}) {
		b.WriteString("," + s.name)
	}
	b.WriteString("\n")
	for _, route := range r.Routes {
		all := seriesOf(route.Curves)
		for i := range route.Curves.Time {
			b.WriteString(string(route.Kind))
			for _, s := range all {
				b.WriteByte(',')
				if i < len(s.values) {
					b.WriteString(strconv.FormatFloat(s.values[i], 'g', 9, 64))
				}
			}
			b.WriteByte('\n')
		}
	}
	return b.String()
}
