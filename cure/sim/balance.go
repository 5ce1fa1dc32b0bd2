package sim

import (
	"math"

	"github.com/drywright/drywright/cure/result"
)

// balances closes the accounts of water and heat over the run. Water that left is counted by the film's mass as
// integrated from the flux, water that stayed by the cells; heat in and out by the ledger, heat kept by temperatures.
func (r *run) balances() result.Balances {
	start, end := &r.start, &r.state
	kept := 0.0
	for i, x := range end.Water {
		kept += r.grid.Width[i] * x
	}
	out := start.Mass + r.fibreWater - end.Held()
	water := result.Balance{In: start.Mass + r.fibreWater, Out: out, Kept: kept + end.Fibre, Terms: []result.Term{
		{Name: "sprayed on", Value: start.Mass}, {Name: "evaporated", Value: out}, {Name: "left in the film", Value: kept}}}
	if r.fibreWater > 0 {
		water.Terms = append(water.Terms, result.Term{Name: "brought by the fibre", Value: r.fibreWater},
			result.Term{Name: "left in the fibre", Value: end.Fibre})
	}

	l := end.Ledger
	in := l.Convected + l.Radiated + l.BackConvected + l.BackRadiated + l.Carried + r.fibre
	heat := result.Balance{In: in, Out: l.Vapour, Kept: end.Heat(&r.part) - start.Heat(&r.part), Terms: []result.Term{
		{Name: "from the air, coated face", Value: l.Convected}, {Name: "radiation, coated face", Value: l.Radiated},
		{Name: "from the air, back", Value: l.BackConvected}, {Name: "radiation, back", Value: l.BackRadiated},
		{Name: "from the air, carrier", Value: l.Carried}, {Name: "brought by the fibre", Value: r.fibre},
		{Name: "carried off by vapour", Value: l.Vapour}}}
	return result.Balances{Water: closed(water), Heat: closed(heat)}
}

// closed fills in the error of a balance.
func closed(b result.Balance) result.Balance {
	b.Error = b.In - b.Out - b.Kept
	largest := math.Max(math.Abs(b.In), math.Max(math.Abs(b.Out), math.Abs(b.Kept)))
	for _, t := range b.Terms {
		largest = math.Max(largest, math.Abs(t.Value))
	}
	if b.Terms == nil {
		b.Terms = []result.Term{}
	}
	if largest > 0 {
		b.Relative = math.Abs(b.Error) / largest
	}
	return b
}
