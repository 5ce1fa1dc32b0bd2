package air_test

import (
	"errors"
	"math"
	"testing"

	. "github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
)

// Order of the four temperatures, and the wet bulb bracketed below boiling: dew point <= wet bulb <= dry bulb. A popular
// library returns the dry bulb once dry bulb and dew point add up to 200 degC; no such state here. Also rising in y.
func TestOrder(t *testing.T) {
	for _, p := range []float64{60e3, 101325, 110e3} {
		boiling := SaturationTemperature(p)
		for T := LowTemperature; T <= HighTemperature; T += 25 {
			full := min(1, SaturatedFraction(T, p, true))
			last := 0.
			for x := 0.02; x <= 1; x += 0.02 {
				s := State{T: T, P: p, Y: full * x, Real: true}
				dew, wet := s.DewPoint(), s.WetBulb()
				const hair = 1e-6 // K: at saturation all three agree
				if dew > wet+hair || wet > min(T, boiling)+hair || wet < last {
					t.Fatalf("%+v: dew point %g, wet bulb %g, before %g", s, dew, wet, last)
				}
				last = wet
			}
		}
	}
	steam := State{T: 453.15, P: 101325, Y: 1, Real: true}
	boiling := SaturationTemperature(101325)
	if steam.WetBulb() != boiling || math.Abs(steam.DewPoint()-boiling) > 1e-9 {
		t.Errorf("steam: wet bulb %g, dew point %g", steam.WetBulb(), steam.DewPoint())
	}
	almost := State{T: 453.15, P: 101325, Y: 1 - 1e-9, Real: true}
	if d := boiling - almost.WetBulb(); d < 0 || d > 1e-5 {
		t.Errorf("near steam the wet bulb is %g K below boiling", d)
	}
	if !math.IsInf(steam.HumidityRatio(), 1) {
		t.Error("pure steam has a finite humidity ratio")
	}
	if dew := (State{T: 293.15, P: 101325, Real: true}).DewPoint(); dew != 0 {
		t.Errorf("dry air takes dew at %g K", dew)
	}
}

// Saturated air sits on its own dew point and wet bulb.
func TestSaturated(t *testing.T) {
	for _, real := range []bool{false, true} {
		s, err := FromRelativeHumidity(303.15, 101325, 1, real)
		if err != nil {
			t.Fatal(err)
		}
		// K: limits of the root (1e-10) and of the enhancement iteration.
		if math.Abs(s.DewPoint()-303.15) > 1e-7 || math.Abs(s.WetBulb()-303.15) > 1e-7 {
			t.Errorf("real %v: dew point %.10g, wet bulb %.10g", real, s.DewPoint(), s.WetBulb())
		}
	}
}

// Consistency of the caloric functions: the enthalpies are the integrals of the heat capacities.
func TestEnthalpySlopes(t *testing.T) {
	for T := 280.; T < 520; T += 20 {
		const h = 0.01
		slope := (VapourEnthalpy(T+h) - VapourEnthalpy(T-h)) / (2 * h)
		if math.Abs(slope/VapourHeatCapacity(T)-1) > 1e-7 {
			t.Errorf("vapour at %g K", T)
		}
		slope = (DryAirEnthalpy(T+h) - DryAirEnthalpy(T-h)) / (2 * h)
		if math.Abs(slope/DryAirHeatCapacity(T)-1) > 1e-7 {
			t.Errorf("air at %g K", T)
		}
		s := State{T: T, P: 1e5, Y: 0.2}
		if m := s.Transport(); math.Abs(m.Density/s.Density()-1) > 1e-12 || math.Abs(m.HeatCapacity/s.SpecificHeat()-1) > 1e-12 {
			t.Errorf("Mixture and State differ at %g K", T)
		}
	}
	if DryAirEnthalpy(273.15) != 0 || math.Abs(LiquidEnthalpy(273.16)) > 1e-9 {
		t.Error("references are not zero")
	}
}

// Faults carry the range, the value and advice, and no path.
func TestFaults(t *testing.T) {
	bone := State{T: 293.15, P: 101325, Real: true}.WetBulb()
	for name, c := range map[string]struct {
		err       error
		low, high float64
	}{
		"cold":            {second(FromDewPoint(263.15, 101325, 260, true)), 273.15, 523.15},
		"hot":             {second(FromDewPoint(573.15, 101325, 260, true)), 273.15, 523.15},
		"thin":            {second(FromHumidityRatio(293.15, 50e3, 0, true)), 60e3, 110e3},
		"above 100 %":     {second(FromRelativeHumidity(293.15, 101325, 1.01, true)), 0, 1},
		"below dry":       {second(FromRelativeHumidity(293.15, 101325, -0.1, true)), 0, 1},
		"dew above air":   {second(FromDewPoint(293.15, 101325, 294, true)), 173.15, 293.15},
		"not a number":    {second(FromRelativeHumidity(293.15, 101325, math.NaN(), true)), 0, 1},
		"fog":             {second(FromHumidityRatio(293.15, 101325, 0.02, false)), 0, 0.014698},
		"wet above air":   {second(FromWetBulb(293.15, 101325, 300, true)), bone, 293.15},
		"wet below dry":   {second(FromWetBulb(293.15, 101325, 275, true)), bone, 293.15},
		"dense":           {second(FromVapourDensity(293.15, 101325, 0.5, false)), 0, 0.01729},
		"more than steam": {second(FromRelativeHumidity(423.15, 101325, 0.5, false)), 0, 0.21282},
	} {
		var f *fault.Fault
		if !errors.As(c.err, &f) {
			t.Errorf("%s: %v is no fault", name, c.err)
			continue
		}
		if f.Code != fault.Range || f.Path != "" || f.Advice == "" || f.Got == "" {
			t.Errorf("%s: %+v", name, f)
		}
		// Steam tables: 0.014698 kg/kg (row EVP-DEW), 17.29 g/m3 at 20 degC, 476 101 Pa at 150 degC; half a unit of their digits.
		if math.Abs(f.Low-c.low) > 1e-12 || math.Abs(f.High-c.high) > 5e-5*c.high {
			t.Errorf("%s: range %g to %g, want %g to %g", name, f.Low, f.High, c.low, c.high)
		}
	}
	if _, err := FromRelativeHumidity(423.15, 101325, 0.01, true); err != nil {
		t.Errorf("a saturation pressure above the air pressure is no error: %v", err)
	}
}

func second(_ State, err error) error { return err }

var sink Props
var sinkFloat float64

func BenchmarkSaturationPressure(b *testing.B) {
	b.ReportAllocs()
	for i := range b.N {
		sinkFloat = SaturationPressure(300 + float64(i&63))
	}
}

func BenchmarkSaturatedFractionReal(b *testing.B) {
	b.ReportAllocs()
	for i := range b.N {
		sinkFloat = SaturatedFraction(300+float64(i&63), 101325, true)
	}
}

func BenchmarkLatentHeat(b *testing.B) {
	b.ReportAllocs()
	for i := range b.N {
		sinkFloat = LatentHeat(300 + float64(i&63))
	}
}

func BenchmarkMixture(b *testing.B) {
	b.ReportAllocs()
	for i := range b.N {
		sink = Mixture(300+float64(i&63), 101325, 0.1)
	}
}

func BenchmarkWetBulb(b *testing.B) {
	s := State{T: 423.15, P: 101325, Y: 0.14, Real: true}
	for range b.N {
		sinkFloat = s.WetBulb()
	}
}
