// Package fit tells numbers of a job from a trial of the user's own: a coupon on a scale, an oven temperature recorder, cure
// tests, water held at humidities. Published laws of heat transfer differ by a factor of up to four for a real oven and data
// sheets are thin, so that a prediction is as good as the trial behind it.
//
// Each kind of trial is a model (the product's own film along the product's own route, its rate law, its isotherm), a list of
// numbers that it can tell, and rows of data from package trial. Package regress finds the numbers with their intervals. What
// the trial cannot tell is said (Doubts) rather than hidden: numbers are pulled towards what the job had before as if that were one more
// measurement, as wide as such numbers usually scatter, so that an idle one stays where it was.
//
// The answer is a result.Fit to show and a job.Fit to adopt. Nothing here is random but the bootstrap, whose seed is an input.
package fit
