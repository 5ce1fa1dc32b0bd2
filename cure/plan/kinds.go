package plan

import (
	"fmt"
	"math"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words"
)

// The names of the variables that are offered by themselves.
const (
	LineSpeed       = "line_speed"
	ZonesInStep     = "zone_temperatures"
	TunnelLength    = "heated_length"
	Exhaust         = "exhaust"
	SetPoint        = "set_point"
	Dwell           = "dwell"
	ChargeArea      = "charge"
	SprayLater      = "spray_later"
	RackLoad        = "rack_load"
	RoomHumidity    = "room_humidity"
	RoomTemperature = "room_temperature"
	AirChanges      = "air_changes"
	Coat            = "coat"
	TransferTimes   = "transfer"
)

// kind is a way in which a job can be turned.
type kind struct {
	routes []result.Kind // nil: all
	make   func(j *job.Job, rules *job.Rules) []Variable
}

var (
	inRoom   = []result.Kind{result.Room}
	inOven   = []result.Kind{result.StaticOven}
	inTunnel = []result.Kind{result.Tunnel}
)

// kinds lists them in the order in which they are offered.
func kinds() []kind {
	return []kind{
		{inTunnel, number(LineSpeed, "tunnel.line_speed_m_per_s", Highest, true, 0.1)},
		{inTunnel, zonesInStep},
		{inTunnel, eachZone},
		{inTunnel, heatedLength},
		{inTunnel, exhaust},
		{inOven, number(SetPoint, "static_oven.set_point_K", Lowest, false, 10)},
		{inOven, number(Dwell, "static_oven.dwell_s", Lowest, true, 0.1)},
		{inOven, number(ChargeArea, "static_oven.chamber.coated_area_m2", Highest, true, 0.1)},
		{inOven, exhaust},
		{inRoom, sprayMoment},
		{inRoom, number(RackLoad, "workshop.space.coated_area_m2", Highest, true, 0.1)},
		{inRoom, number(AirChanges, "workshop.space.air_changes_per_s", Lowest, true, 0.1)},
		{nil, number(Coat, "film.wet_coat_kg_per_m2", Highest, true, 0.1)},
		{nil, given(roomHumidity)},
		{nil, roomTemperature},
		{nil, given(transferTimes)},
		{nil, given(fitted)},
	}
}

// given marks variables that are nobody's choice.
func given(make func(*job.Job, *job.Rules) []Variable) func(*job.Job, *job.Rules) []Variable {
	return func(j *job.Job, rules *job.Rules) []Variable {
		vs := make(j, rules)
		for i := range vs {
			vs[i].Given = true
		}
		return vs
	}
}

// number is a single number of the job, where the job has it.
func number(id, path string, toward Direction, log bool, size float64) func(*job.Job, *job.Rules) []Variable {
	return func(j *job.Job, rules *job.Rules) []Variable {
		v, ok := single(j, rules, id, path)
		if !ok {
			return nil
		}
		v.Toward, v.Log, v.Step = toward, log, size
		return []Variable{v}
	}
}

// single is the variable of one number, of which the field's table says nearly everything.
func single(j *job.Job, rules *job.Rules, id, path string) (Variable, bool) {
	present, ok := job.Number(j, path)
	if !ok {
		return Variable{}, false
	}
	f, _ := rules.Field(path)
	return Variable{ID: id, Label: f.Label, Help: f.Help, Unit: f.Unit, Display: f.Display, USDisplay: f.USDisplay, Low: f.Low, High: f.High,
		UsualLow: f.UsualLow, UsualHigh: f.UsualHigh, Present: present,
		set: func(j *job.Job, v float64) { setNumber(j, path, v) }}, true
}

// like is a variable of the quantity of a field.
func like(rules *job.Rules, path string) Variable {
	f, _ := rules.Field(path)
	return Variable{Unit: f.Unit, Display: f.Display, USDisplay: f.USDisplay}
}

