package film

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/drywright/drywright/cure/kinetics"
)

// combinations are all kinds of system that a job can make: transport, isotherm, heat of sorption, law of cure, back,
// carrier, own states of the surroundings, pile and regain.
func combinations(t *testing.T, visit func(name string, r *rig, own []float64, rng *rand.Rand)) {
	rng := rand.New(rand.NewPCG(15, 16))
	plain := kinetics.FromPair(393.15, 300, 0.95, 60e3, 1.5)
	plain.HinderingWater = 0.1
	glassy := kinetics.Law{A1: 1e3, E1: 50e3, N: 1.3, A2: 1e5, E2: 55e3, M: 0.7, HinderingWater: 0.2,
		Vitrification: &kinetics.Vitrification{TgUncured: 263, TgCured: 333, Lambda: 0.5, DiffusionRate: 1e-3, C1: 17.44, C2: 51.6}}
	for _, transport := range []Transport{LiquidDiffusion{}, PorousSkin{Diffusivity: 7e-7}} {
		for _, isotherm := range []Isotherm{GAB{Monolayer: 0.015, C: 8, K: 0.85}, FloryHuggins{Chi: 1.9, PolymerDensity: 1080}} {
			for _, q := range []float64{0, 300e3} {
				for _, law := range []*kinetics.Law{nil, &plain, &glassy} {
					for _, back := range []Back{Exposed, Insulated, Mirrored} {
						for _, carrier := range []*Carrier{nil, {Capacity: 1500, Contact: 30, AirSide: 20}} {
							for _, open := range []bool{true, false} {
								for _, regain := range []float64{-1, 0, 0.041} {
									coat := acrylic()
									coat.Transport, coat.Isotherm, coat.HeatOfSorption, coat.Cure = transport, isotherm, q, law
									part := Part{Thickness: 3e-3, Density: 1040, HeatCapacity: 1300, Conductivity: 0.25, Back: back,
										Cells: 3, Carrier: carrier}
									var around Surroundings = &still{air: humid(t, 330, 0.02), ramp: 0.01}
									var own []float64
									if !open {
										around, own = &box{air: humid(t, 330, 0.02), capacity: 3e4, dryAir: 20, ramp: 0.02}, []float64{330, 0.02}
									}
									r := flocked(coat, part, 0.5, 310, math.Max(0, regain), around, 20)
									if regain < 0 {
										r.exposure.Front.Pile = nil
									}
									r.exposure.Front.Emissivity, r.exposure.Back.Emissivity = 0.9, 0.5
									visit(fmt.Sprintf("%T %T q=%g law=%v back=%v carrier=%v open=%v regain=%g", transport, isotherm, q,
										law != nil, back, carrier != nil, open, regain), r, own, rng)
								}
							}
						}
					}
				}
			}
		}
	}
}

// scatter draws a state: film wet or dry, front anywhere, part and film at temperatures of their own.
func (r *rig) scatter(rng *rand.Rand) {
	st := &r.state
	*st = NewState(&r.coat, &r.grid, &r.part, 0, 0)
	dry := rng.IntN(2) == 0
	for i := range st.Water {
		if st.Water[i] = 0.4 + 0.7*rng.Float64(); dry {
			st.Water[i] = 0.01 + 0.25*rng.Float64()
		}
		st.Mass += r.grid.Width[i] * st.Water[i]
	}
	st.Dry = 0.03 * rng.Float64()
	st.Fibre = r.exposure.Regain * (0.1 + 0.8*rng.Float64())
	for i := range st.Conversion {
		st.Conversion[i] = 0.05 + 0.9*rng.Float64()
	}
	for i := range st.Part {
		st.Part[i] = 290 + 60*rng.Float64()
	}
	st.Carrier = 290 + 60*rng.Float64()
	bound, _ := r.coat.binding(st.Mass)
	capacity := r.coat.Solids*r.coat.HeatCapacity + r.exposure.PileCapacity + WaterHeatCapacity*(st.Mass+st.Fibre)
	st.Enthalpy = capacity*(290+60*rng.Float64()-EnthalpyZero) - bound
}

