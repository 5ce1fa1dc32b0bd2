package job

import (
	"reflect"
	"strings"
	"testing"
)

func TestCloneSharesNothing(t *testing.T) {
	for _, d := range Demos() {
		was := Clone(d.Job)
		if !reflect.DeepEqual(was, d.Job) {
			t.Fatalf("%s: the copy differs", d.ID)
		}
		copied := Clone(d.Job)
		for i := range copied.Workshop.Air {
			copied.Workshop.Air[i].Temperature++
			if h := copied.Workshop.Air[i].Humidity.RelativeHumidity; h != nil {
				*h /= 2
			}
		}
		if copied.Tunnel != nil {
			copied.Tunnel.Zones[0].Length++
		}
		if copied.Pile != nil {
			copied.Pile.Length *= 2
		}
		if !reflect.DeepEqual(was, d.Job) {
			t.Errorf("%s: a change of the copy changed the job", d.ID)
		}
	}
}

// TestNumberReachesEveryField: each number of the demo is found at its path, is the one that is written there, and has its
// entry of Fields.
func TestNumberReachesEveryField(t *testing.T) {
	j, rules := Demo(), NewRules()
	found := 0
	for _, f := range Fields() {
		if f.Kind != KindNumber || f.Integer || strings.Contains(f.Path, "[") {
			continue
		}
		was, ok := Number(&j, f.Path)
		if !ok {
			continue // in a block that the demo leaves out, or left open
		}
		found++
		if err := SetNumber(&j, f.Path, was+1); err != nil {
			t.Errorf("%s: %v", f.Path, err)
		}
		if again, _ := Number(&j, f.Path); again != was+1 {
			t.Errorf("%s: what was written is not read", f.Path)
		}
		if at, ok := rules.Field(f.Path); !ok || at.Label != f.Label {
			t.Errorf("%s: entry %q", f.Path, at.Label)
		}
	}
	if found < 60 {
		t.Errorf("%d numbers found", found)
	}
}

func TestNumberFindsNothing(t *testing.T) {
	j := Demo()
	for _, path := range []string{"", "tunnel", "tunnel.zones", "tunnel.zones[9].length_m", "tunnel.zones[-1].length_m", "tunnel.zones[x].length_m",
		"tunnel.zones[0]", "tunnel.zones[0].name", "tunnel.line_speed_m_per_s.further", "numerics.film_cells", "workshop.space.volume_m3", "no.such.thing"} {
		if x, ok := Number(&j, path); ok {
			t.Errorf("%q: %v", path, x)
		}
		if SetNumber(&j, path, 1) == nil {
			t.Errorf("%q can be written", path)
		}
	}
	if x, ok := Number(&j, "tunnel.zones[1].air_temperature_K"); !ok || x != j.Tunnel.Zones[1].AirTemperature {
		t.Errorf("zone temperature: %v, %v", x, ok)
	}
}
