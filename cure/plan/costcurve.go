package plan

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/result"
)

// countTolerance keeps a quantity that fills units exactly from needing one more by rounding.
const countTolerance = 1e-9

// rate is the cost of a route as a function of the day's quantity: straight between the quantities that need a further charge
// or unit, with a jump at each.
type rate struct {
	kind                                 result.Kind
	met                                  bool // it may be compared
	perArea, perCharge, perUnit, perHour float64
	charge, capacity                     float64 // infinite where nothing limits them
	pace                                 float64 // m2/s while it runs; 0: none
}

func (c *costing) rate() rate {
	// A route of which nothing is priced would be the cheapest of all.
	r := rate{kind: c.route.Route, met: c.route.Met && len(c.route.Terms) > 0, charge: math.Inf(1), capacity: math.Inf(1)}
	for _, t := range c.route.Terms {
		switch t.Per {
		case PerArea:
			r.perArea += t.Value
		case PerCharge:
			r.perCharge += t.Value
		case PerUnitDay:
			r.perUnit += t.Value
		case PerHour:
			r.perHour += t.Value
		}
	}
	if c.route.Charge != nil {
		r.charge = *c.route.Charge
	}
	if c.route.Capacity != nil {
		r.capacity = *c.route.Capacity
	}
	if c.route.Rate != nil {
		r.pace = *c.route.Rate
	}
	return r
}

// units is how many rooms, ovens or tunnels a quantity [m2/d] takes; one stands there for none.
func (r *rate) units(q float64) int { return max(1, int(math.Ceil(q/r.capacity-countTolerance))) }

// cost is that of a day's quantity [m2/d].
func (r *rate) cost(q float64) float64 {
	charges, hours := 0.0, 0.0
	if q > 0 {
		charges = math.Max(1, math.Ceil(q/r.charge-countTolerance))
	}
	if r.pace > 0 {
		hours = q / r.pace / hourSeconds
		if !math.IsInf(r.charge, 1) {
			hours = charges * r.charge / r.pace / hourSeconds // a charge takes its time, full or not
		}
	}
	return r.perArea*q + r.perCharge*charges + r.perUnit*float64(r.units(q)) + r.perHour*hours
}

// step is the quantity after which the cost jumps, again and again.
func (r *rate) step() float64 { return math.Min(r.charge, r.capacity) }

// mostSteps bounds the work of looking for crossings, and pastStep is where a curve is read behind a jump.
const (
	mostSteps = 400
	pastStep  = 1e-7
)

// draw fills in curves, crossings and stretches.
func draw(a *Costs, rates []rate, q CostQuestion) {
	var able []rate
	smallest, largest, finest := math.Inf(1), 0.0, math.Inf(1)
	for _, r := range rates {
		if !math.IsInf(r.capacity, 1) {
			smallest, largest, finest = math.Min(smallest, r.capacity), math.Max(largest, r.capacity), math.Min(finest, r.step())
		}
		if r.met {
			able = append(able, r)
		}
	}
	if largest == 0 {
		smallest, largest, finest = 100, 100, 100 // nothing limits anything: straight lines, wherever one looks
	}
	reach := math.Min(2.2*largest, mostSteps*finest)
	a.Highest = q.Highest
	if a.Highest <= 0 {
		last := 0.0
		for _, x := range crossings(able, reach) {
			last = x.Quantity
		}
		a.Highest = math.Min(reach, math.Max(2.2*smallest, 1.3*last))
		if q.Quantity != nil {
			a.Highest = math.Max(a.Highest, 1.2**q.Quantity)
		}
	}
	a.Highest = math.Min(a.Highest, mostSteps*finest)
	a.Crossings, a.Cheapest = crossings(able, a.Highest), cheapest(able, a.Highest)
	curves(a, rates, q.Points)
	a.Asked = nil
	if q.Quantity != nil {
		a.Asked = asked(rates, *q.Quantity)
	}
}

const usualPoints = 121

func curves(a *Costs, rates []rate, points int) {
	if points <= 1 {
		points = usualPoints
	}
	a.Quantity = make([]float64, points)
	for i := range a.Quantity {
		a.Quantity[i] = a.Highest * float64(i) / float64(points-1)
	}
	for k := range rates {
		r := &a.Routes[k]
		r.Cost, r.Units = make([]float64, points), make([]int, points)
		for i, x := range a.Quantity {
			r.Cost[i], r.Units[i] = rates[k].cost(x), rates[k].units(x)
		}
	}
}

