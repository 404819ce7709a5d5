"""Clearance of a flange to a switch point by brute force, apart from the TypeScript.

Flange and point are drawn as polylines with a point every 0.005 mm of height (the round of the flange
tip by its angle) and the horizontal distance between them is taken at every 0.01 mm below the top of the
point; no formula for the place of the smallest clearance is used. Flange: straight from 3/8 in below the
tread at its face angle to a round tip of 12 mm; point: corners of its gauge side below its top.

Run: python3 tests/reference/point-fit.py > tests/reference/point-fit.json
Needs nothing but Python.
"""

import json
import math

TOUCHES = 9.525
TIP = 12.0


def flange(height, face_deg):
    """(depth, distance from the gauge line) from the tread to the tip, depth rising."""
    face = math.radians(face_deg)
    begin = height - TIP + TIP * math.cos(face)
    straight = (begin - TOUCHES) / math.tan(face)
    line = [(0.0, 0.0), (TOUCHES, 0.0)]
    steps = 4000
    for i in range(1, steps + 1):
        share = i / steps
        line.append((TOUCHES + (begin - TOUCHES) * share, straight * share))
    centre = straight + TIP * math.sin(face)
    for i in range(1, steps + 1):
        angle = face * (1 - i / steps)
        line.append((height - TIP + TIP * math.cos(angle), centre - TIP * math.sin(angle)))
    return line


def along(line, depth):
    """Distance on a polyline of (depth, distance), depth rising; beyond its end as at the end."""
    low, high = 0, len(line) - 1
    if depth >= line[high][0]:
        return line[high][1]
    while high - low > 1:
        middle = (low + high) // 2
        if line[middle][0] <= depth:
            low = middle
        else:
            high = middle
    (d0, x0), (d1, x1) = line[low], line[high]
    return x0 if d1 == d0 else x0 + (x1 - x0) * (depth - d0) / (d1 - d0)


def fit(height, face_deg, gap, top, side):
    """Smallest clearance and its depth; `side`: (depth below the top, distance from the back edge)."""
    line = flange(height, face_deg)
    best = None
    n = int(round((height - top) / 0.01))
    for i in range(n + 1):
        depth = min(height, top + i * 0.01)
        if depth < 0:
            continue
        clear = along(line, depth) - gap - along(side, depth - top)
        if best is None or clear < best[0]:
            best = (clear, depth)
    return best


def straight_side(thickness, side_deg):
    return [(0.0, thickness), (60.0, thickness + 60.0 / math.tan(math.radians(side_deg)))]


CASES = []
for height, face, gap, thickness, top, side in [
    (28.575, 75, 1.5875, 3.175, 19.05, 80),
    (28.575, 75, 0, 6.35, 12.7, 80),
    (30, 85, 0, 1, 12, 70),
    (32, 88, 0.5, 2, 10, 65),
    (26, 70, 0, 4, 5, 85),
    (35, 60, 2, 8, 15, 55),
    (29, 72, 0, 5, -1.5, 78),
    (38, 68, 0.8, 2.5, 30, 75),
]:
    clear, depth = fit(height, face, gap, top, straight_side(thickness, side))
    CASES.append(
        dict(heightMm=height, faceDeg=face, gapMm=gap, topMm=top, thicknessMm=thickness, sideDeg=side,
             leastMm=round(clear, 4), atMm=round(depth, 2))
    )

# Gauge sides that are not straight: worn above and upright below; bulged; hollowed under a lip.
BENT = []
for height, face, gap, top, side in [
    (28.575, 75, 1.5875, 14.0, [(0, 3), (6, 5), (30, 5.5)]),
    (30, 72, 0, 12.0, [(0, 2), (5, 3), (7, 7), (30, 7.5)]),
    (32, 85, 0.5, 8.0, [(0, 4), (2, 5), (4, 3.5), (30, 9)]),
    (29, 68, 0, 5.0, [(0, 1), (3, 2.5), (24, 6)]),
]:
    clear, depth = fit(height, face, gap, top, [(float(d), float(x)) for d, x in side])
    BENT.append(
        dict(heightMm=height, faceDeg=face, gapMm=gap, topMm=top, sideMm=side,
             leastMm=round(clear, 4), atMm=round(depth, 2))
    )

print(json.dumps(dict(straight=CASES, bent=BENT), indent=2))
