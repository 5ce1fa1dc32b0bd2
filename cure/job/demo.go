package job

import (
	"math"

	"github.com/drywright/drywright/cure/words"
)

// Demo is a worked example of our own, invented from end to end: a small workshop flocks the inside of aluminium baffle
// sleeves for small telescopes matt black, sprays until five in the afternoon and packs at seven in the morning. It asks
// whether the night is enough, what half an hour in the box oven does, and whether a tunnel would carry a larger order.
func Demo() Job {
	const spraying, packing = 17.0, 24.0 + 7.0 // hours of the clock
	j := Default()
	j.Name = words.Told("Baffle sleeves, matt black")
	j.Note = words.Told("Invented example. Sleeves of 1.5 mm aluminium sheet for small telescopes, sprayed with a soft acrylic dispersion " +
		"adhesive until 17:00, flocked black with polyamide 0.8 mm long, to be packed at 07:00. Three ways: on the rack over a " +
		"night in which the workshop cools down, half an hour in the box oven at 80 °C, or through a tunnel of two zones.")

	j.Film.WetCoat = 0.155
	j.Part = demoPart(j.Part)
	j.Workshop.Air = demoNight()

	deadline := (packing - spraying) * hour
	j.Room.Deadline = deadline
	j.StaticOven = NewStaticOven()
	j.StaticOven.LoadedAfter, j.StaticOven.Dwell, j.StaticOven.SetPoint = 20*minute, 30*minute, zeroCelsius+80
	j.StaticOven.Humidity = ratio(0.015)
	j.StaticOven.Chamber.CoatedArea = 3
	j.StaticOven.Deadline = deadline
	j.Tunnel = demoTunnel()
	j.Tunnel.Deadline = deadline
	j.Tariffs, j.Costs = NewTariffs(), demoCosts()
	return j
}

// demoCosts are what the workshop reckons a day with: a rack room, the box oven that it has, and the tunnel that it thinks of.
func demoCosts() *Costs {
	c := NewCosts()
	wage, floor, rack := 32.0, 80.0, 250.0
	c.Wage, c.FloorPrice, c.RackPrice = &wage, &floor, &rack
	places, handling, racks, area := 40.0, 60*minute, 10.0, 35.0
	c.Room.Holds, c.Room.Labour, c.Room.Racks, c.Room.FloorArea = &places, &handling, &racks, &area
	charge, oven, around := 6*minute, 9e3, 8.0
	c.StaticOven.Labour, c.StaticOven.Investment, c.StaticOven.FloorArea = &charge, &oven, &around
	person, line, length := 0.5, 85e3, 60.0
	c.Tunnel.Persons, c.Tunnel.Investment, c.Tunnel.FloorArea = &person, &line, &length
	return c
}

// demoPart is 1.5 mm of aluminium sheet; the limit is that of the flocked coat, since the metal itself stands more.
func demoPart(p Part) Part {
	p.Record = "aluminium"
	p.Thickness, p.Density, p.HeatCapacity, p.Conductivity = 1.5e-3, 2800, 880, 160
	p.BackEmissivity, p.Length, p.LimitTemperature = 0.08, 0.25, zeroCelsius+150
	return p
}

// demoNight is a workshop whose heating goes down at eight and that is coolest at packing.
func demoNight() []AirPoint {
	var night []AirPoint
	for _, p := range []struct{ hours, celsius, relative float64 }{
		{0, 20, 0.50}, {3, 20, 0.50}, {8, 17, 0.57}, {14, 16, 0.60}, {16, 20, 0.50}} {
		night = append(night, AirPoint{Time: p.hours * hour, Temperature: kelvin(p.celsius),
			Humidity: Humidity{RelativeHumidity: &p.relative}})
	}
	return night
}

func demoTunnel() *Tunnel {
	t := NewTunnel()
	t.EnteredAfter, t.LineSpeed = 8*minute, 0.02
	t.Zones = nil
	for _, z := range []struct {
		name                                      string
		kind                                      ZoneKind
		metres, celsius, ratio, transferOfThePart float64
	}{
		{words.Told("Drying zone"), Heated, 4, 90, 0.025, 30},
		{words.Told("Curing zone"), Heated, 6, 130, 0.02, 35},
		{words.Told("Cooling zone"), Cooling, 4, 22, 0.008, 40},
	} {
		zone := NewZone()
		zone.Name, zone.Kind, zone.Length, zone.AirTemperature = z.name, z.kind, z.metres, kelvin(z.celsius)
		zone.Humidity, zone.Transfer.Coefficient = ratio(z.ratio), z.transferOfThePart
		t.Zones = append(t.Zones, zone)
	}
	return t
}

// kelvin keeps the decimals of a temperature given to a hundredth of a degree.
func kelvin(celsius float64) float64 {
	return math.Round((celsius+zeroCelsius)*100) / 100
}

func ratio(w float64) Humidity { return Humidity{HumidityRatio: &w} }
