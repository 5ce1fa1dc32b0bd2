package derive

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words"
)

// Worked examples, computed by hand unless a source is named; to the digits printed.
func TestWorkedExamples(t *testing.T) {
	for _, c := range []struct {
		kind   Kind
		path   string
		inputs map[string]float64
		want   float64
		digits float64 // relative, half of the last digit
	}{
		// 150 µm of a dispersion of 50 % solids of 1080 kg/m³: 1/(0.5/1080 + 0.5/998.2) = 1037.5 kg/m³.
		{Comb, "film.wet_coat_kg_per_m2", map[string]float64{"wet_thickness_m": 150e-6, "solids_fraction": 0.5, "dry_density_kg_per_m3": 1080}, 0.15562, 1e-4},
		// 12.0 g on 0.05 m² with a third lost: 160 g/m².
		{Sprayed, "film.wet_coat_kg_per_m2", map[string]float64{"mass_kg": 0.012, "area_m2": 0.05, "overspray": 1.0 / 3}, 0.16, 1e-9},
		// 2.1012 g, 3.1254 g, 2.6133 g: 0.5121/1.0242.
		{Dried, "film.adhesive.solids_fraction", map[string]float64{"dish_kg": 2.1012e-3, "wet_kg": 3.1254e-3, "dry_kg": 2.6133e-3}, 0.5, 1e-9},
		// 3600 m³/h through 0.5 m².
		{Flow, "static_oven.transfer.velocity_m_per_s", map[string]float64{"flow_m3_per_s": 1, "area_m2": 0.5}, 2, 1e-12},
		// ASHRAE Handbook Fundamentals (2017), chapter 1, example 1 on the chart: 40 degC with a wet bulb of 20 degC has 6.5 g/kg, a dew
		// point of 7 degC and 14 % relative humidity (from memory); read off a chart, hence a whole degree and the digits printed.
		{WetBulb, "workshop.air[].humidity.humidity_ratio_kg_per_kg", map[string]float64{"temperature_K": 313.15, "wet_bulb_K": 293.15, "pressure_Pa": 101325}, 0.0065, 8e-3},
		{WetBulb, "workshop.air[].humidity.relative_humidity", map[string]float64{"temperature_K": 313.15, "wet_bulb_K": 293.15, "pressure_Pa": 101325}, 0.14, 0.036},
		{WetBulb, "workshop.air[].humidity.dew_point_K", map[string]float64{"temperature_K": 313.15, "wet_bulb_K": 293.15, "pressure_Pa": 101325}, 280.15, 1.0 / 280},
		// Saturation pressures of water at 10 and 20 degC, 1228.1 and 2339.3 Pa (steam tables): 52.5 %, less a share of the enhancement.
		{DewPoint, "workshop.air[].humidity.relative_humidity", map[string]float64{"temperature_K": 293.15, "dew_point_K": 283.15, "pressure_Pa": 101325}, 0.525, 1e-3},
		// 0.312 kg on 0.1 m² of ABS at 1040 kg/m³: 3.0 mm.
		{Weighed, "part.thickness_m", map[string]float64{"mass_kg": 0.312, "area_m2": 0.1, "density_kg_per_m3": 1040}, 3e-3, 1e-9},
		// 60 g/m² of 0.8 mm polyamide at 1140 kg/m³: 0.0658 of the area.
		{AddOn, "pile.porosity", map[string]float64{"add_on_kg_per_m2": 0.06, "length_m": 0.8e-3, "fibre_density_kg_per_m3": 1140}, 0.9342, 1e-4},
		// 3.3 dtex, 200 fibres on a square millimetre: 200e6 · 3.3e-7 / 1140 = 0.0579.
		{FibreCount, "pile.porosity", map[string]float64{"linear_density_kg_per_m": 3.3e-7, "count_per_m2": 200e6, "length_m": 0.8e-3, "fibre_density_kg_per_m3": 1140}, 0.9421, 1e-4},
	} {
		a, err := Work(Question{c.kind, c.path, c.inputs})
		if err != nil || math.Abs(a.Value/c.want-1) > c.digits {
			t.Errorf("%s: %.6g, want %g: %v", c.kind, a.Value, c.want, err)
		}
	}
}

