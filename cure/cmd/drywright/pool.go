package main

import (
	"runtime"
	"sync"
	"sync/atomic"

	"github.com/drywright/drywright/cure/plan"
)

// pool judges settings on all processors. It counts what it has judged, for the progress that is shown.
type pool struct {
	workers int
	judged  atomic.Int64
	ended   func() error // why a sweep is to stop; nil while it goes on
	told    func(judged int64)
}

func (p *program) newPool(told func(int64)) *pool {
	return &pool{workers: runtime.GOMAXPROCS(0), ended: p.ctx.Err, told: told}
}

// evaluate is a plan.Evaluate.
func (p *pool) evaluate(s plan.Study, trials []plan.Trial) ([]plan.Outcome, error) {
	outcomes, errs := make([]plan.Outcome, len(trials)), make([]error, len(trials))
	var next atomic.Int64
	var crew sync.WaitGroup
	for range min(p.workers, len(trials)) {
		crew.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(trials); i = int(next.Add(1)) - 1 {
				if errs[i] = p.ended(); errs[i] != nil {
					return
				}
				one, err := plan.Batch(s, trials[i:i+1])
				if errs[i] = err; err == nil {
					outcomes[i] = one[0]
				}
				p.told(p.judged.Add(1))
			}
		})
	}
	crew.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return outcomes, nil
}
