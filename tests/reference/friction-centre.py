"""Solves the balance of a truck sliding in a curve with SciPy, apart from the TypeScript.

No published worked example with all its numbers was found. Here the three equations of balance
(along the track, across it, moments about the middle of the truck) are solved for the place of the
friction centre and the guiding force by root finding; nothing is minimised.

Run: python3 tests/reference/friction-centre.py > tests/reference/friction-centre.json
Needs numpy and scipy (Debian: python3-scipy).
"""

import json

import numpy as np
from scipy.optimize import root

WHEELS = np.array([[0.5, 0.5], [0.5, -0.5], [-0.5, 0.5], [-0.5, -0.5]])


def solve(wheelbase, spacing, loads, friction, outward, turning):
    places = WHEELS * [wheelbase, spacing]
    loads = np.array(loads, dtype=float)

    def forces(centre):
        from_centre = places - centre
        grip = friction * loads / np.hypot(*from_centre.T)
        # On the truck, as it slides round: across the line to the centre.
        return np.column_stack([-from_centre[:, 1], from_centre[:, 0]]) * grip[:, None]

    def unbalanced(unknown):
        x, y, guiding = unknown
        on_wheels = forces(np.array([x, y]))
        moment = np.sum(places[:, 0] * on_wheels[:, 1] - places[:, 1] * on_wheels[:, 0])
        return [
            on_wheels[:, 0].sum(),
            on_wheels[:, 1].sum() + outward - guiding,
            moment - guiding * wheelbase / 2 + turning,
        ]

    best = None
    for start in (-0.5, -0.8, -1.5, -3.0):
        found = root(unbalanced, [start * wheelbase, 0, friction * loads.sum()], method="hybr", tol=1e-13)
        if best is None or np.linalg.norm(found.fun) < np.linalg.norm(best.fun):
            best = found
    assert np.linalg.norm(best.fun) < 1e-8, best
    x, y, guiding = best.x
    across = forces(np.array([x, y]))[:, 1]
    # The rail feels the opposite of the wheel; towards the field is inward on the inner rail.
    on_rail = np.where(WHEELS[:, 1] > 0, -across, across)
    on_rail[0] += guiding
    return {
        "wheelbaseM": wheelbase,
        "spacingM": spacing,
        "verticalsKn": loads.tolist(),
        "friction": friction,
        "outwardKn": outward,
        "turningKnM": turning,
        "flangeKn": guiding,
        "centreM": wheelbase / 2 - x,
        "lateralsKn": on_rail.tolist(),
    }


CASES = [
    (1.78, 1.524, [140, 140, 140, 140], 0.4, 0, 0),
    (1.78, 1.524, [140, 140, 140, 140], 0.25, 0, 0),
    (1.83, 1.524, [120, 150, 118, 147], 0.5, 20, 6),
    (1.68, 1.524, [150, 118, 146, 121], 0.35, -12, 10),
    (1.78, 1.5, [30, 34, 31, 33], 0.45, 5, 2),
    (2.5, 1.5, [85, 85, 85, 85], 0.3, 15, 0),
]
print(json.dumps({"made by": "friction-centre.py", "cases": [solve(*case) for case in CASES]}, indent=2))
