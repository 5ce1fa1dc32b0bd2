package sim

import "github.com/drywright/drywright/cure/film"

// passage is what one stage did to the part, per square metre of coated face.
type passage struct {
	water   float64     // evaporated in it [kg/m2]
	ledger  film.Ledger // what crossed the boundary in it [J/m2]
	own     []float64   // of the surroundings at its end
	lasted  float64     // [s]
	peak    float64     // highest flux of water leaving [kg/(m2 s)]
	wettest float64     // highest humidity ratio of its air [kg/kg]
}

// less returns the differences of two ledgers.
func less(a, b film.Ledger) film.Ledger {
	return film.Ledger{
		Convected: a.Convected - b.Convected, Radiated: a.Radiated - b.Radiated, Vapour: a.Vapour - b.Vapour,
		BackConvected: a.BackConvected - b.BackConvected, BackRadiated: a.BackRadiated - b.BackRadiated,
		Carried: a.Carried - b.Carried, Warmed: a.Warmed - b.Warmed,
	}
}

// fromAir is the heat that the air gave in a passage [J/m2], that for warming the vapour to the air included.
func (p *passage) fromAir() float64 {
	l := &p.ledger
	return l.Convected + l.BackConvected + l.Carried + l.Warmed
}

// fromWalls is the heat by radiation [J/m2].
func (p *passage) fromWalls() float64 { return p.ledger.Radiated + p.ledger.BackRadiated }
