package plan

import (
	"errors"
	"math"
	"testing"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// Three invented routes by hand. Room: 10 a night and room of 20 m2, so 10 for every 20 m2 begun. Oven: 4 for each charge of 5 m2,
// 6 charges a day, 3 a day for the oven. Tunnel: 50 a day, 0.1 for a square metre, 100 m2/h for eight hours.
func byHand() []rate {
	return []rate{
		{kind: result.Room, met: true, perUnit: 10, charge: 20, capacity: 20},
		{kind: result.StaticOven, met: true, perCharge: 4, perUnit: 3, charge: 5, capacity: 30, pace: 5.0 / 3600},
		{kind: result.Tunnel, met: true, perUnit: 50, perArea: 0.1, charge: math.Inf(1), capacity: 800, pace: 100.0 / 3600},
	}
}

func TestCostByHand(t *testing.T) {
	r := byHand()
	for _, c := range []struct {
		rate  int
		q     float64
		cost  float64
		units int
	}{
		{0, 0, 10, 1}, {0, 20, 10, 1}, {0, 20.1, 20, 2}, {0, 100, 50, 5},
		{1, 0, 3, 1}, {1, 5, 7, 1}, {1, 12, 15, 1}, {1, 30, 27, 1}, {1, 31, 34, 2},
		{2, 0, 50, 1}, {2, 200, 70, 1}, {2, 801, 180.1, 2},
	} {
		if got := r[c.rate].cost(c.q); math.Abs(got-c.cost) > 1e-12 || r[c.rate].units(c.q) != c.units {
			t.Errorf("%s at %g: %g with %d, want %g with %d", r[c.rate].kind, c.q, got, r[c.rate].units(c.q), c.cost, c.units)
		}
	}
	// Attendance: a charge takes its hour whether full or not; a line runs as long as it needs.
	oven, line := rate{perHour: 30, charge: 5, capacity: 40, pace: 5.0 / 3600}, rate{perHour: 30, charge: math.Inf(1), capacity: 800, pace: 100.0 / 3600}
	if a, b := oven.cost(6), line.cost(50); math.Abs(a-60) > 1e-12 || math.Abs(b-15) > 1e-12 {
		t.Errorf("two charges cost %g, half an hour of the line %g", a, b)
	}
}

// Room against oven cross at jumps only: at 5 m2 the oven's second charge makes 11 of its 7, past the room's 10; at 20 m2 the
// second room makes 20 beside the oven's 19 or 23. Room against tunnel: 50 + 0.1 q against 10 for every 20 m2, first at 120 m2 by
// the seventh room.
func TestCrossingsByHand(t *testing.T) {
	r := byHand()
	room := crossingsOf(&r[0], &r[1], 25)
	if len(room) != 1 || math.Abs(room[0].Quantity-5) > 1e-6 || room[0].Cheaper != result.Room || !room[0].Jump {
		t.Errorf("room and oven: %+v", room)
	}
	line := crossingsOf(&r[0], &r[2], 200)
	if len(line) < 1 || math.Abs(line[0].Quantity-120) > 1e-5 || line[0].Cheaper != result.Tunnel || !line[0].Jump {
		t.Errorf("room and tunnel: %+v", line)
	}
	// Two straight lines meet where 20 + q is 50 + 0.1 q: at 100/3.
	a, b := rate{kind: result.StaticOven, perUnit: 20, perArea: 1, charge: math.Inf(1), capacity: math.Inf(1)},
		rate{kind: result.Tunnel, perUnit: 50, perArea: 0.1, charge: math.Inf(1), capacity: math.Inf(1)}
	c := crossingsOf(&a, &b, 100)
	if len(c) != 1 || c[0].Jump || math.Abs(c[0].Quantity-100.0/3) > 1e-6 || math.Abs(c[0].Cost-(20+100.0/3)) > 1e-6 {
		t.Errorf("two lines: %+v", c)
	}
	if c := crossingsOf(&a, &a, 100); len(c) != 0 {
		t.Errorf("a route crosses itself: %+v", c)
	}
}

// Wherever one looks, the route of the stretch costs no more than any other.
func TestCheapestIsCheapest(t *testing.T) {
	rates := byHand()
	const end = 400.0
	stretches := cheapest(rates, end)
	if len(stretches) < 3 || stretches[0].Low != 0 || stretches[len(stretches)-1].High != end {
		t.Fatalf("%+v", stretches)
	}
	place := 0
	for q := 0.137; q < end; q += 0.31 {
		for stretches[place].High < q {
			place++
		}
		var mine, least float64 = 0, math.Inf(1)
		for i := range rates {
			c := rates[i].cost(q)
			least = math.Min(least, c)
			if rates[i].kind == stretches[place].Route {
				mine = c
			}
		}
		if mine > least+1e-9 {
			t.Errorf("at %g %s costs %g, another %g", q, stretches[place].Route, mine, least)
		}
	}
	if last := stretches[len(stretches)-1]; last.Route != result.Tunnel {
		t.Errorf("in the end the %s is cheapest", last.Route)
	}
}

// three is an invented job with all routes and all costs: the demo in a closed room with little in it.
func three() job.Job {
	j := job.Demo()
	j.Tariffs, j.Costs = job.NewTariffs(), job.NewCosts()
	j.Film.Adhesive.Crosslinking = nil // dries, so that a night can be enough
	j.Workshop.Space = job.NewSpace()
	j.Tunnel.CoatedPerLength = 0.8
	wage, floor, rack, work, persons, area, racks, oven, tunnel := 35.0, 90.0, 350.0, 1200.0, 0.5, 40.0, 12.0, 24e3, 180e3
	c := j.Costs
	c.Wage, c.FloorPrice, c.RackPrice = &wage, &floor, &rack
	c.Room.Labour, c.Room.FloorArea, c.Room.Racks = &work, &area, &racks
	c.StaticOven.Labour, c.StaticOven.Investment, c.StaticOven.FloorArea = &work, &oven, &area
	c.Tunnel.Persons, c.Tunnel.Investment, c.Tunnel.FloorArea = &persons, &tunnel, &area
	for i := range j.Tunnel.Zones {
		j.Tunnel.Zones[i].Air = job.NewZoneAir()
	}
	return j
}

func TestFindCosts(t *testing.T) {
	if testing.Short() {
		t.Skip("a second of runs")
	}
	j := three()
	want := 25.0
	var told []Costs
	a, err := FindCosts(CostQuestion{Job: &j, Quantity: &want}, Batch, func(c Costs) { told = append(told, c) })
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Routes) != 3 || len(told) != 2 || told[0].Complete || !a.Complete || len(told[0].Routes) != 1 || a.Runs < 10 {
		t.Fatalf("%d routes, %d told, %d runs", len(a.Routes), len(told), a.Runs)
	}
	room, oven, tunnel := &a.Routes[0], &a.Routes[1], &a.Routes[2]
	if !room.Met || room.Basis != LargestLoad || !oven.Met || oven.Basis != StatedLoad || !tunnel.Met || tunnel.Basis != LineRate {
		t.Errorf("bases %s, %s, %s; met %t, %t, %t", room.Basis, oven.Basis, tunnel.Basis, room.Met, oven.Met, tunnel.Met)
	}
	// The largest load is ready in time, one of a hundredth more is not: as the limit promises.
	study, err := Study{Job: &j, Route: result.Room}.Settle(Batch)
	if err != nil {
		t.Fatal(err)
	}
	outcomes, err := Batch(study, []Trial{{{RackLoad, *room.Capacity}}, {{RackLoad, 1.01 * *room.Capacity}}})
	if err != nil || !outcomes[0].Met() || outcomes[1].Met() {
		t.Errorf("%.3f m2 good %t, 1 %% more %t: %v", *room.Capacity, outcomes[0].Met(), outcomes[1].Met(), err)
	}
	// 8 h over a cycle, whole charges of 3 m2; 0.8 m2/m at 1.2 m/min for 8 h.
	cycle := j.StaticOven.Dwell + j.StaticOven.Turnaround
	if charges := math.Floor(8 * 3600 / cycle); float64(oven.Charges) != charges || math.Abs(*oven.Capacity-3*charges) > 1e-9 {
		t.Errorf("%d charges, %g m2, want %g charges", oven.Charges, *oven.Capacity, charges)
	}
	if math.Abs(*tunnel.Capacity-0.8*0.02*8*3600) > 1e-9 {
		t.Errorf("the tunnel carries %g m2", *tunnel.Capacity)
	}
	// A full oven charge costs in the line what the model says of it.
	study.Route, study.Goal = result.StaticOven, nil
	if study, err = study.Settle(Batch); err != nil {
		t.Fatal(err)
	}
	if outcomes, err = Batch(study, []Trial{{}}); err != nil {
		t.Fatal(err)
	}
	full := 0.0
	for _, term := range oven.Terms {
		switch {
		case term.Name == EnergyCost && term.Per == PerArea:
			full += 3 * term.Value
		case term.Name == EnergyCost:
			full += term.Value
		}
	}
	if e := 3 * *outcomes[0].Judgement.Amounts.Cost; math.Abs(full/e-1) > 1e-9 {
		t.Errorf("a charge costs %g, the model says %g", full, e)
	}
	if a.Asked == nil || a.Asked.Cheapest < 0 || a.Highest < want || len(a.Asked.Cost) != 3 {
		t.Errorf("asked: %+v", a.Asked)
	}
	// What was not given is named: the wage's hours of the tunnel's cleaning, racks of the oven.
	if len(tunnel.Missing) == 0 || tunnel.Missing[0] != "costs.tunnel.labour_s" {
		t.Errorf("missing of the tunnel: %v", tunnel.Missing)
	}
}

