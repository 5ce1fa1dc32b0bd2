package film

import (
	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/transfer"
)

// Climate is what a face of the part sees at one moment.
type Climate struct {
	Air  air.State
	Wall float64 // temperature of the surrounding walls [K]
}

// Drawn is what the part and its carrier take from the surroundings and give to them, per square metre of coated face.
type Drawn struct {
	FromAir   float64 // heat taken from the air, that for warming the vapour included [W/m2]
	FromWalls float64 // heat taken from the walls by radiation [W/m2]
	Vapour    float64 // water given to the air [kg/(m2 s)]
}

// Surroundings is the air and the walls around a part over one stage of a route. It may have states of its own (air
// and wall temperature of an oven, humidity of a room), which are integrated together with the film.
type Surroundings interface {
	// States is the number of own states.
	States() int
	// Scale is the difference in own state i that matters; its absolute tolerance is the relative one times this. It is +Inf for
	// counts, which stand last and on which nothing depends, neither Climate nor Rates.
	Scale(i int) float64
	// Climate returns air and walls at time t [s] for the own states.
	Climate(t float64, own []float64) Climate
	// Rates writes the time derivatives of the own states.
	Rates(t float64, own []float64, d Drawn, out []float64)
	// Varies reports whether Climate or Rates depend on t other than through the own states.
	Varies() bool
}

// Face is how one side of the part meets the air.
type Face struct {
	Law        transfer.Law
	Emissivity float64
	Pile       *transfer.Pile
	Factor     float64 // multiplies the coefficient
	Absorbed   float64 // infrared taken up at the fibre tips, or by the bare face [W/m2]
	Passed     float64 // infrared that passes the tips and is taken up by the film [W/m2]
}

// surface joins a face with the climate of the moment.
func (f *Face) surface(c Climate) transfer.Surface {
	return transfer.Surface{Air: c.Air, Wall: c.Wall, Law: f.Law, Emissivity: f.Emissivity, Pile: f.Pile, Factor: f.Factor,
		AbsorbedFlux: f.Absorbed, FilmAbsorbed: f.Passed}
}

// Exposure is one stage as the part sees it.
type Exposure struct {
	Around Surroundings
	Front  Face
	Back   Face // used when the back is exposed
	// PileCapacity is the areal heat capacity of the fibre on the film [J/(m2 K)], part of the film's.
	PileCapacity float64
	// Regain is the water [kg/m2] that the fibre would hold in saturated air if all its curve were as straight as its
	// beginning (see function Regain); 0: none. It needs a pile.
	Regain float64
}
