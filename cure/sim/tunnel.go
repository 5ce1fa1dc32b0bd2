package sim

import (
	"math"

	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/route"
)

// The balance of a tunnel's humidities ends when none moves by more than this share of itself plus 10 g/kg. A change in the last digits
// can change which steps a run takes, and with them what evaporates by about the tolerance of the integration; where that leaves
// no balance to be found to all digits, it ends there.
const (
	humidityTolerance = 1e-8
	humidityFloor     = 0.01 // kg/kg
	balanceLimit      = 60   // runs of the tunnel
)

// Far from the balance a trial is run to the coarsest tolerance that a job may ask for, which takes half the time; nearer than
// roughEnd, measured as above, to the job's own.
const (
	roughTolerance = 1e-4
	roughEnd       = 1e-3
)

// balancedTunnel finds the humidities of the tunnel's zones at which each zone's exhaust and leaks carry off what
// evaporates there, and returns the plan with them. Each trial is a run of the part to the tunnel's exit.
func (b *bench) balancedTunnel() (plan route.Plan, humidities []float64, err error) {
	w, err := route.ZoneHumidities(b.job)
	if err != nil {
		return route.Plan{}, nil, err
	}
	rough := *b
	j := *b.job
	j.Numerics.RelativeTolerance = math.Max(roughTolerance, j.Numerics.RelativeTolerance)
	rough.job, rough.first = &j, &beginning{}
	near := false
	next := func(w, out []float64) error {
		if !near {
			if err := rough.evaporate(w, out); err != nil {
				return err
			}
			near = true
			for i := range w {
				near = near && math.Abs(out[i]-w[i]) <= roughEnd*(humidityFloor+w[i])
			}
			if !near {
				return nil
			}
		}
		return b.evaporate(w, out)
	}
	w, _, err = num.FixedPoint(next, w, humidityTolerance, b.job.Numerics.RelativeTolerance, humidityFloor, balanceLimit)
	if err != nil {
		return route.Plan{}, nil, err
	}
	plan, err = route.Tunnel(b.job, w)
	return plan, w, err
}

// evaporate runs the part through the tunnel in air of the humidities w and writes those that its water makes of them.
func (b *bench) evaporate(w, out []float64) error {
	plan, err := route.Tunnel(b.job, w)
	if err != nil {
		return err
	}
	r := b.newRun(plan.Until(plan.Exit))
	r.trial = true
	if err := r.follow(); err != nil {
		return err
	}
	flows, err := r.zoneFlows(w)
	if err != nil {
		return err
	}
	for i := range out {
		out[i] = flows[i].Humidity
	}
	return nil
}

// zoneFlows balances the zones for what evaporated in this run, with densities at the humidities w.
func (r *run) zoneFlows(w []float64) ([]route.ZoneFlow, error) {
	evaporated := make([]float64, len(w))
	zone := 0
	for i := range r.passages {
		if r.plan.Stages[i].Length > 0 {
			evaporated[zone] = r.job.Tunnel.CoatedPerLength * r.job.Tunnel.LineSpeed * r.passages[i].water
			zone++
		}
	}
	return route.ZoneFlows(r.job, w, evaporated)
}
