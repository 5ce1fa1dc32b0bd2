// Package validate compares the product with published numbers: tables, worked examples, closed forms and measurements that
// others printed, each with its source, its tolerance and what this build makes of it.
//
// The published numbers are data: testdata/<subject>/rows.json at the top of the project, one file for each subject. The
// cases of this package, one file for each subject, say how a row is put to the product; what they call is what a run calls.
// Where a worked example needs a film, a part or air around them, it gets the film's own system and integrator, so that a
// drying example is dried and not recalculated.
//
// A row passes when the product lies within the row's tolerance. Where our model is richer than the row's (a high-flux
// correction that a book leaves out), the comparison carries a tolerance of its own with the reason in its note. Rows that
// cannot be run stay in the data with the reason, and are listed. Nothing passes by being forgotten: an output that no case
// compares, an entry without a case and a case that ends in an error are rows that fail.
package validate
