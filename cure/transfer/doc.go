// Package transfer holds heat and mass transfer between a surface and moist air: published correlations for the
// coefficient, the analogy that gives mass transfer from it, high-flux corrections, radiation, a fibre pile in series,
// and the exchange of a wet or drying face that all of these make together.
//
// Three layers. Functions: one per published correlation, in dimensionless numbers, with its range and source. Laws:
// where a coefficient comes from (given, parallel flow, buoyancy, both, fields of slots or round nozzles); a Law says
// its provenance and, outside its published range, still answers and gives a Caution. Surface: one face of the part,
// whose Exchange is the flux of vapour and of heat at a film temperature and a water activity.
//
// Units are SI, temperatures kelvin, y is the mole fraction of vapour; fluxes are per square metre of face and count
// from the face to the air for vapour, towards the face for heat. The package imports only air, allocates nothing in
// Exchange and Flux, and is smooth in its arguments, because an integrator differentiates it.
//
// Where it goes beyond the model's text: with a pile, the vapour resistances in series are each taken at the mean
// temperature of their own layer (tips and air; film and tips), and the coefficient at the state of the tips. A surface
// has one state: for every law the vapour flux rises with the water activity. Three smoothings of our own see to it,
// each described where it stands: opposed buoyancies (Buoyant), suction and, with a pile, blowing in steam
// (Prepared.seen).
package transfer

// Caution says that a correlation answered outside the range in which it was published. Code is stable, Text for
// people.
type Caution struct{ Code, Text string }

// Provenance says what a law is and where it comes from.
type Provenance struct{ Name, Equation, Source, Range string }
