package job

import (
	"bytes"
	"encoding/json"
	"github.com/drywright/drywright/cure/words"
	"os"
	"reflect"
	"testing"
)

// whole is a job with every optional block and every choice other than the default that may stand beside the others. The
// numbers are invented; most are the defaults of what is offered.
func whole() Job {
	j := Demo()
	for i := range j.Tunnel.Zones {
		j.Tunnel.Zones[i].Name = words.English(j.Tunnel.Zones[i].Name)
	}
	j.Name, j.Note = "Third golden document of version 1", "Invented. Every block that a job can have, except autocatalysis beside a schedule."
	j.Numerics.RelativeTolerance = 1e-5 // the default was that
	a := &j.Film.Adhesive
	a.Transport.Mechanism, a.Transport.Reason = PorousSkin, "Hard, filled particles."
	a.CoSolvent = NewCoSolvent()
	a.Sorption.Isotherm, a.Sorption.Chi, a.Sorption.HeatOfSorption = IsothermFloryHuggins, 2.2, 120e3
	a.Crosslinking.Vitrification = NewVitrification()
	j.Pile.Regain = 0.0425
	j.Part.Carrier = NewCarrier()
	edge := Spot{Name: "Edge", TransferFactor: 1.6, CoatFactor: 0.9}
	one := 0.04
	j.Part.CoatedArea = &one
	j.Part.Spots = []Spot{NewSpot(), edge}

	s := NewSpace()
	s.HeatBalance = true
	frost := NewAirPoint()
	frost.Time, frost.Temperature = 6*hour, 268.15
	s.Outside = append(s.Outside, frost)
	s.Heating, s.Dehumidifier = NewHeating(), NewDehumidifier()
	down, up := 2*hour, 13*hour
	s.Heating.SetBackAt, s.Heating.ResumeAt = &down, &up
	j.Workshop.Space = s
	j.Workshop.Transfer.Fan = NewFan()

	o := j.StaticOven
	o.Transfer.Kind, o.Transfer.Nozzles = RoundNozzles, NewNozzles()
	o.Batches, o.BatchInterval, o.DoorOpen = 3, 6*minute, 45
	o.Chamber.VapourBalance = true

	t := j.Tunnel
	warm, before := 313.15, 150.0
	t.CarrierReturn, t.EntryLeak, t.ExitLeak = &warm, 0.02, 0.01
	first := &t.Zones[0]
	first.Infrared, first.Air = NewInfrared(), NewZoneAir()
	first.Transfer.Kind, first.Transfer.Nozzles = SlotNozzles, NewNozzles()
	first.Transfer.Nozzles.Pressure = &before
	first.Air.LeakToNext, first.Air.HeaterPower = -0.05, 40e3
	j.Tariffs = NewTariffs()
	faster, low, high := 1.3, 1.2, 1.45
	t.Zones[0].Transfer.Multiplier = &faster
	j.Fits = []Fit{{Name: "Recorder of May", Kind: RecorderFit, Date: "2026-05-12", Data: "line 2.csv", Digest: "cbf29ce484222325", Points: 211,
		Note:         "Invented.",
		Values:       []FittedValue{{Path: "tunnel.zones[0].transfer.multiplier", Value: faster, Low: &low, High: &high, StandardError: 0.05, Logarithmic: true}},
		Correlations: []FitCorrelation{{First: "tunnel.zones[0].transfer.multiplier", Second: "tunnel.zones[1].transfer.multiplier", Correlation: -0.2}},
		Before:       []FitBefore{{Path: "tunnel.zones[0].transfer.multiplier", JSON: "null"}}}}
	return j
}

// priced is the job with its costs too.
func priced() Job {
	j := whole()
	j.Name, j.Note = "Fourth golden document of version 1", "Invented. Every block that a job can have, except autocatalysis beside a schedule."
	wage, floor, rack, work, persons, area, racks, price := 35.0, 90.0, 350.0, 1200.0, 0.5, 40.0, 12.0, 24e3
	j.Costs = NewCosts()
	c := j.Costs
	c.Wage, c.FloorPrice, c.RackPrice = &wage, &floor, &rack
	c.Room.Labour, c.Room.FloorArea, c.Room.Racks = &work, &area, &racks
	c.StaticOven.Persons, c.StaticOven.Investment = &persons, &price
	return j
}

