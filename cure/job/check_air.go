package job

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
)

// State is the air that a humidity means at the temperature t [K] and pressure p [Pa]; real includes the enhancement factor
// of the saturation pressure. Its errors are those of package air, for air beyond saturation; a humidity of a job that
// validates gives none.
func (h Humidity) State(t, p float64, real bool) (air.State, error) {
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
	return air.State{}, &fault.Fault{Code: fault.Missing, Advice: oneOfFive}
}

const oneOfFive = "Give exactly one of humidity ratio, dew point, relative humidity, wet bulb and vapour density."

// given lists the JSON names of the numbers that are there.
func (h Humidity) given() []string {
	var names []string
	for _, m := range members(reflect.ValueOf(h)) {
		if !m.value.IsNil() {
			names = append(names, m.name)
		}
	}
	return names
}

// checkMoist demands exactly one number, air below saturation, and no more vapour than the humidity ratio's own limit. It
// returns the state, and whether there is one.
func (v *validator) checkMoist(h Humidity, t float64, j *Job, path, temperaturePath string) (air.State, bool) {
	switch names := h.given(); len(names) {
	case 0:
		v.add(&fault.Fault{Code: fault.Missing, Path: path, Advice: oneOfFive})
		return air.State{}, false
	case 1:
		path = under(path, names[0])
	default:
		v.conflict(path, strings.Join(names, " and ")+" are both given", oneOfFive)
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
		v.conflict(path, fmt.Sprintf("this means a humidity ratio of %s kg/kg", fault.Number(w)),
			"Ovens with more steam than dry air are outside of this model; give less.")
		return air.State{}, false
	}
	return s, true
}

// checkFlow demands an air speed where the only law is that of forced flow.
func (v *validator) checkFlow(t Transfer, path string) {
	const least = 0.02 // m/s; slower air than this is still
	if v.sound(path) && t.Kind == ParallelFlow && t.Velocity < least {
		v.conflict(path+".velocity_m_per_s", fmt.Sprintf("air along the face at %s m/s", fault.Number(t.Velocity)),
			"Below 0.02 m/s choose natural or combined.")
	}
}

func (v *validator) checkWorkshop(j *Job) {
	w := &j.Workshop
	for i, p := range w.Air {
		if i >= v.blocks["workshop.air"].MaxItems {
			break
		}
		at := fmt.Sprintf("workshop.air[%d]", i)
		v.checkMoist(p.Humidity, p.Temperature, j, at+".humidity", at+".temperature_K")
		if !v.sound(at + ".time_s") {
			continue
		}
		switch {
		case i == 0 && p.Time != 0:
			v.conflict(at+".time_s", fmt.Sprintf("the first state of the air is at %s s", fault.Number(p.Time)),
				"Start the list at 0 s, when the part is sprayed.")
		case i > 0 && p.Time <= w.Air[i-1].Time && v.sound(fmt.Sprintf("workshop.air[%d].time_s", i-1)):
			v.conflict(at+".time_s", fmt.Sprintf("%s s is not after %s s", fault.Number(p.Time), fault.Number(w.Air[i-1].Time)),
				"Put the states of the air in the order of their times, each time once.")
		}
	}
	v.checkFlow(w.Transfer, "workshop.transfer")
}
