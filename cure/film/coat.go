package film

import "github.com/drywright/drywright/cure/kinetics"

const (
	// WaterHeatCapacity is the specific heat of liquid water [J/(kg K)], taken constant so that the film's temperature
	// follows from its enthalpy in closed form; between 0 and 120 degC it errs by 1.4 % at most (IAPWS-95).
	WaterHeatCapacity = 4190.0
	// EnthalpyZero is the temperature at which the enthalpy of film and liquid water counts as zero [K].
	EnthalpyZero = 273.15
)

// Coat is what the film is made of.
type Coat struct {
	Solids         float64 // m_s, dry solids [kg/m2]
	Diffusion      Diffusion
	Transport      Transport     // nil: LiquidDiffusion
	Isotherm       Isotherm      // at 25 degC
	HeatOfSorption float64       // q, what binds water beyond the heat of evaporation [J/kg]
	HeatCapacity   float64       // of the dry solids [J/(kg K)]
	Conductivity   float64       // of the wet film [W/(m K)], for its Biot number only
	Cure           *kinetics.Law // nil: no crosslinker
}

// Thickness returns the film's thickness [m] for the mean water content x [kg/kg].
func (c *Coat) Thickness(x float64) float64 {
	return c.Solids * (1/c.Diffusion.PolymerDensity + x/WaterDensity)
}

// packedShare is the part of the random close packing from which a layer counts as packed.
const packedShare = 0.98

// packedWater is the water content from which down particles touch [kg/kg].
func (c *Coat) packedWater() float64 { return c.Diffusion.Water(packedShare * c.Diffusion.Packing) }

// Back says what the side of the part without film exchanges.
type Back int

// The kinds of back.
const (
	Exposed   Back = iota // convection and radiation with the air of the same route
	Insulated             // nothing
	Mirrored              // a second coated face: the middle of the part is a plane of symmetry
)

// Part is the wall that carries the film, cut in cells of equal thickness.
type Part struct {
	Thickness    float64 // b [m]
	Density      float64 // rho [kg/m3]
	HeatCapacity float64 // c [J/(kg K)]
	Conductivity float64 // k [W/(m K)]
	Back         Back
	Cells        int
	Carrier      *Carrier // nil: none
}

// Carrier is a lump of rack or hook in contact with the part's back, per square metre of coated face.
type Carrier struct {
	Capacity float64 // [J/(m2 K)]
	Contact  float64 // [W/(m2 K)]
	AirSide  float64 // [W/(m2 K)]
}

// depth is the thickness that belongs to one coated face [m].
func (p *Part) depth() float64 {
	if p.Back == Mirrored {
		return p.Thickness / 2
	}
	return p.Thickness
}

// cellCapacity is the heat capacity of one cell [J/(m2 K)].
func (p *Part) cellCapacity() float64 {
	return p.Density * p.HeatCapacity * p.depth() / float64(p.Cells)
}

// cellConductance is the conductance of one cell from side to side [W/(m2 K)].
func (p *Part) cellConductance() float64 { return p.Conductivity * float64(p.Cells) / p.depth() }
