package air

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"
)

// at reads a line where it is straight between two points; NaN beyond its ends.
func (l Line) at(T float64) float64 {
	for i := 1; i < len(l.T); i++ {
		if T >= l.T[i-1] && T <= l.T[i] {
			return l.W[i-1] + (l.W[i]-l.W[i-1])*(T-l.T[i-1])/(l.T[i]-l.T[i-1])
		}
	}
	return math.NaN()
}

// A published state: dry bulb with what else is known of it. The sources stand in testdata/moistair/rows.json.
type publishedState struct {
	ID     string         `json:"id"`
	Inputs map[string]any `json:"inputs"`
	Given  map[string]any `json:"outputs"`
}

func publishedStates(t *testing.T) []publishedState {
	t.Helper()
	text, err := os.ReadFile("../../testdata/moistair/rows.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []publishedState
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// TestChartLinesRunThroughPublishedStates draws, for each published state of moist air, the lines that must run through it. A line
// may be off by 0.3 % of the frame's height, as its comment says, on top of what the table of published values allows the
// equations: ASHRAE's printed states are rounded to 5e-5 kg/kg or 0.5 % of humidity, real-gas ones 1 % from ideal mixing.
func TestChartLinesRunThroughPublishedStates(t *testing.T) {
	const celsius = 273.15
	wetBulbs, humidities := 0, 0
	for _, s := range publishedStates(t) {
		value := func(of map[string]any, key string) (float64, bool) { v, ok := of[key].(float64); return v, ok }
		p, ok := value(s.Inputs, "p_Pa")
		T, dry := value(s.Inputs, "T_db_C")
		if !ok || !dry {
			continue
		}
		W, ok := value(s.Inputs, "W")
		if !ok {
			W, ok = value(s.Given, "W")
		}
		if !ok || W == 0 || strings.HasPrefix(s.ID, "PSY-TRE") { // that one is a difference
			continue
		}
		T += celsius
		real := strings.HasPrefix(s.ID, "OVST-RP1485")
		chart := Chart{P: p, Low: celsius, High: T + 5, Most: 1.5 * W, Real: real}
		slack := 0.003*chart.Most + 5e-5
		wet, ok := value(s.Given, "T_wb_C")
		if !ok {
			wet, ok = value(s.Inputs, "T_wb_C")
		}
		if ok {
			chart := chart
			chart.Most = math.Max(chart.Most, 1.01*State{Y: SaturatedFraction(wet+celsius, p, real)}.HumidityRatio())
			if got := chart.WetBulb(wet + celsius).at(T); !(math.Abs(got-W) <= 0.003*chart.Most+5e-5+0.01*W) {
				t.Errorf("%s: the line of wet bulb %g °C has %.5f kg/kg at %g °C, published %.5f", s.ID, wet, got, T-celsius, W)
			}
			wetBulbs++
		}
		if rh, ok := value(s.Given, "RH"); ok {
			if got := chart.RelativeHumidity(rh).at(T); !(math.Abs(got-W) <= slack+0.005/rh*W) {
				t.Errorf("%s: the line of relative humidity %g has %.5f kg/kg at %g °C, published %.5f", s.ID, rh, got, T-celsius, W)
			}
			humidities++
		}
	}
	if wetBulbs < 12 || humidities < 10 {
		t.Errorf("only %d wet bulbs and %d humidities were compared", wetBulbs, humidities)
	}
}

// Saturation against ASHRAE Handbook Fundamentals 2017, chapter 1, table 2, as PSY-SATW-ASHRAE holds it: with the enhancement
// factor within 0.25 % (what real-gas volumes add), and what lies between points of the line.
func TestSaturationLine(t *testing.T) {
	chart := Chart{P: 101325, Low: 273.15, High: 373, Most: 1, Real: true}
	line := chart.RelativeHumidity(1)
	for T, want := range map[float64]float64{25: 0.020173, 50: 0.086863, 85: 0.838105} {
		if got := line.at(T + 273.15); math.Abs(got-want) > 0.0025*want+0.003*chart.Most {
			t.Errorf("%g °C: %.6f, published %.6f", T, got, want)
		}
	}
	if end := line.W[len(line.W)-1]; math.Abs(end-chart.Most) > 1e-6 {
		t.Errorf("the line leaves the frame at %g kg/kg, its top is %g", end, chart.Most)
	}
}

// Every line of any chart lies inside the frame, rises in temperature, and carries what it is named for: the constructors
// of State agree with it at its points.
func TestLinesCarryWhatTheyAreNamedFor(t *testing.T) {
	for _, c := range []Chart{
		{P: 101325, Low: 283.15, High: 323.15, Most: 0.03},
		{P: 80000, Low: 273.15, High: 453.15, Most: 0.2},
		{P: 101325, Low: 278.15, High: 518.15, Most: 0.6, Real: true},
	} {
		for _, rh := range []float64{0.01, 0.1, 0.5, 1} {
			inside(t, c, c.RelativeHumidity(rh))
			for i, T := range c.RelativeHumidity(rh).T {
				s, err := FromRelativeHumidity(T, c.P, rh, c.Real)
				if err != nil {
					t.Fatal(err)
				}
				if got := c.RelativeHumidity(rh).W[i]; math.Abs(got-s.HumidityRatio()) > 1e-6*c.Most {
					t.Errorf("humidity %g at %g K: %g, state %g", rh, T, got, s.HumidityRatio())
				}
			}
		}
		for wet := c.Low; wet < c.High; wet += 10 {
			l := c.WetBulb(wet)
			inside(t, c, l)
			for i, T := range l.T {
				s := state(T, c.P, l.W[i]/(massRatio+l.W[i]), c.Real)
				if l.W[i] > 0 && math.Abs(s.WetBulb()-wet) > 1e-4 {
					t.Errorf("wet bulb %g at %g K: %g", wet, T, s.WetBulb())
				}
			}
		}
	}
}

func inside(t *testing.T, c Chart, l Line) {
	t.Helper()
	for i := range l.T {
		if l.T[i] < c.Low-1e-9 || l.T[i] > c.High+1e-9 || l.W[i] < 0 || l.W[i] > c.Most || i > 0 && l.T[i] <= l.T[i-1] {
			t.Fatalf("point %d (%g K, %g kg/kg) of a line is out of order or out of the frame", i, l.T[i], l.W[i])
		}
	}
}
