package sim

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// TestJudgeAgreesWithRun: what Judge finds met or failed is what the whole run shows, for the worked examples and for
// settings around them, and the shares of marks are the run's own times.
func TestJudgeAgreesWithRun(t *testing.T) {
	throws := 6
	if testing.Short() {
		throws = 2
	}
	random := rand.New(rand.NewPCG(4, 1))
	vary := func(x *float64, least, most float64) { *x *= least + (most-least)*random.Float64() }
	for _, d := range job.Demos() {
		for k := range throws {
			j := job.Clone(d.Job)
			if k > 0 {
				vary(&j.Film.WetCoat, 0.7, 1.6)
				j.Part.LimitTemperature -= 30 * random.Float64()
				if j.Tunnel != nil {
					vary(&j.Tunnel.LineSpeed, 0.6, 1.8)
				}
				if j.StaticOven != nil {
					vary(&j.StaticOven.Dwell, 0.3, 1.2)
				}
			}
			if job.Validate(j) != nil {
				continue
			}
			agree(t, d.ID, &j)
		}
	}
}

func agree(t *testing.T, name string, j *job.Job) {
	t.Helper()
	whole, err := Run(j)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range whole.Routes {
		g := DefaultGoal(j, r.Kind)
		g.ByDeadline = true
		if r.Kind != result.Room {
			g.AtExit = []result.MarkName{result.Touch, result.TackFree, result.DryThrough, result.Cured, result.Cool}
		}
		m, err := Judge(j, r.Kind, g)
		if err != nil {
			t.Fatal(err)
		}
		for i := range m.Criteria {
			c := &m.Criteria[i]
			want, share := told(&r, c.Name, j)
			if c.Met() != want {
				t.Errorf("%s, %s, %s: share %v, but the run says met %v", name, r.Kind, c.Name, c.Share, want)
			}
			// Where steps end differs between the two, by which a mark moves within the tolerance of integration.
			if share > 0 && math.Abs(c.Share/share-1) > 1e-4 {
				t.Errorf("%s, %s, %s: share %v, from the run %v", name, r.Kind, c.Name, c.Share, share)
			}
		}
	}
}

// told is what a whole run says of a criterion: met or not, and its share where it is that of a time; 0 else.
func told(r *result.Route, name result.CriterionName, j *job.Job) (met bool, share float64) {
	for _, c := range atExit {
		if c.criterion != name {
			continue
		}
		entry := 0.0
		if r.Kind == result.Tunnel {
			entry = j.Tunnel.EnteredAfter
		} else {
			entry = j.StaticOven.LoadedAfter
		}
		met = true
		for _, marks := range allMarks(r) {
			for _, m := range marks {
				if m.Name == c.mark {
					met = met && *m.AtExit
					if m.Time != nil {
						share = math.Max(share, (*m.Time-entry)/(r.Exit.Time-entry))
					}
				}
			}
		}
		if !met {
			share = 0
		}
		return met, share
	}
	if name == result.ReadyInTime {
		met = true
		for _, marks := range allMarks(r) {
			for _, m := range marks {
				if m.Name == result.Ready {
					met = met && m.Time != nil && *m.Time <= r.Answer.Deadline
				}
			}
		}
		return met, 0
	}
	return !endangeredBy(r, string(name)), 0
}

// allMarks are the marks of the open face and of every spot.
func allMarks(r *result.Route) [][]result.Mark {
	all := [][]result.Mark{r.Marks}
	for i := range r.Spots {
		all = append(all, r.Spots[i].Marks)
	}
	return all
}

func endangeredBy(r *result.Route, name string) bool {
	risks := append([]result.Risk{}, r.Risks...)
	for i := range r.Spots {
		risks = append(risks, r.Spots[i].Risks...)
	}
	for _, k := range risks {
		if k.Name == name && k.Severity == result.Danger {
			return true
		}
	}
	return false
}

func TestJudgeNeedsTheRoute(t *testing.T) {
	j := job.Default()
	_, err := Judge(&j, result.Tunnel, Goal{})
	var f *fault.Fault
	if !errors.As(err, &f) || f.Code != fault.Missing {
		t.Errorf("%v", err)
	}
}
