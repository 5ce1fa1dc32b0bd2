package job

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
)

// As TestRefusals, for rooms, ovens, tunnels and films as they are, on a document with every block. A case that wants
// nothing lies just inside a limit whose outside is the case before.
func TestRefusalsOfEveryBlock(t *testing.T) {
	const adhesive, space, oven, zone = "film.adhesive.", "workshop.space.", "static_oven.", "tunnel.zones[0]."
	humid := func(name string, v float64) map[string]any { return map[string]any{name: v} }
	refuses(t, whole(), []refusal{
		{"nothing", spoil{}, ""},

		{"a skin that lets vapour through like air", spoil{adhesive + "transport.skin_vapour_diffusivity_m2_per_s": 2.5e-5},
			"range film.adhesive.transport.skin_vapour_diffusivity_m2_per_s"},
		{"a skin without a diffusivity", spoil{adhesive + "transport.skin_vapour_diffusivity_m2_per_s": 0},
			"range film.adhesive.transport.skin_vapour_diffusivity_m2_per_s"},
		{"no such mechanism", spoil{adhesive + "transport.mechanism": "front"}, "choice film.adhesive.transport.mechanism"},
		{"more than the whole coat", spoil{adhesive + "solids_fraction": 0.6, adhesive + "co_solvent.fraction_of_wet_coat": 0.41},
			"conflict film.adhesive.co_solvent.fraction_of_wet_coat"},
		{"the whole coat", spoil{adhesive + "solids_fraction": 0.5, adhesive + "co_solvent.fraction_of_wet_coat": 0.5}, ""},
		// At closing 0.74 chi has to pass -(ln 0.26 + 0.74)/0.74^2 = 1.1086.
		{"a film that swells open", spoil{adhesive + "sorption.chi": 1.108}, "conflict film.adhesive.sorption.chi"},
		{"a film that all but swells open", spoil{adhesive + "sorption.chi": 1.109}, ""},
		{"GAB that swells open", spoil{adhesive + "sorption.isotherm": "gab", adhesive + "sorption.gab_k": 0.97},
			"conflict film.adhesive.sorption"},
		{"chi of another isotherm", spoil{adhesive + "sorption.isotherm": "gab", adhesive + "sorption.chi": 0.8}, ""},
		{"glass that softens as it cures", spoil{adhesive + "crosslinking.vitrification.tg_cured_K": 263.15},
			"conflict film.adhesive.crosslinking.vitrification.tg_cured_K"},
		// Tg = 263.15 + 50 x 0.5 x 0.95/(1 - 0.5 x 0.95) = 308.4 K at the schedule's 95 %.
		{"a schedule in the glass", spoil{adhesive + "crosslinking.schedule.pairs": []any{
			map[string]any{"temperature_K": 308, "time_s": 86400}}}, "conflict film.adhesive.crosslinking.schedule.pairs"},
		{"a schedule just above the glass", spoil{adhesive + "crosslinking.schedule.pairs": []any{
			map[string]any{"temperature_K": 309, "time_s": 86400}}}, ""},

		{"a spot without a name", spoil{"part.spots[0].name": "  "}, "missing part.spots[0].name"},
		{"two spots of one name", spoil{"part.spots[1].name": " recess "}, "conflict part.spots[1].name"},
		{"nine spots", spoil{"part.spots": repeated(9)}, "limit part.spots"},
		{"a spot with hardly any coat", spoil{"part.spots[0].coat_factor": 0.12}, "conflict part.spots[0].coat_factor"},
		{"a spot drowned in coat", spoil{"film.wet_coat_kg_per_m2": 0.4, "part.spots[1].coat_factor": 2.6},
			"conflict part.spots[1].coat_factor"},
		{"a spot thinner than the layer that keeps fibres out", spoil{"part.spots[1].coat_factor": 0.3, "targets.open_layer_m": 40e-6},
			"conflict part.spots[1].coat_factor"},

		{"a fan that blows parts away", spoil{"workshop.transfer.fan.air_flow_m3_per_s": 31},
			"conflict workshop.transfer.fan.air_flow_m3_per_s"},
		{"a fan that does not blow", spoil{"workshop.transfer.kind": "parallel_flow", "workshop.transfer.fan.cross_section_m2": 30},
			"conflict workshop.transfer.fan.air_flow_m3_per_s"},
		{"a fan instead of a speed", spoil{"workshop.transfer.kind": "parallel_flow", "workshop.transfer.velocity_m_per_s": 0}, ""},
		{"a fan that is not used", spoil{"workshop.transfer.kind": "natural", "workshop.transfer.fan.air_flow_m3_per_s": 31}, ""},
		{"slots without slots", spoil{zone + "transfer.nozzles": nil}, "missing tunnel.zones[0].transfer.nozzles"},
		{"round nozzles without nozzles", spoil{"workshop.transfer.kind": "round_nozzles"}, "missing workshop.transfer.nozzles"},
		{"slots that touch", spoil{zone + "transfer.nozzles.pitch_m": 9.9e-3}, "conflict tunnel.zones[0].transfer.nozzles.pitch_m"},
		{"slots as close as may be", spoil{zone + "transfer.nozzles.pitch_m": 10e-3}, ""},
		{"round nozzles that touch", spoil{oven + "transfer.nozzles.pitch_m": 12e-3}, "conflict static_oven.transfer.nozzles.pitch_m"},
		{"round nozzles as close as may be", spoil{oven + "transfer.nozzles.pitch_m": 12.5e-3}, ""},

		{"outside from the second hour on", spoil{space + "outside[0].time_s": 3600}, "conflict workshop.space.outside[0].time_s"},
		{"outside out of order", spoil{space + "outside[1].time_s": 0}, "conflict workshop.space.outside[1].time_s"},
		{"no outside", spoil{space + "outside": []any{}}, "limit workshop.space.outside"},
		{"97 states of the outside", spoil{space + "outside": repeated(97)}, "limit workshop.space.outside"},
		{"fog outside", spoil{space + "outside[0].humidity": humid("humidity_ratio_kg_per_kg", 0.01)},
			"range workshop.space.outside[0].humidity.humidity_ratio_kg_per_kg"},
		{"frosty fog outside", spoil{space + "outside[1].humidity": humid("humidity_ratio_kg_per_kg", 0.0028)},
			"range workshop.space.outside[1].humidity.humidity_ratio_kg_per_kg"},
		{"dew point above the frosty air", spoil{space + "outside[1].humidity": humid("dew_point_K", 269)},
			"range workshop.space.outside[1].humidity.dew_point_K"},
		{"frosty air of too much vapour", spoil{space + "outside[1].humidity": humid("vapour_density_kg_per_m3", 0.0036)},
			"range workshop.space.outside[1].humidity.vapour_density_kg_per_m3"},
		{"a wet bulb of ice", spoil{space + "outside[1].humidity": humid("wet_bulb_K", 266)},
			"range workshop.space.outside[1].humidity.wet_bulb_K"},
		{"frosty air of a dew point", spoil{space + "outside[1].humidity": humid("dew_point_K", 268)}, ""},
		{"no humidity outside", spoil{space + "outside[1].humidity": map[string]any{}}, "missing workshop.space.outside[1].humidity"},
		{"set back to warmer", spoil{space + "heating.set_back_K": 295.15}, "conflict workshop.space.heating.set_back_K"},
		{"resumed but never set back", spoil{space + "heating.set_back_at_s": nil}, "conflict workshop.space.heating.resume_at_s"},
		{"resumed before set back", spoil{space + "heating.resume_at_s": 7200}, "conflict workshop.space.heating.resume_at_s"},
		{"set back for good", spoil{space + "heating.resume_at_s": nil}, ""},
		{"a dehumidifier that dries nothing", spoil{space + "dehumidifier.set_relative_humidity": 0.8},
			"range workshop.space.dehumidifier.set_relative_humidity"},
		{"a dehumidifier that is a heater", spoil{space + "dehumidifier.power_W": 8000}, "conflict workshop.space.dehumidifier.power_W"},

		{"no load", spoil{oven + "batches": 0}, "range static_oven.batches"},
		{"loads that never meet", spoil{oven + "batch_interval_s": 1800}, "conflict static_oven.batch_interval_s"},
		{"one load, whatever its interval", spoil{oven + "batch_interval_s": 1800, oven + "batches": 1}, ""},
		{"loads through a door that never shuts", spoil{oven + "batch_interval_s": 45}, "conflict static_oven.batch_interval_s"},
		{"a door that never shuts", spoil{oven + "door_open_s": 1800, oven + "batches": 1}, "conflict static_oven.door_open_s"},

		{"carriers that come back to no part", spoil{"part.carrier": nil}, "conflict tunnel.carrier_return_K"},
		{"a zone without air", spoil{zone + "air.exhaust_m3_per_s": 0, zone + "air.make_up_m3_per_s": 0, zone + "air.leak_to_next_m3_per_s": 0,
			"tunnel.entry_leak_m3_per_s": 0}, "conflict tunnel.zones[0].air"},
		{"a zone that breathes through the mouth", spoil{zone + "air.exhaust_m3_per_s": 0, zone + "air.make_up_m3_per_s": 0,
			zone + "air.leak_to_next_m3_per_s": 0}, ""},
		{"the second zone breathes through the first", spoil{"tunnel.zones[1].air": map[string]any{"exhaust_m3_per_s": 0,
			"make_up_m3_per_s": 0}}, ""},
		{"the last zone without air", spoil{"tunnel.exit_leak_m3_per_s": 0, "tunnel.zones[2].air": map[string]any{"exhaust_m3_per_s": 0,
			"make_up_m3_per_s": 0}}, "conflict tunnel.zones[2].air"},
		{"radiators in a cooling zone", spoil{"tunnel.zones[2].infrared": map[string]any{}}, "conflict tunnel.zones[2].infrared"},
		{"radiators on a stacked back", spoil{"part.back": "insulated", zone + "infrared.back_flux_W_per_m2": 100},
			"conflict tunnel.zones[0].infrared.back_flux_W_per_m2"},
		{"radiators that melt everything", spoil{zone + "infrared.flux_W_per_m2": 50e3},
			"conflict tunnel.zones[0].infrared.flux_W_per_m2"},
		{"energy for nothing", spoil{"tariffs.energy_price_per_kWh": 0}, "range tariffs.energy_price_per_kWh"},
		{"a currency of a sentence", spoil{"tariffs.currency": "kilowatts"}, "limit tariffs.currency"},
	})
}

