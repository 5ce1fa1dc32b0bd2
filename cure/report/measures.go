package report

import (
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/unit"
)

// measure is what results measure, with the units that workshops read it in: at home in the metre, and in the United States.
type measure struct {
	dimension unit.Dimension
	si, us    string
}

var (
	temperature     = measure{unit.Temperature, "°C", "°F"}
	temperatureStep = measure{unit.TemperatureStep, "K", "°F"}
	filmWater       = measure{unit.MassRatio, "g/kg", "g/kg"}
	airHumidity     = measure{unit.MassRatio, "g/kg", "gr/lb"}
	coatWeight      = measure{unit.ArealMass, "g/m²", "oz/yd²"}
	carbon          = measure{unit.ArealMass, "kg/m²", "lb/ft²"}
	pressure        = measure{unit.Pressure, "kPa", "inHg"}
	filmThickness   = measure{unit.Length, "µm", "mil"}
	length          = measure{unit.Length, "m", "ft"}
	power           = measure{unit.Power, "kW", "kBtu/h"}
	area            = measure{unit.Area, "m²", "ft²"}
	smallArea       = measure{unit.Area, "cm²", "in²"}
	smallMass       = measure{unit.Mass, "g", "oz"}
	heatFlux        = measure{unit.HeatFlux, "kW/m²", "Btu/(h·ft²)"}
)

// of is the unit in which a reader likes a measure.
func (w Speaker) unit(m measure) job.Display {
	symbol := m.si
	if w.unitSystem == US {
		symbol = m.us
	}
	u, _ := unit.Get(m.dimension, symbol) // a test asks for every one
	return job.Display{Symbol: symbol, Factor: u.Factor(), Offset: -u.Zero, Digits: 3}
}

// kilowattHour is energy as bills state it everywhere [J].
const kilowattHour = 3.6e6

// energy prints energy per area [J/m2] in kilowatt-hours.
func (w Speaker) energy(v float64) string {
	a := w.unit(area)
	return w.three(v/kilowattHour/a.Factor, "kWh/"+a.Symbol)
}

// heat prints heat per area [J/m2] as accounts state it: what flows in a second, or in an hour where Btu are counted by it.
func (w Speaker) heat(v float64) string {
	if w.unitSystem == US {
		return w.three(v*w.unit(heatFlux).Factor/3600, "Btu/ft²")
	}
	return w.three(v*w.unit(heatFlux).Factor, "kJ/m²")
}
