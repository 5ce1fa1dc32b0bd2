package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// document is a valid document, as a tree to spoil.
func document(t *testing.T, j Job) map[string]any {
	t.Helper()
	text, err := Encode(j)
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	return tree
}

func faultsOf(t *testing.T, err error) fault.List {
	t.Helper()
	var list fault.List
	if err != nil && !errors.As(err, &list) {
		t.Fatalf("error of type %T, not fault.List: %v", err, err)
	}
	return list
}

func TestRoundTrip(t *testing.T) {
	twoFaced := Demo()
	twoFaced.Part.Back, twoFaced.Film.Adhesive.Crosslinking, twoFaced.Pile = BackCoated, nil, nil
	carried := Demo()
	carried.Part.Carrier = NewCarrier()
	carried.Film.Adhesive.Crosslinking.Schedule.Pairs = []SchedulePair{}
	carried.Film.Adhesive.Crosslinking.Autocatalysis = NewAutocatalysis()
	carried.Film.Adhesive.Crosslinking.HinderingWater = nil
	carried.Name = "Grüße, <b> & \u2028 \"quoted\""
	for name, j := range map[string]Job{"default": Default(), "demo": Demo(), "two-faced": twoFaced,
		"carried": carried, "whole": whole()} {
		text, err := Encode(j)
		if err != nil {
			t.Fatal(name, err)
		}
		back, err := Decode(text)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if !reflect.DeepEqual(j, back) {
			t.Errorf("%s came back changed", name)
		}
		again, _ := Encode(back)
		if !bytes.Equal(text, again) {
			t.Errorf("%s: the text came back changed", name)
		}
	}
}

func TestAbsentMeansDefault(t *testing.T) {
	j, err := Decode([]byte(`{"version": 1}`))
	if err != nil || !reflect.DeepEqual(j, Default()) {
		t.Fatalf("an empty job is not the default: %v", err)
	}
	j, err = Decode([]byte("\ufeff" +
		`{"version": 1, "static_oven": {}, "tunnel": {"zones": [{}, {"kind": "cooling", "length_m": 2}]},
		"pile": null, "part": {"carrier": {"mass_kg_per_m2": 2}, "start_temperature_K": 300},
		"film": {"adhesive": {"crosslinking": {"hindering_water_kg_per_kg": null, "schedule": {"pairs": []}}}}}`))
	if err != nil {
		t.Fatal(err)
	}
	want := Default()
	want.StaticOven, want.Tunnel, want.Pile, want.Part.Carrier = NewStaticOven(), NewTunnel(), nil, NewCarrier()
	want.Part.Carrier.Mass = 2
	start := 300.0
	want.Part.StartTemperature = &start
	cold := NewZone()
	cold.Kind, cold.Length = Cooling, 2
	want.Tunnel.Zones = []Zone{NewZone(), cold}
	want.Film.Adhesive.Crosslinking.HinderingWater = nil
	want.Film.Adhesive.Crosslinking.Schedule.Pairs = []SchedulePair{}
	if !reflect.DeepEqual(j, want) {
		got, _ := Encode(j)
		expected, _ := Encode(want)
		t.Errorf("got\n%s\nwant\n%s", got, expected)
	}
}

// A humidity that is given in another way puts the default way out.
func TestHumidityIsOneOfFive(t *testing.T) {
	j, err := Decode([]byte(`{"version": 1, "workshop": {"air": [{"humidity": {"dew_point_K": 283.15}}]}}`))
	if err != nil {
		t.Fatal(err)
	}
	h := j.Workshop.Air[0].Humidity
	if h.RelativeHumidity != nil || h.DewPoint == nil || *h.DewPoint != 283.15 {
		t.Errorf("humidity %+v", h)
	}
}