// The count's add-on, given back to the other helper, has the same share of air.
func TestFibreHelpersAgree(t *testing.T) {
	a, err := Work(Question{FibreCount, "pile.porosity", map[string]float64{"linear_density_kg_per_m": 1.7e-7, "count_per_m2": 4e8, "length_m": 0.5e-3, "fibre_density_kg_per_m3": 1380}})
	if err != nil {
		t.Fatal(err)
	}
	addOn := a.Steps[1].Value
	b, err := Work(Question{AddOn, "pile.porosity", map[string]float64{"add_on_kg_per_m2": addOn, "length_m": 0.5e-3, "fibre_density_kg_per_m3": 1380}})
	if err != nil || math.Abs(a.Value-b.Value) > 1e-12 {
		t.Errorf("%g and %g, %v", a.Value, b.Value, err)
	}
}

// Whatever a helper works out for a humidity, the job takes for the same air.
func TestHumidityIsTheJobs(t *testing.T) {
	for name := range humidities {
		if name == "wet_bulb_K" {
			continue
		}
		a, err := Work(Question{WetBulb, "static_oven.humidity." + name, map[string]float64{"temperature_K": 353.15, "wet_bulb_K": 313.15, "pressure_Pa": 98e3}})
		if err != nil {
			t.Fatal(name, err)
		}
		h := job.Humidity{}
		*map[string]**float64{"humidity_ratio_kg_per_kg": &h.HumidityRatio, "dew_point_K": &h.DewPoint, "relative_humidity": &h.RelativeHumidity,
			"vapour_density_kg_per_m3": &h.VapourDensity}[name] = &a.Value
		s, err := h.State(353.15, 98e3, true)
		if err != nil || math.Abs(s.WetBulb()-313.15) > 1e-6 {
			t.Errorf("%s: wet bulb %.8g K, %v", name, s.WetBulb(), err)
		}
	}
}

// Every helper has words, inputs whose units and ranges fit, and places that are in the job.
func TestHelpersAreWhole(t *testing.T) {
	rules := job.NewRules()
	units := func(what string, si, us job.Display) {
		for _, d := range []job.Display{si, us} {
			if u, known := unit.Get(d.Dimension, d.Symbol); !known || d.Factor != u.Factor() {
				t.Errorf("%s: no unit %q of %s", what, d.Symbol, d.Dimension)
			}
		}
	}
	seen := map[Kind]bool{}
	for _, h := range Helpers() {
		if seen[h.Kind] || len(h.For) == 0 || h.Title == "" || h.Procedure == "" || h.Equation == "" || h.Source == "" || len(h.Inputs) < 2 {
			t.Errorf("%s is not whole", h.Kind)
		}
		seen[h.Kind] = true
		for _, in := range h.Inputs {
			units(string(h.Kind)+" "+in.Name, in.Display, in.USDisplay)
			if in.Label == "" || in.Symbol == "" || in.Low >= in.High || in.Default != nil && (*in.Default < in.Low || *in.Default > in.High) {
				t.Errorf("%s: %+v", h.Kind, in)
			}
		}
		for _, p := range h.For {
			f, known := rules.Field(p.Path)
			if !known || f.Kind != job.KindNumber || len(p.From) != len(h.Inputs) {
				t.Errorf("%s: %+v", h.Kind, p)
			}
			for i, from := range p.From {
				if f, known := rules.Field(from); from != "" && (!known || f.Display.Dimension != h.Inputs[i].Display.Dimension) {
					t.Errorf("%s: %s does not give %s", h.Kind, from, h.Inputs[i].Name)
				}
			}
			// The middle of all ranges, or a fault that says what to do.
			inputs := map[string]float64{}
			for _, in := range h.Inputs {
				inputs[in.Name] = math.Sqrt(math.Max(in.Low, in.High*1e-3) * in.High)
			}
			a, err := Work(Question{h.Kind, p.Path, inputs})
			var told *fault.Fault
			if err != nil && (!errors.As(err, &told) || told.Advice == "") {
				t.Errorf("%s: %v", h.Kind, err)
			}
			for _, s := range a.Steps {
				units(string(h.Kind)+" "+s.Symbol, s.Display, s.USDisplay)
			}
		}
	}
	if len(Helpers()[5].For) < 8 {
		t.Error("the dew point serves hardly any humidity")
	}
}

