package job

import (
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/words"
	"github.com/drywright/drywright/cure/words/languages"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"
)

// leaves and blocks of the Go types, by path pattern.
func patterns(t reflect.Type, pattern string, leaf, block map[string]reflect.Type) {
	switch t.Kind() {
	case reflect.Pointer:
		patterns(t.Elem(), pattern, leaf, block)
	case reflect.Struct:
		block[pattern] = t
		for i := range t.NumField() {
			name := t.Field(i).Tag.Get("json")
			patterns(t.Field(i).Type, under(pattern, name), leaf, block)
		}
	case reflect.Slice:
		block[pattern] = t
		patterns(t.Elem(), pattern+"[]", leaf, block)
	default:
		leaf[pattern] = t
	}
}

func TestTablesCoverTheTypes(t *testing.T) {
	leaf, block := map[string]reflect.Type{}, map[string]reflect.Type{}
	patterns(reflect.TypeFor[Job](), "", leaf, block)
	for _, f := range Fields() {
		if leaf[f.Path] == nil {
			t.Errorf("field %s is not in Job, or is there twice in the table", f.Path)
			continue
		}
		kinds := map[reflect.Kind][]FieldKind{reflect.Float64: {KindNumber}, reflect.Int: {KindNumber},
			reflect.String: {KindText, KindChoice}, reflect.Bool: {KindSwitch}}
		if kind := leaf[f.Path].Kind(); !slices.Contains(kinds[kind], f.Kind) || f.Integer != (kind == reflect.Int) {
			t.Errorf("field %s of kind %s does not fit a %s", f.Path, f.Kind, kind)
		}
		delete(leaf, f.Path)
	}
	for path := range leaf {
		t.Errorf("%s has no field in the table", path)
	}
	for _, b := range Blocks() {
		if block[b.Path] == nil {
			t.Errorf("block %q is not in Job, or is there twice in the table", b.Path)
			continue
		}
		if list := block[b.Path].Kind() == reflect.Slice; list != b.List || list && !(b.MinItems <= b.Items && b.Items <= b.MaxItems) {
			t.Errorf("block %q: list %v with %d to %d items, %d by default", b.Path, b.List, b.MinItems, b.MaxItems,
				b.Items)
		}
		if b.Label == "" || !sentence(english(b.Help)) {
			t.Errorf("block %q lacks words", b.Path)
		}
		delete(block, b.Path)
	}
	for path := range block {
		t.Errorf("%q has no block in the table", path)
	}
}

func sentence(s string) bool {
	return s != "" && (unicode.IsUpper([]rune(s)[0])) && strings.HasSuffix(s, ".") && !strings.Contains(s, "  ")
}

func TestFieldsAreWhole(t *testing.T) {
	fields := Fields()
	byPath := map[string]Field{}
	for _, f := range fields {
		byPath[f.Path] = f
	}
	for _, f := range fields {
		if label, source, effect, help := english(f.Label), english(f.Source), english(f.Effect), english(f.Help); f.Group == "" ||
			strings.Contains(label+source, "⟦") || !sentence(effect) || !sentence(help) {
			t.Errorf("%s lacks words: %q %q %q %q %q", f.Path, label, f.Group, source, effect, help)
		}
		switch f.Kind {
		case KindNumber:
			for _, v := range []float64{f.Low, f.High, f.UsualLow, f.UsualHigh, f.Default, f.Display.Factor,
				f.Display.Offset,
				f.USDisplay.Factor, f.USDisplay.Offset} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: a number is not finite", f.Path)
				}
			}
			if !(f.Low <= f.UsualLow && f.UsualLow <= f.UsualHigh && f.UsualHigh <= f.High) || f.Path != "version" && f.Low >= f.High {
				t.Errorf("%s: accepted %g to %g, usual %g to %g", f.Path, f.Low, f.High, f.UsualLow, f.UsualHigh)
			}
			if !(f.Default >= f.Low && f.Default <= f.High) {
				t.Errorf("%s: default %g outside %g to %g", f.Path, f.Default, f.Low, f.High)
			}
			if f.Display.Factor <= 0 || f.USDisplay.Factor <= 0 || f.Display.Digits < 1 || f.USDisplay.Digits < 1 {
				t.Errorf("%s: display %+v, %+v", f.Path, f.Display, f.USDisplay)
			}
		case KindChoice:
			if !slices.ContainsFunc(f.Choices, func(c Choice) bool { return c.Value == f.Text && c.Label != "" }) {
				t.Errorf("%s: default %q is no choice", f.Path, f.Text)
			}
		case KindText:
			if len(f.Text) > int(f.High) || f.High < 1 {
				t.Errorf("%s: default longer than %g", f.Path, f.High)
			}
		}
		checkCondition(t, f.Path, f.UsedWhen, byPath)
	}
	for _, b := range Blocks() {
		checkCondition(t, b.Path, b.UsedWhen, byPath)
	}
}

