package route

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/words"
)

// ZoneFlow is the dry air that passes one zone of a tunnel in steady state [kg/s]. What leaves a zone and does not come
// from its neighbours is drawn in from the workshop; what comes in and is not exhausted is pushed out into it.
type ZoneFlow struct {
	Fresh      float64 // from the workshop
	Before     float64 // from the zone before
	After      float64 // from the zone after
	Exhaust    float64 // by the fan
	ToBefore   float64
	ToAfter    float64
	Surplus    float64 // pushed out into the workshop
	Humidity   float64 // of the zone's air [kg/kg]
	Evaporated float64 // water taken up [kg/s]
}

// Out is all dry air that leaves the zone [kg/s].
func (f *ZoneFlow) Out() float64 { return f.Exhaust + f.ToBefore + f.ToAfter + f.Surplus }

// Balanced reports whether any zone of the tunnel asks for its humidity to be balanced.
func Balanced(t *job.Tunnel) bool {
	for i := range t.Zones {
		if t.Zones[i].Air != nil {
			return true
		}
	}
	return false
}

// ZoneHumidities returns the humidity ratios that the zones of a tunnel start from [kg/kg].
func ZoneHumidities(j *job.Job) ([]float64, error) {
	w := make([]float64, len(j.Tunnel.Zones))
	for i := range w {
		z := &j.Tunnel.Zones[i]
		s, err := z.Humidity.State(z.AirTemperature, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
		if err != nil {
			return nil, err
		}
		w[i] = s.HumidityRatio()
	}
	return w, nil
}

// ZoneFlows solves the steady balances of dry air and water of all zones for the water evaporated in each [kg/s], with
// the densities at the humidities w. Zones without ZoneAir keep their humidity and let air pass.
func ZoneFlows(j *job.Job, w, evaporated []float64) ([]ZoneFlow, error) {
	t := j.Tunnel
	n := len(t.Zones)
	shop, err := newWorkshop(j)
	if err != nil {
		return nil, err
	}
	outside := shop.air.State(t.EnteredAfter)
	flows := make([]ZoneFlow, n)
	dry := func(i int) float64 { return dryDensity(t.Zones[i].AirTemperature, j.Workshop.Pressure, w[i]) }
	perVolume := outside.Density() / (1 + outside.HumidityRatio())
	for i := range flows {
		f := &flows[i]
		f.Evaporated = evaporated[i]
		a := t.Zones[i].Air
		if a == nil {
			continue
		}
		f.Exhaust = a.Exhaust * dry(i)
		leak := a.LeakToNext
		switch {
		case leak > 0 && i+1 < n:
			f.ToAfter = leak * dry(i)
			flows[i+1].Before += f.ToAfter
		case leak > 0:
			f.Surplus += leak * dry(i)
		case leak < 0 && i+1 < n:
			flows[i+1].ToBefore = -leak * dry(i+1)
			f.After += flows[i+1].ToBefore
		case leak < 0:
			f.Fresh += -leak * perVolume
		}
		f.Fresh += a.MakeUp * perVolume
	}
	flows[0].Fresh += t.EntryLeak * perVolume
	flows[n-1].Fresh += t.ExitLeak * perVolume
	for i := range flows {
		f := &flows[i]
		if lacking := f.Out() - f.Fresh - f.Before - f.After; lacking >= 0 {
			f.Fresh += lacking
		} else {
			f.Surplus -= lacking
		}
	}
	return flows, humidities(t, flows, w, outside)
}

// humidities solves the water balances for the humidities: fresh W_s + before W_(i-1) + after W_(i+1) + E = out W_i.
func humidities(t *job.Tunnel, flows []ZoneFlow, w []float64, outside air.State) error {
	n := len(flows)
	// The matrix is tridiagonal and dominated by its diagonal: (0 I - J) w = b with J its negative.
	a := num.NewArrow(n, 0, 0, nil)
	b := make([]float64, n)
	for i := range flows {
		f := &flows[i]
		if t.Zones[i].Air == nil || f.Out() <= 0 {
			a.Diag[i], b[i] = -1, w[i]
			continue
		}
		a.Diag[i], a.Lower[i], a.Upper[i] = -f.Out(), f.Before, f.After
		b[i] = f.Fresh*outside.HumidityRatio() + f.Evaporated
	}
	if !a.Factorise(0) {
		return fault.New(fault.Numeric, "tunnel.zones", words.Told("the air of the zones has no balance"), words.Told("Give every zone some exhaust or leak."))
	}
	a.Solve(b)
	for i := range flows {
		flows[i].Humidity = math.Max(0, b[i])
	}
	return nil
}

// dryDensity is the dry air in a cubic metre of moist air [kg/m3].
func dryDensity(T, p, w float64) float64 {
	return p * (1 - fraction(w)) * air.AirMolarMass / (air.GasConstant * T)
}
