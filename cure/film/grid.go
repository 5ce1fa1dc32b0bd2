package film

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// OuterShare is the share of the solids, at the surface, over which "touch" is judged; a cell edge lies there, so that
// the mean over it does not move with the grid.
const OuterShare = 0.05

// gridGrading is beta in s/m_s = (1 - exp(-beta xi))/(1 - exp(-beta)): cells at the surface are about 1/20 as thick
// as those at the part, where nothing is steep.
const gridGrading = 3.0

// Grid is the film cut in cells of dry solids, cell 0 at the part.
type Grid struct {
	Edge   []float64 // n+1 edges s [kg/m2]
	Width  []float64 // n widths [kg/m2]
	Gap    []float64 // n-1 distances between neighbouring cell centres [kg/m2]
	Outer  int       // first cell of the outer share
	Solids float64   // m_s [kg/m2]
}

// NewGrid cuts solids [kg/m2] in n cells (n >= 4), with an edge at 1-OuterShare.
func NewGrid(solids float64, n int) Grid {
	whole := 1 - num.Exp(-gridGrading)
	xiOuter := -num.Log(1-(1-OuterShare)*whole) / gridGrading
	top := max(2, int(math.Round(float64(n)*(1-xiOuter))))
	g := Grid{Edge: make([]float64, n+1), Width: make([]float64, n), Gap: make([]float64, n-1), Outer: n - top, Solids: solids}
	for i := range g.Edge {
		xi := xiOuter * float64(i) / float64(g.Outer)
		if i > g.Outer {
			xi = xiOuter + (1-xiOuter)*float64(i-g.Outer)/float64(top)
		}
		g.Edge[i] = solids * (1 - num.Exp(-gridGrading*xi)) / whole
	}
	g.Edge[g.Outer] = solids * (1 - OuterShare)
	g.Edge[n] = solids
	for i := range g.Width {
		g.Width[i] = g.Edge[i+1] - g.Edge[i]
	}
	for i := range g.Gap {
		g.Gap[i] = (g.Width[i] + g.Width[i+1]) / 2
	}
	return g
}

// Mean returns the mean of a cell quantity over the solids from cell first to the surface.
func (g *Grid) Mean(v []float64, first int) float64 {
	sum, weight := 0.0, 0.0
	for i := first; i < len(g.Width); i++ {
		sum += g.Width[i] * v[i]
		weight += g.Width[i]
	}
	return sum / weight
}

// Centre returns the solids coordinate of the middle of cell i [kg/m2].
func (g *Grid) Centre(i int) float64 { return (g.Edge[i] + g.Edge[i+1]) / 2 }
