package job

// quantity is an SI unit with the units that workshops read it in.
type quantity struct {
	unit        string
	display, us Display
}

// in gives a field the units of a quantity.
func (f Field) in(q quantity) Field {
	f.Unit, f.Display, f.USDisplay = q.unit, q.display, q.us
	return f
}

// Definitions of the units of the United States (international yard and pound agreement of 1959; Btu of the
// International Table) and of common multiples.
const (
	zeroCelsius = 273.15
	inch        = 0.0254
	foot        = 12 * inch
	yard        = 36 * inch
	pound       = 0.45359237
	ounce       = pound / 16
	grain       = pound / 7000
	btu         = 1055.05585262
	rankine     = 5.0 / 9.0
	minute      = 60.0
	hour        = 3600.0
	day         = 86400.0
)

func same(unit string, digits int) quantity {
	d := Display{unit, 1, 0, digits}
	return quantity{unit, d, d}
}

func both(unit string, d Display) quantity { return quantity{unit, d, d} }

func plain() quantity    { return same("", 4) }
func fraction() quantity { return both("", Display{"%", 100, 0, 3}) }

func temperature() quantity {
	return quantity{"K", Display{"°C", 1, -zeroCelsius, 4}, Display{"°F", 1 / rankine, 32 - zeroCelsius/rankine, 4}}
}

func temperatureStep() quantity {
	return quantity{"K", Display{"K", 1, 0, 3}, Display{"°F", 1 / rankine, 0, 3}}
}

func minutes() quantity { return both("s", Display{"min", 1 / minute, 0, 4}) }
func hours() quantity   { return both("s", Display{"h", 1 / hour, 0, 4}) }
func days() quantity    { return both("s", Display{"d", 1 / day, 0, 4}) }

func length() quantity { return quantity{"m", Display{"m", 1, 0, 3}, Display{"ft", 1 / foot, 0, 3}} }
func smallLength() quantity {
	return quantity{"m", Display{"mm", 1e3, 0, 3}, Display{"in", 1 / inch, 0, 3}}
}
func filmLength() quantity {
	return quantity{"m", Display{"µm", 1e6, 0, 3}, Display{"mil", 1000 / inch, 0, 3}}
}
func particleLength() quantity { return both("m", Display{"nm", 1e9, 0, 3}) }

func coatWeight() quantity {
	return quantity{"kg/m²", Display{"g/m²", 1e3, 0, 4}, Display{"oz/yd²", yard * yard / ounce, 0, 3}}
}
func arealMass() quantity {
	return quantity{"kg/m²", Display{"kg/m²", 1, 0, 3}, Display{"lb/ft²", foot * foot / pound, 0, 3}}
}
func density() quantity {
	return quantity{"kg/m³", Display{"kg/m³", 1, 0, 4}, Display{"lb/ft³", foot * foot * foot / pound, 0, 4}}
}
func vapourDensity() quantity {
	return quantity{"kg/m³", Display{"g/m³", 1e3, 0, 3}, Display{"gr/ft³", foot * foot * foot / grain, 0, 3}}
}
func humidityRatio() quantity {
	return quantity{"kg/kg", Display{"g/kg", 1e3, 0, 3}, Display{"gr/lb", 7000, 0, 3}}
}
func regain() quantity       { return both("kg/kg", Display{"%", 100, 0, 3}) }
func waterContent() quantity { return both("kg/kg", Display{"g/kg", 1000, 0, 3}) }

func heatCapacity() quantity {
	return quantity{"J/(kg·K)", Display{"J/(kg·K)", 1, 0, 4}, Display{"Btu/(lb·°F)", pound * rankine / btu, 0, 3}}
}
func conductivity() quantity {
	return quantity{"W/(m·K)", Display{"W/(m·K)", 1, 0, 3},
		Display{"Btu/(h·ft·°F)", hour * foot * rankine / btu, 0, 3}}
}
func transferCoefficient() quantity {
	return quantity{"W/(m²·K)", Display{"W/(m²·K)", 1, 0, 3},
		Display{"Btu/(h·ft²·°F)", hour * foot * foot * rankine / btu, 0, 3}}
}
func conductance() quantity {
	return quantity{"W/K", Display{"W/K", 1, 0, 3}, Display{"Btu/(h·°F)", hour * rankine / btu, 0, 3}}
}
func bodyHeatCapacity() quantity {
	return quantity{"J/K", Display{"kJ/K", 1e-3, 0, 3}, Display{"Btu/°F", rankine / btu, 0, 3}}
}
func heatFlux() quantity {
	return quantity{"W/m²", Display{"kW/m²", 1e-3, 0, 3}, Display{"Btu/(h·ft²)", hour * foot * foot / btu, 0, 3}}
}
func specificHeat() quantity {
	return quantity{"J/kg", Display{"kJ/kg", 1e-3, 0, 3}, Display{"Btu/lb", pound / btu, 0, 3}}
}
func power() quantity {
	return quantity{"W", Display{"kW", 1e-3, 0, 3}, Display{"kBtu/h", hour / btu / 1000, 0, 3}}
}

func airSpeed() quantity {
	return quantity{"m/s", Display{"m/s", 1, 0, 3}, Display{"ft/min", minute / foot, 0, 3}}
}
func lineSpeed() quantity {
	return quantity{"m/s", Display{"m/min", minute, 0, 3}, Display{"ft/min", minute / foot, 0, 3}}
}
func volumeFlow() quantity {
	return quantity{"m³/s", Display{"m³/h", hour, 0, 3}, Display{"ft³/min", minute / (foot * foot * foot), 0, 3}}
}
func volume() quantity {
	return quantity{"m³", Display{"m³", 1, 0, 3}, Display{"ft³", 1 / (foot * foot * foot), 0, 3}}
}
func areaPerLength() quantity {
	return quantity{"m²/m", Display{"m²/m", 1, 0, 3}, Display{"ft²/ft", 1 / foot, 0, 3}}
}
func airChanges() quantity { return both("1/s", Display{"1/h", hour, 0, 3}) }
func waterFlow() quantity {
	return quantity{"kg/s", Display{"kg/d", day, 0, 3}, Display{"lb/d", day / pound, 0, 3}}
}
func area() quantity {
	return quantity{"m²", Display{"m²", 1, 0, 3}, Display{"ft²", 1 / (foot * foot), 0, 3}}
}
func pressure() quantity {
	return quantity{"Pa", Display{"kPa", 1e-3, 0, 4}, Display{"inHg", 1 / 3386.389, 0, 4}} // mercury at 0 degC
}

// fanPressure is a gauge pressure of fans and nozzles; the column of water is that of 4 degC.
func fanPressure() quantity {
	return quantity{"Pa", Display{"Pa", 1, 0, 3}, Display{"inH₂O", 1 / 249.0889, 0, 3}}
}

func diffusivity() quantity     { return both("m²/s", Display{"µm²/s", 1e12, 0, 3}) }
func molarEnergy() quantity     { return both("J/mol", Display{"kJ/mol", 1e-3, 0, 3}) }
func frequencyFactor() quantity { return same("1/s", 4) }

// The kilowatt-hour stays in these two because bills are written in it.
func perKilowattHour() quantity { return same("1/kWh", 4) }
func carbonIntensity() quantity {
	return quantity{"kg/kWh", Display{"kg/kWh", 1, 0, 3}, Display{"lb/kWh", 1 / pound, 0, 3}}
}
