package job

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"github.com/drywright/drywright/cure/air"
)

// A part under infrared, computed here as a slab in layers that gives heat off by radiation and convection at the face,
// never gets hotter than the bound; and where it is close to one of the two bounds the bound is not far off.
func TestFilmUnderInfraredStaysBelowItsBound(t *testing.T) {
	for _, c := range []struct {
		name                 string
		thickness, k, rhoC   float64
		flux, dwell, h, most float64 // most: how far above the truth the bound may lie [K]
	}{
		{"thin steel, short", 1e-3, 50, 7800 * 450, 10e3, 20, 0, 12}, // what it radiates back meanwhile
		{"ABS, short", 3e-3, 0.25, 1040 * 1300, 5e3, 30, 0, 25},
		{"steel, long", 1e-3, 50, 7800 * 450, 4e3, 2000, 20, 1},
		{"wood, long", 20e-3, 0.17, 700 * 1600, 2e3, 10000, 10, 1},
		{"thin steel, between", 1e-3, 50, 7800 * 450, 10e3, 60, 20, 150}, // between the bounds both are far off
	} {
		j := Default()
		j.Pile = nil
		p := &j.Part
		p.Thickness, p.Conductivity, p.Density, p.HeatCapacity = c.thickness, c.k, 1000, c.rhoC/1000
		z := NewZone()
		z.AirTemperature = 353.15
		z.Transfer.Coefficient = c.h
		z.Infrared = NewInfrared()
		z.Infrared.Flux, z.Infrared.Absorptivity = c.flux, 1
		bound := z.hottestFilm(300, c.dwell, &j)
		if truth := radiated(c.thickness, c.k, c.rhoC, c.flux, c.dwell, c.h, j.Film.Adhesive.Emissivity); !(truth < bound && bound < truth+c.most) {
			t.Errorf("%s: %.1f K, bound %.1f K", c.name, truth, bound)
		}
	}
}

// radiated is the face temperature of a slab at 80 degC after a time under a flux, by explicit steps.
func radiated(b, k, rhoC, q, dwell, h, emissivity float64) float64 {
	const around = 353.15
	cells := 20
	if b/k < 1e-3 { // a metal has one temperature, and thin layers of it would take millions of steps
		cells = 2
	}
	dx := b / float64(cells)
	step := 0.4 * dx * dx * rhoC / k
	n := int(math.Ceil(dwell / step))
	step = dwell / float64(n)
	T := make([]float64, cells)
	for i := range T {
		T[i] = around
	}
	next := make([]float64, cells)
	face := around
	for range n {
		face = T[0]
		for range 4 { // the face itself, behind half a cell
			out := h*(face-around) + emissivity*stefanBoltzmann*(math.Pow(face, 4)-math.Pow(around, 4))
			slope := h + 4*emissivity*stefanBoltzmann*math.Pow(face, 3) + 2*k/dx
			face -= (out + 2*k/dx*(face-T[0]) - q) / slope
		}
		in := 2 * k / dx * (face - T[0])
		for i := range T {
			out := 0.0
			if i < cells-1 {
				out = k / dx * (T[i] - T[i+1])
			}
			next[i] = T[i] + step*(in-out)/(rhoC*dx)
			in = out
		}
		T, next = next, T
	}
	return face
}

// The hottest temperature sees everything that warms.
func TestHottestSeesEverySource(t *testing.T) {
	base, _ := hottest(&Job{Workshop: Workshop{Air: []AirPoint{{Temperature: 293}}}})
	if base != 293 {
		t.Fatalf("%g K", base)
	}
	hot := 350.0
	for name, set := range map[string]func(j *Job){
		"part":        func(j *Job) { j.Part.StartTemperature = &hot },
		"room walls":  func(j *Job) { j.Workshop.WallTemperature = &hot },
		"heating":     func(j *Job) { j.Workshop.Space = &Space{HeatBalance: true, Heating: &Heating{SetPoint: hot}} },
		"outside":     func(j *Job) { j.Workshop.Space = &Space{HeatBalance: true, Outside: []AirPoint{{Temperature: hot}}} },
		"oven":        func(j *Job) { j.StaticOven = &StaticOven{SetPoint: hot} },
		"zone":        func(j *Job) { j.Tunnel = &Tunnel{LineSpeed: 1, Zones: []Zone{{AirTemperature: hot}}} },
		"zone's wall": func(j *Job) { j.Tunnel = &Tunnel{LineSpeed: 1, Zones: []Zone{{WallTemperature: &hot}}} },
		"carrier":     func(j *Job) { j.Tunnel = &Tunnel{LineSpeed: 1, CarrierReturn: &hot, Zones: []Zone{{}}} },
	} {
		j := Job{Workshop: Workshop{Air: []AirPoint{{Temperature: 293}}}}
		set(&j)
		if got, _ := hottest(&j); got != hot {
			t.Errorf("%s: %g K", name, got)
		}
	}
	dried := Job{Workshop: Workshop{Air: []AirPoint{{Temperature: 293}}, Space: &Space{HeatBalance: true, Dehumidifier: &Dehumidifier{}}}}
	if got, _ := hottest(&dried); got != 293+driedAirRise {
		t.Errorf("dehumidifier: %g K", got)
	}
}

