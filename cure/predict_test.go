package cure_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// The contract of the result: three routes for the demo, all seven marks each, every text filled.
func TestDemoGivesThreeAnswers(t *testing.T) {
	r, err := cure.Predict(english(), job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	if r.Version != result.Version || len(r.Routes) != 3 {
		t.Fatalf("version %d, %d routes", r.Version, len(r.Routes))
	}
	for i, kind := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		route := r.Routes[i]
		if route.Kind != kind || route.Answer.Text == "" || route.Title == "" || !route.Status.Complete {
			t.Errorf("route %d: %s, %q, complete %v", i, route.Kind, route.Answer.Text, route.Status.Complete)
		}
		for k, name := range result.MarkNames() {
			if m := route.Marks[k]; m.Name != name || m.Label == "" || m.Text == "" {
				t.Errorf("%s: mark %d is %q (%q)", kind, k, m.Name, m.Text)
			}
		}
		if (route.Exit == nil) != (kind == result.Room) {
			t.Errorf("%s: exit %v", kind, route.Exit)
		}
	}
}

// The same job gives the same bytes.
func TestPredictionIsDeterministic(t *testing.T) {
	var texts [2][]byte
	for i := range texts {
		r, err := cure.Predict(english(), job.Demo())
		if err != nil {
			t.Fatal(err)
		}
		if texts[i], err = json.Marshal(r); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(texts[0], texts[1]) {
		t.Error("two runs of one job differ")
	}
}

// A job is refused as a whole, with every fault.
func TestEveryFaultIsTold(t *testing.T) {
	j := job.Demo()
	j.Film.WetCoat = 50
	j.Part.Thickness = -1
	j.Tunnel.Zones[1].Length = 0
	_, err := cure.Predict(english(), j)
	var list fault.List
	if !errors.As(err, &list) || len(list) != 3 {
		t.Fatalf("got %v", err)
	}
	for i, path := range []string{"film.wet_coat_kg_per_m2", "part.thickness_m", "tunnel.zones[1].length_m"} {
		if list[i].Path != path || list[i].Code != fault.Range || !strings.Contains(list[i].Error(), path) {
			t.Errorf("fault %d: %v", i, list[i])
		}
	}
}

// Common practice, no source: a thicker coat, moister and cooler air dry later; a hotter tunnel dries sooner, a faster
// line leaves less time in it.
func TestAnswersMoveAsAPractitionerExpects(t *testing.T) {
	at := func(change func(*job.Job), route int, mark int) float64 {
		j := job.Demo()
		j.Workshop.Air = j.Workshop.Air[:1]
		change(&j)
		r, err := cure.Predict(english(), j)
		if err != nil {
			t.Fatal(err)
		}
		if m := r.Routes[route].Marks[mark]; m.Time != nil {
			return *m.Time
		}
		t.Fatalf("mark %d of route %d is not reached", mark, route)
		return 0
	}
	const dry = 3
	for _, c := range []struct {
		what   string
		route  int
		change func(*job.Job)
		later  bool
	}{
		{"thicker coat in the room", 0, func(j *job.Job) { j.Film.WetCoat *= 1.5 }, true},
		{"thicker coat in the tunnel", 2, func(j *job.Job) { j.Film.WetCoat *= 1.5 }, true},
		{"moister room", 0, func(j *job.Job) { *j.Workshop.Air[0].Humidity.RelativeHumidity = 0.75 }, true},
		{"colder room", 0, func(j *job.Job) { j.Workshop.Air[0].Temperature -= 6 }, true},
		{"more draught", 0, func(j *job.Job) { j.Workshop.Transfer.Velocity = 0.5 }, false},
		{"hotter oven", 1, func(j *job.Job) { j.StaticOven.SetPoint += 20 }, false},
		{"fuller oven", 1, func(j *job.Job) { j.StaticOven.Chamber.CoatedArea *= 4 }, true},
		{"hotter first zone", 2, func(j *job.Job) { j.Tunnel.Zones[0].AirTemperature += 20 }, false},
		{"moister first zone", 2, func(j *job.Job) { *j.Tunnel.Zones[0].Humidity.HumidityRatio = 0.1 }, true},
		{"heavier part", 2, func(j *job.Job) { j.Part.Thickness *= 2 }, true},
		{"no pile", 0, func(j *job.Job) { j.Pile = nil }, false},
	} {
		before, after := at(func(*job.Job) {}, c.route, dry), at(c.change, c.route, dry)
		if (after > before) != c.later {
			t.Errorf("%s: dry through moves from %.4g to %.4g s", c.what, before, after)
		}
	}
}

func ExamplePredict() {
	r, err := cure.Predict(english(), job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, route := range r.Routes {
		fmt.Printf("%s: %s\n", route.Title, route.Answer.ReadyText)
	}
	// Output:
	// Room, overnight: 22.6 h
	// Static oven: 54.9 min
	// Tunnel oven: 18.2 min
}

// english is how these tests read answers.
func english() report.Speaker { return report.New(languages.English(), report.SI) }

// A page asks for routes one by one, on several processors: what it gets is to the last digit what it gets at once. One
// that the job does not have gives none.
func TestRoutesOneByOne(t *testing.T) {
	for _, d := range job.Demos() {
		whole, err := cure.Predict(english(), d.Job)
		if err != nil {
			t.Fatal(err)
		}
		alone := []result.Route{}
		for _, kind := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
			one, err := cure.Predict(english(), d.Job, kind)
			if err != nil {
				t.Fatal(err)
			}
			alone = append(alone, one.Routes...)
			one.Routes = whole.Routes
			if !reflect.DeepEqual(one, whole) {
				t.Errorf("%s, %s: what is said of the job as a whole differs", d.ID, kind)
			}
		}
		if !reflect.DeepEqual(alone, whole.Routes) {
			t.Errorf("%s: routes one by one differ from those at once", d.ID)
		}
	}
}
