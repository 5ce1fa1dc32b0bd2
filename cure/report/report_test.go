package report

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/result"
)

const (
	minute = 60.0
	hour   = 3600.0
	day    = 86400.0
)

func at(seconds float64) *float64 { return &seconds }

// route builds a route whose marks are reached at the given times; a negative time stands for not reached.
func route(kind result.Kind, deadline float64, times map[result.MarkName]float64, stages ...result.Stage) result.Route {
	r := result.Route{Kind: kind, Stages: stages, Status: result.Status{Complete: true}}
	end := stages[len(stages)-1].End
	for _, name := range result.MarkNames() {
		m := result.Mark{Name: name, State: result.State{Time: end}}
		if v := times[name]; v >= 0 {
			m.Time, m.State.Time = at(v), v
		}
		r.Marks = append(r.Marks, m)
	}
	r.Answer.Deadline = deadline
	if v := times[result.Ready]; v >= 0 {
		r.Answer.Ready, r.Answer.Margin = at(v), at(deadline-v)
	}
	return r
}

func room(deadline, ready, cured float64) result.Route {
	r := route(result.Room, deadline, map[result.MarkName]float64{result.Open: 324, result.Touch: 68 * minute,
		result.TackFree: ready, result.DryThrough: 74 * minute, result.Cured: cured, result.Cool: 0, result.Ready: ready},
		result.Stage{Kind: result.Rest, Start: 0, End: 14 * day})
	r.Answer.Binding = string(result.TackFree)
	return r
}

func tunnel(holds, lacks []result.MarkName) result.Route {
	r := route(result.Tunnel, hour, map[result.MarkName]float64{result.Open: 324, result.Touch: 380, result.TackFree: 500,
		result.DryThrough: 440, result.Cured: 735, result.Cool: 1020, result.Ready: 1020},
		result.Stage{Kind: result.Wait, Start: 0, End: 300}, result.Stage{Name: "Zone 1", Kind: result.HeatedZone, Start: 300, End: 918},
		result.Stage{Kind: result.Rest, Start: 918, End: hour})
	r.Answer.Binding = string(result.Cool)
	r.Exit = &result.Exit{Time: 918, Holds: holds, Lacks: lacks}
	return r
}

