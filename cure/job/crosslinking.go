package job

import (
	"math"

	"github.com/drywright/drywright/cure/kinetics"
)

// Law is the cure law that a crosslinking block means, and the misfit of its schedule (largest relative error of a
// fitted time; 0 with fewer than three pairs). Without pairs frequency factor and activation energy count as they stand;
// one pair sets the frequency factor; two or more set both. The error is that of kinetics.FitSchedule; a crosslinking that
// validates gives none.
func (c Crosslinking) Law() (law kinetics.Law, misfit float64, err error) {
	law = kinetics.Law{A1: c.FrequencyFactor, E1: c.ActivationEnergy}
	switch s := c.Schedule; len(s.Pairs) {
	case 0:
	case 1:
		p := s.Pairs[0]
		law = kinetics.FromPair(p.Temperature, p.Time, s.Conversion, c.ActivationEnergy, c.Order)
	default:
		pairs := make([]kinetics.Pair, len(s.Pairs))
		for i, p := range s.Pairs {
			pairs[i] = kinetics.Pair{T: p.Temperature, Time: p.Time}
		}
		law.A1, law.E1, misfit, err = kinetics.FitSchedule(pairs, s.Conversion, c.Order)
		if err != nil {
			return kinetics.Law{}, 0, err
		}
	}
	law.N, law.HinderingWater = c.Order, math.Inf(1)
	if c.HinderingWater != nil {
		law.HinderingWater = *c.HinderingWater
	}
	if a := c.Autocatalysis; a != nil {
		law.A2, law.E2, law.M = a.FrequencyFactor, a.ActivationEnergy, a.Exponent
	}
	if g := c.Vitrification; g != nil {
		law.Vitrification = &kinetics.Vitrification{TgUncured: g.TgUncured, TgCured: g.TgCured, Lambda: g.Lambda,
			DiffusionRate: g.DiffusionRate, C1: g.WLFC1, C2: g.WLFC2}
	}
	return law, misfit, nil
}
