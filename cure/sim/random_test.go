package sim

import (
	"flag"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/drywright/drywright/cure/job"
)

// Which random jobs TestRandomJobs computes: a part of a long night, or one seed again.
var (
	jobs = flag.Int("jobs", 10000, "how many random jobs are computed")
	from = flag.Uint64("from", 0, "the seed of the first of them")
)

// Random jobs that were once wrong, kept as they were thrown: a seed means another job as soon as jobs have another field.
func TestJobsOnceWrong(t *testing.T) {
	files, err := filepath.Glob("testdata/random/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no jobs: ", err)
	}
	for _, name := range files {
		t.Run(filepath.Base(name), func(t *testing.T) {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			j, err := job.Decode(text)
			if err != nil {
				t.Fatal(err)
			}
			res, err := Run(&j)
			if err == nil {
				err = sane(&res)
			}
			if err != nil {
				t.Error(err)
			}
		})
	}
}

// Random jobs inside the accepted ranges: no panic, no number that is none, no negative water, no mark out of order, no
// open balance, no run over its step budget. Each seed is a job; a wrong one is printed with its seed and its job.
func TestRandomJobs(t *testing.T) {
	count := *jobs
	if testing.Short() {
		count = min(count, 300)
	}
	begun := time.Now()
	var next, wrong, steps, thrown, routes atomic.Int64
	next.Store(-1)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := next.Add(1); int(i) < count; i = next.Add(1) {
				seed := *from + uint64(i)
				d := newDice(seed)
				j := d.throw()
				thrown.Add(int64(d.thrown))
				res, err := Run(&j)
				if err == nil {
					err = sane(&res)
				}
				for k := range res.Routes {
					s := res.Routes[k].Status
					steps.Add(int64(s.Steps + s.Rejected))
				}
				routes.Add(int64(len(res.Routes)))
				if err != nil && wrong.Add(1) <= 5 {
					text, _ := job.Encode(j)
					t.Errorf("seed %d: %v\n%s", seed, err, text)
				}
			}
		})
	}
	wg.Wait()
	t.Logf("%d jobs from seed %d on, %d wrong; %d thrown, %d routes, %d steps, %.0f s", count, *from, wrong.Load(), thrown.Load(), routes.Load(),
		steps.Load(), time.Since(begun).Seconds())
}