func TestSentences(t *testing.T) {
	boiling := result.Risk{Name: "boiling", Severity: result.Danger, Start: 400, Worst: 132e3, Limit: 101325, Unit: "Pa"}
	hot := result.Risk{Name: "part_limit", Severity: result.Danger, Start: 500, Worst: 405.15, Limit: 368.15, Unit: "K"}
	thick := result.Risk{Name: "crack_thickness", Severity: result.Notice, Worst: 3e-4, Limit: 2.5e-4, Unit: "m"}
	risky := func(r result.Route, risks ...result.Risk) result.Route { r.Risks = risks; return r }
	dried := []result.MarkName{result.Touch, result.TackFree, result.DryThrough, result.Cured}
	never := room(14*hour, -1, -1)
	inside := tunnel(append(dried, result.Cool), nil)
	inside.Answer.Ready, inside.Answer.Margin = at(900), at(2700)
	noDeadline := room(0, 8*hour, 8*hour)

	for name, c := range map[string]struct {
		route   result.Route
		want    string
		verdict result.Verdict
	}{
		"room too late": {room(14*hour, 19.2*hour, 10.3*day), "Ready to handle 19.2 h after spraying: 5.2 h too late for " +
			"the deadline of 14 h; tack-free comes last. Cured after 10.3 d.", result.TooLate},
		"room in time": {room(14*hour, 8*hour, 8*hour), "Ready to handle 8 h after spraying, 6 h before the deadline of 14 h; " +
			"tack-free comes last.", result.InTime},
		"room just in time": {room(14*hour, 14*hour, -1), "Ready to handle 14 h after spraying, just at the deadline of 14 h; " +
			"tack-free comes last. Not cured within 14 d.", result.InTime},
		"room never":  {never, "Not ready within 14 d: by then still tacky.", result.NotReached},
		"no deadline": {noDeadline, "Ready to handle 8 h after spraying; tack-free comes last.", result.TooLate},
		"tunnel, warm": {tunnel(dried, []result.MarkName{result.Cool, result.Ready}), "Leaves the tunnel 15.3 min after " +
			"spraying tack-free, dry through and cured, but still too warm to handle. Ready to handle 17 min after spraying, " +
			"43 min before the deadline of 60 min; cooling down comes last.", result.InTime},
		"tunnel, all holds": {tunnel(append(dried, result.Cool, result.Ready), nil), "Leaves the tunnel 15.3 min after " +
			"spraying tack-free, dry through, cured and cool. Ready to handle 17 min after spraying, 43 min before the " +
			"deadline of 60 min; cooling down comes last.", result.InTime},
		"tunnel, ready inside": {inside, "Leaves the tunnel 15.3 min after spraying tack-free, dry through, cured and cool. " +
			"Ready to handle 15 min after spraying (still inside), 45 min before the deadline of 60 min; cooling down comes " +
			"last.", result.InTime},
		"tunnel, wet": {tunnel(nil, result.MarkNames()[1:]), "Leaves the tunnel 15.3 min after spraying still wet at the " +
			"surface, not dry through and still too warm to handle. Ready to handle 17 min after spraying, 43 min before " +
			"the deadline of 60 min; cooling down comes last.", result.InTime},
		"tunnel, dangers": {risky(tunnel(dried, []result.MarkName{result.Cool}), thick, boiling, hot), "Leaves the tunnel " +
			"15.3 min after spraying tack-free, dry through and cured, but still too warm to handle. Ready to handle 17 min " +
			"after spraying, 43 min before the deadline of 60 min; cooling down comes last. But: The film boils under its " +
			"skin (Zone 1), 6.67 min after spraying: its water pushes with 132 kPa, the air with 101 kPa. Expect blisters, " +
			"and doubt every later mark. Further dangers: 1.", result.AtRisk},
	} {
		if name == "no deadline" {
			c.route.Answer.Margin, c.verdict = nil, result.InTime
		}
		r := result.Result{Routes: []result.Route{c.route}}
		english().Fill(&r)
		if got := r.Routes[0].Answer; got.Text != c.want || got.Verdict != c.verdict {
			t.Errorf("%s:\n got %q, %s\nwant %q, %s", name, got.Text, got.Verdict, c.want, c.verdict)
		}
	}
}

func TestFillPlacesMarks(t *testing.T) {
	r := result.Result{Routes: []result.Route{tunnel(nil, nil)}}
	r.Routes[0].Profiles = []result.Profile{{Time: 380, Label: "touch"}, {Time: 500},
		{Label: "exit"}, {Label: "as sprayed"}}
	r.Routes[0].Marks[1].AfterBoiling = true
	english().Fill(&r)
	got := r.Routes[0]
	if got.Title != "Tunnel oven" || got.Exit.Text != "15.3 min" {
		t.Errorf("title %q, exit %q", got.Title, got.Exit.Text)
	}
	touch, cool := got.Marks[1], got.Marks[5]
	if got.Marks[0].Where != "Wait for flocking" {
		t.Errorf("open: %+v", got.Marks[0])
	}
	if touch.Label != "touch-dry" || touch.Text != "6.33 min" || touch.Where != "Zone 1" || touch.Note == "" {
		t.Errorf("touch: %+v", touch)
	}
	if cool.Where != "Workshop" {
		t.Errorf("cool: %+v", cool)
	}
	if got.Profiles[0].Label != "touch-dry" || got.Profiles[1].Label != "8.33 min" ||
		got.Profiles[2].Label != "at the exit" || got.Profiles[3].Label != "as sprayed" {
		t.Errorf("profiles: %+v", got.Profiles)
	}
	before, _ := json.Marshal(r)
	english().Fill(&r)
	if after, _ := json.Marshal(r); string(after) != string(before) {
		t.Error("a second Fill changes the texts")
	}
}

// A time on the border of two stages belongs to the one that begins there; beyond the run there is no stage.
func TestStageAt(t *testing.T) {
	r := tunnel(nil, nil)
	r.Stages[0].Name, r.Stages[2].Name = "wait", "rest"
	for time, want := range map[float64]string{-1: "", 0: "wait", 300: "Zone 1", 917: "Zone 1", 918: "rest", 3600: "rest",
		3601: ""} {
		if got := stageAt(&r, time); got != want {
			t.Errorf("stageAt(%v) = %q, want %q", time, got, want)
		}
	}
}