// checkCondition demands that what stands beside a path can be what the condition asks for, and something else too.
func checkCondition(t *testing.T, path string, c *Condition, fields map[string]Field) {
	t.Helper()
	if c == nil {
		return
	}
	sibling, there := fields[path[:strings.LastIndexByte(path, '.')+1]+c.Path]
	if !there {
		t.Errorf("%s is used by %s, which is not there", path, c.Path)
	}
	words := map[string]bool{}
	for _, choice := range sibling.Choices {
		words[choice.Value] = true
	}
	if sibling.Kind == KindSwitch {
		words["true"], words["false"] = true, true
	}
	if sibling.Optional {
		words["null"], words["a number"] = true, true
	}
	for _, word := range c.In {
		if !words[word] {
			t.Errorf("%s is used when %s is %q, which it never is", path, c.Path, word)
		}
		delete(words, word)
	}
	if len(words) == 0 {
		t.Errorf("%s is always used: no condition is needed", path)
	}
}

// The unit in the field's name is the unit in the table.
func TestUnitsAgreeWithNames(t *testing.T) {
	units := []struct{ suffix, unit string }{ // longest first
		{"_m2_per_m", "m²/m"}, {"_kg_per_kWh", "kg/kWh"}, {"_per_kWh", "1/kWh"},
		{"_J_per_kgK", "J/(kg·K)"}, {"_W_per_mK", "W/(m·K)"}, {"_W_per_m2K", "W/(m²·K)"}, {"_J_per_mol", "J/mol"},
		{"_J_per_kg", "J/kg"}, {"_W_per_m2", "W/m²"}, {"_price_per_m2", "1/m²"}, {"_per_h", "1/h"}, {"_kg_per_s", "kg/s"},
		{"_kg_per_m2", "kg/m²"}, {"_kg_per_m3", "kg/m³"}, {"_kg_per_kg", "kg/kg"}, {"_m2_per_s", "m²/s"}, {"_m3_per_s",
			"m³/s"},
		{"_m_per_s", "m/s"}, {"_J_per_K", "J/K"}, {"_W_per_K", "W/K"}, {"_per_s", "1/s"}, {"_m2", "m²"}, {"_m3", "m³"},
		{"_Pa", "Pa"}, {"_K", "K"}, {"_W", "W"}, {"_m", "m"}, {"_s", "s"}, {"", ""},
	}
	for _, f := range Fields() {
		for _, u := range units {
			if strings.HasSuffix(f.Path, u.suffix) {
				if f.Unit != u.unit {
					t.Errorf("%s has the unit %q, want %q", f.Path, f.Unit, u.unit)
				}
				break
			}
		}
	}
}

// Conversions as printed in tables of units (NIST Special Publication 811, appendix B; from memory), to the digits
// printed there.
func TestUnitConversions(t *testing.T) {
	for _, c := range []struct {
		what       string
		display    Display
		si, shown  float64
		lastDigits float64
	}{
		{"freezing", temperature().us, 273.15, 32, 1e-9},
		{"boiling", temperature().us, 373.15, 212, 1e-9},
		{"boiling", temperature().display, 373.15, 100, 1e-9},
		{"inch", smallLength().us, 0.0254, 1, 1e-12},
		{"mil", filmLength().us, 25.4e-6, 1, 1e-12},
		{"foot", length().us, 0.3048, 1, 1e-12},
		{"oz/yd2", coatWeight().us, 3.390575e-2, 1, 1e-6},
		{"lb/ft3", density().us, 16.01846, 1, 1e-6},
		{"lb/ft2", arealMass().us, 4.882428, 1, 1e-6},
		{"Btu/(lb F)", heatCapacity().us, 4186.8, 1, 1e-6},
		{"Btu/(h ft F)", conductivity().us, 1.730735, 1, 1e-6},
		{"Btu/(h ft2 F)", transferCoefficient().us, 5.678263, 1, 1e-6},
		{"Btu/(h F)", conductance().us, 0.5275279, 1, 1e-6},
		{"Btu/F", bodyHeatCapacity().us, 1899.101, 1, 1e-6},
		{"kBtu/h", power().us, 293.0711, 1, 1e-6},
		{"ft/min", airSpeed().us, 5.08e-3, 1, 1e-12},
		{"m/min", lineSpeed().display, 1.0 / 60, 1, 1e-12},
		{"ft3/min", volumeFlow().us, 4.719474e-4, 1, 1e-6},
		{"ft3", volume().us, 2.831685e-2, 1, 1e-6},
		{"ft2", area().us, 9.290304e-2, 1, 1e-12},
		{"inHg", pressure().us, 3386.389, 1, 1e-6},
		{"inH2O", fanPressure().us, 249.0889, 1, 1e-6},
		{"Btu/(h ft2)", heatFlux().us, 3.154591, 1, 1e-6},
		{"Btu/lb", specificHeat().us, 2326, 1, 1e-6},
		{"lb/d", waterFlow().us, 0.45359237 / 86400, 1, 1e-9},
		{"lb/kWh", carbonIntensity().us, 0.45359237, 1, 1e-9},
		{"ft2/ft", areaPerLength().us, 0.3048, 1, 1e-12},
		{"air changes an hour", airChanges().display, 1.0 / 3600, 1, 1e-12},
		{"gr/lb", humidityRatio().us, 1.0 / 7000, 1, 1e-12},
		{"gr/ft3", vapourDensity().us, 2.288352e-3, 1, 1e-6},
	} {
		if got := c.si*c.display.Factor + c.display.Offset; math.Abs(got-c.shown) > c.lastDigits*math.Max(1, c.shown) {
			t.Errorf("%s: %.10g %s, want %g", c.what, got, c.display.Symbol, c.shown)
		}
	}
}

