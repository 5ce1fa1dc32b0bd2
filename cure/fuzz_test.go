package cure_test

import (
	"encoding/binary"
	"errors"
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
	j.Numerics.RelativeTolerance, j.Numerics.StepBudget = 1e-4, 3000
	return j
}

// FuzzPredict turns numbers of the worked examples to anything that their ranges allow, also against each other. The whole call
// must end: with an answer in numbers that are some, or with faults that say what to do. Three bytes are one turn: a number
// of the job, and where in its range it goes.
func FuzzPredict(f *testing.F) {
	f.Add(uint8(0), []byte{})
	f.Add(uint8(1), []byte{3, 0, 255, 7, 0, 0})
	f.Add(uint8(2), []byte{20, 0, 128, 60, 0, 255, 90, 0, 3})
	f.Add(uint8(3), []byte{100, 0, 255, 120, 0, 255, 140, 0, 0})
	say := report.New(languages.English(), report.SI)
	rules := job.NewRules()
	var numbers []job.Field
	for _, field := range job.Fields() {
		if field.Kind == job.KindNumber && field.Group != "numerics" {
			numbers = append(numbers, field)
		}
	}
	demos := job.Demos()
	f.Fuzz(func(t *testing.T, which uint8, turns []byte) {
		j := cheap(job.Clone(demos[int(which)%len(demos)].Job))
		for n := 0; len(turns) >= 3 && n < 12; n++ {
			field := numbers[int(binary.LittleEndian.Uint16(turns))%len(numbers)]
			share := float64(turns[2]) / 255
			turns = turns[3:]
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
		for i := range r.Routes {
			route := &r.Routes[i]
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
