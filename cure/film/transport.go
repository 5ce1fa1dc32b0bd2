package film

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

// Transport is the mechanism by which water moves through the film and leaves it: LiquidDiffusion or PorousSkin.
type Transport interface {
	// water lays the film's water out over a grid.
	water(c *Coat, g *Grid) water
}

// demand is what the air takes from the film's surface: transfer.Prepared, or transfer.Moist where the fibre above it holds
// moisture.
type demand interface {
	// Flux returns j [kg/(m2 s)] at the water activity a of the surface, and dj/da.
	Flux(a float64) (j, slope float64)
	// SaturatedFraction returns the mole fraction of vapour at activity 1.
	SaturatedFraction() float64
	// Outside returns the mole fraction at the surface with which no vapour flows.
	Outside() float64
}

// water is a film's water as a System works with it. Its own unknowns u stand at the end of the system's band; of them the
// boundary sees the last alone. The film's water mass M [kg/m2] is an unknown of the system's border, whatever the transport.
type water interface {
	// unknowns is the number of own unknowns, at least 1.
	unknowns() int
	// seesMass reports whether the contact hangs on M otherwise than through the film's temperature.
	seesMass() bool
	// pack writes a state as unknowns, unpack reads it back.
	pack(st *State, u []float64)
	unpack(u []float64, mass float64, st *State)
	// admissible reports whether the film holds no negative water; bound mends an interpolated state that does.
	admissible(u []float64, mass float64) bool
	bound(u []float64, mass *float64)

	// cells returns X of each cell [kg/kg], valid until the next call.
	cells(u []float64, mass float64) []float64
	// contact finds where the film's supply and the air's demand of water meet, at the film temperature T [K]; a is the air
	// around, last the last unknown. expected is about the activity that will come out, NaN where nobody knows. drift is what
	// else changes the last unknown.
	contact(T, last, mass float64, a air.State, face demand, expected float64) (c Contact, drift float64)
	// lastRate is what the boundary does to the last unknown: linear in flux [kg/(m2 s)] and drift.
	lastRate(flux, drift float64) float64
	// rates writes the rates of all unknowns.
	rates(T float64, u []float64, flux, drift float64, out []float64)

	// linearise adds to the Jacobian what does not pass the boundary: the unknowns are the band's from first on, and perBorder
	// are the derivatives of T by the leading border unknowns. It also prepares cellSlopes.
	linearise(T float64, u []float64, mass float64, perBorder []float64, a *num.Arrow, first int)
	// seat is the unknown that X of cell i follows, cellSlopes its derivatives by that unknown and by M.
	seat(i int) int
	cellSlopes(i int) (byUnknown, byMass float64)
	// conserves reports whether the water of the unknowns, as cells, and M are counted twice and must stay equal.
	conserves() bool

	// surface returns X_s [kg/kg] at a contact.
	surface(T, last, mass float64, c Contact) float64
	// packed returns the thickness [m] of the layer at the surface in which particles touch.
	packed(T float64, u []float64, mass float64, c Contact) float64
	// closed reports whether the surface at a contact is closed over the water, X_s being at or below limit [kg/kg].
	closed(T float64, c Contact, limit float64) bool
}

// transport is the coat's, liquid diffusion where none is stated.
func (c *Coat) transport() Transport {
	if c.Transport == nil {
		return LiquidDiffusion{}
	}
	return c.Transport
}
