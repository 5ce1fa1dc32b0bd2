package job

import "github.com/drywright/drywright/cure/unit"

// quantity is what a number measures and the units that workshops read it in.
type quantity struct {
	unit        string // in SI
	display, us Display
}

// in gives a field the units of a quantity.
func (f Field) in(q quantity) Field {
	f.Unit, f.Display, f.USDisplay = q.unit, q.display, q.us
	return f
}

// Spans of time and the zero of degrees Celsius, for the tables of fields.
const (
	zeroCelsius = 273.15
	minute      = 60.0
	hour        = 3600.0
	day         = 86400.0
)

// shown is a unit of the one table, as a display of so many significant digits.
func shown(d unit.Dimension, symbol string, digits int) Display {
	u, known := unit.Get(d, symbol)
	if !known {
		panic("job: no unit " + symbol) // a slip in the lists below, which every test meets
	}
	return Display{d, symbol, u.Factor(), -u.Zero, digits}
}

// quantityOf is read in one unit outside of the United States and in another inside.
func quantityOf(d unit.Dimension, si string, siDigits int, us string, usDigits int) quantity {
	return quantity{d.SI(), shown(d, si, siDigits), shown(d, us, usDigits)}
}

// both is read in one unit everywhere.
func both(d unit.Dimension, symbol string, digits int) quantity {
	return quantityOf(d, symbol, digits, symbol, digits)
}

func number(digits int) quantity { return both(unit.Number, "", digits) }
func plain() quantity            { return number(4) }
func fraction() quantity         { return both(unit.Share, "%", 3) }

func temperature() quantity     { return quantityOf(unit.Temperature, "°C", 4, "°F", 4) }
func temperatureStep() quantity { return quantityOf(unit.TemperatureStep, "K", 3, "°F", 3) }

func minutes() quantity { return both(unit.Duration, "min", 4) }
func hours() quantity   { return both(unit.Duration, "h", 4) }
func days() quantity    { return both(unit.Duration, "d", 4) }

func length() quantity         { return quantityOf(unit.Length, "m", 3, "ft", 3) }
func smallLength() quantity    { return quantityOf(unit.Length, "mm", 3, "in", 3) }
func filmLength() quantity     { return quantityOf(unit.Length, "µm", 3, "mil", 3) }
func particleLength() quantity { return both(unit.Length, "nm", 3) }

func coatWeight() quantity    { return quantityOf(unit.ArealMass, "g/m²", 4, "oz/yd²", 3) }
func arealMass() quantity     { return quantityOf(unit.ArealMass, "kg/m²", 3, "lb/ft²", 3) }
func density() quantity       { return quantityOf(unit.Density, "kg/m³", 4, "lb/ft³", 4) }
func vapourDensity() quantity { return quantityOf(unit.Density, "g/m³", 3, "gr/ft³", 3) }
func humidityRatio() quantity { return quantityOf(unit.MassRatio, "g/kg", 3, "gr/lb", 3) }
func regain() quantity        { return both(unit.MassRatio, "%", 3) }
func waterContent() quantity  { return both(unit.MassRatio, "g/kg", 3) }

func heatCapacity() quantity {
	return quantityOf(unit.HeatCapacity, "J/(kg·K)", 4, "Btu/(lb·°F)", 3)
}
func conductivity() quantity {
	return quantityOf(unit.Conductivity, "W/(m·K)", 3, "Btu/(h·ft·°F)", 3)
}
func transferCoefficient() quantity {
	return quantityOf(unit.TransferCoefficient, "W/(m²·K)", 3, "Btu/(h·ft²·°F)", 3)
}
func conductance() quantity      { return quantityOf(unit.Conductance, "W/K", 3, "Btu/(h·°F)", 3) }
func bodyHeatCapacity() quantity { return quantityOf(unit.BodyHeatCapacity, "kJ/K", 3, "Btu/°F", 3) }
func heatFlux() quantity         { return quantityOf(unit.HeatFlux, "kW/m²", 3, "Btu/(h·ft²)", 3) }
func specificHeat() quantity     { return quantityOf(unit.SpecificHeat, "kJ/kg", 3, "Btu/lb", 3) }
func power() quantity            { return quantityOf(unit.Power, "kW", 3, "kBtu/h", 3) }

func airSpeed() quantity      { return quantityOf(unit.Speed, "m/s", 3, "ft/min", 3) }
func lineSpeed() quantity     { return quantityOf(unit.Speed, "m/min", 3, "ft/min", 3) }
func volumeFlow() quantity    { return quantityOf(unit.VolumeFlow, "m³/h", 3, "ft³/min", 3) }
func volume() quantity        { return quantityOf(unit.Volume, "m³", 3, "ft³", 3) }
func areaPerLength() quantity { return quantityOf(unit.AreaPerLength, "m²/m", 3, "ft²/ft", 3) }
func airChanges() quantity    { return both(unit.Rate, "1/h", 3) }
func waterFlow() quantity     { return quantityOf(unit.MassFlow, "kg/d", 3, "lb/d", 3) }
func area() quantity          { return quantityOf(unit.Area, "m²", 3, "ft²", 3) }
func pressure() quantity      { return quantityOf(unit.Pressure, "kPa", 4, "inHg", 4) }

// fanPressure is a gauge pressure of fans and nozzles.
func fanPressure() quantity { return quantityOf(unit.Pressure, "Pa", 3, "inH₂O", 3) }

func diffusivity() quantity     { return both(unit.Diffusivity, "µm²/s", 3) }
func molarEnergy() quantity     { return both(unit.MolarEnergy, "kJ/mol", 3) }
func frequencyFactor() quantity { return both(unit.Rate, "1/s", 4) }

func perHour() quantity         { return both(unit.PricePerHour, "1/h", 4) }
func perArea() quantity         { return quantityOf(unit.PricePerArea, "1/m²", 4, "1/ft²", 4) }
func perKilowattHour() quantity { return both(unit.PricePerEnergy, "1/kWh", 4) }
func carbonIntensity() quantity { return quantityOf(unit.CarbonIntensity, "kg/kWh", 3, "lb/kWh", 3) }