// heated lists the places of the heated zones.
func heated(j *job.Job) []int {
	var places []int
	for i := range j.Tunnel.Zones {
		if j.Tunnel.Zones[i].Kind == job.Heated {
			places = append(places, i)
		}
	}
	return places
}

// zonesInStep turns all heated zones up or down together; its value is the difference to the job.
func zonesInStep(j *job.Job, rules *job.Rules) []Variable {
	places := heated(j)
	if len(places) == 0 {
		return nil
	}
	f, _ := rules.Field("tunnel.zones[0].air_temperature_K")
	coolest, hottest := math.Inf(1), math.Inf(-1)
	for _, i := range places {
		T := j.Tunnel.Zones[i].AirTemperature
		coolest, hottest = math.Min(coolest, T), math.Max(hottest, T)
	}
	v := like(rules, "static_oven.chamber.proportional_band_K") // a difference of temperature
	v.ID, v.Label, v.Help = ZonesInStep, named(ZonesInStep, "label"), named(ZonesInStep, "help")
	v.Low, v.High, v.UsualLow, v.UsualHigh = f.Low-coolest, f.High-hottest, -30, 30
	v.Toward, v.Step = Lowest, 10
	v.set = func(j *job.Job, by float64) {
		for _, i := range heated(j) {
			z := &j.Tunnel.Zones[i]
			z.AirTemperature += by
			if z.WallTemperature != nil {
				*z.WallTemperature += by
			}
		}
	}
	return []Variable{v}
}

// eachZone turns one heated zone at a time.
func eachZone(j *job.Job, rules *job.Rules) []Variable {
	var vs []Variable
	for _, i := range heated(j) {
		path := fmt.Sprintf("tunnel.zones[%d].air_temperature_K", i)
		if v, ok := single(j, rules, path, path); ok {
			v.Label, v.Toward, v.Step = inZone(j.Tunnel.Zones[i].Name, v.Label), Lowest, 10
			v.UsualLow, v.UsualHigh = math.Max(v.Low, v.Present-30), math.Min(v.High, v.Present+30)
			vs = append(vs, v)
		}
	}
	return vs
}

// heatedLength makes the heated zones longer or shorter in proportion; its value is their length together.
func heatedLength(j *job.Job, rules *job.Rules) []Variable {
	places := heated(j)
	if len(places) == 0 {
		return nil
	}
	f, _ := rules.Field("tunnel.zones[0].length_m")
	total, shrink, stretch := 0.0, 0.0, math.Inf(1)
	for _, i := range places {
		l := j.Tunnel.Zones[i].Length
		total += l
		shrink, stretch = math.Max(shrink, f.Low/l), math.Min(stretch, f.High/l)
	}
	v := like(rules, "tunnel.zones[0].length_m")
	v.ID, v.Label, v.Help = TunnelLength, named(TunnelLength, "label"), named(TunnelLength, "help")
	v.Low, v.High, v.UsualLow, v.UsualHigh, v.Present = total*shrink, total*stretch, total/2, total*2, total
	v.Toward, v.Log, v.Step = Lowest, true, 0.1
	v.set = func(j *job.Job, length float64) {
		was := 0.0
		for _, i := range heated(j) {
			was += j.Tunnel.Zones[i].Length
		}
		for _, i := range heated(j) {
			j.Tunnel.Zones[i].Length *= length / was
		}
	}
	return []Variable{v}
}

// exhaust opens or closes the dampers of every zone or oven whose air is balanced; its value is the multiple of today's
// flow.
func exhaust(j *job.Job, _ *job.Rules) []Variable {
	flows := dampers(j)
	if len(flows) == 0 {
		return nil
	}
	v := Variable{ID: Exhaust, Label: named(Exhaust, "label"), Help: named(Exhaust, "help"),
		Low: 0.1, High: 10, UsualLow: 0.5, UsualHigh: 2, Present: 1, Toward: Lowest, Log: true, Step: 0.1,
		Display: times(), USDisplay: times(),
		set: func(j *job.Job, times float64) {
			for _, f := range dampers(j) {
				*f *= times
			}
		}}
	return []Variable{v}
}

