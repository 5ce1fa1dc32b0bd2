// Package num holds the small numerical tools that the physics shares: a bracketed root ([Root], [Enclose]), a clamped
// piecewise-linear table ([Linear]), the block elimination of the film's own matrix ([Arrow]), and elementary functions that
// are the same to the last bit in native code and WebAssembly ([Exp], [Log], [Pow]). Each is deterministic
// and none allocates after its constructor. Everything is dimensionless here; units belong to the caller.
package num
