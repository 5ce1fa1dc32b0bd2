package plan

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// told is the demo with a fit of three numbers that hang together.
func told() job.Job {
	j := job.Demo()
	multiplier := 0.8
	j.Workshop.Transfer.Multiplier = &multiplier
	const dry, closing = "film.adhesive.dry_diffusivity_at_25C_m2_per_s", "film.adhesive.closing_fraction"
	const room = "workshop.transfer.multiplier"
	d, _ := job.Number(&j, dry)
	c, _ := job.Number(&j, closing)
	j.Fits = []job.Fit{{Name: "coupon", Kind: job.WeightFit, Values: []job.FittedValue{
		{Path: room, Value: 0.8, StandardError: 0.05, Logarithmic: true}, {Path: dry, Value: d, StandardError: 0.3, Logarithmic: true},
		{Path: closing, Value: c, StandardError: 0.004}},
		Correlations: []job.FitCorrelation{{First: room, Second: dry, Correlation: -0.8}, {First: closing, Second: dry, Correlation: 0.3}}}}
	return j
}

// TestFittedNumbersVaryTogether: moved along all directions, the numbers have the covariance of the fit.
func TestFittedNumbersVaryTogether(t *testing.T) {
	j := told()
	s := Study{Job: &j, Route: result.Room}
	values := j.Fits[0].Values
	var moves [3][3]float64 // of number i by direction k, in standard errors
	for k, id := range []string{"fit:coupon:1", "fit:coupon:2", "fit:coupon:3"} {
		same, err := s.At(Trial{{id, 0}})
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(same, j) {
			t.Errorf("%s: nothing changes the job", id)
		}
		at, err := s.At(Trial{{id, 1}})
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range values {
			now, _ := job.Number(&at, v.Path)
			by := now - v.Value
			if v.Logarithmic {
				by = math.Log(now / v.Value)
			}
			moves[i][k] = by / v.StandardError
		}
	}
	want := [3][3]float64{{1, -0.8, 0}, {-0.8, 1, 0.3}, {0, 0.3, 1}}
	for a := range 3 {
		for b := range 3 {
			sum := 0.0
			for k := range 3 {
				sum += moves[a][k] * moves[b][k]
			}
			if math.Abs(sum-want[a][b]) > 1e-9 {
				t.Errorf("correlation of %d and %d: %v, want %v", a, b, sum, want[a][b])
			}
		}
	}
}

// TestFitReplacesTheGuess: where a trial told the multiplier its uncertainty is the trial's, and a number that was changed by hand
// no longer counts.
func TestFitReplacesTheGuess(t *testing.T) {
	j := told()
	names := func(kind result.Kind) string {
		list, err := DefaultTolerances(&j, kind)
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		for _, x := range list {
			b.WriteString(x.Variable + " ")
		}
		return b.String()
	}
	if got := names(result.Room); strings.Contains(got, TransferTimes) || !strings.Contains(got, "fit:coupon:3") {
		t.Errorf("room: %s", got)
	}
	if got := names(result.Tunnel); !strings.Contains(got, TransferTimes) || !strings.Contains(got, "fit:coupon:1") {
		t.Errorf("tunnel: %s", got)
	}
	other := 1.1
	j.Workshop.Transfer.Multiplier = &other
	if got := names(result.Room); !strings.Contains(got, TransferTimes) || strings.Contains(got, "fit:coupon:3") {
		t.Errorf("room, changed by hand: %s", got)
	}
}

// TestTransferTimes multiplies what is there.
func TestTransferTimes(t *testing.T) {
	j := told()
	s := Study{Job: &j, Route: result.Tunnel}
	at, err := s.At(Trial{{TransferTimes, 0.5}})
	if err != nil {
		t.Fatal(err)
	}
	if *at.Workshop.Transfer.Multiplier != 0.4 || *at.Tunnel.Zones[1].Transfer.Multiplier != 0.5 || *j.Workshop.Transfer.Multiplier != 0.8 {
		t.Errorf("%v, %v", *at.Workshop.Transfer.Multiplier, *at.Tunnel.Zones[1].Transfer.Multiplier)
	}
}