func TestDefaultAndDemoValidate(t *testing.T) {
	if err := Validate(Default()); err != nil {
		t.Errorf("default: %v", err)
	}
	demo := Demo()
	if err := Validate(demo); err != nil {
		t.Errorf("demo: %v", err)
	}
	if !strings.Contains(strings.ToLower(demo.Note), "invented") {
		t.Error("the demo does not say that it is invented")
	}
	if demo.Room == nil || demo.StaticOven == nil || demo.Tunnel == nil || len(demo.Tunnel.Zones) < 3 {
		t.Error("the demo lacks a route")
	}
}

// The examples: a room that is shared for the first question, a tunnel with balanced air for the other two, which differ in
// nothing but the speed.
func TestDemos(t *testing.T) {
	demos := Demos()
	byID := map[string]Job{}
	for _, d := range demos {
		if d.ID == "" || d.Title == "" || byID[d.ID].Version != 0 {
			t.Errorf("%q %q: no name, or one that is there twice", d.ID, d.Title)
		}
		byID[d.ID] = d.Job
		if err := Validate(d.Job); err != nil {
			t.Errorf("%s: %v", d.ID, err)
		}
		if !strings.HasPrefix(english(d.Job.Note), "Invented example. ") {
			t.Errorf("%s does not say that it is invented", d.ID)
		}
		text, err := Encode(d.Job)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := Decode(text); err != nil || !reflect.DeepEqual(back, d.Job) {
			t.Errorf("%s came back changed: %v", d.ID, err)
		}
	}
	if len(demos) != 4 || demos[0].ID != "sleeves" || !reflect.DeepEqual(demos[0].Job, Demo()) {
		t.Error("the first example is not the demo")
	}
	if s := byID["shop"]; s.Room == nil || s.StaticOven != nil || s.Tunnel != nil || s.Workshop.Space == nil {
		t.Error("the shop is no full room")
	}
	line, faster := byID["line"], byID["faster"]
	for _, z := range line.Tunnel.Zones {
		if z.Air == nil || z.Transfer.Nozzles == nil {
			t.Errorf("%s lacks air or nozzles", z.Name)
		}
	}
	if r := faster.Tunnel.LineSpeed / line.Tunnel.LineSpeed; math.Abs(r-1.2) > 1e-12 {
		t.Errorf("%g times faster", r)
	}
	faster.Tunnel.LineSpeed, faster.Name, faster.Note = line.Tunnel.LineSpeed, line.Name, line.Note
	if !reflect.DeepEqual(line, faster) {
		t.Error("the faster line differs in more than its speed")
	}
}

// The default frequency factor is that of the default schedule, so that dropping the schedule changes nothing.
func TestDefaultFrequencyFactorIsThatOfTheSchedule(t *testing.T) {
	c := *Default().Film.Adhesive.Crosslinking
	fitted, _, err := c.Law()
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(c.FrequencyFactor/fitted.A1-1) > 1e-4 { // printed to five digits
		t.Errorf("frequency factor %g, the schedule means %g", c.FrequencyFactor, fitted.A1)
	}
	if got := fitted.IsothermalTime(393.15, 0.95); math.Abs(got-300) > 1e-9 {
		t.Errorf("95 %% at 120 degC after %g s", got)
	}
}

// english puts a text on its way into words.
func english(text string) string {
	return spoken.Render(text, func(a words.Amount) string { return fault.Number(a.Value) + " " + a.Unit })
}

var spoken = languages.English()