// dampers are the flows of exhaust and make-up that act on the air's humidity.
func dampers(j *job.Job) []*float64 {
	var flows []*float64
	if t := j.Tunnel; t != nil {
		for i := range t.Zones {
			if a := t.Zones[i].Air; a != nil && t.Zones[i].Kind == job.Heated {
				flows = append(flows, &a.Exhaust, &a.MakeUp)
			}
		}
	}
	if o := j.StaticOven; o != nil && o.Chamber.VapourBalance {
		flows = append(flows, &o.Chamber.MakeUp)
	}
	return flows
}

// sprayMoment moves the moment of spraying against the clock.
func sprayMoment(j *job.Job, rules *job.Rules) []Variable {
	v := like(rules, "room.deadline_s")
	v.ID, v.Label, v.Help = SprayLater, named(SprayLater, "label"), named(SprayLater, "help")
	v.Low, v.High = -14*86400, j.Room.Deadline-60
	v.UsualLow, v.UsualHigh = -6*3600, math.Min(6*3600, v.High)
	v.Toward, v.Step = Highest, 3600
	v.set = sprayLater
	return []Variable{v}
}

// roomHumidity moves the whole schedule of the workshop's air, and what comes in from outside, by the same difference of
// relative humidity; its value is that at spraying.
func roomHumidity(j *job.Job, rules *job.Rules) []Variable {
	present, ok := relative(j, j.Workshop.Air[0])
	if !ok {
		return nil
	}
	f, _ := rules.Field("workshop.air[0].humidity.relative_humidity")
	v := Variable{ID: RoomHumidity, Label: named(RoomHumidity, "label"), Help: named(RoomHumidity, "help"),
		Unit: f.Unit, Display: f.Display, USDisplay: f.USDisplay, Low: f.Low, High: f.High, UsualLow: 0.3, UsualHigh: 0.85, Present: present, Toward: Highest, Step: 0.1,
		set: func(j *job.Job, v float64) {
			was, ok := relative(j, j.Workshop.Air[0])
			if !ok {
				return
			}
			moisten(j, j.Workshop.Air, v-was, f)
			if s := j.Workshop.Space; s != nil {
				moisten(j, s.Outside, v-was, f)
			}
		}}
	return []Variable{v}
}

func relative(j *job.Job, p job.AirPoint) (float64, bool) {
	s, err := p.Humidity.State(p.Temperature, j.Workshop.Pressure, j.Numerics.EnhancementFactor)
	return s.RelativeHumidity(), err == nil
}

func moisten(j *job.Job, points []job.AirPoint, by float64, f job.Field) {
	for i := range points {
		if h, ok := relative(j, points[i]); ok && by != 0 {
			h = math.Min(math.Max(h+by, f.Low), f.High)
			points[i].Humidity = job.Humidity{RelativeHumidity: &h}
		}
	}
}

// roomTemperature moves the whole schedule of the workshop's air, and the air outside, by the same difference; its value is
// the temperature at spraying. Each point keeps its relative humidity, or whatever else it is stated by.
func roomTemperature(j *job.Job, rules *job.Rules) []Variable {
	v, ok := single(j, rules, RoomTemperature, "workshop.air[0].temperature_K")
	if !ok {
		return nil
	}
	v.Label, v.Help = named(RoomTemperature, "label"), named(RoomTemperature, "help")
	v.Toward, v.Step = Lowest, 2
	v.set = func(j *job.Job, T float64) {
		by := T - j.Workshop.Air[0].Temperature
		for i := range j.Workshop.Air {
			j.Workshop.Air[i].Temperature += by
		}
		if s := j.Workshop.Space; s != nil {
			for i := range s.Outside {
				s.Outside[i].Temperature += by
			}
		}
	}
	return []Variable{v}
}

// named is the word of a variable that has a name of its own.
func named(id, word string) string { return words.Key("variables." + id + "." + word) }

// inZone puts a zone before the label of a number that every zone has.
func inZone(zone, label string) string {
	return words.Key("variables.in_zone", "zone", zone, "label", words.Inside(label))
}
