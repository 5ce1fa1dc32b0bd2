package job

import "github.com/drywright/drywright/cure/words"

// Named is a worked example: a short stable name, what a list of examples calls it, and the job itself.
type Named struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Job   Job    `json:"job"`
}

// Demos are worked examples of our own, invented from end to end, Demo first. The others each ask one question: a small shop
// whether it can pack in the morning, an engineer for the settings of a tunnel, the same engineer whether it carries a fifth
// more.
func Demos() []Named {
	return []Named{
		{"sleeves", words.Told("Telescope sleeves: room, box oven or tunnel?"), Demo()},
		{"shop", words.Told("Eleven racks in a small workshop: packed at seven?"), demoShop()},
		{"line", words.Told("Plastic bins through a tunnel: which settings?"), demoLine()},
		{"faster", words.Told("The same tunnel, a fifth faster: does it carry it?"), demoFaster()},
	}
}

// demoShop fills a small workshop with wet boards for a night. It is the room that is slow, not the film: its air takes up
// the water faster than the gaps of door and window let it out, and gets cold.
func demoShop() Job {
	j := Default()
	j.Name = words.Told("Tray boards, eleven racks")
	j.Note = words.Told("Invented example. A small shop sprays sealed plywood boards for jewellery trays with a vinyl acetate-ethylene dispersion " +
		"and flocks them with viscose 0.5 mm long, the last ones at 17:00. Eleven racks of 4 m² stay in the workshop of 70 m³, whose " +
		"heating goes down to frost protection at 18:00 and comes back at 06:00. Can they be brushed off and packed at 07:00? " +
		"Wage, rent and prices are invented, too.")
	j.Film.WetCoat = 0.18
	j.Film.Adhesive = demoDrying(j.Film.Adhesive)
	j.Pile.Record, j.Pile.FibreDensity, j.Pile.FibreHeatCapacity, j.Pile.Regain = "viscose", 1510, 1400, 0.12
	j.Pile.Length, j.Pile.AppliedAfter = 0.5e-3, 3*minute

	p := &j.Part
	p.Record = "plywood"
	p.Thickness, p.Density, p.Conductivity, p.HeatCapacity = 9e-3, 700, 0.17, 1600
	p.BackEmissivity, p.LimitTemperature = 0.9, zeroCelsius+80
	p.Orientation, p.Length = FacingUp, 0.4

	s := NewSpace()
	s.Volume, s.CoatedArea, s.AirChanges = 70, 44, 0.35/hour
	s.HeatBalance = true
	s.WallExchange, s.WallCapacity, s.WallLoss = 360, 10e6, 90
	s.Outside = nil
	for _, p := range []struct{ hours, celsius, relative float64 }{{0, 11, 0.75}, {6, 7, 0.9}, {13, 5, 0.95}, {18, 10, 0.8}} {
		s.Outside = append(s.Outside, AirPoint{Time: p.hours * hour, Temperature: kelvin(p.celsius),
			Humidity: Humidity{RelativeHumidity: &p.relative}})
	}
	down, up := 1*hour, 13*hour
	s.Heating = NewHeating()
	s.Heating.Power, s.Heating.SetPoint, s.Heating.SetBack = 5e3, zeroCelsius+20, zeroCelsius+8
	s.Heating.SetBackAt, s.Heating.ResumeAt = &down, &up
	j.Workshop.Space = s
	j.Tariffs, j.Costs = NewTariffs(), demoShopCosts()
	return j
}

// demoShopCosts are what the small workshop reckons a day with: one room full of racks, which are put in at night and brushed off
// in the morning.
func demoShopCosts() *Costs {
	c := NewCosts()
	wage, floor, rack := 28.0, 70.0, 180.0
	c.Wage, c.FloorPrice, c.RackPrice = &wage, &floor, &rack
	places, handling, racks, area := 44.0, 75*minute, 11.0, 28.0
	c.Room.Holds, c.Room.Labour, c.Room.Racks, c.Room.FloorArea = &places, &handling, &racks, &area
	fans := 1200.0
	c.Room.Investment = &fans
	return c
}

// demoDrying is the record of a vinyl acetate-ethylene dispersion without crosslinker.
func demoDrying(a Adhesive) Adhesive {
	a.Record = "vinyl-acetate-ethylene"
	a.Solids, a.PolymerDensity, a.ParticleDiameter = 0.55, 1110, 300e-9
	a.FilmForming, a.DryDiffusion = zeroCelsius+4, 8e-12
	a.Sorption.Monolayer, a.Sorption.GABC, a.Sorption.GABK = 0.02, 6, 0.87
	a.Crosslinking = nil
	a.Transport.Reason = words.Key("materials.adhesive." + a.Record + ".reason")
	return a
}

