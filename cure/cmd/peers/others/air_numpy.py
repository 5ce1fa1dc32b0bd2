"""Moist air over a face, with numpy: saturation, properties, transfer in tripped parallel flow, Stefan flow. Equations and their
sources are those of packages air and transfer, written again. SI units.
"""

import numpy as np

GAS, WATER_MOLAR, AIR_MOLAR, STEFAN_BOLTZMANN = 8.314462618, 18.015268e-3, 28.966e-3, 5.670374419e-8
EDGE = 1e-9  # least share of air that the logarithm of Stefan flow sees

# The air around the coupon, and its face.
AIR_T, PRESSURE, HUMIDITY = 383.15, 101325.0, 0.02
VELOCITY, LENGTH, EMISSIVITY = 3.0, 0.2, 0.9
AIR_Y = HUMIDITY / (WATER_MOLAR / AIR_MOLAR + HUMIDITY)


def poly(x, *c):
    """The polynomial with the coefficients c, the constant first."""
    s = c[-1]
    for a in c[-2::-1]:
        s = a + x * s
    return s


def centred(T):
    return (T - 400) / 200


def vapour_heat(T):
    return poly(centred(T), 1901.816, 93.818648, 33.169863, -12.960921)


def latent_heat(T):
    return poly(centred(T), 2182690.7, -573021.84, -190216.05, -139670.98, -47512.609, -34556.764)


def saturated(T):
    """Mole fraction of vapour over water: IAPWS-IF97 region 4 with Greenspan's enhancement factor."""
    t = T + -0.23855557567849 / (T - 0.65017534844798e3)
    a = poly(t, -0.72421316703206e6, 0.11670521452767e4, 1.0)
    b = poly(t, -0.32325550322333e7, 0.12020824702470e5, -0.17073846940092e2)
    c = poly(t, 0.40511340542057e6, -0.48232657361591e4, 0.14915108613530e2)
    e = 1e6 * (2 * c / (np.sqrt(b * b - 4 * a * c) - b)) ** 4
    d = np.clip(T - 273.15, -50, 110)
    alpha = poly(d, 3.53624e-4, 2.9328363e-5, 2.6168979e-7, 8.5813609e-9)
    beta = np.exp(poly(d, -10.7588, 6.3268134e-2, -2.5368934e-4, 6.3405286e-7))
    x = e / PRESSURE
    u = x - 1
    s = np.minimum((alpha + beta / x) * (1 - x), 0.1)
    f = np.where(u >= 0, 1 - (alpha + beta) * u / (1 + 100 * u * u), 1 + s * (1 + s * (1 / 2 + s * (1 / 6))))
    return f * x


def mixture(T, y):
    """Density, heat capacity, conductivity, viscosity and diffusivity of moist air."""
    x = centred(np.clip(T, 180, 750))
    mu_air = poly(x, 2.3044887e-05, 8.5057299e-06, -9.7762313e-07, 2.0675477e-07)
    mu_vapour = poly(x, 1.3347773e-05, 7.7031888e-06, 8.2694496e-07, -5.89184e-07)
    k_air = poly(x, 0.033431676, 0.01351125, -0.0011729268, 0.00025058984)
    k_vapour = poly(x, 0.026428608, 0.017357498, 0.0029829352, -0.00055961)
    cp_air = poly(x, 1014.1886, 24.036377, 15.564881, -2.1120298)
    cp_vapour = poly(x, 1901.816, 93.818648, 33.169863, -12.960921)
    ratio = mu_air / mu_vapour
    by_vapour = (1 + np.sqrt(ratio) * (WATER_MOLAR / AIR_MOLAR) ** 0.25) ** 2 / np.sqrt(8 * (1 + AIR_MOLAR / WATER_MOLAR))
    by_air = by_vapour / (ratio * (WATER_MOLAR / AIR_MOLAR))
    dry = 1 - y
    share_air, share_vapour = dry / (dry + y * by_vapour), y / (y + dry * by_air)
    mass_air, mass_vapour = dry * AIR_MOLAR, y * WATER_MOLAR
    mass = mass_air + mass_vapour
    t = 1 + x / 2
    return (mass * PRESSURE / (GAS * T), (mass_air * cp_air + mass_vapour * cp_vapour) / mass,
            share_air * k_air + share_vapour * k_vapour, share_air * mu_air + share_vapour * mu_vapour,
            1.87e-10 * 400**2.072 * t * t * poly(x, 1.0000163, 0.036791364, -0.0087698599))


def coefficient(T, y):
    """h of tripped parallel flow over a surface of T and y, and the density, heat capacity and Lewis number that it saw."""
    rho, cp, k, mu, diffusivity = mixture((T + AIR_T) / 2, (np.minimum(y, 1) + AIR_Y) / 2)
    re, pr = VELOCITY * LENGTH * rho / mu, mu * cp / k
    nu = np.maximum(0.037 * re**0.8, 0.664 * np.sqrt(re)) * np.cbrt(pr)
    return nu * k / LENGTH, rho * cp, k / (rho * cp * diffusivity)


def radiation(T):
    return EMISSIVITY * STEFAN_BOLTZMANN * (AIR_T**2 + T * T) * (AIR_T + T) * (AIR_T - T)


def stefan(y):
    """ln((1 - y_inf)/(1 - y)) and its slope, straight below a share EDGE of air."""
    near = np.maximum(1 - y, EDGE)
    return np.log((1 - AIR_Y) / near) + (near - (1 - y)) / EDGE, 1 / near


class Surface:
    """What the air takes from the film at one temperature for each state."""

    def __init__(self, T):
        self.T, self.full = T, saturated(T)
        wet = np.where(self.full < AIR_Y, stefan(self.full)[0], 0.0)
        self.wet, self.suction = wet, (1 - AIR_Y) ** 2 / (1 + (wet / 0.01) ** 2)

    def flux(self, a):
        """Flux, its slope in a with the coefficients held, and h."""
        y = a * self.full
        force, slope = stefan(y)
        sucked = y < np.minimum(self.full, AIR_Y)
        if np.any(sucked):
            r = np.maximum(self.wet - force, 0) / self.suction
            y = np.where(sucked, 1 - (1 - AIR_Y) * np.exp(-(self.wet - self.suction * r / np.sqrt(1 + r * r))), y)
        h, c, lewis = coefficient(self.T, y)
        g = h / (c * np.cbrt(lewis * lewis)) * PRESSURE * WATER_MOLAR / (GAS * (self.T + AIR_T) / 2)
        return g * force, g * slope * self.full, h
