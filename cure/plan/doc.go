// Package plan turns the simulator round: not what a setting does, but which setting does what is wanted. It finds limits,
// windows, chances, costs and the settings that take least, all by runs of the real model.
//
// A [Study] is a job, one of its routes and the goal of that route. What is varied is a [Variable]: a number of the job, or
// several that move together. A [Trial] gives values to variables; an [Outcome] is how the model judges it. The searches
// of this package never run the model themselves: they ask an [Evaluate] for batches of trials, so that a caller may spread
// a batch over threads, workers or machines. The answers do not depend on how.
package plan
