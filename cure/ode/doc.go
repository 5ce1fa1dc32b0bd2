// Package ode integrates stiff systems y' = f(t, y) in time: Rosenbrock-Wanner methods of Rodas form (L-stable, stiffly
// accurate), step size control, dense output and location of events. It knows no physics and no units: t and y carry
// those of the caller.
//
//   - The system brings its own linear algebra: [System]. Package dense has the one for small systems without structure.
//   - The method is data: [Tableau]; [Rodas4P2] is provided.
//   - [Solver] does the work and owns all memory: after [NewSolver], Integrate allocates nothing.
//   - [Step] is what an observer sees of one accepted step, with the dense output inside it.
//   - [Event] is a condition on the state whose crossings are located on the dense output.
//
// One step of size h from (t, y) solves, for each stage i with one LU of the same matrix,
//
//	(I/(h gamma) - J) u_i = f(t + alpha_i h, y + sum_j a_ij u_j) + sum_j (c_ij/h) u_j + gamma_i h df/dt,  j < i
//
// with J = df/dy at (t, y): Hairer and Wanner 1996, Solving Ordinary Differential Equations II, 2nd ed., section IV.7,
// equation (7.25). No iteration can fail to converge, so the only reasons to reject a step are its error, a state that the
// system does not admit, and a number that is not finite.
//
// The result depends on nothing but the arguments: no clock, no randomness, no goroutine.
package ode
