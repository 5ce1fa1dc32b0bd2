package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

// PorousSkin is the transport of hard or filled films, whose particles do not flow together. Water is spread evenly until
// the polymer's share reaches phi_c; then a front recedes from the surface. Below it the film holds X_c, above it the water
// X_d at rest with the air, and vapour crosses the dry layer in series with pile and air film:
//
//	layer L = p m_s/(rho_p phi_c), p the share of solids passed (the pores keep the volume),
//	j = D_e/L P M/(R T) ln((1 - y_s)/(1 - y_f)),  y_f over the front, y_s at the film's surface
//
// Source: Kiil (2006), Drying of latex films and coatings: Reconsidering the fundamental mechanisms, Progress in Organic
// Coatings 57, 236-250, who fits D_e = 7e-7 m2/s and phi_c = 0.74. Of our own are
//
//   - the front's end. When less than frontEnd of the film is wet, that rest spreads out into an even film at rest with
//     the air, so that the rate falls to nothing smoothly;
//   - X_d following the air with a lag of settling, about the time in which vapour fills such a layer's sorption;
//   - dew. Where the air is damper than any film it condenses on top and is drawn in, past the dry layer.
//
// Pressure of vapour flowing through the pores is left out, hence no boiling under a skin: the front is open to the air.
type PorousSkin struct {
	Diffusivity float64 // D_e of vapour in the dry layer, at the film's own temperature [m2/s]
}

const (
	// frontEnd is the wet share of the film below which it counts as an even film on its way to rest. What it holds above
	// X_d then is a twentieth of X_c, less than any threshold of dryness.
	frontEnd = 0.05
	// leastDrop is the least difference between X_c and X_d, as a share of X_c: a film that holds nearly X_c at rest with the air
	// has no room for a front.
	leastDrop = 0.1
	// settling is the lag of the dry layer's water behind the air [s]: L^2/(2 D_e) times what the polymer holds over what its
	// pores do, 6 s for 0.1 mm at 20 degC.
	settling = 5.0
	// shoulder is the half width [kg/kg] to which the corner of the activity at saturation is rounded, some tolerances of the water
	// content; narrower in a film that takes up less than little.
	shoulder = 1e-3
	// wetted is the activity of the air from which dew leaves no dry layer in its way.
	wetted = 1.1
)

func (p PorousSkin) water(c *Coat, g *Grid) water {
	n := len(g.Width)
	return &skin{coat: c, grid: g, diffusivity: p.Diffusivity, critical: c.Diffusion.Water(c.Diffusion.Closing),
		layer: c.Solids / (c.Diffusion.PolymerDensity * c.Diffusion.Closing),
		x:     make([]float64, n), byDry: make([]float64, n), byMass: make([]float64, n)}
}

// skin has one unknown, X_d. The water of its cells follows from X_d and M.
type skin struct {
	coat        *Coat
	grid        *Grid
	diffusivity float64
	critical    float64 // X_c [kg/kg]
	layer       float64 // thickness of the whole film when dry [m]

	x, byDry, byMass []float64
}

// front is how the water stands: the inner share of the solids holds inner, the rest X_d.
type front struct {
	wet   float64 // what the film holds above X_d over what it holds above it at X_c throughout; above 1 no front has started
	inner float64 // [kg/kg]
	share float64
}

// front places the water. The rest of a front spreads out so that its share grows from frontEnd to all of the film while
// wet falls to 0; there inner has the slope of an even film's mean water, as it has below.
func (k *skin) front(dry, mass float64) front {
	gap := math.Max(k.critical-dry, leastDrop*k.critical)
	w := (mass/k.grid.Solids - dry) / gap
	f := front{wet: w, share: 1}
	rise := w
	if w > 0 {
		rise = math.Max(1, w)
		if z := w / frontEnd; z < 1 {
			rise = z * (z*(3-2*z) + frontEnd*(1-z)*(1-z))
		}
		f.share = w / rise
	}
	f.inner = dry + gap*rise
	return f
}

func (k *skin) unknowns() int  { return 1 }
func (k *skin) seesMass() bool { return true }

