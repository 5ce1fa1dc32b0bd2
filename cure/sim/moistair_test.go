package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// The course on the chart is that of the answer: same times, same air, same film, for each route of the demo.
func TestMoistAirIsTheRouteOfTheAnswer(t *testing.T) {
	j := job.Demo()
	answer, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	for i := range answer.Routes {
		r := &answer.Routes[i]
		m, err := MoistAir(&j, r.Kind)
		if err != nil {
			t.Fatal(err)
		}
		c := &m.Course
		if len(c.Time) != len(r.Curves.Time) || len(c.Time) != len(c.SurfaceHumidity) || len(c.Time) != len(c.WetBulb) {
			t.Fatalf("%s: %d points, the answer has %d", r.Kind, len(c.Time), len(r.Curves.Time))
		}
		for k := range c.Time {
			if c.Time[k] != r.Curves.Time[k] || c.AirHumidity[k] != r.Curves.AirHumidity[k] || c.FilmTemperature[k] != r.Curves.FilmTemperature[k] {
				t.Fatalf("%s: point %d is not that of the answer", r.Kind, k)
			}
		}
		if len(m.Stages) > len(r.Stages) || m.Stages[0].First != 0 || m.Stages[len(m.Stages)-1].Last != len(c.Time)-1 {
			t.Errorf("%s: stages %v do not cover the course of %d points", r.Kind, m.Stages, len(c.Time))
		}
		for k, st := range m.Stages {
			if c.Time[st.First] != r.Stages[k].Start || k > 0 && st.First != m.Stages[k-1].Last+1 {
				t.Errorf("%s: stage %d (%s) begins at point %d, %g s; the answer at %g s", r.Kind, k, r.Stages[k].Name, st.First, c.Time[st.First], r.Stages[k].Start)
			}
		}
	}
}

// While the film is wet its surface is near saturation; while water leaves it the vapour there exceeds the air's; and where
// nothing but air heats it a drying film lies between the wet bulb and the dry bulb. The demo's parts are bare on the way in,
// so that holds from a minute after each stage began until the film is dry.
func TestSurfaceLiesWhereDryingPutsIt(t *testing.T) {
	j := job.Demo()
	m, err := MoistAir(&j, result.Room)
	if err != nil {
		t.Fatal(err)
	}
	c := &m.Course
	wet := 0
	for i, w := range c.SurfaceHumidity {
		if w == nil {
			t.Fatalf("pure steam in a room, at %g s", c.Time[i])
		}
		s, err := air.FromHumidityRatio(c.FilmTemperature[i], m.Pressure, *w*(1-1e-9), j.Numerics.EnhancementFactor)
		if err != nil {
			t.Fatal(err) // more than saturated
		}
		if c.Time[i] < 600 && s.RelativeHumidity() > 0.9 {
			wet++
		}
		if c.Time[i] > 60 && c.Time[i] < 3600 {
			if *w <= c.AirHumidity[i] {
				t.Errorf("at %g s the surface holds %g kg/kg, the air %g", c.Time[i], *w, c.AirHumidity[i])
			}
			if c.FilmTemperature[i] < c.WetBulb[i]-0.5 || c.FilmTemperature[i] > c.AirTemperature[i]+0.5 {
				t.Errorf("at %g s the film has %g K, the air %g K with a wet bulb of %g K", c.Time[i], c.FilmTemperature[i], c.AirTemperature[i], c.WetBulb[i])
			}
		}
	}
	if wet < 5 {
		t.Errorf("only %d points of a wet surface", wet)
	}
}

// Dew point and wet bulb lie where the chart's own lines put them: the dew point on the saturation line at the air's humidity.
func TestDewPointStandsOnTheSaturationLine(t *testing.T) {
	j := job.Demo()
	for _, kind := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		m, err := MoistAir(&j, kind)
		if err != nil {
			t.Fatal(err)
		}
		for i, dew := range m.Course.DewPoint {
			got := along(&m.Saturation, dew)
			if dew >= m.Low && !(math.Abs(got-m.Course.AirHumidity[i]) < 0.003*m.Most) { // what straight pieces may be off
				t.Fatalf("%s: the line has %g kg/kg at the dew point %g K, the air %g", kind, got, dew, m.Course.AirHumidity[i])
			}
		}
		if m.Low >= m.High || m.Most <= 0 || len(m.Humidities) < 4 || len(m.WetBulbs) < 3 {
			t.Errorf("%s: frame %g to %g K, %g kg/kg, %d and %d lines", kind, m.Low, m.High, m.Most, len(m.Humidities), len(m.WetBulbs))
		}
	}
}

func along(l *result.ChartLine, T float64) float64 {
	for i := 1; i < len(l.Temperature); i++ {
		a, b := l.Temperature[i-1], l.Temperature[i]
		if T >= a && T <= b {
			return l.Humidity[i-1] + (l.Humidity[i]-l.Humidity[i-1])*(T-a)/(b-a)
		}
	}
	return math.NaN()
}

func TestMoistAirOfAMissingRoute(t *testing.T) {
	j := job.Demo()
	j.Tunnel = nil
	if _, err := MoistAir(&j, result.Tunnel); err == nil {
		t.Error("a route that the job lacks was drawn")
	}
}
