package plan

import (
	"math"
	"reflect"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/sim"
)

// routesOf are the routes of a job.
func routesOf(j *job.Job) []result.Kind {
	var kinds []result.Kind
	for _, k := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
		if _, err := sim.Alone(j, k); err == nil {
			kinds = append(kinds, k)
		}
	}
	return kinds
}

// TestPresentChangesNothing: a variable set to its present value leaves the job as it is, and set to another one it changes
// it; what it says of itself is what the fields allow.
func TestPresentChangesNothing(t *testing.T) {
	for _, d := range job.Demos() {
		for _, kind := range routesOf(&d.Job) {
			s := Study{Job: &d.Job, Route: kind}
			for _, v := range Named(&d.Job, kind) {
				same, err := s.At(Trial{{v.ID, v.Present}})
				if err != nil {
					t.Fatal(err)
				}
				if !reflect.DeepEqual(same, d.Job) {
					t.Errorf("%s, %s, %s: the present value changes the job", d.ID, kind, v.ID)
				}
				other, err := s.At(Trial{{v.ID, v.value(v.coordinate(v.Present) + v.Step)}})
				if err != nil {
					t.Fatal(err)
				}
				if reflect.DeepEqual(other, d.Job) {
					t.Errorf("%s, %s, %s: another value changes nothing", d.ID, kind, v.ID)
				}
				if !(v.Low <= v.Present && v.Present <= v.High) || v.Label == "" || v.Help == "" || v.Display.Factor == 0 || v.Step <= 0 {
					t.Errorf("%s, %s: %+v", d.ID, kind, v)
				}
				if low, high := v.around(); !(low < v.Present && v.Present < high) {
					t.Errorf("%s, %s, %s: a picture from %v to %v does not show %v", d.ID, kind, v.ID, low, high, v.Present)
				}
			}
		}
	}
}

// TestVariablesMove: what each compound variable does to the job, by hand.
func TestVariablesMove(t *testing.T) {
	line := job.Demos()[2].Job
	s := Study{Job: &line, Route: result.Tunnel}
	j, err := s.At(Trial{{ZonesInStep, 5}, {TunnelLength, 12}, {Exhaust, 2}})
	if err != nil {
		t.Fatal(err)
	}
	for i, z := range j.Tunnel.Zones {
		was := line.Tunnel.Zones[i]
		if z.Kind == job.Cooling {
			if !reflect.DeepEqual(z, was) {
				t.Errorf("the cooling zone changed: %+v", z)
			}
			continue
		}
		// Twelve metres instead of eight.
		if z.AirTemperature != was.AirTemperature+5 || math.Abs(z.Length/was.Length-1.5) > 1e-12 || z.Air.Exhaust != 2*was.Air.Exhaust || z.Air.MakeUp != 2*was.Air.MakeUp {
			t.Errorf("zone %d: %+v", i, z)
		}
	}

	shop := job.Demos()[1].Job
	s = Study{Job: &shop, Route: result.Room}
	j, err = s.At(Trial{{RoomHumidity, 0.6}, {RoomTemperature, 288.15}})
	if err != nil {
		t.Fatal(err)
	}
	if h := j.Workshop.Air[0].Humidity.RelativeHumidity; h == nil || math.Abs(*h-0.6) > 1e-12 {
		t.Errorf("humidity at spraying: %v", h)
	}
	// Outside 75 % becomes 85 %, and 95 % stops at the 98 % that the field accepts.
	if a, b := *j.Workshop.Space.Outside[0].Humidity.RelativeHumidity, *j.Workshop.Space.Outside[2].Humidity.RelativeHumidity; math.Abs(a-0.85) > 1e-9 || b != 0.98 {
		t.Errorf("outside: %v, %v", a, b)
	}
	if by := j.Workshop.Space.Outside[0].Temperature - shop.Workshop.Space.Outside[0].Temperature; math.Abs(by+5) > 1e-9 {
		t.Errorf("outside warmer by %v K, want -5", by)
	}
}

// TestSprayLater: a part sprayed later sees the same clock.
func TestSprayLater(t *testing.T) {
	demo := job.Demo()
	s := Study{Job: &demo, Route: result.Room}
	const hour = 3600.0
	j, err := s.At(Trial{{SprayLater, 5.5 * hour}})
	if err != nil {
		t.Fatal(err)
	}
	// The demo's night: 20 degC until 3 h, 17 degC at 8 h, 16 degC at 14 h, 20 degC at 16 h. At 5.5 h it stands half way.
	want := []struct{ hours, kelvin, relative float64 }{{0, 291.65, 0.535}, {2.5, 290.15, 0.57}, {8.5, 289.15, 0.60}, {10.5, 293.15, 0.50}}
	if len(j.Workshop.Air) != len(want) {
		t.Fatalf("%d points", len(j.Workshop.Air))
	}
	for i, p := range j.Workshop.Air {
		if math.Abs(p.Time-want[i].hours*hour) > 1e-6 || math.Abs(p.Temperature-want[i].kelvin) > 1e-9 || math.Abs(*p.Humidity.RelativeHumidity-want[i].relative) > 1e-9 {
			t.Errorf("point %d: %v s, %v K, %v", i, p.Time, p.Temperature, *p.Humidity.RelativeHumidity)
		}
	}
	if j.Room.Deadline != demo.Room.Deadline-5.5*hour || j.Tunnel.Deadline != demo.Tunnel.Deadline-5.5*hour {
		t.Errorf("deadlines %v, %v", j.Room.Deadline, j.Tunnel.Deadline)
	}
	if err := job.Validate(j); err != nil {
		t.Error(err)
	}
	// Earlier: the air before the old moment of spraying is that of the moment.
	if j, err = s.At(Trial{{SprayLater, -2 * hour}}); err != nil || j.Workshop.Air[1].Time != 2*hour || j.Workshop.Air[0].Temperature != j.Workshop.Air[1].Temperature {
		t.Errorf("%v, %+v", err, j.Workshop.Air[:2])
	}

	shop := job.Demos()[1].Job
	s = Study{Job: &shop, Route: result.Room}
	for _, c := range []struct{ by, back, up float64 }{{0.5 * hour, 0.5 * hour, 12.5 * hour}, {4 * hour, 0, 9 * hour}, {-hour, 2 * hour, 14 * hour}} {
		if j, err = s.At(Trial{{SprayLater, c.by}}); err != nil {
			t.Fatal(err)
		}
		if h := j.Workshop.Space.Heating; *h.SetBackAt != c.back || *h.ResumeAt != c.up {
			t.Errorf("later by %v s: set back at %v, resumed at %v", c.by, *h.SetBackAt, *h.ResumeAt)
		}
	}
	if j, err = s.At(Trial{{SprayLater, 13.5 * hour}}); err != nil || j.Workshop.Space.Heating.SetBackAt != nil {
		t.Errorf("sprayed after the heating has come back: %v, %+v", err, j.Workshop.Space.Heating)
	}
}