func (k *skin) pack(st *State, u []float64) { u[0] = st.Dry }
func (k *skin) unpack(u []float64, mass float64, st *State) {
	st.Dry = u[0]
	copy(st.Water, k.cells(u, mass))
}

func (k *skin) admissible(u []float64, mass float64) bool { return u[0] >= 0 && mass >= 0 }
func (k *skin) bound(u []float64, mass *float64) {
	u[0], *mass = math.Max(0, u[0]), math.Max(0, *mass)
}

func (k *skin) cells(u []float64, mass float64) []float64 {
	k.fill(u[0], mass, k.x)
	return k.x
}

// fill writes the exact means over the cells.
func (k *skin) fill(dry, mass float64, x []float64) {
	f := k.front(dry, mass)
	at := f.share * k.grid.Solids
	for i := range x {
		part := math.Max(0, math.Min(1, (at-k.grid.Edge[i])/k.grid.Width[i]))
		x[i] = math.Max(0, dry+(f.inner-dry)*part) // a film that has given all its water rounds to either side of none
	}
}

func (k *skin) contact(T, dry, mass float64, a air.State, face demand, expected float64) (Contact, float64) {
	s := k.coat.sorption(T)
	f := k.front(dry, mass)
	around := a.Y / face.SaturatedFraction()
	drift := (s.Water(math.Min(1, around)) - dry) / settling
	// A film that repels water stands right at saturation for days; with a sharp corner between wet and dry an integrator would step
	// to and fro over it.
	full := s.Water(1)
	share, _ := saturating(f.inner/full, shoulder/math.Max(full, little))
	activity := s.Activity(full * share)
	passed := math.Max(0, math.Min(1, 1-f.wet)) * uncovered(around)
	if passed == 0 {
		j, _ := face.Flux(activity)
		return Contact{Activity: activity, Flux: j, Wet: activity == 1}, drift
	}
	g := k.diffusivity / (passed * k.layer) * a.P * air.WaterMolarMass / (air.GasConstant * T)
	return cross(face, activity, g, expected), drift
}

// uncovered is the share of the dry layer that dew leaves in the way of vapour, for the air's activity at the film: 1 up to
// saturation, falling smoothly to 0.
func uncovered(around float64) float64 {
	z := (around - 1) / (wetted - 1)
	switch {
	case z <= 0:
		return 1
	case z >= 1:
		return 0
	}
	return (1 - z) * (1 - z) * (1 + 2*z)
}

func (k *skin) lastRate(_, drift float64) float64 { return drift }

func (k *skin) rates(_ float64, _ []float64, flux, drift float64, out []float64) {
	out[0] = k.lastRate(flux, drift)
}

// linearise finds by differences what the cells feel of the two unknowns that they follow.
func (k *skin) linearise(_ float64, u []float64, mass float64, _ []float64, _ *num.Arrow, _ int) {
	heavier := waterStep * k.grid.Solids
	k.fill(u[0], mass, k.x)
	k.fill(u[0]+waterStep, mass, k.byDry)
	k.fill(u[0], mass+heavier, k.byMass)
	for i, x := range k.x {
		k.byDry[i] = (k.byDry[i] - x) / waterStep
		k.byMass[i] = (k.byMass[i] - x) / heavier
	}
}

func (k *skin) seat(int) int                                 { return 0 }
func (k *skin) cellSlopes(i int) (byUnknown, byMass float64) { return k.byDry[i], k.byMass[i] }
func (k *skin) conserves() bool                              { return false }

func (k *skin) surface(_, dry, mass float64, _ Contact) float64 {
	if f := k.front(dry, mass); f.share >= 1 {
		return f.inner
	}
	return dry
}

// packed is all or nothing: an even film packs throughout at once.
func (k *skin) packed(_ float64, _ []float64, mass float64, _ Contact) float64 {
	mean := mass / k.grid.Solids
	if mean > k.coat.packedWater() {
		return 0
	}
	return math.Max(k.layer, k.coat.Thickness(mean))
}

func (k *skin) closed(float64, Contact, float64) bool { return false }
