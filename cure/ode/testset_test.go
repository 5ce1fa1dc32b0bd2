package ode_test

import (
	"testing"

	"github.com/drywright/drywright/cure/ode/dense"
)

// TestErrorAndWork bounds the error at the end in the solver's own norm, where 1 is one tolerated local error, and the
// work: ceilings are a fifth above what was measured when this was written, so that a slower controller or a lost reuse
// shows. Global errors grow with the problem, hence 5, the bound that SciPy's tests of its solvers use too.
func TestErrorAndWork(t *testing.T) {
	type work struct{ steps, derivatives, factorisations int }
	ceiling := map[string]map[string][3]work{ // at tolerances 1e-4, 1e-6, 1e-8
		"robertson": {
			"RODAS4P2": {{118, 721, 120}, {315, 1908, 318}, {940, 5653, 942}},
			"Rodas5P":  {{106, 865, 108}, {216, 1738, 217}, {553, 4453, 556}},
		},
		"hires": {
			"RODAS4P2": {{61, 375, 62}, {183, 1110, 184}, {622, 3751, 625}},
			"Rodas5P":  {{48, 436, 55}, {123, 1008, 126}, {424, 3434, 429}},
		},
		"orego": {
			"RODAS4P2": {{434, 2674, 447}, {1424, 8596, 1434}, {4923, 29562, 4927}},
			"Rodas5P":  {{338, 2844, 357}, {1008, 8133, 1017}, {3277, 26245, 3280}},
		},
		"vanderpol": {
			"RODAS4P2": {{382, 2371, 397}, {1216, 7369, 1230}, {4140, 24944, 4160}},
			"Rodas5P":  {{264, 2358, 298}, {782, 6362, 796}, {2520, 20288, 2538}},
		},
	}
	for _, p := range testSet(t) {
		for _, m := range tableaux() {
			for k, rel := range []float64{1e-4, 1e-6, 1e-8} {
				opt := p.options(rel, m)
				y := append([]float64(nil), p.Start...)
				st := solve(t, p.System, opt, 0, p.TEnd, y)
				if d := distance(y, p.End, opt); !(d < 5) {
					t.Errorf("%s %s at %g: error %.2f", p.ID, m.Name, rel, d)
				}
				most := ceiling[p.ID][m.Name][k]
				if st.Steps > most.steps || st.Derivatives > most.derivatives ||
					st.Factorisations > most.factorisations {
					t.Errorf("%s %s at %g: %+v, want at most %+v", p.ID, m.Name, rel, st, most)
				}
				// One Jacobian per accepted step, one factorisation and s solutions per tried one, and per step one
				// evaluation per stage (the first stage's is that of the end of the step before).
				tried := st.Steps + st.Rejected
				if st.Jacobians != st.Steps || st.Factorisations != tried || st.Solves > m.Stages*tried ||
					st.Derivatives > m.Stages*tried+2 {
					t.Errorf("%s %s at %g: work does not add up: %+v", p.ID, m.Name, rel, st)
				}
			}
		}
	}
}

// TestDifferences: without a Jacobian the forward differences must do nearly as well.
func TestDifferences(t *testing.T) {
	for _, p := range testSet(t) {
		if p.ID != "hires" && p.ID != "orego" {
			continue
		}
		d := dense.New(len(p.Start), p.System.Derivative, nil)
		for _, autonomous := range []bool{true, false} {
			d.Autonomous = autonomous
			for _, m := range tableaux() {
				opt := p.options(1e-5, m)
				y := append([]float64(nil), p.Start...)
				solve(t, d, opt, 0, p.TEnd, y)
				if got := distance(y, p.End, opt); !(got < 5) {
					t.Errorf("%s %s: error %.2f", p.ID, m.Name, got)
				}
			}
		}
	}
}
