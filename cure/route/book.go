package route

// ChamberBook is what passed a static oven over a stage [J, kg].
type ChamberBook struct {
	Heater, Lost, Passed   float64 // heat from the heater, lost through the walls, carried off by the passing air
	Drawn                  float64 // by all loads
	AirKept, WallsKept     float64
	WaterPassed, WaterKept float64 // carried off less brought in; kept by the chamber's air
}

// Book reads the account of a stage off the own states at its start and end.
func (c *Chamber) Book(start, end []float64) ChamberBook {
	d := func(i int) float64 { return end[i] - start[i] }
	return ChamberBook{
		Heater: d(chamberHeater), Lost: d(chamberLost), Passed: d(chamberPassed), Drawn: d(chamberDrawn),
		AirKept: c.AirCapacity * d(chamberAir), WallsKept: c.WallCapacity * d(chamberWall),
		WaterPassed: d(chamberWater), WaterKept: c.DryAir * d(chamberHumidity),
	}
}

// SpaceBook is what passed a full room over a stage [J, kg].
type SpaceBook struct {
	Heater                 float64
	Aired, Removed, Fogged float64 // water carried off by air changes, taken out, settled on the walls
	WaterKept              float64
}

// Book reads the account of a stage off the own states at its start and end.
func (s *Space) Book(start, end []float64) SpaceBook {
	d := func(i int) float64 { return end[i] - start[i] }
	return SpaceBook{Heater: d(spaceHeater), Aired: d(spaceAired), Removed: d(spaceRemoved), Fogged: d(spaceFogged),
		WaterKept: s.DryAir * d(spaceHumidity)}
}