// demoLine is a tunnel for plastic bins as its engineer has set it: a mild drying zone of slot nozzles, a curing zone a
// little below what the plastic stands, a cooling zone.
func demoLine() Job {
	j := Default()
	j.Name = words.Told("Compartment bins, tunnel")
	j.Note = words.Told("Invented example. Bins of 2.5 mm ABS that stands 80 °C by its maker's word, sprayed with a two-part polyurethane dispersion " +
		"adhesive, flocked with polyamide, hung on steel hooks and passed through a tunnel with slot nozzles. Zone temperatures " +
		"and line speed are to leave the bins ready at the exit without cooking the plastic.")
	j.Film.WetCoat = 0.14
	j.Film.Adhesive = demoCuring(j.Film.Adhesive)
	j.Pile.Regain = 0.0425

	j.Part.Thickness, j.Part.LimitTemperature, j.Part.Length = 2.5e-3, zeroCelsius+80, 0.35
	j.Part.Carrier = NewCarrier()
	j.Part.Carrier.Mass = 1.5
	j.Part.Spots = []Spot{{Name: words.Told("Bottom corner"), TransferFactor: 0.6, CoatFactor: 1.25}}
	j.Workshop.Air[0].Temperature = kelvin(22)

	back := kelvin(38)
	t := NewTunnel()
	t.EnteredAfter, t.LineSpeed, t.CoatedPerLength, t.CarrierReturn = 8*minute, 1.0/60, 1.6, &back
	t.EntryLeak, t.ExitLeak = 0.01, 0.01
	t.Zones = nil
	for _, z := range []struct {
		name                    string
		kind                    ZoneKind
		metres, celsius         float64
		pressure                float64 // of the nozzles
		exhaust, makeUp, heater float64
	}{
		{words.Told("Drying zone"), Heated, 4, 64, 90, 0.02, 0.01, 10e3},
		{words.Told("Curing zone"), Heated, 4, 77, 60, 0.04, 0.03, 10e3},
		{words.Told("Cooling zone"), Cooling, 3, 22, 90, 0.8, 0.8, 0},
	} {
		zone := NewZone()
		zone.Name, zone.Kind, zone.Length, zone.AirTemperature = z.name, z.kind, z.metres, kelvin(z.celsius)
		zone.Transfer.Kind = SlotNozzles
		zone.Transfer.Nozzles = &Nozzles{Width: 4e-3, Pitch: 0.1, Distance: 0.08, ExitVelocity: 15, Pressure: &z.pressure}
		around := 12.0
		zone.Transfer.BackCoefficient = &around
		zone.Humidity = ratio(0.02)
		zone.Air = NewZoneAir()
		zone.Air.Exhaust, zone.Air.MakeUp, zone.Air.HeaterPower = z.exhaust, z.makeUp, z.heater
		if z.kind == Cooling {
			zone.Humidity, zone.Air.WallLoss = ratio(0.009), 0
		}
		t.Zones = append(t.Zones, zone)
	}
	j.Room, j.Tunnel = nil, t
	t.Deadline, t.Horizon = 40*minute, 2*day
	j.Tariffs = NewTariffs()
	return j
}

// demoCuring is the record of a polyurethane dispersion with aziridine crosslinker.
func demoCuring(a Adhesive) Adhesive {
	a.Record = "pu-aziridine"
	a.Solids, a.PolymerDensity, a.ParticleDiameter, a.DryDiffusion = 0.45, 1100, 150e-9, 1.2e-11
	a.Sorption.Monolayer, a.Sorption.GABC, a.Sorption.GABK = 0.02, 6, 0.86
	a.Transport.Reason = words.Key("materials.adhesive." + a.Record + ".reason")
	c := *a.Crosslinking
	c.ActivationEnergy = 86e3
	c.Schedule.Pairs = []SchedulePair{{Temperature: zeroCelsius + 23, Time: 2 * day}, {Temperature: zeroCelsius + 80, Time: 10 * minute}}
	a.Crosslinking = &c
	return a
}

// demoFaster is the line a month later, a fifth faster. Nothing else has changed.
func demoFaster() Job {
	j := demoLine()
	j.Name = words.Told("Compartment bins, a fifth faster")
	j.Note = words.Told("Invented example. The bins of the other example a month later: sales wants 20 % more, so the line runs 20 % faster with " +
		"the same zones, heaters and exhaust fans. Does the dryer carry it, and what runs out first?")
	j.Tunnel.LineSpeed *= 1.2
	return j
}
