// Package film is the coat and the part under it as one system of ordinary differential equations (method of lines):
// water moving through the drying film, heat in film, part and carrier, crosslinking in each layer.
//
// The film is cut in cells of dry solids, the coordinate s [kg/m2] running from 0 at the part to m_s at the surface,
// so that it shrinks by itself and solids are conserved exactly:
//
//	dX/dt = d/ds (D rho_s^2 dX/ds),  no flux at s = 0,  -D rho_s^2 dX/ds = j at s = m_s
//
// Fluxes inside use the closed integral F of D rho_s^2 (see Potential); the flux at the surface is where the film's
// supply and the air's demand agree (see Contact). A film that dries to a porous skin is another Transport, with a front
// in place of the diffusion. What the film holds at rest with air is its Isotherm, moved by temperature as a heat of sorption
// says; that heat is part of the film's enthalpy, and so is the water of fibre that holds moisture. The film is isothermal through its thickness; the part is a wall
// cut in cells. The film's heat is carried as enthalpy and its water as a state of its own, so that both accounts are
// linear in the states and close to rounding error.
//
// Package film knows no route: what surrounds the film comes through the Surroundings interface.
package film
