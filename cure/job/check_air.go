package job

import (
	"errors"
	"reflect"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
)

// State is the air that a humidity means at the temperature t [K] and pressure p [Pa]; real includes the enhancement factor
// of the saturation pressure. Its errors are those of package air, for air beyond saturation; a humidity of a job that
// validates gives none. Below freezing, which only outside air has, humidities count over supercooled water, as weather
// services state them, and a wet bulb is refused.
func (h Humidity) State(t, p float64, real bool) (air.State, error) {
	if t < air.LowTemperature {
		return h.frost(t, p, real)
	}
	switch {
	case h.HumidityRatio != nil:
		return air.FromHumidityRatio(t, p, *h.HumidityRatio, real)
	case h.DewPoint != nil:
		return air.FromDewPoint(t, p, *h.DewPoint, real)
	case h.RelativeHumidity != nil:
		return air.FromRelativeHumidity(t, p, *h.RelativeHumidity, real)
	case h.WetBulb != nil:
		return air.FromWetBulb(t, p, *h.WetBulb, real)
	case h.VapourDensity != nil:
		return air.FromVapourDensity(t, p, *h.VapourDensity, real)
	}
	return air.State{}, &fault.Fault{Code: fault.Missing, Advice: oneOfFive()}
}

// frost is State below 0 degC: package air makes no states there, but its saturation pressure goes on, within 0.1 % of
// Murphy and Koop (2005) down to 233 K.
func (h Humidity) frost(t, p float64, real bool) (air.State, error) {
	advice := words.Told("Frosty air holds no more than saturation over supercooled water: give less.")
	const ratio = air.WaterMolarMass / air.AirMolarMass
	full := air.SaturatedFraction(t, p, real)
	perFraction := p * air.WaterMolarMass / (air.GasConstant * t) // vapour density of pure vapour [kg/m3]
	var y, got, most float64
	var unit string
	switch {
	case h.HumidityRatio != nil:
		got, most, unit = *h.HumidityRatio, ratio*full/(1-full), "kg/kg"
		y = got / (ratio + got)
	case h.DewPoint != nil:
		got, most, unit = *h.DewPoint, t, "K"
		y = air.SaturatedFraction(got, p, real)
	case h.RelativeHumidity != nil:
		got, most = *h.RelativeHumidity, 1
		y = got * full
	case h.VapourDensity != nil:
		got, most, unit = *h.VapourDensity, perFraction*full, "kg/m3"
		y = got / perFraction
	case h.WetBulb != nil:
		return air.State{}, fault.OutOfRange("", *h.WetBulb, air.LowTemperature, air.HighTemperature, "K",
			words.Told("In frosty air a wet bulb freezes: give relative humidity, dew point or humidity ratio."))
	default:
		return air.State{}, &fault.Fault{Code: fault.Missing, Advice: oneOfFive()}
	}
	if got > most {
		return air.State{}, fault.OutOfRange("", got, 0, most, unit, advice)
	}
	return air.State{T: t, P: p, Y: y, Real: real}, nil
}

func oneOfFive() string {
	return words.Told("Give exactly one of humidity ratio, dew point, relative humidity, wet bulb and vapour density.")
}

// given lists the JSON names of the numbers that are there.
func (h Humidity) given() []string {
	var names []string
	v := reflect.ValueOf(h)
	for i, name := range members(v.Type()) {
		if !v.Field(i).IsNil() {
			names = append(names, name)
		}
	}
	return names
}

// checkMoist demands exactly one number, air below saturation, and no more vapour than the humidity ratio's own limit. It
// returns the state, and whether there is one.
func (v *validator) checkMoist(h Humidity, t float64, j *Job, path, temperaturePath string) (air.State, bool) {
	switch names := h.given(); len(names) {
	case 0:
		v.add(&fault.Fault{Code: fault.Missing, Path: path, Advice: oneOfFive()})
		return air.State{}, false
	case 1:
		path = under(path, names[0])
	default:
		labels := make([]string, len(names))
		for i, name := range names {
			labels[i] = v.fields[generic(under(path, name))].label()
		}
		v.conflict(path, words.Told("given at once: {names}", "names", strings.Join(labels, ", ")), oneOfFive())
		return air.State{}, false
	}
	if !v.sound(path, temperaturePath, "workshop.pressure_Pa") {
		return air.State{}, false
	}
	s, err := h.State(t, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
	var f *fault.Fault
	if errors.As(err, &f) {
		at := *f
		at.Path, at.Unit = path, strings.TrimPrefix(at.Unit, "1")
		v.add(&at)
		return air.State{}, false
	}
	const most = 1 // kg of vapour per kg of dry air
	if w := s.HumidityRatio(); w > most*(1+1e-9) {
		v.conflict(path, words.Told("this means a humidity ratio of {ratio}",
			"ratio", v.computed(w, "static_oven.humidity.humidity_ratio_kg_per_kg")),
			words.Told("Ovens with more steam than dry air are outside of this model; give less."))
		return air.State{}, false
	}
	return s, true
}
