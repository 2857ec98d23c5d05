#!/usr/bin/env python3
"""The yardstick: set A by a general solver, the method of lines with scipy's BDF.

Old hull 10 mm and fresh laminate 20 mm, 34 + 66 intervals with a node on the seam;
8 W/(m2 K) to air that swings by 6 K about 16 C through the day; from six in the
morning for 24 h. The laminate's resin is invented:

    da/dt = (5e6 exp(-66000/RT) + 1e7 exp(-60000/RT) a^0.9) (1 - a)^1.6, 200 kJ/kg

Prints one line of JSON: the peak, its time, and the seconds of each run.
usage: cure1d.py [runs] [rtol]      needs numpy and scipy (python3-scipy)
"""
import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import bmat, diags, identity

R = 8.314462618
HULL, LAMINATE = 34, 66
n = HULL + LAMINATE + 1

dx = np.r_[np.full(HULL, 0.010 / HULL), np.full(LAMINATE, 0.020 / LAMINATE)]
g = np.r_[np.full(HULL, 0.25), np.full(LAMINATE, 0.22)] / dx
half_cell = np.r_[np.full(HULL, 1750.0 * 1100.0), np.full(LAMINATE, 1550.0 * 1300.0)] * dx / 2
capacity = np.zeros(n)
capacity[:-1] += half_cell
capacity[1:] += half_cell
resin = np.full(LAMINATE + 1, 1550.0 * dx[-1])  # kg/m2 of laminate by node
resin[[0, -1]] /= 2


def air(t):
    return 289.15 + 6 * np.sin(2 * np.pi * (t - 3 * 3600.0) / 86400)


def rate(a, T):
    a = np.clip(a, 0, 1)
    return (5e6 * np.exp(-66e3 / (R * T)) + 1e7 * np.exp(-60e3 / (R * T)) * a**0.9) * (1 - a) ** 1.6


def slope(t, y):
    T, a = y[:n], y[n:]
    da = rate(a, T[HULL:])
    q = g * np.diff(T)
    heat = np.zeros(n)
    heat[:-1] += q
    heat[1:] -= q
    heat[0] += 8 * (air(t) - T[0])
    heat[-1] += 8 * (air(t) - T[-1])
    heat[HULL:] += resin * 2e5 * da
    return np.r_[heat / capacity, da]


# Which derivatives can differ from zero: neighbours, and each node with its degree.
own = diags([np.ones(LAMINATE + 1)], [-HULL], shape=(n, LAMINATE + 1))
pattern = bmat([[diags([1, 1, 1], [-1, 0, 1], shape=(n, n)), own], [own.T, identity(LAMINATE + 1)]]).tocsc()


def solve(rtol):
    start = np.r_[np.full(n, air(0.0)), np.zeros(LAMINATE + 1)]
    s = solve_ivp(slope, (0, 86400), start, method="BDF", rtol=rtol, atol=rtol / 100, jac_sparsity=pattern, dense_output=True)
    node, step = np.unravel_index(s.y[:n].argmax(), (n, len(s.t)))
    # On the dense solution about the hottest step, then by a parabola between nodes.
    ts = np.linspace(s.t[max(step - 1, 0)], s.t[min(step + 1, len(s.t) - 1)], 2001)
    near = s.sol(ts)[node - 1 : node + 2]
    at = near[1].argmax()
    low, mid, high = near[:, at]
    shift = 0.5 * (low - high) / (low - 2 * mid + high)
    return mid - 0.25 * (low - high) * shift - 273.15, ts[at], len(s.t)


def main():
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    rtol = float(sys.argv[2]) if len(sys.argv) > 2 else 1e-6
    seconds = []
    for _ in range(runs):
        began = time.perf_counter()
        peak, at, steps = solve(rtol)
        seconds.append(time.perf_counter() - began)
    print(json.dumps({"peakC": peak, "peakTime": at, "steps": steps, "seconds": seconds}))


if __name__ == "__main__":
    main()
