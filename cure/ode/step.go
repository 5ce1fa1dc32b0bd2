package ode

// Step is one accepted step from T0 to T1, or its part before a terminal event. It and its slices are valid during the
// callback only and must not be changed.
type Step struct {
	T0, T1 float64
	Y0, Y1 []float64

	h       float64   // full size of the step; larger than T1 - T0 after a terminal event
	end     []float64 // state at T0 + h
	u       [][]float64
	rows    []terms     // of the dense output
	k       [][]float64 // k_1 to k_3, filled on first use
	current bool        // k belongs to this step
}

// At writes the dense output at t (T0 <= t <= T1) into out, one number per component.
func (st *Step) At(t float64, out []float64) { st.at((t-st.T0)/st.h, out) }

// Component returns component i of the dense output at t (T0 <= t <= T1).
func (st *Step) Component(t float64, i int) float64 {
	st.prepare()
	x := (t - st.T0) / st.h
	sum := 0.0
	for r := len(st.k) - 1; r >= 0; r-- {
		sum = sum*x + st.k[r][i]
	}
	return (1-x)*st.Y0[i] + x*(st.end[i]+(1-x)*sum)
}

// at is At with the time as a share x of the full step.
func (st *Step) at(x float64, out []float64) {
	st.prepare()
	n := len(st.Y0)
	y0, y1, out := st.Y0[:n], st.end[:n], out[:n]
	rest := 1 - x
	switch len(st.k) {
	case 2:
		k1, k2 := st.k[0][:n], st.k[1][:n]
		for i := range out {
			out[i] = rest*y0[i] + x*(y1[i]+rest*(k1[i]+x*k2[i]))
		}
	case 3:
		k1, k2, k3 := st.k[0][:n], st.k[1][:n], st.k[2][:n]
		for i := range out {
			out[i] = rest*y0[i] + x*(y1[i]+rest*(k1[i]+x*(k2[i]+x*k3[i])))
		}
	default:
		k1 := st.k[0][:n]
		for i := range out {
			out[i] = rest*y0[i] + x*(y1[i]+rest*k1[i])
		}
	}
}

// prepare forms k_r = sum_j H[r][j] u_j once per step, and not at all where nobody looks inside it.
func (st *Step) prepare() {
	if st.current {
		return
	}
	for r, row := range st.rows {
		clear(st.k[r])
		combine(st.k[r], st.u, row.index, row.coef)
	}
	st.current = true
}
