package ode

// Rodas4P2 is the method RODAS4P2: six stages, order 4 with an embedded solution of order 3, dense output of order 3, L-stable and
// stiffly accurate. Its order does not drop on a diffusion equation cut into cells, and not below 2 where the Jacobian is only
// nearly right.
//
// Source: G. Steinebach 2020, Improvement of Rosenbrock-Wanner method RODASP, in: Progress in Differential-Algebraic Equations
// II, Springer, 165-184; digits as in the library OrdinaryDiffEq.jl.
func Rodas4P2() Tableau {
	return Tableau{
		Name: "RODAS4P2",
		Source: "Steinebach 2020, Improvement of Rosenbrock-Wanner method RODASP, in: Progress in Differential-Algebraic " +
			"Equations II, Springer, 165-184",
		Stages: 6, Order: 4, Embedded: 3, DenseOrder: 3,
		Gamma: 0.25,
		A: [][]float64{
			{0, 0, 0, 0, 0, 0},
			{3, 0, 0, 0, 0, 0},
			{0.906377755268814, -0.189707390391685, 0, 0, 0, 0},
			{3.758617027739064, 1.161741776019525, -0.849258085312803, 0, 0, 0},
			{7.089566927282776, 4.573591406461604, -8.423496976860259, -0.959280113459775, 0, 0},
			{7.089566927282776, 4.573591406461604, -8.423496976860259, -0.959280113459775, 1, 0},
		},
		C: [][]float64{
			{0, 0, 0, 0, 0, 0},
			{-12, 0, 0, 0, 0, 0},
			{-6.354581592719008, 0.338972550544623, 0, 0, 0, 0},
			{-8.575016317114033, -7.606483992117508, 12.224997650124820, 0, 0, 0},
			{-5.888975457523102, -8.157396617841821, 24.805546872612922, 12.790401512796979, 0, 0},
			{-4.408651676063871, -6.692003137674639, 24.625568527593117, 16.627521966636085, -5.714285714285718, 0},
		},
		Alpha: []float64{0, 0.75, 0.321448134013046, 0.519745732277726, 1, 1},
		D:     []float64{0.25, -0.5, -0.189532918363016, 0.085612108792769, 0, 0},
		H: [][]float64{
			{-5.323528268423303, -10.042123754867493, 17.175254928256965, -5.079931171878093, -0.016185991706112, 0},
			{6.984505741529879, 6.914061169603662, -0.849178943070653, 18.104410789349338, -3.516963011559032, 0},
		},
	}
}