// Infrared reaches the judgement of the cure: a reaction that is slow at the air's temperature runs away under radiators.
func TestInfraredReachesTheCure(t *testing.T) {
	j := Demo()
	c := j.Film.Adhesive.Crosslinking
	c.Schedule.Pairs = []SchedulePair{}
	c.ActivationEnergy, c.FrequencyFactor = 100e3, 50*math.Exp(100e3/(air.GasConstant*403.15)) // 50 per second in the hottest air
	if err := Validate(j); err != nil {
		t.Fatal(err)
	}
	j.Tunnel.Zones[1].Infrared = NewInfrared()
	list := faultsOf(t, Validate(j))
	if len(list) != 1 || list[0].Path != "film.adhesive.crosslinking.frequency_factor_per_s" {
		t.Errorf("%v", list)
	}
}

// Row LTX-16: a polyurethane network of 1100 to 1200 kg/m3 takes up 8 % in saturated air, which is chi 1.89 to 1.83. A film
// whose paths close just there is refused below that chi and accepted above; 0.01 is the rounding of the row.
func TestChiOfSaturatedUptake(t *testing.T) {
	data, err := os.ReadFile("../../testdata/diffusion/rows.json")
	if err != nil {
		t.Fatal(err)
	}
	var rows []struct {
		ID     string
		Inputs struct {
			Chi     any `json:"chi"`
			Density any `json:"polymer_density_kg_m3"`
		}
		Outputs struct {
			Uptake any `json:"uptake_mass_frac_dry"`
		}
	}
	if err := json.Unmarshal(data, &rows); err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if r.ID != "LTX-16" {
			continue
		}
		for i, v := range r.Inputs.Density.([]any) {
			density, chi := v.(float64), r.Inputs.Chi.([]any)[i].(float64)
			uptake := r.Outputs.Uptake.([]any)[i].(float64)
			j := Default()
			a := &j.Film.Adhesive
			a.PolymerDensity = density
			a.Closing = 1 / (1 + uptake*density/waterDensity)
			a.Sorption.Isotherm = IsothermFloryHuggins
			a.Sorption.Chi = chi - 0.01
			if Validate(j) == nil {
				t.Errorf("%g kg/m3: chi %g takes up more than %g, and was accepted", density, a.Sorption.Chi, uptake)
			}
			a.Sorption.Chi = chi + 0.01
			if err := Validate(j); err != nil {
				t.Errorf("%g kg/m3: chi %g: %v", density, a.Sorption.Chi, err)
			}
		}
		return
	}
	t.Error("no row LTX-16")
}

// Frosty outside air. Saturation over supercooled water at -10 degC is 286.3 Pa (Smithsonian Meteorological Tables, table 94,
// from memory), so that 80 % at 101 325 Pa is 1.409 g/kg in ideal mixing; 0.2 % is what the tables' own formula of 1946 differs.
// Every way of stating the air leads to one state, and at freezing nothing jumps.
func TestFrostyAir(t *testing.T) {
	const p = 101325
	rh := 0.8
	s, err := Humidity{RelativeHumidity: &rh}.State(263.15, p, false)
	if err != nil {
		t.Fatal(err)
	}
	if w, want := s.HumidityRatio(), 0.621945*0.8*286.3/(p-0.8*286.3); math.Abs(w/want-1) > 2e-3 {
		t.Errorf("%g kg/kg, want %g", w, want)
	}
	for _, T := range []float64{263.15, air.LowTemperature - 1e-7} {
		for _, real := range []bool{false, true} {
			s, err := Humidity{RelativeHumidity: &rh}.State(T, p, real)
			if err != nil {
				t.Fatal(err)
			}
			w, dew, density := s.HumidityRatio(), s.DewPoint(), s.VapourDensity()
			for name, h := range map[string]Humidity{"humidity ratio": {HumidityRatio: &w}, "dew point": {DewPoint: &dew},
				"absolute humidity": {VapourDensity: &density}} {
				again, err := h.State(T, p, real)
				if err != nil || math.Abs(again.Y/s.Y-1) > 1e-9 {
					t.Errorf("%s at %g K: %g against %g, %v", name, T, again.Y, s.Y, err)
				}
			}
			if T > 273 {
				above, err := Humidity{RelativeHumidity: &rh}.State(air.LowTemperature, p, real)
				if err != nil || math.Abs(above.Y/s.Y-1) > 1e-7 {
					t.Errorf("at freezing %g jumps to %g, %v", s.Y, above.Y, err)
				}
			}
		}
	}
	wet := 260.0
	if _, err := (Humidity{WetBulb: &wet}).State(263.15, p, true); err == nil {
		t.Error("a wet bulb of ice was accepted")
	}
	if _, err := (Humidity{}).State(263.15, p, true); err == nil {
		t.Error("no humidity was accepted")
	}
}
