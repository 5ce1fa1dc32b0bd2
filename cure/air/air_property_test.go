package air_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	. "github.com/drywright/drywright/cure/air"
)

// moist draws air over the whole accepted domain, up to a millionth of air in steam: pure steam has no humidity ratio.
func moist(t *rapid.T) State {
	s := State{T: rapid.Float64Range(LowTemperature, HighTemperature).Draw(t, "T"), P: rapid.Float64Range(LowPressure, HighPressure).Draw(t, "p"),
		Real: rapid.Bool().Draw(t, "real")}
	s.Y = min(1-1e-6, SaturatedFraction(s.T, s.P, s.Real)) * rapid.Float64Range(1e-3, 1).Draw(t, "share")
	return s
}

// way is one of the five ways in which people say how moist air is.
type way struct {
	name string
	of   func(State) float64
	back func(T, p, v float64, real bool) (State, error)
}

var ways = []way{
	{"relative humidity", State.RelativeHumidity, FromRelativeHumidity}, {"dew point", State.DewPoint, FromDewPoint},
	{"wet bulb", State.WetBulb, FromWetBulb}, {"humidity ratio", State.HumidityRatio, FromHumidityRatio},
	{"vapour density", State.VapourDensity, FromVapourDensity},
}

// Whatever way a state is said in, and said again in another, it is the state that it was. A wet bulb is flat in y near saturation and
// is found to 1e-10 K, which 1e-9 in y allows for, twice where it is said twice.
func TestFiveWaysSayTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := moist(t)
		first, second := rapid.SampledFrom(ways).Draw(t, "first"), rapid.SampledFrom(ways).Draw(t, "second")
		once, err := first.back(s.T, s.P, first.of(s), s.Real)
		if err != nil || math.Abs(once.Y-s.Y) > 1e-9 || once.T != s.T || once.P != s.P || once.Real != s.Real {
			t.Fatalf("%s of %+v: %+v, %v", first.name, s, once, err)
		}
		twice, err := second.back(s.T, s.P, second.of(once), s.Real)
		if err != nil || math.Abs(twice.Y-s.Y) > 2e-9 {
			t.Fatalf("%s, then %s, of %+v: %+v, %v", first.name, second.name, s, twice, err)
		}
	})
}

// More vapour is more by each of the five, and warmer air with the same vapour has a lower relative humidity and a higher wet bulb.
func TestEachWayRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := moist(t)
		damper := s
		damper.Y *= rapid.Float64Range(0.1, 0.999).Draw(t, "less")
		for _, w := range ways {
			if !(w.of(damper) < w.of(s)) {
				t.Fatalf("%s falls from %g to %g where vapour rises from %g to %g", w.name, w.of(damper), w.of(s), damper.Y, s.Y)
			}
		}
		warm := s
		warm.T = math.Min(HighTemperature, s.T+rapid.Float64Range(0.1, 30).Draw(t, "warmer"))
		const hair = 1e-9 // K, to which a wet bulb is found; near steam it stands at the boiling point
		if warm.RelativeHumidity() > s.RelativeHumidity() || warm.WetBulb() < s.WetBulb()-hair {
			t.Fatalf("%+v warmed to %g K: relative humidity %g to %g, wet bulb %g to %g", s, warm.T, s.RelativeHumidity(), warm.RelativeHumidity(), s.WetBulb(), warm.WetBulb())
		}
	})
}

// Saturation pressure and temperature undo each other, over the whole domain of pressures that vapour may have.
func TestSaturationUndoesItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		T := rapid.Float64Range(LowTemperature, HighTemperature).Draw(t, "T")
		if back := SaturationTemperature(SaturationPressure(T)); math.Abs(back-T) > 1e-9 {
			t.Fatalf("%g K comes back as %g K", T, back)
		}
	})
}
