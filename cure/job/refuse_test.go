package job

import (
	"encoding/json"
	"fmt"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/fault"
)

// put sets the value at a path such as "tunnel.zones[1].kind" in a JSON tree.
func put(tree any, path string, value any) {
	var keys []any
	for _, part := range strings.Split(path, ".") {
		name, rest, indexed := strings.Cut(part, "[")
		keys = append(keys, name)
		if indexed {
			i, _ := strconv.Atoi(strings.TrimSuffix(rest, "]"))
			keys = append(keys, i)
		}
	}
	for _, k := range keys[:len(keys)-1] {
		switch k := k.(type) {
		case string:
			tree = tree.(map[string]any)[k]
		case int:
			tree = tree.([]any)[k]
		}
	}
	switch k := keys[len(keys)-1].(type) {
	case string:
		tree.(map[string]any)[k] = value
	case int:
		tree.([]any)[k] = value
	}
}

type spoil map[string]any

// refusal is a document spoilt in one way, and what must be complained of.
type refusal struct {
	name  string
	spoil spoil
	want  string // "code path; code path", sorted; empty: accepted
}

func repeated(n int) []any {
	list := make([]any, n)
	for i := range list {
		list[i] = map[string]any{}
	}
	return list
}

// Each case spoils the demo's document and names the faults that must come back, all of them and no others.
func TestRefusals(t *testing.T) {
	const adhesive, cure, zone = "film.adhesive.", "film.adhesive.crosslinking.", "tunnel.zones[0]."
	wet := map[string]any{"relative_humidity": 0.5, "dew_point_K": 280.0}
	cases := []refusal{
		{"newer version", spoil{"version": 2, "nonsense": 1}, "version version"},
		{"version 0", spoil{"version": 0}, "version version"},
		{"version in words", spoil{"version": "1"}, "type version"},
		{"unknown at the top", spoil{"nonsense": 1}, "unknown nonsense"},
		{"unknown below", spoil{zone + "lenght_m": 1}, "unknown tunnel.zones[0].lenght_m"},
		{"text for a number", spoil{"film.wet_coat_kg_per_m2": "150 g"}, "type film.wet_coat_kg_per_m2"},
		{"null for a number", spoil{"part.thickness_m": nil}, "type part.thickness_m"},
		{"number for a text", spoil{"name": 7}, "type name"},
		{"number for a switch", spoil{"numerics.enhancement_factor": 1}, "type numerics.enhancement_factor"},
		{"list for an object", spoil{"film": []any{}}, "type film"},
		{"object for a list", spoil{"tunnel.zones": map[string]any{}}, "type tunnel.zones"},
		{"null for a list", spoil{"workshop.air": nil}, "type workshop.air"},
		{"null for a block that must be there", spoil{"workshop": nil}, "type workshop"},
		{"too heavy", spoil{"film.wet_coat_kg_per_m2": 1.5}, "range film.wet_coat_kg_per_m2"},
		{"grams for kilograms", spoil{"film.wet_coat_kg_per_m2": 150}, "range film.wet_coat_kg_per_m2"},
		{"Celsius for kelvin", spoil{"static_oven.set_point_K": 80}, "range static_oven.set_point_K"},
		{"negative time", spoil{"pile.applied_after_s": -1}, "range pile.applied_after_s"},
		{"beyond a float", spoil{"part.density_kg_per_m3": json.Number("1e999")}, "range part.density_kg_per_m3"},
		{"half a cell", spoil{"numerics.film_cells": 24.5}, "type numerics.film_cells"},
		{"beyond an integer", spoil{"numerics.step_budget": json.Number("1e30")}, "range numerics.step_budget"},
		{"no such choice", spoil{"part.back": "open"}, "choice part.back"},
		{"choice in capitals", spoil{zone + "kind": "Heated"}, "choice tunnel.zones[0].kind"},
		{"name too long", spoil{"name": strings.Repeat("n", 201)}, "limit name"},
		{"no zone", spoil{"tunnel.zones": []any{}}, "limit tunnel.zones"},
		{"thirteen zones", spoil{"tunnel.zones": repeated(13)}, "limit tunnel.zones"},
		{"no air", spoil{"workshop.air": []any{}}, "limit workshop.air"},
		{"97 states of the air", spoil{"workshop.air": repeated(97)}, "limit workshop.air"},
		{"no humidity", spoil{"static_oven.humidity": map[string]any{}}, "missing static_oven.humidity"},
		{"two humidities", spoil{"workshop.air[1].humidity": wet}, "conflict workshop.air[1].humidity"},
		{"fog in the workshop", spoil{"workshop.air[0].humidity": map[string]any{"humidity_ratio_kg_per_kg": 0.03}},
			"range workshop.air[0].humidity.humidity_ratio_kg_per_kg"},
		{"dew point above dry bulb", spoil{"workshop.air[0].humidity": map[string]any{"dew_point_K": 294.0}},
			"range workshop.air[0].humidity.dew_point_K"},
		{"wet bulb above dry bulb", spoil{"workshop.air[0].humidity": map[string]any{"wet_bulb_K": 294.0}},
			"range workshop.air[0].humidity.wet_bulb_K"},
		{"wet bulb of air drier than dry", spoil{"workshop.air[0].humidity": map[string]any{"wet_bulb_K": 275.0}},
			"range workshop.air[0].humidity.wet_bulb_K"},
		{"more than steam", spoil{zone + "air_temperature_K": 473.15, zone +
			"humidity": map[string]any{"relative_humidity": 0.5}},
			"range tunnel.zones[0].humidity.relative_humidity"},
		{"hardly any air left", spoil{zone + "humidity": map[string]any{"dew_point_K": 362.0}},
			"conflict tunnel.zones[0].humidity.dew_point_K"},
		{"solids packed when sprayed", spoil{adhesive + "solids_fraction": 0.68},
			"conflict film.adhesive.solids_fraction"},
		{"closing below packing", spoil{adhesive + "closing_fraction": 0.63},
			"conflict film.adhesive.closing_fraction"},
		{"dry film faster than wet", spoil{adhesive + "dry_diffusivity_at_25C_m2_per_s": 1e-9},
			"conflict film.adhesive.dry_diffusivity_at_25C_m2_per_s"},
		{"particles faster than water", spoil{adhesive + "capillary_diffusivity_m2_per_s": 1.1e-11,
			adhesive + "dry_diffusivity_at_25C_m2_per_s": 1e-12},
			"conflict film.adhesive.capillary_diffusivity_m2_per_s"},
		{"a dry film that is never dry", spoil{adhesive + "sorption.gab_k": 0.97}, "conflict film.adhesive.sorption"},
		{"open layer thicker than the film", spoil{"film.wet_coat_kg_per_m2": 0.02, "targets.open_layer_m": 20e-6},
			"conflict targets.open_layer_m"},
		{"schedule slower when hot", spoil{cure + "schedule.pairs": []any{
			map[string]any{"temperature_K": 393.15, "time_s": 300}, map[string]any{"temperature_K": 353.15,
				"time_s": 200}}},
			"conflict film.adhesive.crosslinking.schedule.pairs"},
		{"schedule at one temperature", spoil{cure + "schedule.pairs": []any{
			map[string]any{"temperature_K": 393.15, "time_s": 300}, map[string]any{"temperature_K": 393.15,
				"time_s": 200}}},
			"conflict film.adhesive.crosslinking.schedule.pairs"},
		{"schedule of an impossible energy", spoil{cure + "schedule.pairs": []any{
			map[string]any{"temperature_K": 393.15, "time_s": 300}, map[string]any{"temperature_K": 394.15,
				"time_s": 100}}},
			"conflict film.adhesive.crosslinking.schedule.pairs"},
		{"schedule beside autocatalysis", spoil{cure + "autocatalysis": map[string]any{}},
			"conflict film.adhesive.crosslinking.autocatalysis"},
		{"cure in an instant", spoil{cure + "schedule.pairs": []any{}, cure + "frequency_factor_per_s": 1e15},
			"conflict film.adhesive.crosslinking.frequency_factor_per_s"},
		{"tack after cure", spoil{"targets.tack_conversion": 0.9, "targets.full_conversion": 0.8},
			"conflict targets.tack_conversion"},
		{"air from the second hour on", spoil{"workshop.air[0].time_s": 3600}, "conflict workshop.air[0].time_s"},
		{"air out of order", spoil{"workshop.air[2].time_s": 10800}, "conflict workshop.air[2].time_s"},
		{"flocked in the oven", spoil{"pile.applied_after_s": 1000, "tunnel.entered_after_s": 900},
			"conflict tunnel.entered_after_s"},
		{"flocked after the oven", spoil{"static_oven.loaded_after_s": 120}, "conflict static_oven.loaded_after_s"},
		{"horizon before deadline", spoil{"room.horizon_s": 50000}, "conflict room.horizon_s"},
		{"horizon in the oven", spoil{"static_oven.deadline_s": 1000, "static_oven.horizon_s": 2500},
			"conflict static_oven.horizon_s"},
		{"horizon in the tunnel", spoil{"tunnel.deadline_s": 600, "tunnel.horizon_s": 700},
			"conflict tunnel.horizon_s"},
		{"heating after cooling", spoil{"tunnel.zones[1].kind": "cooling", "tunnel.zones[2].kind": "heated"},
			"conflict tunnel.zones[2].kind"},
		{"nothing heats", spoil{"tunnel.zones": []any{map[string]any{"kind": "cooling"}}}, "conflict tunnel.zones"},
		{"forced flow that stands", spoil{"workshop.transfer.kind": "parallel_flow",
			"workshop.transfer.velocity_m_per_s": 0},
			"conflict workshop.transfer.velocity_m_per_s"},
		{"no route", spoil{"room": nil, "static_oven": nil, "tunnel": nil}, "missing room"},
		{"a carrier on a coated back", spoil{"part.back": "coated", "part.carrier": map[string]any{}},
			"conflict part.carrier"},
		{"a coated back that lies", spoil{"part.back": "coated", "part.orientation": "facing_up"},
			"conflict part.orientation"},
		{"a coated back with a law of its own", spoil{"part.back": "coated", zone +
			"transfer.back_coefficient_W_per_m2K": 5},
			"conflict tunnel.zones[0].transfer.back_coefficient_W_per_m2K"},
		{"fog at loading", spoil{"static_oven.humidity": map[string]any{"dew_point_K": 323.0},
			"static_oven.chamber.air_at_loading_K": 313.0},
			"conflict static_oven.chamber.air_at_loading_K"},
		{"four at once", spoil{"film.wet_coat_kg_per_m2": 0, "part.back": "", "tunnel.zones[2].humidity": wet,
			"room.deadline": 1},
			"choice part.back; conflict tunnel.zones[2].humidity; range film.wet_coat_kg_per_m2; unknown room.deadline"},
		{"a wrong value brings no second complaint", spoil{adhesive + "packing_fraction": 0.9, "room.deadline_s": 1e9,
			"workshop.pressure_Pa": 101},
			"range film.adhesive.packing_fraction; range room.deadline_s; range workshop.pressure_Pa"},
	}
	refuses(t, Demo(), cases)
	if len(cases) < 40 {
		t.Errorf("only %d cases", len(cases))
	}
}