func TestRefusals(t *testing.T) {
	coat := "film.wet_coat_kg_per_m2"
	for what, c := range map[string]struct {
		q    Question
		code fault.Code
		path string
	}{
		"kind":     {Question{"crystal_ball", coat, nil}, fault.Choice, "kind"},
		"place":    {Question{Comb, "part.thickness_m", nil}, fault.Choice, "path"},
		"missing":  {Question{Sprayed, coat, map[string]float64{"area_m2": 1, "overspray": 0}}, fault.Missing, "inputs.mass_kg"},
		"range":    {Question{Sprayed, coat, map[string]float64{"mass_kg": 1, "area_m2": 0, "overspray": 0}}, fault.Range, "inputs.area_m2"},
		"NaN":      {Question{Sprayed, coat, map[string]float64{"mass_kg": 1, "area_m2": math.NaN(), "overspray": 0}}, fault.Range, "inputs.area_m2"},
		"lighter":  {Question{Dried, "film.adhesive.solids_fraction", map[string]float64{"dish_kg": 2e-3, "wet_kg": 3e-3, "dry_kg": 1e-3}}, fault.Conflict, "inputs.dry_kg"},
		"no wet":   {Question{Dried, "film.adhesive.solids_fraction", map[string]float64{"dish_kg": 3e-3, "wet_kg": 3e-3, "dry_kg": 3e-3}}, fault.Conflict, "inputs.wet_kg"},
		"warm":     {Question{WetBulb, "workshop.air[].humidity.relative_humidity", map[string]float64{"temperature_K": 290, "wet_bulb_K": 300, "pressure_Pa": 1e5}}, fault.Conflict, "inputs.wet_bulb_K"},
		"too dry":  {Question{WetBulb, "workshop.air[].humidity.relative_humidity", map[string]float64{"temperature_K": 320, "wet_bulb_K": 274, "pressure_Pa": 1e5}}, fault.Conflict, "inputs.wet_bulb_K"},
		"too full": {Question{AddOn, "pile.porosity", map[string]float64{"add_on_kg_per_m2": 1.9, "length_m": 1e-3, "fibre_density_kg_per_m3": 1140}}, fault.Conflict, "inputs.add_on_kg_per_m2"},
	} {
		_, err := Work(c.q)
		var list fault.List
		var one *fault.Fault
		if errors.As(err, &list) && len(list) > 0 {
			one = list[0]
		} else {
			errors.As(err, &one)
		}
		if one == nil || one.Code != c.code || one.Path != c.path || one.Advice == "" {
			t.Errorf("%s: %v", what, err)
		}
	}
	if a, err := Work(Question{Sprayed, coat, map[string]float64{"mass_kg": 1, "area_m2": 0.1, "overspray": 0}}); err != nil || !a.Outside {
		t.Errorf("10 kg/m² passes for a coat: %+v, %v", a, err)
	}
}

// Words are on their way, so that they can be said in any language.
func TestWordsAreOnTheirWay(t *testing.T) {
	sample := words.Told("x")[:1]
	for _, h := range Helpers() {
		for _, text := range []string{h.Title, h.Procedure, h.Source, h.Inputs[0].Label} {
			if !strings.HasPrefix(text, sample) {
				t.Errorf("%s: %q", h.Kind, text)
			}
		}
	}
}
