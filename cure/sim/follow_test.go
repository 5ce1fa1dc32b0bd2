package sim

import (
	"math"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// A coupon follows the same curve as the full run of the same route: the water that the scale misses is what the run's curves say.
// The dense output inside steps is good to the tolerance of 1e-5, here taken ten times.
func TestFollowMeetsTheRun(t *testing.T) {
	j := job.Demo()
	j.Tunnel = nil
	res, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	for _, rt := range res.Routes {
		var times, water []float64
		for i, at := range rt.Curves.Time {
			if i%7 == 0 && at < 7200 && (len(times) == 0 || at > times[len(times)-1]) {
				times, water = append(times, at), append(water, rt.Curves.MeanWater[i])
			}
		}
		s, err := Follow(&j, rt.Kind, times, nil)
		if err != nil {
			t.Fatal(err)
		}
		solids := j.Film.WetCoat * j.Film.Adhesive.Solids
		for i := range s {
			fibre := 0.0
			if p := j.Pile; times[i] > p.AppliedAfter {
				fibre = (1 - p.Porosity) * p.Length * p.FibreDensity
			}
			if x := (s[i].Mass-fibre)/solids - 1; math.Abs(x-water[i]) > 1e-4 {
				t.Errorf("%s at %g s: %g kg/kg, the run has %g", rt.Kind, times[i], x, water[i])
			}
		}
	}
	if _, err := Follow(&j, result.Tunnel, []float64{1}, nil); err == nil {
		t.Error("a route that the job lacks is followed")
	}
	if _, err := Follow(&j, result.Room, []float64{1, 1e9}, nil); err == nil {
		t.Error("a time past the horizon is followed")
	}
}

// A run that is replayed from its own record ends as it ended: from the recorded air alone, and from the recorded part. The part's
// record binds film and part together, which are apart by the drop in the film's and the wall's own resistance.
func TestRecordedRunRepeatsItself(t *testing.T) {
	j := job.Demo()
	j.Room, j.Tunnel = nil, nil
	j.Part.Back = job.BackInsulated
	// Neither sag nor loss, so that the walls, which no recorder sees, stay as warm as the air.
	j.StaticOven.Chamber.HeaterPower, j.StaticOven.Chamber.WallLoss, j.StaticOven.Chamber.WallExchange = 1e6, 0, 1e5
	res, err := Run(&j)
	if err != nil {
		t.Fatal(err)
	}
	rt := &res.Routes[0]
	air, part := &Trace{}, &Trace{}
	for i, at := range rt.Curves.Time {
		if at < j.StaticOven.LoadedAfter || at > rt.Exit.Time || len(air.Time) > 0 && at <= air.Time[len(air.Time)-1] {
			continue
		}
		if at == j.StaticOven.LoadedAfter && rt.Curves.Time[i+1] == at {
			continue // the seam: the oven's air is the second
		}
		air.Time, air.Temperature = append(air.Time, at), append(air.Temperature, rt.Curves.AirTemperature[i])
		part.Time, part.Temperature = append(part.Time, at), append(part.Temperature, rt.Curves.FilmTemperature[i])
	}
	for _, c := range []struct {
		name string
		rec  Recording
	}{{"air", Recording{Air: air}}, {"part", Recording{Part: part}}, {"both", Recording{Air: air, Part: part}}} {
		again, err := Recorded(&j, result.StaticOven, c.rec)
		if err != nil {
			t.Fatal(c.name, err)
		}
		if again.Exit == nil {
			t.Fatal(c.name, "no exit")
		}
		w, g := rt.Exit.State, again.Exit.State
		if math.Abs(g.MeanWater-w.MeanWater) > 0.02*w.MeanWater || math.Abs(g.MeanConversion-w.MeanConversion) > 0.01 ||
			math.Abs(g.FilmTemperature-w.FilmTemperature) > 0.3 {
			t.Errorf("%s: water %.5g, conversion %.4g, film %.5g K; the run had %.5g, %.4g, %.5g", c.name, g.MeanWater, g.MeanConversion,
				g.FilmTemperature, w.MeanWater, w.MeanConversion, w.FilmTemperature)
		}
	}
	if _, err := Recorded(&j, result.StaticOven, Recording{}); err == nil {
		t.Error("nothing recorded is followed")
	}
}

func BenchmarkFollow(b *testing.B) {
	j := job.Demo()
	j.Pile = nil
	times := make([]float64, 40)
	for i := range times {
		times[i] = float64(i) * 180
	}
	for range b.N {
		if _, err := Follow(&j, result.Room, times, nil); err != nil {
			b.Fatal(err)
		}
	}
}
