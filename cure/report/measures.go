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
	mass            = measure{unit.Mass, "kg", "lb"}
	heatFlux        = measure{unit.HeatFlux, "kW/m²", "Btu/(h·ft²)"}
)

// of is the unit in which a reader likes a measure.
func (w Speaker) unit(m measure) job.Display {
	symbol := m.si
	if w.unitSystem == US {
		symbol = m.us
	}
	u, _ := unit.Get(m.dimension, symbol) // a test asks for every one
	return job.Display{Symbol: symbol, Factor: u.Factor(), Offset: -u.Zero, Digits: 3, Dimension: m.dimension}
}

// kilowattHour is energy as bills state it everywhere [J].
const kilowattHour = 3.6e6

// energyUnit is that of energy per area [J/m2] on a bill.
func (w Speaker) energyUnit() job.Display {
	a := w.unit(area)
	return job.Display{Symbol: "kWh/" + a.Symbol, Factor: 1 / (kilowattHour * a.Factor), Digits: 3}
}

// heatUnit is that of heat per area [J/m2] in an account: what flows in a second, or in an hour where Btu are counted by it.
func (w Speaker) heatUnit() job.Display {
	d := w.unit(heatFlux)
	if w.unitSystem == US {
		return job.Display{Symbol: "Btu/ft²", Factor: d.Factor / 3600, Digits: 3}
	}
	return job.Display{Symbol: "kJ/m²", Factor: d.Factor, Digits: 3}
}

// energy prints energy per area [J/m2] in kilowatt-hours.
func (w Speaker) energy(v float64) string {
	d := w.energyUnit()
	return w.three(v*d.Factor, d.Symbol)
}

// heat prints heat per area [J/m2] as accounts state it.
func (w Speaker) heat(v float64) string {
	d := w.heatUnit()
	return w.three(v*d.Factor, d.Symbol)
}

// Measures are the units of a reader for what results measure, for programs that print numbers of their own: shown is SI times
// factor plus offset.
type Measures struct {
	Temperature     job.Display `json:"temperature"`
	TemperatureStep job.Display `json:"temperature_step"` // a difference
	FilmWater       job.Display `json:"film_water"`       // water per solids
	AirHumidity     job.Display `json:"air_humidity"`     // water per dry air
	CoatWeight      job.Display `json:"coat_weight"`
	Carbon          job.Display `json:"carbon"` // carbon dioxide per area
	Pressure        job.Display `json:"pressure"`
	FilmThickness   job.Display `json:"film_thickness"`
	Length          job.Display `json:"length"`
	Power           job.Display `json:"power"`
	Area            job.Display `json:"area"`
	SmallArea       job.Display `json:"small_area"`
	SmallMass       job.Display `json:"small_mass"`
	Mass            job.Display `json:"mass"`
	Energy          job.Display `json:"energy"` // per area, as bills state it
	Work            job.Display `json:"work"`   // energy, as bills state it
	Heat            job.Display `json:"heat"`   // per area, as accounts state it
}

// Measures are the units that this speaker prints in.
func (w Speaker) Measures() Measures {
	return Measures{
		Temperature: w.unit(temperature), TemperatureStep: w.unit(temperatureStep), FilmWater: w.unit(filmWater),
		AirHumidity: w.unit(airHumidity), CoatWeight: w.unit(coatWeight), Carbon: w.unit(carbon), Pressure: w.unit(pressure),
		FilmThickness: w.unit(filmThickness), Length: w.unit(length), Power: w.unit(power), Area: w.unit(area),
		SmallArea: w.unit(smallArea), SmallMass: w.unit(smallMass), Mass: w.unit(mass), Energy: w.energyUnit(), Work: job.Display{Symbol: "kWh", Factor: 1 / kilowattHour, Digits: 3}, Heat: w.heatUnit(),
	}
}
