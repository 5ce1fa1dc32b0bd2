package cure_test

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/drywright/drywright/cure"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/report"
	"github.com/drywright/drywright/cure/words/languages"
)

// cheap is a job that is computed fast: a coarse grid, a small budget, so that a run that goes wrong ends.
func cheap(j job.Job) job.Job {
	j.Numerics.FilmCells, j.Numerics.PartCells = 10, 3
	j.Numerics.RelativeTolerance, j.Numerics.StepBudget = 1e-4, 6000
	return j
}

// multipliers are what makes many runs of one job.
var multipliers = []func(*job.Job){
	func(j *job.Job) {
		for n := len(j.Part.Spots); n < 8; n++ {
			s := job.NewSpot()
			s.Name = fmt.Sprint("spot ", n)
			j.Part.Spots = append(j.Part.Spots, s)
		}
	},
	func(j *job.Job) {
		if j.StaticOven != nil {
			j.StaticOven.Batches = 50
			j.StaticOven.BatchInterval = j.StaticOven.Dwell / 50
		}
	},
	func(j *job.Job) {
		if t := j.Tunnel; t != nil {
			for len(t.Zones) < 12 {
				t.Zones = append(t.Zones, t.Zones[len(t.Zones)-1])
			}
			for i := range t.Zones {
				t.Zones[i].Air = job.NewZoneAir()
			}
		}
	},
	func(j *job.Job) { j.Workshop.Space = job.NewSpace() },
	func(j *job.Job) { j.Numerics.FilmCells, j.Numerics.PartCells = 200, 64 },
	func(j *job.Job) { j.Numerics.RelativeTolerance = 1e-10 },
	func(j *job.Job) { j.Numerics.StepBudget = 1000 },
}

// FuzzPredict turns numbers of the worked examples to anything that their ranges allow, also against each other. The whole call
// must end: with an answer that can be written down, in numbers that are some, or with faults that say what to do. Three bytes are
// one turn: a number of the job, and where in its range it goes; or one of the multipliers.
func FuzzPredict(f *testing.F) {
	say := report.New(languages.English(), report.SI)
	rules := job.NewRules()
	var numbers []job.Field
	for _, field := range job.Fields() {
		if field.Kind == job.KindNumber && field.Group != "numerics" {
			numbers = append(numbers, field)
		}
	}
	f.Add(uint8(0), []byte{})
	f.Add(uint8(1), []byte{3, 0, 255, 7, 0, 0})
	f.Add(uint8(2), []byte{20, 0, 128, 60, 0, 255, 90, 0, 3})
	f.Add(uint8(3), []byte{100, 0, 255, 120, 0, 255, 140, 0, 0})
	for which := range uint8(4) {
		f.Add(which, everything(len(numbers)))
	}
	demos := job.Demos()
	f.Fuzz(func(t *testing.T, which uint8, turns []byte) {
		j := cheap(job.Clone(demos[int(which)%len(demos)].Job))
		for n := 0; len(turns) >= 3 && n < 12; n++ {
			what, share := int(binary.LittleEndian.Uint16(turns))%(len(numbers)+len(multipliers)), float64(turns[2])/255
			turns = turns[3:]
			if what >= len(numbers) {
				multipliers[what-len(numbers)](&j)
				continue
			}
			field := numbers[what]
			x := field.Low + share*(field.High-field.Low)
			if field.Low > 0 && field.High/field.Low > 100 {
				x = field.Low * math.Pow(field.High/field.Low, share)
			}
			_ = job.SetNumber(&j, first(field.Path), x) // a block that the job lacks stays away
		}
		var list fault.List
		var one *fault.Fault
		if err := rules.Validate(j); err != nil {
			if !errors.As(err, &list) {
				t.Fatalf("refused with %T", err)
			}
			return
		}
		r, err := cure.Predict(say, j)
		if err != nil && !errors.As(err, &list) && !errors.As(err, &one) {
			t.Fatalf("ended with %T: %v", err, err)
		}
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("the answer cannot be written down: %v", err)
		}
		for i := range r.Routes {
			route := &r.Routes[i]
			if !route.Status.Complete && len(route.Warnings) == 0 {
				t.Errorf("%s is not complete and does not say why", route.Kind)
			}
			for _, m := range route.Marks {
				if m.Time != nil && (math.IsNaN(*m.Time) || math.IsInf(*m.Time, 0) || *m.Time < 0) {
					t.Errorf("%s: %s at %g", route.Kind, m.Name, *m.Time)
				}
			}
			if route.Answer.Text == "" {
				t.Errorf("%s has no answer", route.Kind)
			}
			if route.Status.Complete && !(route.Balances.Water.Relative <= 1e-7 && route.Balances.Heat.Relative <= 1e-7) {
				t.Errorf("%s: balances open by %g and %g", route.Kind, route.Balances.Water.Relative, route.Balances.Heat.Relative)
			}
		}
	})
}

// everything are turns that take all multipliers but the fine grid and the narrow tolerance.
func everything(numbers int) []byte {
	var turns []byte
	for k := range 4 {
		turns = binary.LittleEndian.AppendUint16(turns, uint16(numbers+k))
		turns = append(turns, 0)
	}
	return turns
}

// first is the path of the first entry of each list in a pattern.
func first(pattern string) string {
	out := make([]byte, 0, len(pattern)+4)
	for i := range len(pattern) {
		out = append(out, pattern[i])
		if pattern[i] == '[' {
			out = append(out, '0')
		}
	}
	return string(out)
}