// Every number of the document, set just outside its range, is complained of by its path.
func TestEveryNumberIsHeldToItsRange(t *testing.T) {
	j := whole()
	tab := newTable()
	var paths []string
	var gather func(v any, path string)
	gather = func(v any, path string) {
		switch v := v.(type) {
		case map[string]any:
			for key, value := range v {
				gather(value, under(path, key))
			}
		case []any:
			for i, value := range v {
				gather(value, fmt.Sprintf("%s[%d]", path, i))
			}
		case float64:
			paths = append(paths, path)
		}
	}
	gather(document(t, j), "")
	seen := map[string]bool{}
	for _, path := range paths {
		f := tab.fields[generic(path)]
		if f == nil {
			t.Fatalf("%s has no field", path)
		}
		if path == "version" || seen[f.Path] {
			continue
		}
		seen[f.Path] = true
		for _, outside := range []float64{f.Low - 1e-6*math.Max(1e-6, math.Abs(f.Low)), f.High * (1 + 1e-6)} {
			if f.Integer {
				outside = math.Round(outside + math.Copysign(1, outside-f.Low))
			}
			tree := document(t, j)
			put(tree, path, outside)
			text, err := json.Marshal(tree)
			if err != nil {
				t.Fatal(err)
			}
			_, err = Decode(text)
			if err == nil || !strings.Contains(err.Error(), path+": ") {
				t.Errorf("%s = %g was accepted, or not complained of: %v", path, outside, err)
			}
		}
	}
	if len(seen) < 150 {
		t.Errorf("only %d numbers", len(seen))
	}
}
