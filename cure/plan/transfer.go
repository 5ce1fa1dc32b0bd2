package plan

import (
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// transferTimes multiplies every coefficient of heat and mass transfer of the route: what the model itself does not know of
// them. Its value is the multiple of today's.
func transferTimes(j *job.Job, rules *job.Rules) []Variable {
	f, _ := rules.Field("workshop.transfer.multiplier")
	low, high := 0.1, 10.0
	for _, t := range transfers(j) {
		m := 1.0
		if t.Multiplier != nil {
			m = *t.Multiplier
		}
		low, high = math.Max(low, f.Low/m), math.Min(high, f.High/m)
	}
	return []Variable{{ID: TransferTimes, Label: named(TransferTimes, "label"), Help: named(TransferTimes, "help"),
		Low: low, High: high, UsualLow: 0.5, UsualHigh: 2, Present: 1, Toward: Lowest, Log: true, Step: 0.1,
		Display: times(), USDisplay: times(),
		set: func(j *job.Job, factor float64) {
			if factor == 1 {
				return
			}
			for _, t := range transfers(j) {
				m := factor
				if t.Multiplier != nil {
					m *= *t.Multiplier
				}
				t.Multiplier = &m
			}
		}}}
}

// times is the display of a multiple.
func times() job.Display { return job.Display{Symbol: "×", Factor: 1, Digits: 3} }

// transfers are the places of all transfer in a job.
func transfers(j *job.Job) []*job.Transfer {
	all := []*job.Transfer{&j.Workshop.Transfer}
	if o := j.StaticOven; o != nil {
		all = append(all, &o.Transfer)
	}
	if t := j.Tunnel; t != nil {
		for i := range t.Zones {
			all = append(all, &t.Zones[i].Transfer)
		}
	}
	return all
}

// multiplierFitted reports whether a trial has told a multiplier of the route's own place, so that its uncertainty is the trial's.
func multiplierFitted(j *job.Job, kind result.Kind) bool {
	own := map[result.Kind]string{result.Room: "workshop.", result.StaticOven: "static_oven.", result.Tunnel: "tunnel."}[kind]
	for _, r := range job.Resting(j) {
		if len(r.Path) > len(own) && r.Path[:len(own)] == own {
			return true
		}
	}
	return false
}
