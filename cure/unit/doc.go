// Package unit is the one table of units and the reader of numbers that people type with them: "4 mil", "0,15 mm", "1 1/2 in",
// "2 h 30 min", "250 F". It changes nothing but numbers and knows no other package than fault.
//
// # What is understood
//
// A number with a decimal point or comma; spaces, apostrophes and the other mark between thousands; an exponent; a fraction, alone or
// behind a whole number ("1/16", "1 1/2", "1½"); then a unit of the dimension asked for, or none, which means the unit of the field. Several of
// them, from large to small, add up ("2 h 30 min", "5' 6\""). Case, spaces, full stops, brackets and raised figures make no difference
// in a unit: "oz/yd2" and "oz / yd²" are one.
//
// # What is refused
//
// Whatever has two readings: "1,200" where the decimal mark is a point (1.2 or 1200), "2 h 30" (30 of what), "2:30", and units of the
// same name and several sizes, which the table leaves out (gallon, ton, calorie).
//
// The page reads by the same rules from the same table; testdata/units/readings.json holds both to the same answers.
//
// # Sources
//
// NIST Special Publication 811 (2008), appendix B: metric equivalents, conventional inches of water and mercury. International yard
// and pound agreement of 1959: 0.9144 m and 0.45359237 kg. Btu: International Table, 1055.05585262 J. Kelvin and degree Celsius: SI
// Brochure, 9th edition. Tex: ISO 1144.
package unit
