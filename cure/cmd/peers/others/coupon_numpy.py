"""The coupon's right-hand side written again with numpy, from the equations that packages film, transfer, air and kinetics
state, for as many states at once as are given: vectorised over the film's cells and over the states. It shares no code with
the library, which it must agree with (scipy_peer.py measures that).

Unknowns stand in the order of the library: wall from back to front, the film's enthalpy and water mass, then water and
conversion cell by cell from the surface down. The counts at the end are left out. SI units.
"""

import numpy as np
from air_numpy import AIR_T, AIR_Y, EDGE, EMISSIVITY, GAS, STEFAN_BOLTZMANN, Surface, coefficient, latent_heat, poly, radiation, vapour_heat
from scipy.special import expi

WALLS, BOLTZMANN = 8, 1.380649e-23

# The coupon: coat, adhesive and part.
SOLIDS, SOLIDS_HEAT = 0.075, 1500.0
POLYMER, WATER, PARTICLE, PACKING, CLOSING = 1080.0, 1000.0, 200e-9, 0.64, 0.74
CAPILLARY, DRY, ACTIVATION = 1e-9, 5e-12, 40e3
MONOLAYER, GAB_C, GAB_K = 0.015, 8.0, 0.85
CURE_A, CURE_E, HINDERING = 1.3e8, 76e3, 0.1
THICKNESS, STEEL_DENSITY, STEEL_HEAT, STEEL_CONDUCTIVITY = 1.5e-3, 7850.0, 460.0, 50.0
WATER_HEAT, ZERO = 4190.0, 273.15


def gab(a):
    """Water content at the activity a, and its slope."""
    ka = GAB_K * a
    d = (1 - ka) * (1 - ka + GAB_C * ka)
    return MONOLAYER * GAB_C * ka / d, MONOLAYER * GAB_C * GAB_K * (1 + (GAB_C - 1) * ka * ka) / (d * d)


def gab_activity(x):
    a, b = (GAB_C - 1) * x, MONOLAYER * GAB_C - x * (GAB_C - 2)
    return np.where(x >= gab(1.0)[0], 1, 2 * x / (b + np.sqrt(b * b + 4 * a * np.abs(x))) / GAB_K)


class Potential:
    """The integral of the diffusivity over the water content, in closed form in its three regimes."""

    def __init__(self, T):
        viscosity = 1e-6 * sum(a * (T / 300) ** b for a, b in ((280.68, -1.9), (511.45, -7.7), (61.131, -19.6), (0.45903, -40.0)))
        self.dilute = BOLTZMANN * T / (3 * np.pi * viscosity * PARTICLE)
        self.dry = np.minimum(CAPILLARY, DRY * np.exp(-ACTIVATION / GAS * (1 / T - 1 / 298.15)))
        water = 1 / CLOSING - 1
        self.kappa = np.log(CAPILLARY / self.dry) / water
        # Where the dispersion's diffusivity reaches the capillary one.
        r, c, u = np.sqrt(self.dilute / CAPILLARY) * PACKING, 1 - PACKING, np.zeros_like(T)
        for _ in range(50):
            q = c + u
            step = (r * q**3 - u) / (1 - 3 * r * q * q)
            u = u + step
            if np.all(np.abs(step) < 1e-15):
                break
        self.join = PACKING - u
        self.base3 = self.closing(0.0)
        self.base2 = CAPILLARY * CLOSING + self.closing(water) - self.base3
        self.base1 = self.base2 - CAPILLARY * self.join - self.dispersion(self.join)

    def dispersion(self, phi):
        u, c = np.maximum(PACKING - phi, 1e-300), 1 - PACKING
        rest = u * poly(u, 15 * c**4, 10 * c**3, 5 * c * c, 1.5 * c, 0.2)
        return self.dilute * PACKING**2 * (-(c**6) / u + 6 * c**5 * np.log(u) + rest)

    def closing(self, v):
        x = self.kappa * (1 + v)
        return self.dry * np.exp(self.kappa * v) / (1 + v) * (x * np.exp(-x) * expi(x) - 1)

    def value(self, x):
        v = x * POLYMER / WATER
        phi = 1 / (1 + v)
        closed = np.minimum(v, 1 / CLOSING - 1)  # keeps the exponential integral in its range elsewhere
        return POLYMER * WATER * np.where(phi >= CLOSING, self.closing(closed) - self.base3, np.where(
            phi >= self.join, self.base2 - CAPILLARY * phi, self.base1 + self.dispersion(np.minimum(phi, self.join))))

    def slope(self, x):
        v = x * POLYMER / WATER
        phi = 1 / (1 + v)
        dispersed = np.minimum(phi, self.join)
        d = np.where(phi >= CLOSING, self.dry * np.exp(self.kappa * np.minimum(v, 1)), np.where(
            phi >= self.join, CAPILLARY, self.dilute * (1 - dispersed) ** 6 * PACKING**2 / (PACKING - dispersed) ** 2))
        return d * POLYMER * WATER * (POLYMER / WATER) * phi * phi


