package unit

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// reading is one line of testdata/units/readings.json: a text with what it means in SI, or why it is refused. Values are computed from
// the definitions in rational numbers, outside of this package.
type reading struct {
	Text, Unit, Decimal, Refused string
	Dimension                    Dimension
	SI                           *float64
}

func readings(t testing.TB) []reading {
	t.Helper()
	text, err := os.ReadFile("../../testdata/units/readings.json")
	if err != nil {
		t.Fatal(err)
	}
	var list []reading
	if err := json.Unmarshal(text, &list); err != nil {
		t.Fatal(err)
	}
	if len(list) < 80 {
		t.Fatalf("only %d readings", len(list))
	}
	return list
}

func TestReadings(t *testing.T) {
	for _, r := range readings(t) {
		got, err := Parse(r.Text, r.Dimension, r.Unit, r.Decimal[0])
		var f *fault.Fault
		switch {
		case r.SI != nil && err != nil:
			t.Errorf("%q [%s]: %v", r.Text, r.Unit, err)
		case r.SI != nil && math.Abs(got-*r.SI) > 4e-15*math.Abs(*r.SI): // a few roundings of double precision
			t.Errorf("%q [%s]: %.17g, want %.17g", r.Text, r.Unit, got, *r.SI)
		case r.SI == nil && err == nil:
			t.Errorf("%q [%s] was read as %g", r.Text, r.Unit, got)
		case r.SI == nil && (!errors.As(err, &f) || string(f.Code) != r.Refused || f.Advice == ""):
			t.Errorf("%q [%s]: %v, want %s", r.Text, r.Unit, err, r.Refused)
		}
	}
}

// Conversions as printed in NIST Special Publication 811, appendix B (from memory), to the seven digits printed there.
func TestFactors(t *testing.T) {
	for _, c := range []struct {
		d      Dimension
		symbol string
		si     float64
	}{
		{Length, "in", 2.54e-2}, {Length, "ft", 3.048e-1}, {Length, "mil", 2.54e-5}, {Length, "yd", 9.144e-1},
		{Area, "ft²", 9.290304e-2}, {Area, "in²", 6.4516e-4}, {Area, "yd²", 8.361274e-1}, {Volume, "ft³", 2.831685e-2},
		{Mass, "lb", 4.535924e-1}, {Mass, "oz", 2.834952e-2}, {Mass, "gr", 6.479891e-5},
		{ArealMass, "oz/yd²", 3.390575e-2}, {ArealMass, "oz/ft²", 3.051517e-1}, {ArealMass, "lb/ft²", 4.882428},
		{Density, "lb/ft³", 1.601846e1}, {Density, "lb/US gal", 1.198264e2}, {LinearDensity, "den", 1.111111e-7},
		{Speed, "ft/min", 5.08e-3}, {Speed, "km/h", 2.777778e-1}, {VolumeFlow, "ft³/min", 4.719474e-4},
		{MassFlow, "lb/h", 1.259979e-4}, {Pressure, "psi", 6.894757e3}, {Pressure, "inHg", 3.386389e3}, {Pressure, "inH₂O", 2.490889e2},
		{Pressure, "mmHg", 1.333224e2}, {Pressure, "atm", 1.01325e5}, {Power, "Btu/h", 2.930711e-1}, {HeatFlux, "Btu/(h·ft²)", 3.154591},
		{SpecificHeat, "Btu/lb", 2.326e3}, {HeatCapacity, "Btu/(lb·°F)", 4.1868e3}, {BodyHeatCapacity, "Btu/°F", 1.899101e3},
		{Conductivity, "Btu/(h·ft·°F)", 1.730735}, {Conductivity, "Btu·in/(h·ft²·°F)", 1.442279e-1},
		{TransferCoefficient, "Btu/(h·ft²·°F)", 5.678263}, {Conductance, "Btu/(h·°F)", 5.275279e-1},
	} {
		u, ok := Get(c.d, c.symbol)
		if got := u.SI(1); !ok || math.Abs(got/c.si-1) > 5e-7 {
			t.Errorf("1 %s is %.8g %s, want %g", c.symbol, got, c.d.SI(), c.si)
		}
	}
	for _, c := range []struct {
		symbol    string
		value, si float64
	}{{"°C", 0, 273.15}, {"°F", 32, 273.15}, {"°F", 212, 373.15}, {"°F", -40, 233.15}} {
		u, _ := Get(Temperature, c.symbol)
		if got := u.SI(c.value); math.Abs(got-c.si) > 1e-12 {
			t.Errorf("%g %s is %.15g K, want %g", c.value, c.symbol, got, c.si)
		}
	}
}

