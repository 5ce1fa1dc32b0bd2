package unit

// Dimension is what a number measures. Two that share SI units but not their ways of reading stand apart: a temperature and
// a difference of temperatures, a share and a ratio of masses.
type Dimension string

// The dimensions.
const (
	Number              Dimension = "number" // no unit at all
	Share               Dimension = "share"
	Temperature         Dimension = "temperature"
	TemperatureStep     Dimension = "temperature_step"
	Duration            Dimension = "duration"
	Length              Dimension = "length"
	Area                Dimension = "area"
	Volume              Dimension = "volume"
	Mass                Dimension = "mass"
	ArealMass           Dimension = "areal_mass"
	Density             Dimension = "density"
	LinearDensity       Dimension = "linear_density" // of fibres
	PerArea             Dimension = "number_per_area"
	MassRatio           Dimension = "mass_ratio"
	Speed               Dimension = "speed"
	VolumeFlow          Dimension = "volume_flow"
	MassFlow            Dimension = "mass_flow"
	Pressure            Dimension = "pressure"
	Rate                Dimension = "rate"
	AreaPerLength       Dimension = "area_per_length"
	Power               Dimension = "power"
	HeatFlux            Dimension = "heat_flux"
	SpecificHeat        Dimension = "specific_heat" // of melting, evaporation, reaction
	HeatCapacity        Dimension = "heat_capacity"
	BodyHeatCapacity    Dimension = "body_heat_capacity"
	Conductivity        Dimension = "conductivity"
	TransferCoefficient Dimension = "transfer_coefficient"
	Conductance         Dimension = "conductance"
	Diffusivity         Dimension = "diffusivity"
	MolarEnergy         Dimension = "molar_energy"
	PricePerHour        Dimension = "price_per_hour"
	PricePerArea        Dimension = "price_per_area"
	PricePerEnergy      Dimension = "price_per_energy"
	CarbonIntensity     Dimension = "carbon_intensity"
)

// Definitions; the sources are those of the package.
const (
	zeroCelsius = 273.15
	zeroRankine = 459.67 // 0 °F on the Rankine scale
	inch        = 0.0254
	foot        = 12 * inch
	yard        = 36 * inch
	pound       = 0.45359237
	ounce       = pound / 16
	grain       = pound / 7000
	btu         = 1055.05585262 // International Table
	gravity     = 9.80665       // standard acceleration
	usGallon    = 231 * inch * inch * inch
	minute      = 60.0
	hour        = 3600.0
	day         = 86400.0
)