func asked(rates []rate, q float64) *AskedCost {
	a := &AskedCost{Quantity: q, Cost: []float64{}, Units: []int{}, Cheapest: -1}
	for i := range rates {
		a.Cost, a.Units = append(a.Cost, rates[i].cost(q)), append(a.Units, rates[i].units(q))
		if rates[i].met && (a.Cheapest < 0 || a.Cost[i] < a.Cost[a.Cheapest]) {
			a.Cheapest = i
		}
	}
	return a
}

// steps lists the quantities up to an end at which any of the routes jumps, and both ends.
func steps(rates []rate, end float64) []float64 {
	all := []float64{0, end}
	for i := range rates {
		if s := rates[i].step(); !math.IsInf(s, 1) {
			for k := 1; float64(k)*s < end && k <= mostSteps; k++ {
				all = append(all, float64(k)*s)
			}
		}
	}
	slices.Sort(all)
	return slices.CompactFunc(all, func(a, b float64) bool { return math.Abs(b-a) < 10*pastStep*end })
}

// crossings are the quantities at which the order of two routes changes: inside straight pieces by a bracketed search, at
// jumps where they stand.
func crossings(rates []rate, end float64) []Crossing {
	all := []Crossing{}
	for i := range rates {
		for k := i + 1; k < len(rates); k++ {
			all = append(all, crossingsOf(&rates[i], &rates[k], end)...)
		}
	}
	slices.SortStableFunc(all, func(a, b Crossing) int { return compare(a.Quantity, b.Quantity) })
	return all
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func crossingsOf(a, b *rate, end float64) []Crossing {
	var all []Crossing
	// Amounts of money nearer to each other than this are the same.
	same := 1e-9 * (math.Abs(a.cost(end)) + math.Abs(b.cost(end)))
	difference := func(q float64) float64 {
		if d := a.cost(q) - b.cost(q); math.Abs(d) > same {
			return d
		}
		return 0
	}
	was := 0.0 // the difference when the two were last apart
	meet := func(q float64, d float64, jump bool) {
		if was*d < 0 {
			c := Crossing{Quantity: q, Cheaper: a.kind, Dearer: b.kind, Jump: jump, Cost: a.cost(q)}
			if d > 0 {
				c.Cheaper, c.Dearer, c.Cost = b.kind, a.kind, b.cost(q)
			}
			all = append(all, c)
		}
		if d != 0 {
			was = d
		}
	}
	at := steps([]rate{*a, *b}, end)
	for i := 0; i+1 < len(at); i++ {
		from, to := at[i]+pastStep*end, at[i+1]
		d := difference(from)
		meet(at[i], d, true)
		if e := difference(to); d*e < 0 {
			q, err := num.Root(func(q float64) float64 { return a.cost(q) - b.cost(q) }, from, to, 1e-9*end)
			if err != nil {
				q = (from + to) / 2 // not reached: the ends differ in sign
			}
			meet(q, e, false)
		} else {
			meet(to, e, false)
		}
	}
	return all
}

// cheapest are the stretches between crossings, each with the route that costs least in it.
func cheapest(rates []rate, end float64) []Stretch {
	stretches := []Stretch{}
	if len(rates) < 2 {
		return stretches
	}
	cuts := []float64{0}
	for _, c := range crossings(rates, end) {
		cuts = append(cuts, c.Quantity)
	}
	cuts = append(cuts, end)
	for i := 0; i+1 < len(cuts); i++ {
		low, high := cuts[i], cuts[i+1]
		if high-low < 10*pastStep*end {
			continue
		}
		best := 0
		for k := range rates {
			if rates[k].cost((low+high)/2) < rates[best].cost((low+high)/2) {
				best = k
			}
		}
		if last := len(stretches) - 1; last >= 0 && stretches[last].Route == rates[best].kind {
			stretches[last].High = high
			continue
		}
		stretches = append(stretches, Stretch{Low: low, High: high, Route: rates[best].kind})
	}
	return stretches
}
