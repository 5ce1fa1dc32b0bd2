package fit

import (
	"math"

	"github.com/drywright/drywright/cure/sim"
	"github.com/drywright/drywright/cure/trial"
	"github.com/drywright/drywright/cure/words"
)

// trace is one column of the record, thinned; nil where it is not there.
func (w *work) trace(q trial.Quantity, start float64) *sim.Trace {
	values := w.data.Numbers[q]
	if values == nil {
		return nil
	}
	t := &sim.Trace{}
	for i, v := range values {
		if !math.IsNaN(v) {
			t.Time, t.Temperature = append(t.Time, w.data.Numbers[trial.Time][i]+start), append(t.Temperature, v)
		}
	}
	if len(t.Time) < 2 {
		return nil
	}
	if n := len(t.Time); n > mostMoments {
		w.note(words.Told("{count} readings of the {value} were averaged to {most_moments}.", "count", n, "value", map[trial.Quantity]string{trial.AirTemperature: words.Told("air"), trial.PartTemperature: words.Told("part")}[q], "most_moments", mostMoments))
		t = thin(t, mostMoments)
	}
	return t
}

// thin averages a trace in equal numbers of readings; its ends stay.
func thin(t *sim.Trace, n int) *sim.Trace {
	out := &sim.Trace{Time: []float64{t.Time[0]}, Temperature: []float64{t.Temperature[0]}}
	total := len(t.Time)
	for k := 1; k < n-1; k++ {
		from, to := 1+(k-1)*(total-2)/(n-2), 1+k*(total-2)/(n-2)
		var time, temperature float64
		for i := from; i < to; i++ {
			time, temperature = time+t.Time[i]/float64(to-from), temperature+t.Temperature[i]/float64(to-from)
		}
		if to > from && time > out.Time[len(out.Time)-1] {
			out.Time, out.Temperature = append(out.Time, time), append(out.Temperature, temperature)
		}
	}
	out.Time, out.Temperature = append(out.Time, t.Time[total-1]), append(out.Temperature, t.Temperature[total-1])
	return out
}

func lastOf(rec sim.Recording) float64 {
	last := 0.0
	for _, t := range []*sim.Trace{rec.Air, rec.Part} {
		if t != nil {
			last = math.Max(last, t.Time[len(t.Time)-1])
		}
	}
	return last
}

// above is how long a trace stands above a limit, its readings joined by straight lines, and its highest reading.
func above(t *sim.Trace, limit float64) (time, peak float64) {
	peak = t.Temperature[0]
	for i := 1; i < len(t.Time); i++ {
		a, b := t.Temperature[i-1]-limit, t.Temperature[i]-limit
		length := t.Time[i] - t.Time[i-1]
		peak = math.Max(peak, t.Temperature[i])
		switch {
		case a >= 0 && b >= 0:
			time += length
		case a > 0 || b > 0:
			time += length * math.Max(a, b) / math.Abs(a-b)
		}
	}
	return time, peak
}
