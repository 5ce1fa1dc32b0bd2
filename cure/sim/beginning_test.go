package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/film"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/route"
)

// What routes begin with is computed once; their steps and marks are those of routes that were computed alone. The film's search
// starts from where it was last, so that marks may differ by roundings.
func TestRoutesShareTheirBeginning(t *testing.T) {
	j := job.Demo()
	plans, err := route.Plans(&j)
	if err != nil {
		t.Fatal(err)
	}
	b, err := newBench(&j)
	if err != nil {
		t.Fatal(err)
	}
	open, err := b.openTime()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range plans {
		shared, err := b.route(p, open)
		if err != nil {
			t.Fatal(err)
		}
		alone := *b
		alone.first = &beginning{}
		single, err := alone.route(p, open)
		if err != nil {
			t.Fatal(err)
		}
		if shared.Status.Steps != single.Status.Steps || shared.Status.Rejected != single.Status.Rejected {
			t.Errorf("%s: %d steps, %d alone", p.Kind, shared.Status.Steps, single.Status.Steps)
		}
		if shared.Status.Derivatives > single.Status.Derivatives-50 {
			t.Errorf("%s: %d derivatives, %d alone", p.Kind, shared.Status.Derivatives, single.Status.Derivatives)
		}
		a, z := times(&shared), times(&single)
		for _, m := range result.MarkNames() {
			if math.Abs(a[m]-z[m]) > 1e-9*z[m] {
				t.Errorf("%s: %s after %v, alone %v", p.Kind, m, a[m], z[m])
			}
		}
	}
}

// Stages that begin otherwise share nothing.
func TestOtherBeginningsShareNothing(t *testing.T) {
	j := job.Demo()
	stage := func() route.Stage {
		plan, err := route.Wait(&j, 3600)
		if err != nil {
			t.Fatal(err)
		}
		return plan.Stages[0]
	}
	b, first := beginning{}, stage()
	memory := b.memory(&first)
	if same := stage(); memory == nil || b.memory(&same) != memory {
		t.Error("the same stage does not share")
	}
	for name, change := range map[string]func(*route.Stage){
		"later":    func(st *route.Stage) { st.Start = 300 },
		"less air": func(st *route.Stage) { st.Exposure.Front.Factor = 0.5 },
		"a record": func(st *route.Stage) {
			replay, err := route.NewReplay([]float64{0}, []film.Climate{st.Exposure.Around.Climate(0, nil)})
			if err != nil {
				t.Fatal(err)
			}
			st.Exposure.Around = replay
		},
		"with fibre": func(st *route.Stage) {
			plans, err := route.Plans(&j)
			if err != nil {
				t.Fatal(err)
			}
			*st = plans[0].Stages[1]
			st.Start = 0
		},
	} {
		other := stage()
		if change(&other); b.memory(&other) != nil {
			t.Errorf("%s: shares", name)
		}
	}
}
