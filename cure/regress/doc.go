// Package regress fits a model to data by least squares and says how well the data tell each parameter: a trust-region
// Levenberg-Marquardt search with bounds, weights, a robust loss and priors; intervals from the Jacobian; a bootstrap that
// checks them; criteria that compare models.
//
// A model is a function from parameters to predictions; the package knows nothing of films. It throws no dice of its own:
// the bootstrap draws from a Random whose seed the caller gives, so that the same question has the same answer everywhere.
package regress