// table is everything that can be read. A row: symbol, times, over, zero, further spellings as Fold leaves them. In a dimension the unit
// that workshops use most stands first.
var table = [...]scale{
	{Number, "", []row{{"", 1, 1, 0, ""}}},
	{Share, "", []row{
		{"%", 1, 100, 0, "percent pct prozent %rh %rf %dry wt% vol%"},
		{"1", 1, 1, 0, "fraction kg/kg g/g"},
		{"‰", 1, 1000, 0, "permille promille"},
	}},
	{Temperature, "K", []row{
		{"°C", 1, 1, zeroCelsius, "degc degreesc celsius degreescelsius gradc grad"},
		{"°F", 5, 9, zeroRankine, "degf degreesf fahrenheit degreesfahrenheit"},
		{"K", 1, 1, 0, "kelvin"},
	}},
	{TemperatureStep, "K", []row{
		{"K", 1, 1, 0, "kelvin degk"},
		{"°C", 1, 1, 0, "degc degreesc celsius"},
		{"°F", 5, 9, 0, "degf degreesf fahrenheit"},
	}},
	{Duration, "s", []row{
		{"s", 1, 1, 0, "sec secs second seconds sek sekunde sekunden"},
		{"min", minute, 1, 0, "mins minute minutes minuten"},
		{"h", hour, 1, 0, "hr hrs hour hours std stunde stunden heures"},
		{"d", day, 1, 0, "day days tag tage jours"},
	}},
	{Length, "m", []row{
		{"mm", 1, 1e3, 0, "millimeter millimetre millimeters millimetres"},
		{"µm", 1, 1e6, 0, "micron microns micrometer micrometre micrometers micrometres mikrometer"},
		{"nm", 1, 1e9, 0, "nanometer nanometre nanometers nanometres"},
		{"cm", 1, 1e2, 0, "centimeter centimetre zentimeter"},
		{"m", 1, 1, 0, "meter metre meters metres"},
		{"mil", inch, 1000, 0, "mils thou thous"},
		{"in", inch, 1, 0, `" inch inches zoll`},
		{"ft", foot, 1, 0, "' foot feet fuss fuß"},
		{"yd", yard, 1, 0, "yard yards"},
	}},
	{Area, "m²", []row{
		{"m²", 1, 1, 0, "sqm qm"},
		{"cm²", 1, 1e4, 0, "sqcm qcm"},
		{"mm²", 1, 1e6, 0, "sqmm"},
		{"ft²", foot * foot, 1, 0, "sqft"},
		{"in²", inch * inch, 1, 0, "sqin"},
		{"yd²", yard * yard, 1, 0, "sqyd"},
	}},
	{Volume, "m³", []row{
		{"m³", 1, 1, 0, "cbm"},
		{"L", 1, 1e3, 0, "liter litre liters litres"},
		{"ft³", foot * foot * foot, 1, 0, "cuft"},
	}},
	{Mass, "kg", []row{
		{"g", 1, 1e3, 0, "gram grams gramm"},
		{"kg", 1, 1, 0, "kilogram kilograms kilogramm"},
		{"mg", 1, 1e6, 0, "milligram milligrams milligramm"},
		{"lb", pound, 1, 0, "lbs pound pounds"},
		{"oz", ounce, 1, 0, "ounce ounces"},
		{"gr", grain, 1, 0, "grain grains"},
	}},
	{ArealMass, "kg/m²", []row{
		{"g/m²", 1, 1e3, 0, "gsm g/sqm g/qm gramm/m2"},
		{"kg/m²", 1, 1, 0, ""},
		{"mg/cm²", 1, 100, 0, ""},
		{"oz/yd²", ounce, yard * yard, 0, "oz/sqyd osy"},
		{"oz/ft²", ounce, foot * foot, 0, "oz/sqft"},
		{"lb/ft²", pound, foot * foot, 0, "lb/sqft lbs/ft2 lbs/sqft"},
	}},
	{Density, "kg/m³", []row{
		{"kg/m³", 1, 1, 0, "g/l"},
		{"g/cm³", 1e3, 1, 0, "g/cc g/ml kg/l kg/dm3 t/m3"},
		{"g/m³", 1, 1e3, 0, ""},
		{"lb/ft³", pound, foot * foot * foot, 0, "lb/cuft lbs/ft3 pcf"},
		{"lb/US gal", pound, usGallon, 0, "lbs/usgal"},
		{"gr/ft³", grain, foot * foot * foot, 0, "gr/cuft grains/ft3"},
	}},
	{LinearDensity, "kg/m", []row{
		{"dtex", 1, 1e7, 0, "decitex"},
		{"tex", 1, 1e6, 0, ""},
		{"den", 1, 9e6, 0, "denier"},
		{"kg/m", 1, 1, 0, ""},
	}},
	{PerArea, "1/m²", []row{
		{"1/mm²", 1e6, 1, 0, "/mm2"},
		{"1/cm²", 1e4, 1, 0, "/cm2"},
		{"1/m²", 1, 1, 0, "/m2"},
		{"1/in²", 1, inch * inch, 0, "/in2 /sqin"},
	}},
	{MassRatio, "kg/kg", []row{
		{"g/kg", 1, 1e3, 0, "mg/g"},
		{"kg/kg", 1, 1, 0, "g/g lb/lb"},
		{"%", 1, 100, 0, "percent pct prozent wt% %dry g/100g"},
		{"gr/lb", 1, 7000, 0, "grains/lb gpp"},
	}},
	{Speed, "m/s", []row{
		{"m/s", 1, 1, 0, "m/sec"},
		{"m/min", 1, minute, 0, "mpm"},
		{"cm/s", 1, 100, 0, ""},
		{"mm/s", 1, 1000, 0, ""},
		{"km/h", 1000, hour, 0, "kph"},
		{"ft/min", foot, minute, 0, "fpm"},
		{"ft/s", foot, 1, 0, "fps ft/sec"},
		{"in/min", inch, minute, 0, "ipm"},
	}},
	{VolumeFlow, "m³/s", []row{
		{"m³/h", 1, hour, 0, "m3/hr cbm/h"},
		{"m³/min", 1, minute, 0, ""},
		{"m³/s", 1, 1, 0, ""},
		{"L/s", 1, 1000, 0, ""},
		{"L/min", 1, 1000 * minute, 0, "lpm"},
		{"ft³/min", foot * foot * foot, minute, 0, "cfm cuft/min"},
		{"ft³/h", foot * foot * foot, hour, 0, "cfh cuft/h"},
	}},
	{MassFlow, "kg/s", []row{
		{"kg/h", 1, hour, 0, "kg/hr"},
		{"kg/d", 1, day, 0, "kg/day"},
		{"kg/s", 1, 1, 0, ""},
		{"g/s", 1, 1000, 0, ""},
		{"g/min", 1, 1000 * minute, 0, ""},
		{"lb/h", pound, hour, 0, "lb/hr lbs/h lbs/hr"},
		{"lb/d", pound, day, 0, "lb/day lbs/day"},
	}},
	{Pressure, "Pa", []row{
		{"Pa", 1, 1, 0, "n/m2 pascal"},
		{"hPa", 100, 1, 0, ""},
		{"kPa", 1e3, 1, 0, ""},
		{"mbar", 100, 1, 0, "millibar"},
		{"bar", 1e5, 1, 0, ""},
		{"inH₂O", 249.0889, 1, 0, "inwg inwc inwater \"wg \"wc \"h2o"}, // conventional
		{"mmH₂O", gravity, 1, 0, "mmwg mmwc mmws"},
		{"inHg", 3386.389, 1, 0, "\"hg"}, // conventional
		{"mmHg", 133.3224, 1, 0, ""},
		{"psi", pound * gravity, inch * inch, 0, "lbf/in2"},
		{"atm", 101325, 1, 0, ""},
	}},
	{Rate, "1/s", []row{
		{"1/s", 1, 1, 0, "/s"},
		{"1/min", 1, minute, 0, "/min"},
		{"1/h", 1, hour, 0, "/h /hr 1/hr ach"},
	}},
	{AreaPerLength, "m²/m", []row{
		{"m²/m", 1, 1, 0, "sqm/m qm/m"},
		{"ft²/ft", foot, 1, 0, "sqft/ft"},
	}},
	{Power, "W", []row{
		{"kW", 1e3, 1, 0, "kilowatt"},
		{"W", 1, 1, 0, "watt"},
		{"kBtu/h", 1000 * btu, hour, 0, "kbtu/hr mbh"},
		{"Btu/h", btu, hour, 0, "btu/hr btuh"},
	}},
	{HeatFlux, "W/m²", []row{
		{"kW/m²", 1e3, 1, 0, ""},
		{"W/m²", 1, 1, 0, ""},
		{"W/cm²", 1e4, 1, 0, ""},
		{"W/in²", 1, inch * inch, 0, "w/sqin"},
		{"Btu/(h·ft²)", btu, hour * foot * foot, 0, "btu/hrft2 btu/h/ft2 btu/hr/ft2"},
	}},
	{SpecificHeat, "J/kg", []row{
		{"kJ/kg", 1e3, 1, 0, "j/g"},
		{"J/kg", 1, 1, 0, ""},
		{"Btu/lb", btu, pound, 0, "btu/lbs"},
	}},
	{HeatCapacity, "J/(kg·K)", []row{
		{"J/(kg·K)", 1, 1, 0, "j/kg/k j/kgc"},
		{"kJ/(kg·K)", 1e3, 1, 0, "kj/kg/k kj/kgc j/gk j/gc"},
		{"Btu/(lb·°F)", btu * 9, pound * 5, 0, "btu/lb/f btu/lbf btu/lbdegf"},
	}},
	{BodyHeatCapacity, "J/K", []row{
		{"kJ/K", 1e3, 1, 0, "kj/c"},
		{"J/K", 1, 1, 0, "j/c"},
		{"Btu/°F", btu * 9, 5, 0, "btu/degf"},
	}},
	{Conductivity, "W/(m·K)", []row{
		{"W/(m·K)", 1, 1, 0, "w/m/k w/mc"},
		{"mW/(m·K)", 1, 1e3, 0, ""},
		{"Btu/(h·ft·°F)", btu * 9, hour * foot * 5, 0, "btu/hrftf btu/h/ft/f btu/hr/ft/f"},
		{"Btu·in/(h·ft²·°F)", btu * inch * 9, hour * foot * foot * 5, 0, "btuin/hrft2f"},
	}},
	{TransferCoefficient, "W/(m²·K)", []row{
		{"W/(m²·K)", 1, 1, 0, "w/m2/k w/m2c"},
		{"Btu/(h·ft²·°F)", btu * 9, hour * foot * foot * 5, 0, "btu/hrft2f btu/h/ft2/f btu/hr/ft2/f"},
	}},
	{Conductance, "W/K", []row{
		{"W/K", 1, 1, 0, "w/c"},
		{"kW/K", 1e3, 1, 0, "kw/c"},
		{"Btu/(h·°F)", btu * 9, hour * 5, 0, "btu/hrf btu/h/f"},
	}},
	{Diffusivity, "m²/s", []row{
		{"m²/s", 1, 1, 0, ""},
		{"cm²/s", 1, 1e4, 0, ""},
		{"mm²/s", 1, 1e6, 0, ""},
		{"µm²/s", 1, 1e12, 0, ""},
	}},
	{MolarEnergy, "J/mol", []row{
		{"kJ/mol", 1e3, 1, 0, ""},
		{"J/mol", 1, 1, 0, ""},
	}},
	{PricePerHour, "1/h", []row{{"1/h", 1, 1, 0, "/h"}}},
	{PricePerArea, "1/m²", []row{
		{"1/m²", 1, 1, 0, "/m2"},
		{"1/ft²", 1, foot * foot, 0, "/ft2 /sqft"},
	}},
	// The kilowatt-hour stays in these two because bills are written in it.
	{PricePerEnergy, "1/kWh", []row{{"1/kWh", 1, 1, 0, "/kwh"}}},
	{CarbonIntensity, "kg/kWh", []row{
		{"kg/kWh", 1, 1, 0, ""},
		{"g/kWh", 1, 1000, 0, ""},
		{"lb/kWh", pound, 1, 0, "lbs/kwh"},
	}},
}
