"""The coupon with SciPy's solve_ivp, its right-hand side vectorised: one call for all states asked for at once. Prints one line
of JSON for each tolerance, with "failed" where SciPy gave up.

    scipy_peer.py LIBRARY library|numpy METHOD CELLS REPEATS TOLERANCE...

The right-hand side is that of the library, compiled, or the one of coupon_numpy.py. What the latter says is held against the
library at every state of the run.

Virtanen et al. (2020), SciPy 1.0, Nature Methods 17, 261-272.
"""

import ctypes
import json
import sys
import time

import numpy as np
from coupon_numpy import Coupon
from scipy.integrate import solve_ivp

END, MARKS = 1800.0, 3
DOUBLES = ctypes.POINTER(ctypes.c_double)


def pointer(a):
    return a.ctypes.data_as(DOUBLES)


class Compiled:
    """The library's coupon. The counts at the end of its unknowns, on which nothing depends, are left out: SciPy knows no
    unknown without a tolerance."""

    def __init__(self, library, cells):
        self.compiled = library
        n = library.coupon_new(cells)
        start, scale = np.empty(n), np.empty(n)
        library.coupon_start(pointer(start), pointer(scale))
        self.n = int(np.isfinite(scale).sum())
        self.start, self.scale, self.counts = start[: self.n], scale[: self.n], start[self.n :]
        self.margin = np.empty(MARKS)

    def rates(self, t, y):
        """Rates of one state, or of several that stand in columns."""
        rows = np.atleast_2d(y.T)
        rows = np.hstack([rows, np.tile(self.counts, (len(rows), 1))])
        out = np.empty_like(rows)
        self.compiled.coupon_rates(t, pointer(rows), pointer(out), len(rows))
        return out[:, : self.n].reshape(y.T.shape).T

    def event(self, i):
        def g(_, y):
            state = np.concatenate([y, self.counts])
            self.compiled.coupon_margins(pointer(state), pointer(self.margin))
            return self.margin[i]

        g.direction = -1
        return g


def disagreement(ours, theirs, states):
    """The largest difference of two right-hand sides over the states, as a share of each unknown's largest rate."""
    a, b = (np.column_stack([rates(0.0, y) for y in states.T]) for rates in (ours, theirs))
    return float((np.abs(a - b) / np.abs(b).max(axis=1, keepdims=True)).max())


def measure(library, side, method, cells, repeats, tol):
    spent = []
    vectorised = {} if method == "LSODA" else {"vectorized": True}  # LSODA asks for one state at a time
    for _ in range(repeats):
        begun = time.perf_counter()
        compiled = Compiled(library, cells)
        rates = compiled.rates if side == "library" else Coupon(cells).rates
        run = solve_ivp(rates, (0.0, END), compiled.start, method=method, rtol=tol, atol=tol * compiled.scale,
                        events=[compiled.event(i) for i in range(MARKS)], **vectorised)
        spent.append(time.perf_counter() - begun)
        if not run.success:
            print(f"SciPy {method} at {tol:g}, after {run.t[-1]:.6g} s: {run.message}", file=sys.stderr)
            print(json.dumps({"solver": "SciPy " + method, "tolerance": tol, "failed": True}), flush=True)
            return
    marks = [float(t[0]) if len(t) else float("nan") for t in run.t_events]
    print(json.dumps({"solver": "SciPy " + method, "tolerance": tol, "seconds": min(spent), "steps": len(run.t) - 1,
                      "derivatives": int(run.nfev), "jacobians": int(run.njev), "factors": int(run.nlu), "marks": marks,
                      "state": run.y[:, -1].tolist() + compiled.counts.tolist(),
                      "disagreement": 0.0 if side == "library" else disagreement(Coupon(cells).rates, compiled.rates, run.y)}),
          flush=True)


def main():
    library = ctypes.CDLL(sys.argv[1])
    library.coupon_rates.argtypes = [ctypes.c_double, DOUBLES, DOUBLES, ctypes.c_int]
    for text in sys.argv[6:]:
        measure(library, sys.argv[2], sys.argv[3], int(sys.argv[4]), int(sys.argv[5]), float(text))


main()
