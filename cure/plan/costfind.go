package plan

import (
	"math"
	"slices"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

const hourSeconds = 3600.0

// FindCosts sets the cost of a day against its quantity for every route of the job. What a room, an oven or a tunnel carries
// and what energy it takes come from the model; labour, floor, racks and investment from the job's Costs, as far as they are
// given. Whole rooms, ovens and charges are counted, so that curves jump where a further one is needed.
//
// Energy of a room or of a charge is taken as a straight line in its load, through a full one and one of a tenth: a night of
// heating costs nearly the same for few parts. A tunnel's energy is that of its running time, and it runs as long as the day's
// quantity takes; warming up is not counted.
//
// Tell, where it is not nil, takes what is known after each route.
//
// Errors: the job's own faults; a quantity or number of points outside what is accepted; what evaluate returns.
func FindCosts(q CostQuestion, evaluate Evaluate, tell func(Costs)) (Costs, error) {
	if err := job.Validate(*q.Job); err != nil {
		return Costs{}, err
	}
	if err := q.check(); err != nil {
		return Costs{}, err
	}
	a := Costs{PartArea: q.Job.Part.CoatedArea, Routes: []RouteCost{}}
	if t := q.Job.Tariffs; t != nil {
		a.Currency = t.Currency
	}
	var rates []rate
	for _, find := range []struct {
		kind result.Kind
		has  bool
		cost func(*costing) error
	}{
		{result.Room, q.Job.Room != nil, (*costing).room},
		{result.StaticOven, q.Job.StaticOven != nil, (*costing).oven},
		{result.Tunnel, q.Job.Tunnel != nil, (*costing).tunnel},
	} {
		if !find.has {
			continue
		}
		c := costing{job: q.Job, evaluate: evaluate, route: RouteCost{Route: find.kind, Terms: []CostTerm{}, Missing: []string{}}}
		var err error
		if c.study, err = (Study{Job: q.Job, Route: find.kind}).Settle(evaluate); err != nil {
			return Costs{}, err
		}
		if err := find.cost(&c); err != nil {
			return Costs{}, err
		}
		c.prices()
		a.Runs += c.runs
		a.Routes, rates = append(a.Routes, c.route), append(rates, c.rate())
		draw(&a, rates, q)
		if tell != nil && len(a.Routes) < routes(q.Job) {
			tell(copied(a))
		}
	}
	draw(&a, rates, q)
	a.Complete = true
	return a, nil
}

// The ends of what a question about costs may ask.
const (
	mostQuantity = 1e6
	mostPoints   = 2001
)

func (q *CostQuestion) check() error {
	switch {
	case q.Quantity != nil && !(*q.Quantity >= 0 && *q.Quantity <= mostQuantity):
		return fault.OutOfRange("quantity_m2_per_day", *q.Quantity, 0, mostQuantity, "m²", words.Told("Ask for what is coated in one day."))
	case !(q.Highest >= 0 && q.Highest <= mostQuantity):
		return fault.OutOfRange("highest_m2_per_day", q.Highest, 0, mostQuantity, "m²", words.Told("Give 0 for what shows the crossings."))
	case q.Points < 0 || q.Points > mostPoints:
		return fault.OutOfRange("points", float64(q.Points), 0, mostPoints, "", words.Told("Give 0 for the usual number."))
	}
	return nil
}

// copied shares no curve with the costs that go on.
func copied(a Costs) Costs {
	a.Routes = slices.Clone(a.Routes)
	return a
}

func routes(j *job.Job) int {
	n := 0
	for _, has := range []bool{j.Room != nil, j.StaticOven != nil, j.Tunnel != nil} {
		if has {
			n++
		}
	}
	return n
}

// costing finds what one route costs.
type costing struct {
	job      *job.Job
	study    Study
	evaluate Evaluate
	route    RouteCost
	runs     int
}

// few is the load beside a full one by which its energy is split.
const few = 0.1

// room finds the largest load that is ready by the deadline, as far as there is place for it.
func (c *costing) room() error {
	r := &c.route
	r.Charges, r.Basis = 1, NoCapacity
	var places *float64
	if k := c.job.Costs; k != nil {
		places = k.Room.Holds
	}
	if places != nil {
		full := *places
		r.Capacity, r.Charge, r.Basis = &full, &full, StatedLoad
	}
	if c.job.Workshop.Space == nil {
		r.Missing = append(r.Missing, "workshop.space")
		_, err := c.judge(Trial{})
		return err
	}
	limits, err := FindLimits(LimitsQuestion{Study: c.study, Limits: []LimitQuestion{{Variable: RackLoad}}}, c.evaluate, nil)
	if err != nil {
		return err
	}
	l := &limits[0]
	c.runs += l.Runs
	if l.Value == nil {
		if len(l.Margins) > 0 {
			r.Fails = &l.Margins[0]
		}
		return nil
	}
	if places == nil || *l.Value < *places {
		r.Capacity, r.Charge, r.Basis = l.Value, l.Value, LargestLoad
	}
	return c.loads(RackLoad, *r.Charge)
}

// oven takes the stated charge, as often as it goes into a day.
func (c *costing) oven() error {
	r, o := &c.route, c.job.StaticOven
	running := job.NewCosts().StaticOven.RunningTime
	if k := c.job.Costs; k != nil {
		running = k.StaticOven.RunningTime
	}
	cycle := o.Dwell + o.Turnaround
	charge := o.Chamber.CoatedArea
	pace := charge / cycle
	r.Charges = max(1, int(math.Floor(running/cycle+countTolerance))) // one that takes longer than the shift stays in overnight
	day := charge * float64(r.Charges)
	r.Capacity, r.Charge, r.Rate, r.Basis = &day, &charge, &pace, StatedLoad
	return c.loads(ChargeArea, charge)
}

// tunnel carries what hangs on a metre at the speed of the line.
func (c *costing) tunnel() error {
	r, t := &c.route, c.job.Tunnel
	running := job.NewCosts().Tunnel.RunningTime
	if k := c.job.Costs; k != nil {
		running = k.Tunnel.RunningTime
	}
	r.Basis = NoCapacity
	if pace := t.CoatedPerLength * t.LineSpeed; pace > 0 {
		day := pace * running
		r.Capacity, r.Rate, r.Basis = &day, &pace, LineRate
	} else {
		r.Missing = append(r.Missing, "tunnel.coated_area_per_m_m2_per_m")
	}
	o, err := c.judge(Trial{})
	if err == nil {
		c.energy(o.Judgement.Amounts.Cost, 0)
	}
	return err
}

// judge runs one setting and notes whether the route does what it should.
func (c *costing) judge(trials ...Trial) (*Outcome, error) {
	outcomes, err := c.evaluate(c.study, trials)
	if err != nil {
		return nil, err
	}
	c.runs += len(outcomes)
	o := &outcomes[0]
	if c.route.Met = o.Met(); !c.route.Met {
		if w := o.Judgement.Worst(); w >= 0 {
			c.route.Fails = &o.Judgement.Criteria[w]
		}
	}
	return o, nil
}

// loads judges a full load and a small one, and splits the energy into what every load takes and what each square metre adds.
func (c *costing) loads(variable string, full float64) error {
	o, err := c.judge(Trial{{variable, full}})
	if err != nil {
		return err
	}
	less, err := c.evaluate(c.study, []Trial{{{variable, few * full}}})
	if err != nil {
		return err
	}
	c.runs++
	whole, part := o.Judgement.Amounts.Cost, less[0].Judgement.Amounts.Cost
	if whole == nil || part == nil {
		c.energy(whole, 0)
		return nil
	}
	slope := (*whole*full - *part*few*full) / (full - few*full)
	c.energy(&slope, (*whole-slope)*full)
	return nil
}

// energy adds the terms of energy: for each square metre, and for each charge begun.
func (c *costing) energy(perArea *float64, perCharge float64) {
	if perArea == nil {
		switch { // energy has a price, and a balance of air that it follows from
		case c.job.Tariffs == nil:
			c.missing("tariffs")
		case c.route.Route == result.Tunnel:
			c.missing("tunnel.zones[0].air")
		case c.route.Route == result.Room:
			c.missing("workshop.space")
		}
		return
	}
	c.add(EnergyCost, *perArea, PerArea)
	if perCharge != 0 {
		c.add(EnergyCost, perCharge, PerCharge)
	}
}

func (c *costing) add(name TermName, value float64, per TermPer) {
	c.route.Terms = append(c.route.Terms, CostTerm{Name: name, Value: value, Per: per})
}

// prices adds what the job says of labour, floor, racks and investment, and notes what it leaves open.
func (c *costing) prices() {
	k := c.job.Costs
	if k == nil {
		c.route.Missing = append(c.route.Missing, "costs")
		return
	}
	var work, persons, floor, racks, investment *float64
	years, labour := 0.0, PerCharge
	switch c.route.Route {
	case result.Room:
		u := &k.Room
		work, floor, racks, investment, years = u.Labour, u.FloorArea, u.Racks, u.Investment, u.Years
	case result.StaticOven:
		u := &k.StaticOven
		work, persons, floor, racks, investment, years = u.Labour, u.Persons, u.FloorArea, u.Racks, u.Investment, u.Years
	case result.Tunnel:
		u := &k.Tunnel
		work, persons, floor, racks, investment, years = u.Labour, u.Persons, u.FloorArea, u.Racks, u.Investment, u.Years
		labour = PerUnitDay
	}
	at := "costs." + string(c.route.Route) + "."
	one := 1.0
	c.price(LabourCost, labour, 1/hourSeconds, at+"labour_s", work, "costs.wage_per_h", k.Wage)
	if c.route.Route != result.Room {
		c.price(AttendCost, PerHour, 1, at+"persons", persons, "costs.wage_per_h", k.Wage)
	}
	c.price(FloorCost, PerUnitDay, 1/k.DaysPerYear, at+"floor_area_m2", floor, "costs.floor_price_per_m2", k.FloorPrice)
	c.price(RackCost, PerUnitDay, 1/(k.RackYears*k.DaysPerYear), at+"racks", racks, "costs.rack_price", k.RackPrice)
	c.price(Depreciation, PerUnitDay, 1/(years*k.DaysPerYear), at+"investment", investment, "", &one)
}

// price adds the product of an amount and its price, or notes which of the two is missing; an amount of none needs no price.
func (c *costing) price(name TermName, per TermPer, factor float64, amountPath string, amount *float64, pricePath string, price *float64) {
	switch {
	case amount == nil:
		c.missing(amountPath)
	case *amount == 0:
	case price == nil:
		c.missing(pricePath)
	default:
		c.add(name, *amount**price*factor, per)
	}
}

func (c *costing) missing(path string) {
	if !slices.Contains(c.route.Missing, path) {
		c.route.Missing = append(c.route.Missing, path)
	}
}