func golden(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile("../../testdata/jobs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Documents of version 1 are read for ever: these are never written again. What they say is what is read, and what they
// do not know of is what an absent field means.
func TestVersion1IsRead(t *testing.T) {
	for _, name := range []string{"v1-full.json", "v1-sparse.json", "v1-rooms.json", "v1-plans.json"} {
		text := golden(t, name)
		j, err := Decode(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		again, err := Encode(j)
		if err != nil {
			t.Fatal(err)
		}
		var given, read any
		if json.Unmarshal(text, &given) != nil || json.Unmarshal(again, &read) != nil {
			t.Fatal(name)
		}
		agree(t, newTable(), name, given, read, "")
	}
}

// The document with every block comes back byte by byte, and means what the Go value means.
func TestWholeDocument(t *testing.T) {
	text := golden(t, "v1-plans.json")
	j, err := Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	if again, err := Encode(j); err != nil || !bytes.Equal(again, text) {
		t.Error("v1-plans.json does not come back as it is")
	}
	if !reflect.DeepEqual(j, priced()) {
		t.Error("v1-plans.json is read as another job")
	}
	leaf, block := map[string]reflect.Type{}, map[string]reflect.Type{}
	patterns(reflect.TypeFor[Job](), "", leaf, block)
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	visit(tree, "", seen)
	for path := range block {
		if !seen[path] && path != "film.adhesive.crosslinking.autocatalysis" && path != "workshop.transfer.nozzles" &&
			path != "static_oven.transfer.fan" && path != "tunnel.zones[].transfer.fan" {
			t.Errorf("the document has no %s", path)
		}
	}
}

// visit notes the patterns of all objects and lists.
func visit(v any, pattern string, seen map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		seen[pattern] = true
		for key, value := range v {
			visit(value, under(pattern, key), seen)
		}
	case []any:
		seen[pattern] = true
		for _, item := range v {
			visit(item, pattern+"[]", seen)
		}
	}
}

// agree demands that read holds what given says, and the defaults where it says nothing.
func agree(t *testing.T, tab table, name string, given, read any, pattern string) {
	t.Helper()
	switch r := read.(type) {
	case map[string]any:
		g, ok := given.(map[string]any)
		if !ok {
			t.Errorf("%s: %s was %v", name, pattern, given)
			return
		}
		for key, value := range r {
			at := under(pattern, key)
			if said, ok := g[key]; ok {
				agree(t, tab, name, said, value, at)
			} else if oneOf := tab.blocks[pattern].OneOf; oneOf && value != nil || !oneOf && !byDefault(tab, value, at) {
				t.Errorf("%s: %s was left out and is read as %v", name, at, value)
			}
			delete(g, key)
		}
		if len(g) > 0 {
			t.Errorf("%s: lost %v below %q", name, g, pattern)
		}
	case []any:
		g, ok := given.([]any)
		if !ok || len(g) != len(r) {
			t.Errorf("%s: %s was %v", name, pattern, given)
			return
		}
		for i := range r {
			agree(t, tab, name, g[i], r[i], pattern+"[]")
		}
	default:
		if given != read {
			t.Errorf("%s: %s was %v and is read as %v", name, pattern, given, read)
		}
	}
}

// byDefault reports whether a JSON value is the default of its pattern.
func byDefault(tab table, v any, pattern string) bool {
	f, b := tab.fields[pattern], tab.blocks[pattern]
	switch v := v.(type) {
	case nil:
		return f != nil && f.Absent || b != nil && b.Absent
	case bool:
		return v == f.On
	case string:
		return v == words.English(f.Text)
	case float64:
		return v == f.Default && !f.Absent
	case []any:
		for _, item := range v {
			if !byDefault(tab, item, pattern+"[]") {
				return false
			}
		}
		return len(v) == b.Items
	case map[string]any:
		if b.Absent {
			return false
		}
		for key, value := range v {
			if !byDefault(tab, value, under(pattern, key)) {
				return false
			}
		}
		return true
	}
	return false
}

// A document that knows nothing of the newer blocks means the same job as one that states their defaults.
func TestNewBlocksChangeNothing(t *testing.T) {
	j := Default()
	for what, holds := range map[string]bool{
		"transport":     j.Film.Adhesive.Transport.Mechanism == LiquidDiffusion,
		"co-solvent":    j.Film.Adhesive.CoSolvent == nil,
		"isotherm":      j.Film.Adhesive.Sorption.Isotherm == IsothermGAB && j.Film.Adhesive.Sorption.HeatOfSorption == 0,
		"vitrification": j.Film.Adhesive.Crosslinking.Vitrification == nil,
		"regain":        j.Pile.Regain == 0,
		"spots":         j.Part.Spots != nil && len(j.Part.Spots) == 0,
		"fan, nozzles":  j.Workshop.Transfer.Fan == nil && j.Workshop.Transfer.Nozzles == nil,
		"space":         j.Workshop.Space == nil,
		"tariffs":       j.Tariffs == nil,
		"costs":         j.Costs == nil,
		"fits":          len(j.Fits) == 0 && j.Workshop.Transfer.Multiplier == nil,
	} {
		if !holds {
			t.Errorf("%s is not off by default", what)
		}
	}
	o, n := NewStaticOven(), NewTunnel()
	if o.Batches != 1 || o.DoorOpen != 0 || o.Chamber.VapourBalance {
		t.Errorf("an oven by default: %+v", o)
	}
	if n.CarrierReturn != nil || n.EntryLeak != 0 || n.ExitLeak != 0 || n.Zones[0].Infrared != nil || n.Zones[0].Air != nil {
		t.Errorf("a tunnel by default: %+v", n)
	}
}