// refuses spoils a job's document by each case and compares the faults.
func refuses(t *testing.T, j Job, cases []refusal) {
	t.Helper()
	for _, c := range cases {
		tree := document(t, j)
		for path, value := range c.spoil {
			put(tree, path, value)
		}
		text, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		_, err = Decode(text)
		var got []string
		for _, f := range faultsOf(t, err) {
			got = append(got, fmt.Sprintf("%s %s", f.Code, f.Path))
			if f.Advice == "" || !strings.HasSuffix(english(f.Advice), ".") || f.Got == "" && f.Code != fault.Missing {
				t.Errorf("%s: %+v does not say what to do", c.name, *f)
			}
		}
		sort.Strings(got)
		if all := strings.Join(got, "; "); all != c.want {
			t.Errorf("%s: got %q, want %q\n%v", c.name, all, c.want, err)
		}
	}
}

// The rest of a document without a version is judged all the same.
func TestMissingVersionAndMore(t *testing.T) {
	_, err := Decode([]byte(`{"room": {"horizon_s": 1}, "film": 3, "film": {}}`))
	want := map[string]fault.Code{"version": fault.Missing, "room.horizon_s": fault.Range}
	var film []fault.Code
	for _, f := range faultsOf(t, err) {
		if f.Path == "film" {
			film = append(film, f.Code)
			continue
		}
		if want[f.Path] != f.Code {
			t.Errorf("unexpected: %v", f)
		}
		delete(want, f.Path)
	}
	if len(want) > 0 || len(film) != 2 || film[0] != fault.Type || film[1] != fault.Conflict {
		t.Errorf("missing %v, film %v: %v", want, film, err)
	}
}

// Messages say the range and guess what a misspelt name meant.
func TestMessages(t *testing.T) {
	_, err := Decode([]byte(`{"version": 1, "film": {"wet_coat_kg_per_m2": 5, "adhesive": {"solid_fraction": 0.5}}, "part": {"thickness": 1},
		"tunnel": {"line_speed": 1}}`))
	for _, want := range []string{
		"film.wet_coat_kg_per_m2: 5 kg/m² is more than 1 kg/m². film.wet_coat_kg_per_m2 must be between 0.02 and 1 kg/m².",
		"film.adhesive.solid_fraction: there is no such field. Did you mean solids_fraction?",
		"part.thickness: there is no such field. Did you mean thickness_m?",
		"tunnel.line_speed: there is no such field. Did you mean line_speed_m_per_s?",
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is missing in\n%v", want, err)
		}
	}
}