// dense returns the arrow Jacobian as a full matrix, row by row.
func (s *System) dense() [][]float64 {
	a := s.arrow
	n, m := s.iBorder(), s.borders()
	j := make([][]float64, s.Dim())
	for i := range j {
		j[i] = make([]float64, s.Dim())
	}
	for i := range n {
		j[i][i] = a.Diag[i]
		if i > 0 {
			j[i][i-1] = a.Lower[i]
		}
		if i+1 < n {
			j[i][i+1] = a.Upper[i]
		}
		for c := range m {
			j[i][n+c], j[n+c][i] = a.Col[c][i], a.Row[c][i]
		}
	}
	for r := range m {
		for c := range m {
			j[n+r][n+c] = a.Corner[r*m+c]
		}
	}
	for k := n + m; k < s.Dim(); k++ {
		row := k - n - m
		j[k][k] = a.TailDiag[row]
		for p := a.TailPtr[row]; p < a.TailPtr[row+1]; p++ {
			j[k][a.TailIdx[p]] += a.TailVal[p]
		}
	}
	return j
}

// The arrow Jacobian and the time derivative against central differences, on a random state of every combination. The boundary is
// differenced one-sidedly, which leaves a relative error of 1e-5 or so of the entry, or, where the entry is the small
// difference of large ones, of the row's largest: each unknown is weighed by what matters of it. 1e-3 of that is what a
// Rosenbrock method does not notice; at a kink, where left and right differ, the entry must lie between them.
func TestJacobianIsThatOfDifferences(t *testing.T) {
	count, worst := 0, 0.0
	combinations(t, func(name string, r *rig, own []float64, rng *rand.Rand) {
		r.grid = NewGrid(r.coat.Solids, 6)
		r.scatter(rng)
		s := NewSystem(&r.coat, &r.grid, &r.part, &r.exposure)
		n := s.Dim()
		y, f, left, right, dfdt := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
		s.Pack(&r.state, own, y)
		weight := s.Tolerances(1)
		for i := range weight {
			if math.IsInf(weight[i], 1) {
				weight[i] = 1e5 // the ledger, J/m2
			}
		}
		const now = 5.0
		s.Derivative(now, y, f)
		varies := s.Linearise(now, y, f, dfdt)
		j := s.dense()
		check := func(row int, got, lo, hi, scale float64) {
			count++
			lo, hi = math.Min(lo, hi), math.Max(lo, hi)
			miss := math.Max(lo-got, got-hi) / scale
			worst = math.Max(worst, miss)
			if miss > 1e-3 {
				t.Errorf("%s: row %d: %g, differences %g to %g of %g", name, row, got, lo, hi, scale)
			}
		}
		for k := range n {
			step := 1e-4 * weight[k]
			kept := y[k]
			y[k] = kept - step
			s.Derivative(now, y, left)
			y[k] = kept + step
			s.Derivative(now, y, right)
			y[k] = kept
			for i := range n {
				largest := 1e-9
				for c := range n {
					largest = math.Max(largest, math.Abs(j[i][c])*weight[c])
				}
				check(i, j[i][k], (f[i]-left[i])/step, (right[i]-f[i])/step, largest/weight[k])
			}
			if t.Failed() {
				t.Fatalf("column %d of %d (water from %d, border from %d, tail from %d)", k, n, s.iWater(), s.iBorder(), s.iTail())
			}
		}
		if !varies {
			t.Fatalf("%s: time is said not to matter", name)
		}
		s.Derivative(now-0.02, y, left)
		s.Derivative(now+0.02, y, right)
		for i := range n {
			scale := math.Abs(right[i]-left[i])/0.04 + 1e-6*math.Abs(f[i]) + 1e-12
			check(i, dfdt[i], (f[i]-left[i])/0.02, (right[i]-f[i])/0.02, scale)
		}
	})
	t.Logf("%d entries, off by %.1e at most", count, worst)
}
