package sim

import (
	"errors"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// MoistAir follows a valid job along one of its routes, as Run does, and puts it on a moist-air chart: the open face, in the air
// that batches or the zones' balance leave. A run that ends early is drawn as far as it went.
//
// Errors: fault.Missing where the job lacks the route.
func MoistAir(j *job.Job, kind result.Kind) (result.MoistAir, error) {
	b, err := newBench(j)
	if err != nil {
		return result.MoistAir{}, err
	}
	plan, err := planOf(j, kind)
	if err != nil {
		return result.MoistAir{}, err
	}
	// Air that cannot be balanced is as given, which Run warns of.
	prepared, _, _ := b.prepared(plan.Plan)
	r := b.newRun(prepared)
	var numeric *fault.Fault
	if err := r.follow(); err != nil && !errors.As(err, &numeric) {
		return result.MoistAir{}, err
	}
	m := result.MoistAir{Route: kind, Pressure: j.Workshop.Pressure, Course: r.course(), Stages: r.moistStages()}
	frame(&m)
	rule(&m, j.Numerics.EnhancementFactor)
	return m, nil
}

// course is what air and film surface have gone through. The vapour at the surface is that over water of the surface's
// activity at the film's temperature, which is what drives evaporation (film.Contact).
func (r *run) course() result.MoistCourse {
	c := result.MoistCourse{Time: r.curves.Time, AirTemperature: r.curves.AirTemperature, AirHumidity: r.curves.AirHumidity,
		FilmTemperature: r.curves.FilmTemperature}
	for i, climate := range r.climates {
		a := climate.Air
		c.RelativeHumidity = append(c.RelativeHumidity, a.RelativeHumidity())
		c.DewPoint = append(c.DewPoint, a.DewPoint())
		c.WetBulb = append(c.WetBulb, a.WetBulb())
		film := r.curves.FilmTemperature[i]
		surface := air.State{T: film, P: a.P, Real: a.Real}
		surface.Y = math.Min(1, r.surfaces[i]*surface.SaturatedFraction())
		var ratio *float64
		if w := surface.HumidityRatio(); !math.IsInf(w, 0) {
			ratio = &w
		}
		c.SurfaceHumidity = append(c.SurfaceHumidity, ratio)
	}
	return c
}

// moistStages finds the stages in the course. Where one ends the next begins, at the same time with other air: there the
// course has two entries.
func (r *run) moistStages() []result.MoistStage {
	out := []result.MoistStage{}
	times := r.curves.Time
	first := 0
	for i := range r.plan.Stages {
		st := &r.plan.Stages[i]
		last := len(times) - 1
		for k := first + 1; k < len(times); k++ {
			if times[k] == times[k-1] && times[k] >= st.End {
				last = k - 1
				break
			}
		}
		if first >= len(times) {
			break // the run ended before
		}
		out = append(out, result.MoistStage{First: first, Last: last})
		first = last + 1
	}
	return out
}

// steepest is the vapour at the surface [kg/kg] up to which a chart stretches: about that over water of 70 °C. A film nearer to its
// boiling point would press everything else to the floor.
const steepest = 0.3

// frame chooses the chart's borders: all temperatures of air and film and the dew points above freezing, with some room, round
// to 5 K, and the highest humidity ratio of air or surface with a tenth to spare.
func frame(m *result.MoistAir) {
	c := &m.Course
	low := min(slices.Min(c.AirTemperature), slices.Min(c.FilmTemperature), slices.Min(c.DewPoint))
	high := max(slices.Max(c.AirTemperature), slices.Max(c.FilmTemperature))
	const zero = 273.15
	m.Low = max(zero, zero+5*math.Floor((low-zero-3)/5))
	m.High = min(zero+250, zero+5*math.Ceil((high-zero+3)/5))
	most := 0.
	for i := range c.Time {
		w := steepest
		if s := c.SurfaceHumidity[i]; s != nil {
			w = min(w, *s)
		}
		most = max(most, w, min(c.AirHumidity[i], 10)) // near-steam has no end
	}
	m.Most = 1.1 * most
}

// Lines of constant relative humidity: steps that lie apart on the chart from a room to an oven.
var humidities = [...]float64{0.01, 0.02, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8}

// rule draws the lines of the chart.
func rule(m *result.MoistAir, real bool) {
	c := air.Chart{P: m.Pressure, Low: m.Low, High: m.High, Most: m.Most, Real: real}
	m.Saturation = chartLine(1, c.RelativeHumidity(1))
	m.Humidities, m.WetBulbs = []result.ChartLine{}, []result.ChartLine{}
	for _, rh := range humidities {
		if l := c.RelativeHumidity(rh); len(l.T) > 0 {
			m.Humidities = append(m.Humidities, chartLine(rh, l))
		}
	}
	const zero = 273.15
	wettest := c.High
	if n := len(m.Saturation.Temperature); n > 0 {
		wettest = m.Saturation.Temperature[n-1]
	}
	step := 5.
	if wettest-c.Low > 45 {
		step = 10
	}
	for t := zero + step*math.Ceil((c.Low-zero)/step); t < wettest; t += step {
		if l := c.WetBulb(t); len(l.T) > 0 {
			m.WetBulbs = append(m.WetBulbs, chartLine(t, l))
		}
	}
}

func chartLine(of float64, l air.Line) result.ChartLine {
	return result.ChartLine{Of: of, Temperature: append([]float64{}, l.T...), Humidity: append([]float64{}, l.W...)}
}
