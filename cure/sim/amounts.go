package sim

import (
	"cmp"
	"math"
	"slices"

	"github.com/drywright/drywright/cure/result"
)

const (
	hour       = 3600.0
	shift      = 8 * hour
	jouleToKWh = 1 / 3.6e6
)

// amounts says what the route takes per square metre of coated face, from its accounts.
func (r *run) amounts(accounts []result.Account) result.Amounts {
	a := result.Amounts{Evaporated: r.start.Mass + r.fibreWater - r.state.Held(), EnergyTerms: []result.Term{}}
	switch r.plan.Kind {
	case result.StaticOven:
		o := r.job.StaticOven
		cycle := o.Dwell + o.Turnaround
		a.Cycle = &cycle
		rate(&a, o.Chamber.CoatedArea/cycle)
		r.energy(&a, accounts, o.Chamber.CoatedArea)
	case result.Tunnel:
		if area := r.job.Tunnel.CoatedPerLength * r.job.Tunnel.LineSpeed; area > 0 {
			rate(&a, area)
			r.energy(&a, accounts, area)
		}
	case result.Room:
		if s := r.job.Workshop.Space; s != nil {
			r.energy(&a, accounts, s.CoatedArea)
		}
	}
	if area := r.job.Part.CoatedArea; area != nil {
		a.Part = perPart(&a, *area)
	}
	return a
}

// perPart is what one part of the coated area [m2] takes.
func perPart(a *result.Amounts, area float64) *result.PerPart {
	times := func(v *float64, factor float64) *float64 {
		if v == nil {
			return nil
		}
		product := *v * factor
		return &product
	}
	return &result.PerPart{Evaporated: a.Evaporated * area, PerHour: times(a.Throughput, 1/area), PerShift: times(a.PerShift, 1/area),
		Energy: times(a.Energy, area), Cost: times(a.Cost, area), Carbon: times(a.Carbon, area)}
}

// rate fills in the throughput [m2/s].
func rate(a *result.Amounts, area float64) {
	throughput, perShift := area*hour, area*shift
	a.Throughput, a.PerShift = &throughput, &perShift
}

// energy adds up the heaters of all accounts, per square metre, and prices them.
func (r *run) energy(a *result.Amounts, accounts []result.Account, area float64) {
	if len(accounts) == 0 || area <= 0 {
		return
	}
	total := 0.0
	terms := map[string]float64{}
	var order []string
	for i := range accounts {
		duty := math.Max(0, accounts[i].Duty)
		total += duty
		for _, t := range accounts[i].Heat.Terms {
			if t.Name == "heater" {
				continue
			}
			if _, known := terms[t.Name]; !known {
				order = append(order, t.Name)
			}
			terms[t.Name] += t.Value / area
		}
	}
	for _, name := range order {
		a.EnergyTerms = append(a.EnergyTerms, result.Term{Name: name, Value: terms[name]})
	}
	t := r.job.Tariffs
	perArea := total / area
	if t != nil && t.HeaterEfficiency != 1 {
		a.EnergyTerms = append(a.EnergyTerms, result.Term{Name: "lost in the heater, or won by it", Value: perArea * (1/t.HeaterEfficiency - 1)})
		perArea /= t.HeaterEfficiency
	}
	a.Energy = &perArea
	if t == nil {
		return
	}
	cost, carbon := perArea*jouleToKWh*t.EnergyPrice, perArea*jouleToKWh*t.Carbon
	a.Cost, a.Carbon, a.Currency = &cost, &carbon, t.Currency
}

// limits ranks what a tunnel runs out of: the share of the dwell that the marks need, of the heat installed, of the part's
// and of the flammable limit.
func (r *run) limits(marks []result.Mark, accounts []result.Account) []result.Limit {
	limits := []result.Limit{}
	if r.plan.Kind != result.Tunnel {
		return limits
	}
	add := func(name, place string, share float64) {
		limits = append(limits, result.Limit{Name: name, Place: place, Share: share})
	}
	dwell := r.plan.Exit - r.job.Tunnel.EnteredAfter
	for i := range marks {
		m := &marks[i]
		switch m.Name {
		case result.DryThrough, result.TackFree, result.Cured, result.Cool:
			// Marks that come on the rack afterwards are no matter of the tunnel's length.
			if m.Time != nil && *m.Time <= r.plan.Exit {
				add("dwell", string(m.Name), (*m.Time-r.job.Tunnel.EnteredAfter)/dwell)
			}
		}
	}
	for i := range accounts {
		if s := accounts[i].Share; s != nil {
			add("heat", accounts[i].Place, *s)
		}
		add("exhaust", accounts[i].Place, r.filled(&accounts[i])/r.job.Targets.NearSaturation)
		if s := accounts[i].Flammable; s != nil {
			add("flammable", accounts[i].Place, *s/flammableShare)
		}
	}
	start := r.job.Workshop.Air[0].Temperature
	add("part_temperature", "", (r.hot.worst-start)/(r.job.Part.LimitTemperature-start))
	slices.SortStableFunc(limits, func(a, b result.Limit) int { return cmp.Compare(b.Share, a.Share) })
	return limits
}

// filled is how far the air of an account is full of water: its relative humidity, or above the boiling point the share
// of steam in it.
func (r *run) filled(a *result.Account) float64 {
	for i := range r.plan.Stages {
		st := &r.plan.Stages[i]
		if st.Name == a.Place && st.Length > 0 {
			air := st.Exposure.Around.Climate(st.Start, nil).Air
			return air.Y / math.Min(1, air.SaturatedFraction())
		}
	}
	return 0
}

// airRisks are the dangers that the accounts show: a heater that does not reach, vapour that may burn.
func airRisks(accounts []result.Account) []result.Risk {
	var risks []result.Risk
	for i := range accounts {
		a := &accounts[i]
		if a.Share != nil && *a.Share > 1 {
			risks = append(risks, result.Risk{Name: "heat_short", Severity: result.Danger, Where: a.Place, Worst: *a.Share * *a.Installed, Limit: *a.Installed, Unit: "W"})
		}
		if a.Flammable != nil && *a.Flammable > flammableShare {
			risks = append(risks, result.Risk{Name: "flammable", Severity: result.Danger, Where: a.Place, Worst: *a.Flammable, Limit: flammableShare, Unit: "share"})
		}
	}
	return risks
}

// flammableShare is the share of the lower flammable limit up to which ovens are ventilated without continuous monitoring
// (NFPA 86: 25 %; the local code comes first).
const flammableShare = 0.25