// Text that is not JSON: one fault, with its place counted by hand.
func TestSyntaxFaults(t *testing.T) {
	for text, place := range map[string]string{
		"":                                     "line 1, column 1:",
		"  \n ":                                "line 1, column 1:",
		"{\"version\": 1,}":                    "line 1, column 15:",
		"{\n  \"version\": 1\n  \"name\": 2}":  "line 3, column 3:",
		"{\"name\": \"Grüße\", \"version\" 1}": "line 1, column 29:",
		"{\"version\": 1":                      "line 1, column 14:",
		"{\"version\": 1} x":                   "line 1, column 16:",
		"{\"version\": NaN}":                   "line 1, column 13:",
		"{\"name\": \"a\xffb\"}":               "line 1, column 12:",
		"[" + strings.Repeat("[", 20) + strings.Repeat("]", 20) + "]": "line 1, column 18:",
	} {
		_, err := Decode([]byte(text))
		list := faultsOf(t, err)
		if len(list) != 1 || list[0].Code != fault.Syntax || !strings.HasPrefix(english(list[0].Got), place) {
			t.Errorf("%.40q: got %v, want %s", text, err, place)
		}
	}
	_, err := Decode(bytes.Repeat([]byte(" "), maxBytes+1))
	if list := faultsOf(t, err); len(list) != 1 || list[0].Code != fault.Limit {
		t.Errorf("a document too large: %v", err)
	}
}

// A refused number does not refuse others with it, and a flood of faults is cut short.
func TestFaultsAreBounded(t *testing.T) {
	var b strings.Builder
	b.WriteString(`{"version": 1`)
	for i := range 5000 {
		b.WriteString(`, "x` + strings.Repeat("y", i%7) + `": 1`)
	}
	b.WriteString("}")
	_, err := Decode([]byte(b.String()))
	list := faultsOf(t, err)
	if len(list) != maxFaults+1 || list[maxFaults].Code != fault.Limit {
		t.Errorf("%d faults, the last %v", len(list), list[len(list)-1])
	}
}

// Validate refuses what no document can hold.
func TestValidateGoValues(t *testing.T) {
	j := Default()
	j.Film.WetCoat = math.NaN()
	j.Part.Thickness = math.Inf(1)
	j.Name = "\xff"
	j.Version = 0
	j.Workshop.Air = nil
	j.Numerics.FilmCells = -3
	list := faultsOf(t, Validate(j))
	want := map[string]fault.Code{"film.wet_coat_kg_per_m2": fault.Range, "part.thickness_m": fault.Range,
		"name":    fault.Type,
		"version": fault.Range, "workshop.air": fault.Limit, "numerics.film_cells": fault.Range}
	for _, f := range list {
		if want[f.Path] != f.Code {
			t.Errorf("unexpected: %v", f)
		}
		delete(want, f.Path)
	}
	for path := range want {
		t.Errorf("%s was accepted", path)
	}
	if _, err := Encode(j); err == nil {
		t.Error("NaN was encoded")
	}
}

// FuzzDecode: nothing panics, and what is accepted validates and comes back as it is.
func FuzzDecode(f *testing.F) {
	demo, err := Encode(Demo())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(demo)
	all, err := Encode(whole())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(all)
	for _, seed := range []string{`{"version":1}`, `{"version":2}`, `null`, `[]`,
		`{"version":1,"tunnel":{"zones":[{}]}}`,
		`{"version":1,"workshop":{"space":{"heat_balance":true,"heating":{"set_back_at_s":1},"outside":[{"temperature_K":250}]}}}`,
		`{"version":1,"part":{"spots":[{},{"name":"Edge"}],"carrier":{}},"tunnel":{"carrier_return_K":300,"zones":[{"infrared":{},"air":{}}]}}`,
		`{"version":1,"static_oven":{"batches":2,"door_open_s":60,"transfer":{"kind":"slot_nozzles","nozzles":{}}},"tariffs":{}}`,
		`{"version":1,"film":{"adhesive":{"co_solvent":{},"transport":{"mechanism":"porous_skin"},"sorption":{"isotherm":"flory_huggins"}}}}`,
		`{"version":1,"workshop":{"air":[{"humidity":{"wet_bulb_K":285}}]}}`, `{"version":1e0,"note":"\ud800"}`,
		`{"version":1,"numerics":{"film_cells":1e300}}`, `{"version":1,"film":{"wet_coat_kg_per_m2":-0}}`} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := Decode(data)
		if err != nil {
			if len(faultsOf(t, err)) == 0 {
				t.Fatal("refused without a fault")
			}
			return
		}
		if err := Validate(j); err != nil {
			t.Fatalf("decoded, but does not validate: %v", err)
		}
		text, err := Encode(j)
		if err != nil {
			t.Fatal(err)
		}
		back, err := Decode(text)
		if err != nil || !reflect.DeepEqual(j, back) {
			t.Fatalf("came back changed: %v", err)
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	text, err := Encode(Demo())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Decode(text); err != nil {
			b.Fatal(err)
		}
	}
}
