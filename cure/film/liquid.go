package film

import (
	"math"

	"github.com/drywright/drywright/cure/air"
	"github.com/drywright/drywright/cure/num"
)

// LiquidDiffusion is the transport of soft, film-forming adhesives: all water diffuses to the surface, through the wet
// film as through the closed polymer (see Diffusion). The water content of each cell is an unknown.
type LiquidDiffusion struct{}

func (LiquidDiffusion) water(c *Coat, g *Grid) water {
	n := len(g.Width)
	return &liquid{coat: c, grid: g, slope: make([]float64, n), byT: make([]float64, n), rateT: make([]float64, n)}
}

type liquid struct {
	coat *Coat
	grid *Grid

	potentials  [2]Potential // at the two temperatures last asked for: the state's own and the shifted one
	temperature [2]float64
	latest      int

	slope, byT, rateT []float64
}

// at returns the potential at the temperature T [K]; it stays valid while one other temperature is asked for.
func (l *liquid) at(T float64) *Potential {
	if l.temperature[l.latest] != T {
		l.latest ^= 1
		if l.temperature[l.latest] != T {
			l.temperature[l.latest], l.potentials[l.latest] = T, l.coat.Diffusion.At(T)
		}
	}
	return &l.potentials[l.latest]
}

func (l *liquid) unknowns() int  { return len(l.grid.Width) }
func (l *liquid) seesMass() bool { return false }

func (l *liquid) pack(st *State, u []float64)              { copy(u, st.Water) }
func (l *liquid) unpack(u []float64, _ float64, st *State) { copy(st.Water, u) }

func (l *liquid) admissible(u []float64, _ float64) bool {
	for _, x := range u {
		if !(x >= 0) {
			return false
		}
	}
	return true
}

func (l *liquid) bound(u []float64, _ *float64) {
	for i, x := range u {
		u[i] = math.Max(0, x)
	}
}

func (l *liquid) cells(u []float64, _ float64) []float64 { return u }

// half is the distance of the outermost cell's centre from the surface [kg/m2].
func (l *liquid) half() float64 { return l.grid.Width[len(l.grid.Width)-1] / 2 }

func (l *liquid) contact(T, last, _ float64, _ air.State, face demand, expected float64) (Contact, float64) {
	return meet(l.coat.sorption(T), l.at(T), face, face.Outside()/face.SaturatedFraction(), last, l.half(), expected), 0
}

func (l *liquid) lastRate(flux, _ float64) float64 { return -flux / l.grid.Width[len(l.grid.Width)-1] }

func (l *liquid) rates(T float64, u []float64, flux, _ float64, out []float64) {
	pot := l.at(T)
	below, flow := pot.Value(u[0]), 0.0
	for i := range out {
		next := flux
		if i+1 < len(u) {
			above := pot.Value(u[i+1])
			next = (below - above) / l.grid.Gap[i]
			below = above
		}
		out[i] = (flow - next) / l.grid.Width[i]
		flow = next
	}
}

func (l *liquid) linearise(T float64, u []float64, _ float64, perBorder []float64, a *num.Arrow, first int) {
	pot := l.at(T)
	l.coat.Diffusion.warm(pot, T)
	for i, x := range u {
		l.slope[i], l.byT[i] = pot.slopes(x)
	}
	for i := 0; i+1 < len(u); i++ {
		r, gap := first+i, l.grid.Gap[i]
		lower, upper := l.slope[i]/gap, l.slope[i+1]/gap
		byT := (l.byT[i] - l.byT[i+1]) / gap
		w0, w1 := l.grid.Width[i], l.grid.Width[i+1]
		a.Diag[r] -= lower / w0
		a.Upper[r] += upper / w0
		a.Lower[r+1] += lower / w1
		a.Diag[r+1] -= upper / w1
		l.rateT[i] -= byT / w0
		l.rateT[i+1] += byT / w1
	}
	for i, v := range l.rateT {
		for c, per := range perBorder {
			a.Col[c][first+i] += v * per
		}
		l.rateT[i] = 0
	}
}

func (l *liquid) seat(i int) int                             { return i }
func (l *liquid) cellSlopes(int) (byUnknown, byMass float64) { return 1, 0 }
func (l *liquid) conserves() bool                            { return true }

// surface inverts F at the surface. Under strong dew F passes its value for pure water and no X_s exists; the outermost
// cell's water stands in then.
func (l *liquid) surface(T, last, _ float64, c Contact) float64 {
	if !c.Wet {
		return l.coat.sorption(T).Water(c.Activity)
	}
	pot := l.at(T)
	lo, hi := 0.0, last
	for hi < 1e3 && pot.Value(hi) < c.Potential {
		lo, hi = hi, 2*hi+1
	}
	x, err := num.Root(func(x float64) float64 { return pot.Value(x) - c.Potential }, lo, hi, 1e-10)
	if err != nil {
		return last
	}
	return x
}

// packed finds the layer's lower edge interpolated in F, which is linear in s where the flux is steady.
func (l *liquid) packed(T float64, u []float64, mass float64, c Contact) float64 {
	pot := l.at(T)
	edgeWater := l.coat.packedWater()
	edge := pot.Value(edgeWater)
	upper := c.Potential
	if upper >= edge {
		return 0
	}
	volume := func(x float64) float64 { return 1/l.coat.Diffusion.PolymerDensity + x/WaterDensity }
	at, thick := l.grid.Solids, 0.0
	above := volume(l.surface(T, u[len(u)-1], mass, c))
	for i := len(u) - 1; i >= 0; i-- {
		centre, f := l.grid.Centre(i), pot.Value(u[i])
		if f >= edge {
			down := (at - centre) * (edge - upper) / (f - upper)
			return thick + down*(above+volume(edgeWater))/2
		}
		here := volume(u[i])
		thick += (at - centre) * (above + here) / 2
		at, upper, above = centre, f, here
	}
	return thick + at*above
}

func (l *liquid) closed(T float64, c Contact, limit float64) bool {
	return !c.Wet && l.coat.sorption(T).Water(c.Activity) <= limit
}
