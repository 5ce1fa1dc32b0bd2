package sim

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// multiplied is the worked example with everything that multiplies runs at its end: loads, zones in balance, spots.
func multiplied() job.Job {
	j := job.Demo()
	o := j.StaticOven
	o.Batches, o.BatchInterval = 50, o.Dwell/50
	t := j.Tunnel
	for len(t.Zones) < 12 {
		t.Zones = append(t.Zones, t.Zones[len(t.Zones)-1])
	}
	for i := range t.Zones {
		t.Zones[i].Air = job.NewZoneAir()
	}
	for i := range 8 {
		s := job.NewSpot()
		s.Name = fmt.Sprint("spot ", i)
		j.Part.Spots = append(j.Part.Spots, s)
	}
	return j
}

// spend computes a job and says how much of its budget that took.
func spend(t *testing.T, j *job.Job) (result.Result, int) {
	t.Helper()
	b, err := newBench(j)
	if err != nil {
		t.Fatal(err)
	}
	r, err := b.all(nil)
	if err != nil {
		t.Fatal(err)
	}
	return r, b.budget.taken()
}

// All runs of a job share one budget: however many there are, together they never take more, and an answer that it cut short says
// so at every route that misses something.
func TestAllRunsShareTheBudget(t *testing.T) {
	enough := multiplied()
	if err := job.Validate(enough); err != nil {
		t.Fatal(err)
	}
	whole, took := spend(t, &enough)
	for i := range whole.Routes {
		if !whole.Routes[i].Status.Complete || len(whole.Routes[i].Spots) != 8 {
			t.Errorf("%s is not complete with a budget of %d: %v", whole.Routes[i].Kind, enough.Numerics.StepBudget, whole.Routes[i].Warnings)
		}
	}
	t.Logf("it takes %d steps", took)
	for _, steps := range []int{1000, 3000, took / 4, took / 2, took - 1} {
		j := multiplied()
		j.Numerics.StepBudget = steps
		r, took := spend(t, &j)
		if took > steps {
			t.Errorf("%d steps of %d", took, steps)
		}
		if text, err := json.Marshal(r); err != nil || len(text) == 0 {
			t.Errorf("budget %d: %v", steps, err)
		}
		cut := 0
		for i := range r.Routes {
			rt := &r.Routes[i]
			told := false
			for _, w := range rt.Warnings {
				told = told || strings.Contains(words.English(w.Text), fmt.Sprintf("the budget of %d steps", steps))
			}
			if told == rt.Status.Complete {
				t.Errorf("budget %d: %s is complete (%v) and says %v", steps, rt.Kind, rt.Status.Complete, rt.Warnings)
			}
			if told {
				cut++
			}
			for _, m := range rt.Marks {
				if m.State.FilmTemperature < 200 && m.Name != result.Open {
					t.Errorf("budget %d: %s, %s: a film at %g K", steps, rt.Kind, m.Name, m.State.FilmTemperature)
				}
			}
			if len(rt.Curves.Time) == 0 || rt.Curves.Time[len(rt.Curves.Time)-1] > rt.Stages[len(rt.Stages)-1].End {
				t.Errorf("budget %d: %s has no course", steps, rt.Kind)
			}
		}
		if cut == 0 {
			t.Errorf("budget %d: nothing is missing", steps)
		}
	}
}

// A budget that is not reached changes nothing, whatever it is.
func TestABudgetThatIsEnoughChangesNothing(t *testing.T) {
	j := job.Demo()
	usual, took := spend(t, &j)
	j.Numerics.StepBudget = took + 100
	if tight, again := spend(t, &j); again != took || !reflect.DeepEqual(usual, tight) {
		t.Errorf("%d steps, %d with a budget of %d", took, again, j.Numerics.StepBudget)
	}
}

// No worked example and no kept job takes more than a tenth of the default budget, so that no sensible job comes near it.
func TestUsualJobsAreFarFromTheBudget(t *testing.T) {
	jobs := map[string]job.Job{}
	for _, d := range job.Demos() {
		jobs[d.Job.Name] = d.Job
	}
	files, _ := filepath.Glob("../../testdata/jobs/*.json")
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if j, err := job.Decode(text); err == nil {
			jobs[filepath.Base(f)] = j
		}
	}
	usual := job.Default().Numerics.StepBudget
	for name, j := range jobs {
		j.Numerics.StepBudget = usual
		if _, took := spend(t, &j); took > usual/10 {
			t.Errorf("%s takes %d of %d steps", name, took, usual)
		} else {
			t.Logf("%s: %d", words.English(name), took)
		}
	}
}

// A step on a larger system costs as many as it has more unknowns; on a small one it costs one.
func TestPriceOfAStep(t *testing.T) {
	for _, c := range []struct{ cells, part int }{{8, 2}, {24, 8}, {200, 64}} {
		j := job.Demo()
		j.Numerics.FilmCells, j.Numerics.PartCells = c.cells, c.part
		b, err := newBench(&j)
		if err != nil {
			t.Fatal(err)
		}
		plan, err := planOf(&j, result.Room)
		if err != nil {
			t.Fatal(err)
		}
		var s *film.System = b.system(&plan.Stages[0])
		want := max(fewUnknowns, s.Dim())
		before := b.budget.left
		r := b.newRun(plan.Plan)
		if err := r.follow(); err != nil {
			t.Fatal(err)
		}
		if got := before - b.budget.left; got < (r.stats.Steps+r.stats.Rejected)*want {
			t.Errorf("%d cells: %d steps of %d unknowns cost %d", c.cells, r.stats.Steps+r.stats.Rejected, s.Dim(), got)
		}
	}
}
