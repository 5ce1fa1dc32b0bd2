package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
)

// A multiplier of a stated coefficient is the same as that multiple of it, at the open face and at spots; a stated coefficient at the
// back is left alone. The result says where the number came from while the job still has it.
func TestMultiplier(t *testing.T) {
	j := job.Demo()
	j.Room, j.Tunnel = nil, nil
	back := 8.0
	j.StaticOven.Transfer = job.Transfer{Kind: job.Given, Coefficient: 30, BackCoefficient: &back}
	j.Part.Spots = []job.Spot{{Name: "edge", TransferFactor: 1.4, CoatFactor: 1}}
	straight, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	two := job.Clone(j)
	two.StaticOven.Transfer.Coefficient = 15
	two, err = job.Adopt(two, job.Fit{Name: "Card", Kind: job.WeightFit, Values: []job.FittedValue{{Path: "static_oven.transfer.multiplier", Value: 2}}})
	if err != nil {
		t.Fatal(err)
	}
	doubled, err := Run(&two)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range straight.Routes[0].Marks {
		if a, b := m.Time, doubled.Routes[0].Marks[i].Time; a == nil || b == nil || math.Abs(*a-*b) > 1e-9**a {
			t.Errorf("%s differs", m.Name)
		}
	}
	if a, b := straight.Routes[0].Spots[0].Answer.Ready, doubled.Routes[0].Spots[0].Answer.Ready; math.Abs(*a-*b) > 1e-9**a {
		t.Errorf("the spot is ready after %g and %g s", *a, *b)
	}
	if r := doubled.Rests; len(r) != 1 || r[0].Fit != "Card" || r[0].Value != 2 || len(straight.Rests) != 0 {
		t.Errorf("%+v", r)
	}
	*two.StaticOven.Transfer.Multiplier = 1.7
	if res, err := Run(&two); err != nil || len(res.Rests) != 0 {
		t.Errorf("%v: a number changed by hand rests on %+v", err, res.Rests)
	}
}
