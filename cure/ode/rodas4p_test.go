package ode

// Rodas4P is the method RODAS4P: six stages, order 4 with an embedded solution of order 3, dense output of order 3,
// L-stable and stiffly accurate. Its coefficients also satisfy the conditions for order 4 on linear parabolic problems,
// so that the order does not drop on a diffusion equation cut into cells. The film takes more steps and more derivatives with it
// than with Rodas5P for the same error of its marks; it stays here as a second opinion, and so that the solver is tested on
// more than one tableau.
//
// Source: G. Steinebach 1995, Order-reduction of ROW-methods for DAEs and method of lines applications, Preprint 1741, TH
// Darmstadt; digits as in E. Hairer and G. Wanner's RODAS code (METH = 3) and in the library OrdinaryDiffEq.jl.
func Rodas4P() Tableau {
	return Tableau{
		Name: "RODAS4P",
		Source: "Steinebach 1995, Order-reduction of ROW-methods for DAEs and method of lines applications, " +
			"Preprint 1741, TH Darmstadt",
		Stages: 6, Order: 4, Embedded: 3, DenseOrder: 3,
		Gamma: 0.25,
		A: [][]float64{
			{0, 0, 0, 0, 0, 0},
			{3, 0, 0, 0, 0, 0},
			{1.831036793486759, 0.4955183967433795, 0, 0, 0, 0},
			{2.304376582692669, -0.05249275245743001, -1.176798761832782, 0, 0, 0},
			{-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 0, 0},
			{-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 1, 0},
		},
		C: [][]float64{
			{0, 0, 0, 0, 0, 0},
			{-12, 0, 0, 0, 0, 0},
			{-8.791795173947035, -2.207865586973518, 0, 0, 0, 0},
			{10.81793056857153, 6.780270611428266, 19.53485944642410, 0, 0, 0},
			{34.19095006749676, 15.49671153725963, 54.74760875964130, 14.16005392148534, 0, 0},
			{34.62605830930532, 15.30084976114473, 56.99955578662667, 18.40807009793095, -5.714285714285717, 0},
		},
		Alpha: []float64{0, 0.75, 0.21, 0.63, 1, 1},
		D:     []float64{0.25, -0.5, -0.023504, -0.0362, 0, 0},
		H: [][]float64{
			{25.09876703708589, 11.62013104361867, 28.49148307714626, -5.664021568594133, 0, 0},
			{1.638054557396973, -0.7373619806678748, 8.477918219238990, 15.99253148779520, -1.882352941176471, 0},
		},
	}
}