// A spelling means one unit of its dimension, is folded already, and can be typed behind a number.
func TestSpellings(t *testing.T) {
	for _, s := range Scales() {
		seen := map[string]string{}
		si := s.SI == ""
		for _, u := range s.Units {
			if u.Times <= 0 || u.Over <= 0 {
				t.Errorf("%s: %g over %g", u.Symbol, u.Times, u.Over)
			}
			si = si || u.Symbol == s.SI && u.SI(1) == 1 || s.Dimension == CarbonIntensity
			for _, name := range append([]string{Fold(u.Symbol)}, u.Names...) {
				if name != Fold(name) {
					t.Errorf("%s: %q folds to %q", u.Symbol, name, Fold(name))
				}
				if was, twice := seen[name]; twice && was != u.Symbol {
					t.Errorf("%s: %q means %s and %s", s.Dimension, name, was, u.Symbol)
				}
				seen[name] = u.Symbol
				if name == "1" || name == "" || strings.Contains(name, "100") {
					continue // of units that show nothing, or that only heads of tables have
				}
				if got, err := Parse("2 "+name, s.Dimension, "", '.'); err != nil || math.Abs(got-u.SI(2)) > 1e-12*math.Abs(got) {
					t.Errorf("2 %s: %g, %v", name, got, err)
				}
			}
		}
		if !si && s.Dimension != Share {
			t.Errorf("%s has no row for %s", s.Dimension, s.SI)
		}
	}
}

// What is printed with any unit is read back, in either decimal mark.
func TestRoundTrip(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	for _, s := range Scales() {
		for _, u := range s.Units {
			for range 200 {
				if u.Symbol == "1" {
					break // behind a number it would be another number
				}
				v := (dice.Float64() - 0.5) * math.Pow(10, float64(dice.IntN(14)-6))
				text, mark := fmt.Sprintf("%.9g", v), byte('.')
				if dice.IntN(2) == 1 {
					text, mark = strings.Replace(text, ".", ",", 1), ','
				}
				si, err := Parse(text+" "+u.Symbol, s.Dimension, u.Symbol, mark)
				// Nine digits were printed; near the zero of a temperature the rounding is that of the shift.
				if err != nil || math.Abs(u.Of(si)-v) > 1e-8*math.Abs(v)+1e-12*u.Zero {
					t.Fatalf("%s %s: %g, %v", text, u.Symbol, u.Of(si), err)
				}
			}
		}
	}
}

func TestAdviceNamesTheUnits(t *testing.T) {
	_, err := Parse("90 s", Length, "mm", '.')
	if got := err.Error(); got != `"s" is a unit of duration, not of length. Write a number in mm, or with one of the units mm, µm, nm, cm, m, mil, in, ft, yd.` {
		t.Error(got)
	}
	_, err = Parse("1,200", Length, "mm", '.')
	if got := err.Error(); !strings.HasPrefix(got, `"1,200" is not understood: it may be 1.200 or 1200. `) {
		t.Error(got)
	}
}

// Whatever is typed, the reader ends with a finite number or a fault that says what to do.
func FuzzParse(f *testing.F) {
	for _, r := range readings(f) {
		f.Add(r.Text, string(r.Dimension), r.Unit, r.Decimal == ",")
	}
	f.Fuzz(func(t *testing.T, text, dimension, symbol string, comma bool) {
		mark := byte('.')
		if comma {
			mark = ','
		}
		v, err := Parse(text, Dimension(dimension), symbol, mark)
		var told *fault.Fault
		if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Errorf("%q: %g", text, v)
		}
		if err != nil && !errors.As(err, &told) {
			t.Errorf("%q: %T", text, err)
		}
		// Spaces around a text and capitals mean nothing.
		if again, e := Parse(" "+text+"\u00a0", Dimension(dimension), symbol, mark); (e == nil) != (err == nil) && len(text) < 70 || e == nil && err == nil && again != v {
			t.Errorf("%q reads differently between spaces: %g %v, %g %v", text, v, err, again, e)
		}
	})
}