// A catalogue without a word for something would print an empty cell: every kind, mark and phrase must have its own.
func TestCatalogueIsComplete(t *testing.T) {
	w := english()
	need := func(keys ...string) {
		for _, key := range keys {
			if !w.Has(key) {
				t.Errorf("%s has no words", key)
			}
		}
	}
	for _, name := range result.MarkNames() {
		need("mark.name." + string(name))
	}
	for _, kind := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		need("route.title." + string(kind))
		if kind != result.Room {
			need("route.left." + string(kind))
		}
	}
	for _, stage := range []result.StageKind{result.Wait, result.Oven, result.HeatedZone, result.CoolingZone, result.Rest} {
		need("stage." + string(stage))
	}
	for _, name := range []string{"flocked_late", "boiling", "film_forming", "part_limit", "dew", "skin", "near_saturation", "crack_thickness",
		"heat_short", "flammable"} {
		for _, severity := range []result.Severity{result.Notice, result.Danger} {
			need("risk." + name + "." + string(severity))
			text := w.riskText(result.Risk{Name: name, Severity: severity, Where: "Zone 1", Worst: 2, Limit: 1, Unit: "K"})
			if text == "" || strings.ContainsAny(text, "{}⟦") {
				t.Errorf("risk %s: %q", name, text)
			}
		}
	}
	if got := w.riskText(result.Risk{Name: "new", Worst: 2, Limit: 1}); got != "new: 2, limit 1." {
		t.Errorf("an unknown risk is told as %q", got)
	}
	if got := w.riskText(result.Risk{Name: "near_saturation", Worst: 0.987, Limit: 0.95}); !strings.Contains(got, "98.7 %") {
		t.Errorf("humidity is told as %q", got)
	}
}

func TestTable(t *testing.T) {
	yes := true
	oven := tunnel([]result.MarkName{result.Touch}, []result.MarkName{result.Cool})
	oven.Marks[1].AtExit = &yes
	oven.Balances.Water = result.Balance{In: 0.075, Out: 0.074, Kept: 0.001, Relative: 3e-13}
	oven.Warnings = []result.Warning{{Code: "x", Text: "The air speed lies outside the correlation."}}
	early := room(14*hour, -1, -1)
	early.Status.Complete, early.Curves.Time = false, []float64{0, 3 * hour} // what lies beyond is not known
	r := result.Result{JobName: "Baffle tubes", Routes: []result.Route{early, oven}}
	english().Fill(&r)
	got := english().Table(r)
	for _, want := range []string{"Baffle tubes\n", "Room, overnight\n===============\n", "Tunnel oven\n", "touch-dry",
		"6.33 min", "Zone 1", "yes", "Not everything could be computed; the run ends 3 h", "not reached", "not within 14 d", "Not ready within 3 h",
		"water: in 75 g/m², out 74 g/m², kept 1 g/m², open by 3e-13", "The air speed lies outside", "Exit 15.3 min"} {
		if !strings.Contains(got, want) {
			t.Errorf("the table lacks %q:\n%s", want, got)
		}
	}
	if strings.Contains(got, " \n") || strings.Contains(got, "{") {
		t.Errorf("trailing blanks or an unfilled pattern:\n%s", got)
	}
}

// The columns carry the names of the JSON document, in its order, so that both can be read by one legend.
func TestCSV(t *testing.T) {
	r := result.Result{Routes: []result.Route{{Kind: result.Room, Curves: result.Curves{
		Time: []float64{0, 1.5}, MeanWater: []float64{1, 1.0 / 3}}}}}
	lines := strings.Split(CSV(r), "\n")
	want := []string{"route"}
	curves := reflect.TypeFor[result.Curves]()
	for i := range curves.NumField() {
		want = append(want, curves.Field(i).Tag.Get("json"))
	}
	if lines[0] != strings.Join(want, ",") {
		t.Errorf("head %q, want %q", lines[0], strings.Join(want, ","))
	}
	if len(lines) != 4 || lines[2] != "room,1.5,0.333333333"+strings.Repeat(",", len(want)-3) || lines[3] != "" {
		t.Errorf("lines %q", lines)
	}
}
