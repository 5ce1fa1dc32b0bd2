"""The coupon with SciPy's solve_ivp, its right-hand side vectorised: one call of the library for all states asked for at
once. Prints one line of JSON for each tolerance.

    scipy_peer.py LIBRARY METHOD CELLS REPEATS TOLERANCE...

Virtanen et al. (2020), SciPy 1.0, Nature Methods 17, 261-272.
"""

import ctypes
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

END, MARKS = 1800.0, 3
DOUBLES = ctypes.POINTER(ctypes.c_double)


def pointer(a):
    return a.ctypes.data_as(DOUBLES)


def measure(library, method, cells, repeats, tol):
    spent = []
    for _ in range(repeats):
        begun = time.perf_counter()
        n = library.coupon_new(cells)
        start, scale = np.empty(n), np.empty(n)
        library.coupon_start(pointer(start), pointer(scale))
        # The counts at the end, on which nothing depends, are left out: SciPy knows no unknown without a tolerance.
        counts = start[np.isinf(scale)]
        scale = scale[np.isfinite(scale)]

        def rates(t, y):
            rows = np.atleast_2d(y.T)
            rows = np.hstack([rows, np.tile(counts, (len(rows), 1))])
            out = np.empty_like(rows)
            library.coupon_rates(t, pointer(rows), pointer(out), len(rows))
            return out[:, : len(scale)].reshape(y.T.shape).T

        margin = np.empty(MARKS)

        def event(i):
            def g(_, y):
                state = np.concatenate([y, counts])
                library.coupon_margins(pointer(state), pointer(margin))
                return margin[i]

            g.direction = -1
            return g

        vectorised = {} if method == "LSODA" else {"vectorized": True}
        run = solve_ivp(rates, (0.0, END), start[: len(scale)], method=method, rtol=tol, atol=tol * scale,
                        events=[event(i) for i in range(MARKS)], **vectorised)
        spent.append(time.perf_counter() - begun)
        if not run.success:
            sys.exit(f"{method}: {run.message}")
    marks = [float(t[0]) if len(t) else float("nan") for t in run.t_events]
    print(json.dumps({"solver": "SciPy " + method, "tolerance": tol, "seconds": float(np.median(spent)), "steps": len(run.t) - 1,
                      "derivatives": int(run.nfev), "jacobians": int(run.njev), "factors": int(run.nlu), "marks": marks,
                      "state": run.y[:, -1].tolist() + counts.tolist()}), flush=True)


def main():
    library = ctypes.CDLL(sys.argv[1])
    library.coupon_rates.argtypes = [ctypes.c_double, DOUBLES, DOUBLES, ctypes.c_int]
    for text in sys.argv[5:]:
        measure(library, sys.argv[2], int(sys.argv[3]), int(sys.argv[4]), float(text))


main()