// A job without costs, tariffs or a closed room still has curves, and says what is not in them.
func TestCostsOfLittle(t *testing.T) {
	j := job.Demo()
	j.StaticOven, j.Tunnel, j.Costs, j.Tariffs = nil, nil, nil, nil
	a, err := FindCosts(CostQuestion{Job: &j}, Batch, nil)
	if err != nil {
		t.Fatal(err)
	}
	r := &a.Routes[0]
	if r.Capacity != nil || r.Basis != NoCapacity || r.Met || r.Fails == nil || len(r.Missing) != 2 || r.Missing[0] != "workshop.space" || r.Missing[1] != "costs" {
		t.Errorf("%+v", r)
	}
	if len(a.Cheapest) != 0 || len(a.Crossings) != 0 || len(r.Cost) != usualPoints || r.Cost[120] != 0 {
		t.Errorf("%+v", a.Cheapest)
	}
}

func TestCostsRefused(t *testing.T) {
	j := job.Demo()
	less, more := -1.0, 1e9
	for what, q := range map[string]CostQuestion{"less than nothing": {Quantity: &less}, "too much": {Quantity: &more}, "no end": {Highest: -1},
		"too many points": {Points: 1 << 40}} {
		q.Job = &j
		var f *fault.Fault
		if _, err := FindCosts(q, Batch, nil); !errors.As(err, &f) || f.Code != fault.Range {
			t.Errorf("%s: %v", what, err)
		}
	}
}
