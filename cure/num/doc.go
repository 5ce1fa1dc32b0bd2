// Package num holds the small numerical tools that the physics shares: a bracketed root ([Root], [Enclose]), a clamped
// piecewise-linear table ([Linear]) and the block elimination of the film's own matrix ([Arrow]). Each is deterministic
// and none allocates after its constructor. Everything is dimensionless here; units belong to the caller.
package num
