"""Runs trains of masses and draft gears with SciPy, apart from the TypeScript.

The same law of the gear (slack, an elastic part of a straight and a cubic share, then solid, friction
as a share of the elastic force) is written down again and integrated by the Runge-Kutta pair of
orders 8 and 5(3) to a tight tolerance; power is changed for braking in between, so that the slack runs
in and out.

Run: python3 tests/reference/mass-chain.py > tests/reference/mass-chain.json
Needs numpy and scipy (Debian: python3-scipy).
"""

import json

import numpy as np
from scipy.integrate import solve_ivp

SMOOTH = 0.03  # m/s
GEARS = {
    "friction": dict(slack=0.019, travel=0.165, closed=1480e3, solid=90e6, cubic=0.68, share=0.5),
    "wornFriction": dict(slack=0.051, travel=0.165, closed=1480e3, solid=90e6, cubic=0.68, share=0.25),
    "cushioned": dict(slack=0.019, travel=0.5, closed=1480e3, solid=90e6, cubic=0.3, share=0.7),
}
MASSES = np.array([180e3, 120e3, 120e3, 30e3, 120e3, 30e3, 30e3, 120e3, 120e3, 120e3])
# Head-end force (N) from each time (s) on, and what holds back every vehicle.
HEAD = [(0, 300e3), (20, -250e3), (45, 150e3)]
HELD = 3e3
EVERY = 5
END = 70


def coupler(x, rate, slack, travel, closed, solid, cubic, share):
    beyond = np.abs(x) - slack / 2
    used = beyond / travel
    elastic = np.where(
        beyond <= travel,
        closed * ((1 - cubic) * used + cubic * used**3),
        closed + solid * (beyond - travel),
    )
    elastic = np.where(beyond <= 0, 0, elastic)
    working = np.sign(x) * rate
    return np.sign(x) * elastic * (1 + share * working / np.hypot(working, SMOOTH))


def run(gear):
    n = len(MASSES)
    state = np.concatenate([np.full(n, 8.0), np.zeros(n - 1)])
    rows = []
    for i, (since, head) in enumerate(HEAD):
        until = HEAD[i + 1][0] if i + 1 < len(HEAD) else END
        outside = np.full(n, -HELD)
        outside[0] = head

        def slope(_, y):
            speeds, x = y[:n], y[n:]
            rate = speeds[:-1] - speeds[1:]
            force = coupler(x, rate, **gear)
            ahead = np.concatenate([[0], force])
            behind = np.concatenate([force, [0]])
            return np.concatenate([(outside + ahead - behind) / MASSES, rate])

        times = np.arange(since + EVERY, until + 1e-9, EVERY)
        out = solve_ivp(slope, (since, until), state, method="DOP853", t_eval=times, rtol=1e-10, atol=1e-12, max_step=0.01)
        state = out.y[:, -1]
        for k, t in enumerate(times):
            y = out.y[:, k]
            force = coupler(y[n:], y[: n - 1] - y[1:n], **gear)
            rows.append({"timeS": float(t), "speedsMs": y[:n].tolist(), "forcesKn": (force / 1e3).tolist()})
    return rows


print(json.dumps({
    "made by": "mass-chain.py",
    "massesKg": MASSES.tolist(),
    "headKn": [[t, f / 1e3] for t, f in HEAD],
    "heldKn": HELD / 1e3,
    "runs": [{"gear": name, "rows": run(gear)} for name, gear in GEARS.items()],
}, indent=1))
