package job

import (
	"reflect"

	"github.com/drywright/drywright/cure/words"
)

// Default is the job that an empty document means: the model adhesive on a flocked ABS part, left in the workshop.
func Default() Job {
	var j Job
	newTable().fill(reflect.ValueOf(&j).Elem(), "")
	return j
}

// NewStaticOven is a static oven of default values: like the other constructors below, what an empty object means in a
// document.
func NewStaticOven() *StaticOven { return fresh[StaticOven]("static_oven") }

// NewTunnel is a tunnel of one default zone.
func NewTunnel() *Tunnel { return fresh[Tunnel]("tunnel") }

// NewZone is a tunnel zone of default values.
func NewZone() Zone { return *fresh[Zone]("tunnel.zones[]") }

// NewAirPoint is one default state of the workshop's air, at spraying.
func NewAirPoint() AirPoint { return *fresh[AirPoint]("workshop.air[]") }

// NewCarrier is a carrier of default values.
func NewCarrier() *Carrier { return fresh[Carrier]("part.carrier") }

// NewAutocatalysis is a second rate constant of default values.
func NewAutocatalysis() *Autocatalysis {
	return fresh[Autocatalysis]("film.adhesive.crosslinking.autocatalysis")
}

// NewVitrification is a glass transition of default values.
func NewVitrification() *Vitrification {
	return fresh[Vitrification]("film.adhesive.crosslinking.vitrification")
}

// NewCoSolvent is a co-solvent of default values.
func NewCoSolvent() *CoSolvent { return fresh[CoSolvent]("film.adhesive.co_solvent") }

// NewSpot is a spot of default values.
func NewSpot() Spot { return *fresh[Spot]("part.spots[]") }

// NewFan is a fan of default values, the same in every place.
func NewFan() *Fan { return fresh[Fan]("workshop.transfer.fan") }

// NewNozzles is a field of nozzles of default values, the same in every place.
func NewNozzles() *Nozzles { return fresh[Nozzles]("tunnel.zones[].transfer.nozzles") }

// NewSpace is a closed room of default values.
func NewSpace() *Space { return fresh[Space]("workshop.space") }

// NewHeating is a room heating of default values.
func NewHeating() *Heating { return fresh[Heating]("workshop.space.heating") }

// NewDehumidifier is a dehumidifier of default values.
func NewDehumidifier() *Dehumidifier { return fresh[Dehumidifier]("workshop.space.dehumidifier") }

// NewInfrared is a field of radiators of default values.
func NewInfrared() *Infrared { return fresh[Infrared]("tunnel.zones[].infrared") }

// NewZoneAir is a zone's air of default values.
func NewZoneAir() *ZoneAir { return fresh[ZoneAir]("tunnel.zones[].air") }

// NewTariffs are tariffs of default values.
func NewTariffs() *Tariffs { return fresh[Tariffs]("tariffs") }

// NewCosts are costs of which nothing is known but what is usual of times.
func NewCosts() *Costs { return fresh[Costs]("costs") }

func fresh[T any](pattern string) *T {
	v := new(T)
	newTable().fill(reflect.ValueOf(v).Elem(), pattern)
	return v
}

// fill sets a value, which sits at the path pattern, and everything below it to the defaults.
func (t table) fill(v reflect.Value, pattern string) {
	switch v.Kind() {
	case reflect.Struct:
		for i, name := range t.names[v.Type()] {
			t.fill(v.Field(i), under(pattern, name))
		}
	case reflect.Slice:
		n := t.blocks[pattern].Items
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			t.fill(v.Index(i), pattern+"[]")
		}
	case reflect.Pointer:
		if t.absent(v.Type(), pattern) {
			v.SetZero()
			return
		}
		t.create(v, pattern)
	case reflect.String:
		v.SetString(words.English(t.fields[pattern].Text)) // documents are in English until somebody writes them
	case reflect.Bool:
		v.SetBool(t.fields[pattern].On)
	case reflect.Int:
		v.SetInt(int64(t.fields[pattern].Default))
	case reflect.Float64:
		v.SetFloat(t.fields[pattern].Default)
	}
}

// create points a pointer at a new value of defaults.
func (t table) create(pointer reflect.Value, pattern string) {
	pointer.Set(reflect.New(pointer.Type().Elem()))
	t.fill(pointer.Elem(), pattern)
}

func (t table) absent(pointer reflect.Type, pattern string) bool {
	if isBlock(pointer) {
		return t.blocks[pattern].Absent
	}
	return t.fields[pattern].Absent
}
