package plan

import (
	"encoding/json"
	"errors"
	"flag"
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// fast is an invented job of about a millisecond: a film without pile or crosslinker on a thin part in one zone with a given
// coefficient, on the coarsest grid that is accepted. At this speed the film is dry at the exit about four times out of five.
func fast() Study {
	j := job.Default()
	j.Pile, j.Film.Adhesive.Crosslinking, j.Room = nil, nil, nil
	j.Numerics.FilmCells, j.Numerics.PartCells, j.Numerics.RelativeTolerance = 8, 2, 1e-4
	j.Tunnel = job.NewTunnel()
	j.Tunnel.Zones[0].Transfer.Kind, j.Tunnel.Zones[0].Transfer.Coefficient = job.Given, 35
	j.Tunnel.LineSpeed, j.Tunnel.EnteredAfter, j.Part.LimitTemperature = 0.0285, 60, 400
	j.Workshop.Transfer.Kind, j.Workshop.Transfer.Coefficient = job.Given, 4
	return Study{Job: &j, Route: result.Tunnel}
}

func fastTolerances() []Tolerance {
	return []Tolerance{{Coat, Normal, 0.05, true}, {ZonesInStep, Uniform, 6, false}, {LineSpeed, Normal, 0.02, true},
		{"tunnel.zones[0].transfer.coefficient_W_per_m2K", Normal, 0.1, true}}
}

var brute = flag.Int("brute", 1000, "pseudo-random samples that the chance of a spread is compared with; the full check takes 100000")

// The chance of a spread against brute force: pseudo-random samples through the same model, drawn by other code. Four errors of
// the difference of both: 6 times in 100000 by chance.
func TestSpreadAgainstBruteForce(t *testing.T) {
	n := *brute
	if testing.Short() {
		n = min(n, 500)
	}
	study, err := fast().Settle(Batch)
	if err != nil {
		t.Fatal(err)
	}
	spread, err := FindSpread(SpreadQuestion{Study: study, Tolerances: fastTolerances()}, Batch, nil)
	if err != nil {
		t.Fatal(err)
	}
	dice, met := rand.New(rand.NewSource(1)), 0
	trials, tunnel := make([]Trial, n), study.Job.Tunnel
	for i := range trials {
		z := dice.NormFloat64
		trials[i] = Trial{{Coat, study.Job.Film.WetCoat * (1 + 0.05*z())}, {ZonesInStep, 12*dice.Float64() - 6},
			{LineSpeed, tunnel.LineSpeed * (1 + 0.02*z())},
			{"tunnel.zones[0].transfer.coefficient_W_per_m2K", tunnel.Zones[0].Transfer.Coefficient * (1 + 0.1*z())}}
	}
	outcomes, err := Batch(study, trials)
	if err != nil {
		t.Fatal(err)
	}
	for i := range outcomes {
		if outcomes[i].Met() {
			met++
		}
	}
	want := float64(met) / float64(n)
	off := math.Sqrt(want * (1 - want) / float64(n))
	t.Logf("chance %.4f ± %.4f (%.4f to %.4f) of %d samples, %d runs; brute force %.5f ± %.5f of %d", spread.Chance.Value, spread.Chance.Error,
		spread.Chance.Low, spread.Chance.High, spread.Samples, spread.Runs, want, off, n)
	if math.Abs(spread.Chance.Value-want) > 4*math.Hypot(spread.Chance.Error, off) {
		t.Errorf("chance %.4f ± %.4f, brute force %.4f ± %.4f", spread.Chance.Value, spread.Chance.Error, want, off)
	}
	if want < 0.5 || want > 0.95 {
		t.Errorf("a chance of %.3f tests little", want)
	}
	if len(spread.Influences) != 4 || spread.Complete != true || spread.Runs != spread.Planned || int64(spread.Runs) != 1+64*6 {
		t.Errorf("%d influences, %d runs of %d", len(spread.Influences), spread.Runs, spread.Planned)
	}
	for _, i := range spread.Influences {
		t.Logf("%s: %.3f ± %.3f, %.3f ± %.3f", i.Variable.ID, i.Share.First, i.Share.FirstError, i.Share.Total, i.Share.TotalError)
	}
}

// What is told on the way is the same spread from fewer replicates, and the same question has the same bytes.
func TestSpreadIsTold(t *testing.T) {
	ask := SpreadQuestion{Study: fast(), Tolerances: fastTolerances(), Rows: 4, Replicates: 4, Seed: 2}
	var told []Spread
	last, err := FindSpread(ask, Batch, func(s Spread) { told = append(told, s) })
	if err != nil {
		t.Fatal(err)
	}
	if len(told) != 3 || told[0].Complete || told[2].Samples != 24 || told[2].Runs != 1+3*4*6 || !last.Complete || last.Samples != 32 {
		t.Errorf("%d told, the last with %d samples", len(told), last.Samples)
	}
	if !slices.IsSorted(last.Shares) || len(last.Shares) != 32 || len(last.Ready)+last.Late != 32 || last.Shares[31] > shareCap {
		t.Errorf("shares %v, %d ready, %d late", last.Shares, len(last.Ready), last.Late)
	}
	again, err := FindSpread(ask, Batch, nil)
	if err != nil {
		t.Fatal(err)
	}
	a, err := json.Marshal(last)
	if err != nil {
		t.Fatal(err)
	}
	if b, err := json.Marshal(again); err != nil || string(a) != string(b) {
		t.Error("the same question has another answer")
	}
}

// The usual tolerances of every example are accepted as they stand, and each is of a variable that the route has.
func TestDefaultTolerances(t *testing.T) {
	for _, d := range job.Demos() {
		for _, kind := range []result.Kind{result.Room, result.StaticOven, result.Tunnel} {
			s, err := Study{Job: &d.Job, Route: kind}.Settle(Batch)
			if err != nil {
				continue
			}
			usual, err := DefaultTolerances(&d.Job, kind)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := toleratedVariables(s, usual); err != nil || len(usual) < 4 || len(usual) > mostTolerances {
				t.Errorf("%s, %s: %d tolerances, %v", d.ID, kind, len(usual), err)
			}
			if usual[0].Variable != Coat {
				t.Errorf("%s, %s: no coat", d.ID, kind)
			}
		}
	}
}

func TestSpreadRefuses(t *testing.T) {
	one := func(t Tolerance) []Tolerance { return []Tolerance{t} }
	for what, c := range map[string]struct {
		ask  SpreadQuestion
		code fault.Code
	}{
		"rows that are no power of two": {SpreadQuestion{Rows: 6}, fault.Range},
		"too few replicates":            {SpreadQuestion{Replicates: 3}, fault.Range},
		"no such variable":              {SpreadQuestion{Tolerances: one(Tolerance{"colour", Normal, 1, false})}, fault.Choice},
		"no such shape":                 {SpreadQuestion{Tolerances: one(Tolerance{Coat, "round", 0.1, true})}, fault.Choice},
		"no width":                      {SpreadQuestion{Tolerances: one(Tolerance{Coat, Normal, 0, true})}, fault.Conflict},
		"a share of nothing":            {SpreadQuestion{Tolerances: one(Tolerance{ZonesInStep, Normal, 0.1, true})}, fault.Conflict},
		"too wide":                      {SpreadQuestion{Tolerances: one(Tolerance{Coat, Normal, 0.5, true})}, fault.Conflict},
		"the same twice": {SpreadQuestion{Tolerances: []Tolerance{{Coat, Normal, 0.1, true}, {Coat, Uniform, 0.1, true}}},
			fault.Conflict},
	} {
		c.ask.Study = fast()
		_, err := FindSpread(c.ask, Batch, nil)
		var f *fault.Fault
		if !errors.As(err, &f) || f.Code != c.code {
			t.Errorf("%s: %v, want %s", what, err, c.code)
		}
	}
}

// Quantiles of the tolerances: the middle is the present value, one deviation of a normal spread lies at 84.13 % (tables of the
// normal distribution), a uniform one ends at its half width.
func TestToleranceShapes(t *testing.T) {
	v := Variable{Present: 10}
	for _, c := range []struct {
		t       Tolerance
		u, want float64
	}{
		{Tolerance{Shape: Normal, Width: 2}, 0.5, 10}, {Tolerance{Shape: Normal, Width: 2}, 0.841344746, 12},
		{Tolerance{Shape: Normal, Width: 0.1, Relative: true}, 0.158655254, 9}, {Tolerance{Shape: Uniform, Width: 3}, 0, 7},
		{Tolerance{Shape: Uniform, Width: 0.3, Relative: true}, 1, 13},
	} {
		if got := c.t.at(&v, c.u); math.Abs(got-c.want) > 1e-7 { // the tables' digits
			t.Errorf("%+v at %g: %g, want %g", c.t, c.u, got, c.want)
		}
	}
	if d := (&Tolerance{Shape: Uniform, Width: 3}).deviation(&v); math.Abs(d-math.Sqrt(3)) > 1e-12 {
		t.Errorf("a uniform spread of ±3 deviates by %g", d)
	}
}

func BenchmarkFastJob(b *testing.B) {
	study, err := fast().Settle(Batch)
	if err != nil {
		b.Fatal(err)
	}
	for range b.N {
		if _, err := Batch(study, []Trial{{}}); err != nil {
			b.Fatal(err)
		}
	}
}