class Coupon:
    def __init__(self, cells):
        self.cells = cells
        self.edge = edges(cells)
        self.width = np.diff(self.edge)[:, None]
        self.gap = (self.width[:-1] + self.width[1:]) / 2
        self.capacity = STEEL_DENSITY * STEEL_HEAT * THICKNESS / WALLS
        self.conductance = STEEL_CONDUCTIVITY * WALLS / THICKNESS
        self.expected = 1.0  # the activity last found: where the next search starts

    def rates(self, _, y):
        """Rates of one state, or of several that stand in columns."""
        columns = y if y.ndim == 2 else y[:, None]
        with np.errstate(all="ignore"):  # a trial state may have no rates: NaN
            f = self.columns(columns)
        return f if y.ndim == 2 else f[:, 0]

    def columns(self, y):
        wall, enthalpy, mass = y[WALLS - 1 :: -1], y[WALLS], y[WALLS + 1]
        water, conversion = y[WALLS + 2 :: 2][::-1], y[WALLS + 3 :: 2][::-1]
        T = ZERO + enthalpy / (SOLIDS * SOLIDS_HEAT + WATER_HEAT * mass)
        pot, face = Potential(T), Surface(T)
        potential = pot.value(water)
        activity, j = self.meet(pot, face, potential[-1], water[-1])
        vapour, _, h = face.flux(activity)
        f = np.empty_like(y)
        # Water between the cells, and out of the last one.
        flow = np.concatenate([np.zeros((1, y.shape[1])), (potential[:-1] - potential[1:]) / self.gap, j[None]])
        f[WALLS + 2 :: 2] = ((flow[:-1] - flow[1:]) / self.width)[::-1]
        f[WALLS + 1] = -j
        # Heat into the film: convection under Stefan flow, radiation, less what the vapour carries off.
        phi = vapour * vapour_heat((T + AIR_T) / 2) / h
        small = np.abs(phi) < 1e-4
        ackermann = np.where(small, 1 - phi * (1 / 2 - phi / 12), phi / np.expm1(np.where(small, 1, phi)))
        enter = 2 * self.conductance * (T - wall[0])
        f[WALLS] = h * ackermann * (AIR_T - T) + radiation(T) - j * (WATER_HEAT * (T - ZERO) + latent_heat(T)) - enter
        # Heat through the wall to its back.
        heat = np.concatenate([enter[None], self.conductance * (wall[:-1] - wall[1:]), -self.back(wall[-1])[None]])
        f[WALLS - 1 :: -1] = (heat[:-1] - heat[1:]) / self.capacity
        k = CURE_A * np.exp(-CURE_E / (GAS * T))
        f[WALLS + 3 :: 2] = (k * (1 - conversion) / (1 + (water / HINDERING) ** 2))[::-1]
        return f

    def back(self, last):
        """Heat into the back face behind half a cell of the wall."""
        h, _, _ = coefficient(last, np.full_like(last, AIR_Y))
        T = last
        for _ in range(20):
            miss = 2 * self.conductance * (last - T) + h * (AIR_T - T) + radiation(T)
            step = miss / (2 * self.conductance + h + 4 * EMISSIVITY * STEFAN_BOLTZMANN * T**3)
            T = T + step
            if np.all(np.abs(step) < 1e-10 * T):
                break
        return h * (AIR_T - T) + radiation(T)

    def meet(self, pot, face, supply, top):
        """The activity of the surface and the flux there, at which the film supplies what the air takes. As in the library
        it is Newton's method in -ln(1 - y) inside a bracket, the slope put right by the last chord."""
        half = self.width[-1] / 2
        full = face.full

        def balance(a):
            demand, by_demand, _ = face.flux(a)
            water, per_activity = gab(a)
            return demand, (supply - pot.value(water)) / half, by_demand, pot.slope(water) * per_activity / half

        low = np.minimum(gab_activity(top), np.minimum(1, AIR_Y / full))
        high = np.minimum(1, (1 - EDGE) / full)
        w_low, w_high = -np.log1p(-low * full), -np.log1p(-high * full)
        w = np.clip(-np.log1p(-np.clip(self.expected, low, high) * full), w_low, w_high)
        w_top, enclosed, held = w_high, np.zeros(w.shape, bool), np.ones_like(w)
        before, last, slope_before = w, np.full_like(w, np.inf), np.full_like(w, np.inf)
        # What is left of a difference of two potentials is rounded as these are.
        rounding = 4e-15 * np.abs(supply - POLYMER * WATER * pot.base3) / half
        for _ in range(60):
            a = np.where(w >= w_high, high, -np.expm1(-w) / full)
            demand, supplied, by_demand, by_supply = balance(a)
            miss, slope = demand - supplied, (by_demand + by_supply) * (1 - a * full) / full
            ratio = 2 * (miss - last) / ((w - before) * (slope + slope_before))
            held = np.where((ratio > 0.5) & (ratio < 2), ratio, held)
            wet = (w >= w_high) & (miss <= 0)
            done = wet | (np.abs(miss) <= 1e-11 * np.abs(supplied) + rounding)
            if np.all(done):
                break
            w_low, w_top, enclosed = np.where(miss < 0, w, w_low), np.where(miss < 0, w_top, w), enclosed | (miss >= 0)
            step = w - miss / (slope * held)
            beyond = ~enclosed & ~(step < w_top)
            halved = ~((step > w_low) & (step < w_top)) | (np.abs(miss) > 0.5 * np.abs(last))
            step = np.where(beyond, w_high, np.where(halved, (w_low + w_top) / 2, step))
            before, last, slope_before = w, miss, slope
            w = np.where(done, w, step)
        by_demand = by_demand + (held - 1) * (by_demand + by_supply)
        j = (demand * by_supply + supplied * by_demand) / (by_supply + by_demand)
        if np.any(wet):
            a, j = self.saturated(face, balance, wet, a, j, supply - pot.value(gab(1.0)[0]), half)
        if len(a) == 1 and np.isfinite(a[0]):
            self.expected = float(a[0])
        return a, j

    def saturated(self, face, balance, wet, a, j, left, half):
        """A wet surface has the activity 1; one in its own steam gives what the film supplies at the edge."""
        most, _, _ = face.flux(np.ones_like(a))
        steam = wet & (a < 1) & (most > left / half)
        open_ = wet & ~steam
        j, at = np.where(open_, most, j), np.where(open_, 1, a)
        if np.any(steam):
            for _ in range(4):
                demand, supplied, by_demand, by_supply = balance(at)
                at = np.where(steam, np.minimum(1, at - (demand - supplied) / (by_demand + by_supply)), at)
            j = np.where(steam, (demand * by_supply + supplied * by_demand) / (by_demand + by_supply), j)
        return at, j


def edges(cells):
    """Edges of the film's cells in solids: thin at the surface, one of them 5 % of the solids below it."""
    whole = 1 - np.exp(-3.0)
    outer = -np.log(1 - 0.95 * whole) / 3
    top = max(2, int(np.floor(cells * (1 - outer) + 0.5)))
    i = np.arange(cells + 1)
    below = cells - top
    xi = np.where(i <= below, outer * i / below, outer + (1 - outer) * (i - below) / top)
    s = SOLIDS * (1 - np.exp(-3 * xi)) / whole
    s[below], s[cells] = SOLIDS * 0.95, SOLIDS
    return s
