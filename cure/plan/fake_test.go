package plan

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// shares is a made-up model: the shares of its criteria at values of a study's variables, by name.
type shares func(at map[string]float64) []float64

// invented are the names that made-up criteria go by, in order.
var invented = []result.CriterionName{result.DryAtExit, result.PartSpared, result.HeatEnough, result.NoDew}

// evaluate is the made-up model as an Evaluate; it counts the settings that it judged.
func (f shares) evaluate(judged *int) Evaluate {
	return func(s Study, trials []Trial) ([]Outcome, error) {
		outcomes := make([]Outcome, len(trials))
		for i, t := range trials {
			*judged++
			at := map[string]float64{}
			for _, x := range t {
				at[x.Variable] = x.Value
			}
			for k, share := range f(at) {
				if math.IsNaN(share) {
					outcomes[i].Refused = "refused"
					break
				}
				outcomes[i].Judgement.Criteria = append(outcomes[i].Judgement.Criteria, result.Criterion{Name: invented[k], Share: share})
			}
		}
		return outcomes, nil
	}
}

// tunnel is the demo's tunnel, whose line speed stands at 0.02 m/s and whose goal is stated, so that no run is needed.
func tunnel(t *testing.T) Study {
	t.Helper()
	j := job.Demo()
	s := Study{Job: &j, Route: result.Tunnel}
	s.Goal = &goalOfTests
	return s
}
