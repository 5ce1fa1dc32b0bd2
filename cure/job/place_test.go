package job

import (
	"errors"
	"reflect"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

func TestCloneSharesNothing(t *testing.T) {
	for _, d := range Demos() {
		was := Clone(&d.Job)
		if !reflect.DeepEqual(was, d.Job) {
			t.Fatalf("%s: the copy differs", d.ID)
		}
		copied := Clone(&d.Job)
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

// TestNumberReachesEveryField: each number of each demo is found at its path, and is the one that the document shows.
func TestNumberReachesEveryField(t *testing.T) {
	j := Demo()
	for _, f := range Fields() {
		if f.Kind != KindNumber || f.Integer || generic(f.Path) != f.Path || containsList(f.Path) {
			continue
		}
		number, found, err := Number(&j, f.Path)
		var one *fault.Fault
		if errors.As(err, &one) && one.Code == fault.Missing {
			continue // an optional block that the demo leaves out
		}
		if err != nil || found.Path != f.Path {
			t.Errorf("%s: %v, entry %q", f.Path, err, found.Path)
			continue
		}
		was := *number
		*number = was + 1
		again, _, _ := Number(&j, f.Path)
		if *again != was+1 {
			t.Errorf("%s: what was written is not read", f.Path)
		}
		*number = was
	}
}

func containsList(path string) bool {
	for _, c := range path {
		if c == '[' {
			return true
		}
	}
	return false
}

func TestNumberRefuses(t *testing.T) {
	j := Demo()
	for path, want := range map[string]fault.Code{
		"":                                  fault.Type,
		"tunnel":                            fault.Type,
		"tunnel.zones":                      fault.Type,
		"tunnel.zones[9].length_m":          fault.Unknown,
		"tunnel.zones[-1].length_m":         fault.Unknown,
		"tunnel.zones[x].length_m":          fault.Unknown,
		"tunnel.zones[0]":                   fault.Type,
		"tunnel.zones[0].name":              fault.Type,
		"tunnel.line_speed_m_per_s.further": fault.Unknown,
		"numerics.film_cells":               fault.Type,
		"workshop.space.volume_m3":          fault.Missing,
		"no.such.thing":                     fault.Unknown,
	} {
		_, _, err := Number(&j, path)
		var one *fault.Fault
		if !errors.As(err, &one) || one.Code != want {
			t.Errorf("%q: %v, want %s", path, err, want)
		}
	}
	number, f, err := Number(&j, "tunnel.zones[1].air_temperature_K")
	if err != nil || *number != j.Tunnel.Zones[1].AirTemperature || f.Label != "Air temperature" {
		t.Errorf("zone temperature: %v, %v, %q", err, number, f.Label)
	}
}

// Every field of the table is found by its own path, as it stands in the table.
func TestFieldAtFindsAll(t *testing.T) {
	for _, f := range Fields() {
		got, ok := FieldAt(f.Path)
		if !ok || !reflect.DeepEqual(got, f) {
			t.Errorf("%s: found %t, %+v", f.Path, ok, got)
		}
	}
	if _, ok := FieldAt("film.colour"); ok {
		t.Error("film.colour is found")
	}
}
