package cure_test

import (
	"fmt"
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// demo returns a worked example by its name.
func demo(t *testing.T, id string) job.Job {
	t.Helper()
	for _, d := range job.Demos() {
		if d.ID == id {
			return d.Job
		}
	}
	t.Fatalf("no example %q", id)
	return job.Job{}
}

// answer computes one route of a job.
func answer(t *testing.T, j job.Job, kind result.Kind) result.Route {
	t.Helper()
	r, err := cure.Predict(english(), j)
	if err != nil {
		t.Fatal(err)
	}
	for _, route := range r.Routes {
		if route.Kind == kind && route.Status.Complete {
			return route
		}
	}
	t.Fatalf("no finished route %s", kind)
	return result.Route{}
}

// ready is when the part may be handled, at its worst spot [s]; a year when never.
func ready(r result.Route) float64 {
	if r.Answer.Ready == nil {
		return 365 * 86400
	}
	return *r.Answer.Ready
}

// dry is the mark "dry through" of the open face.
func dry(r result.Route) float64 {
	if m := r.Marks[3]; m.Time != nil {
		return *m.Time
	}
	return 365 * 86400
}

func hottest(r result.Route) float64 {
	top := 0.0
	for _, T := range r.Curves.FilmTemperature {
		top = max(top, T)
	}
	return top
}

// moistest is the highest humidity of the air around the part.
func moistest(r result.Route) float64 {
	top := 0.0
	for _, a := range r.Accounts {
		top = max(top, a.HumidityRatio)
	}
	return top
}

// heat is the heater of the hardest pressed zone or oven, as a share of what is installed.
func heat(r result.Route) float64 {
	top := 0.0
	for _, a := range r.Accounts {
		if a.Share != nil {
			top = max(top, *a.Share)
		}
	}
	return top
}

// Twenty what-ifs on the worked examples of the three people who ask: each answer moves as a practitioner would expect
// (common practice, no source).
func TestWhatIf(t *testing.T) {
	const up, down = 1, -1
	cases := []struct {
		demo   string
		route  result.Kind
		what   string
		change func(*job.Job)
		of     func(result.Route) float64
		moves  int
	}{
		{"shop", result.Room, "half the racks", func(j *job.Job) { j.Workshop.Space.CoatedArea /= 2 }, ready, down},
		{"shop", result.Room, "twice the racks", func(j *job.Job) { j.Workshop.Space.CoatedArea *= 2 }, ready, up},
		{"shop", result.Room, "a window ajar", func(j *job.Job) { j.Workshop.Space.AirChanges *= 4 }, ready, down},
		{"shop", result.Room, "a thicker coat", func(j *job.Job) { j.Film.WetCoat *= 1.3 }, ready, up},
		{"shop", result.Room, "the heating left on", func(j *job.Job) { j.Workshop.Space.Heating.SetBackAt, j.Workshop.Space.Heating.ResumeAt = nil, nil }, ready, down},
		{"shop", result.Room, "a dehumidifier", func(j *job.Job) {
			j.Workshop.Space.Dehumidifier = &job.Dehumidifier{Capacity: 4e-4, RelativeHumidity: 0.5, Power: 900}
		}, ready, down},
		{"shop", result.Room, "a bigger room", func(j *job.Job) { j.Workshop.Space.Volume *= 3 }, ready, down},
		{"shop", result.Room, "a humid night outside", func(j *job.Job) {
			for i := range j.Workshop.Space.Outside {
				p := &j.Workshop.Space.Outside[i]
				p.Temperature += 9
			}
		}, moistest, up},
		{"sleeves", result.StaticOven, "a hotter oven", func(j *job.Job) { j.StaticOven.SetPoint += 20 }, dry, down},
		{"sleeves", result.StaticOven, "a hotter oven", func(j *job.Job) { j.StaticOven.SetPoint += 20 }, hottest, up},
		{"sleeves", result.StaticOven, "a fuller oven", func(j *job.Job) { j.StaticOven.Chamber.CoatedArea *= 5 }, dry, up},
		{"sleeves", result.StaticOven, "a fuller oven whose air gets moist", func(j *job.Job) {
			j.StaticOven.Chamber.CoatedArea *= 5
			j.StaticOven.Chamber.VapourBalance = true
		}, moistest, up},
		{"sleeves", result.StaticOven, "a stronger heater under a heavy load", func(j *job.Job) {
			j.StaticOven.Chamber.HeaterPower *= 3
		}, dry, down},
		{"line", result.Tunnel, "a hotter first zone", func(j *job.Job) { j.Tunnel.Zones[0].AirTemperature += 8 }, dry, down},
		{"line", result.Tunnel, "a heavier part", func(j *job.Job) { j.Part.Thickness *= 1.5 }, dry, up},
		{"line", result.Tunnel, "more parts on the line", func(j *job.Job) { j.Tunnel.CoatedPerLength *= 1.3 }, moistest, up},
		{"line", result.Tunnel, "more parts on the line", func(j *job.Job) { j.Tunnel.CoatedPerLength *= 1.3 }, heat, up},
		{"line", result.Tunnel, "less exhaust", func(j *job.Job) {
			for i := range j.Tunnel.Zones {
				if a := j.Tunnel.Zones[i].Air; a != nil {
					a.Exhaust *= 0.6
					a.MakeUp *= 0.6
				}
			}
		}, moistest, up},
		{"faster", result.Tunnel, "back to the old speed", func(j *job.Job) { j.Tunnel.LineSpeed /= 1.2 }, heat, down},
		{"faster", result.Tunnel, "another metre of curing zone", func(j *job.Job) { j.Tunnel.Zones[1].Length++ }, ready, down},
	}
	before := map[string]result.Route{}
	for _, c := range cases {
		key := c.demo + string(c.route)
		if _, known := before[key]; !known {
			before[key] = answer(t, demo(t, c.demo), c.route)
		}
		j := demo(t, c.demo)
		c.change(&j)
		old, now := c.of(before[key]), c.of(answer(t, j, c.route))
		line := fmt.Sprintf("%-7s %-40s %10.4g -> %10.4g", c.demo, c.what, old, now)
		t.Log(line)
		if (now > old) != (c.moves == up) || now == old {
			t.Error(line)
		}
	}
}

// The three questions get their answers.
func TestThreeQuestions(t *testing.T) {
	shop := answer(t, demo(t, "shop"), result.Room)
	if shop.Answer.Verdict != result.TooLate {
		t.Errorf("can we brush at seven? %s", shop.Answer.Text)
	}
	line := answer(t, demo(t, "line"), result.Tunnel)
	if line.Answer.Verdict != result.InTime || len(line.Limits) == 0 {
		t.Errorf("which settings? %s", line.Answer.Text)
	}
	faster := answer(t, demo(t, "faster"), result.Tunnel)
	if faster.Answer.Verdict == result.InTime || len(faster.Limits) == 0 || faster.Limits[0].Share < 0.95 {
		t.Errorf("does it carry a fifth more? %s", faster.Answer.Text)
	}
	t.Log(shop.Answer.Text)
	t.Log(line.Answer.Text)
	t.Log(faster.Answer.Text)
}
