package film

import "github.com/drywright/drywright/cure/air"

// Ledger counts what has crossed the boundary of film, part and carrier since the start, per square metre of coated
// face [J/m2].
type Ledger struct {
	Convected     float64 // into the coated face (or the pile's tips) from the air
	Radiated      float64 // into the coated face (or the tips) from walls and lamps
	Vapour        float64 // carried off by the vapour, as enthalpy where it leaves the tips
	BackConvected float64 // into the back face from the air
	BackRadiated  float64 // into the back face from the walls
	Carried       float64 // into the carrier from the air
	Warmed        float64 // from the air to warm the vapour from where it left to the air's temperature
}

// Positions of the counts.
const (
	convected = iota
	radiated
	vapour
	backConvected
	backRadiated
	carried
	warmed
	ledgerSize
)

// State is film, part and carrier at one moment. It outlives the systems of single stages.
type State struct {
	Water      []float64 // X in each film cell, the part's side first [kg/kg]
	Conversion []float64 // alpha in each film cell; empty without a crosslinker
	Part       []float64 // temperature of each part cell, the film's side first [K]
	Enthalpy   float64   // of film and pile [J/m2], zero at EnthalpyZero with liquid water; lower by its binding
	Mass       float64   // water in the film [kg/m2]; equals the sum over the cells
	Dry        float64   // porous skin: water of the dry layer X_d [kg/kg]
	Fibre      float64   // water in the fibre [kg/m2]
	Carrier    float64   // carrier temperature [K]; used when the part has one
	Ledger     Ledger
}

// NewState returns a fresh coat of uniform water content x [kg/kg] on a part, all at temperature T [K].
func NewState(coat *Coat, grid *Grid, part *Part, x, T float64) State {
	n := len(grid.Width)
	s := State{Water: make([]float64, n), Part: make([]float64, part.Cells), Carrier: T}
	for i := range s.Water {
		s.Water[i] = x
		s.Mass += grid.Width[i] * x
	}
	if coat.Cure != nil {
		s.Conversion = make([]float64, n)
	}
	for i := range s.Part {
		s.Part[i] = T
	}
	bound, _ := coat.binding(s.Mass)
	s.Enthalpy = (coat.Solids*coat.HeatCapacity+s.Mass*WaterHeatCapacity)*(T-EnthalpyZero) - bound
	return s
}

// Held returns the water of film and fibre [kg/m2].
func (s *State) Held() float64 { return s.Mass + s.Fibre }

// Heat returns the enthalpy of film, pile, part and carrier [J/m2].
func (s *State) Heat(part *Part) float64 {
	h := s.Enthalpy
	for _, t := range s.Part {
		h += part.cellCapacity() * (t - EnthalpyZero)
	}
	if part.Carrier != nil {
		h += part.Carrier.Capacity * (s.Carrier - EnthalpyZero)
	}
	return h
}

// vapourEnthalpy is the enthalpy of vapour leaving the film at temperature T [J/kg], on the film's scale.
func vapourEnthalpy(T float64) float64 {
	return WaterHeatCapacity*(T-EnthalpyZero) + air.LatentHeat(T)
}
