"""Works TCRP Report 71 vol. 5, eq. 2.4, apart from the TypeScript, and finds its poles.

Run: python3 tests/reference/climb-distance.py > tests/reference/climb-distance.json
Needs numpy (Debian: python3-numpy).
"""

import json

import numpy as np


def distance(angle, length, attack):
    a = (100 / (-1.9128 * angle + 146.56) + 3.1) * length
    a += -1 / np.polyval([-0.0092, 1.2152, -39.031], angle) + 1.23
    b = (10 / (-21.157 * length + 2.1052) + 0.05) * angle
    b += 10 / (0.2688 * length - 0.0266) - 5
    return a * b * length / (attack + b * length)


CASES = [
    (75, 0.75, 5), (63, 0.4, 5), (63, 0.4, 0), (63, 0.75, 10), (67, 0.5, 5), (70, 0.6, 2),
    (72, 0.6, 20), (75, 0.4, 10), (76.5, 0.75, 5), (76.7, 0.75, 5),
]
print(json.dumps({
    "made by": "climb-distance.py",
    "cases": [
        {"angleDeg": g, "lengthIn": n, "attackMrad": o, "distanceFt": float(distance(g, n, o))} for g, n, o in CASES
    ],
    "polesDeg": sorted([146.56 / 1.9128, *np.roots([-0.0092, 1.2152, -39.031]).tolist()]),
}, indent=2))
