import { type PointMm } from '../outline/outline';
import { type Piece } from './piece';

/** A corner of a polygon, rounded with an arc that touches both its sides; 0 leaves it sharp. */
export type Corner = PointMm & { readonly radiusMm: number; readonly name: string };

/**
 * Lines and arcs of an open polygon with rounded corners; the first and the last corner are its ends
 * and stay sharp. `runs` marks every piece. Throws when two arcs want more of a side than it has
 * (a bug in a shape's dimensions).
 */
export function roundedPolygon(corners: readonly Corner[], runs: boolean): Piece[] {
  const pieces: Piece[] = [];
  let at: PointMm = corners[0]!;
  for (let i = 1; i < corners.length; i += 1) {
    const corner = corners[i]!;
    const next = corners[i + 1];
    const arc = next === undefined ? null : roundingArc(corners[i - 1]!, corner, next);
    const to: PointMm = arc?.from ?? { xMm: corner.xMm, yMm: corner.yMm };
    const before = corners[i - 1]!;
    const along =
      (to.xMm - at.xMm) * (corner.xMm - before.xMm) + (to.yMm - at.yMm) * (corner.yMm - before.yMm);
    if (along < -1e-9) throw new Error(`The arcs at ${before.name} and ${corner.name} overlap.`);
    if (along > 1e-9) {
      pieces.push({
        kind: 'line',
        name: `${before.name} to ${corner.name}`,
        runs,
        from: { xMm: at.xMm, yMm: at.yMm },
        to,
      });
    }
    if (arc !== null) pieces.push({ ...arc.piece, name: corner.name, runs });
    at = arc?.to ?? to;
  }
  return pieces;
}

function roundingArc(before: PointMm, corner: Corner, after: PointMm) {
  if (corner.radiusMm === 0) return null;
  const towards = (point: PointMm) => {
    const length = Math.hypot(point.xMm - corner.xMm, point.yMm - corner.yMm);
    return { x: (point.xMm - corner.xMm) / length, y: (point.yMm - corner.yMm) / length };
  };
  const a = towards(before);
  const b = towards(after);
  const cross = a.x * b.y - a.y * b.x;
  const half = Math.acos(Math.min(1, Math.max(-1, a.x * b.x + a.y * b.y))) / 2;
  const back = corner.radiusMm / Math.tan(half);
  const from: PointMm = { xMm: corner.xMm + a.x * back, yMm: corner.yMm + a.y * back };
  const to: PointMm = { xMm: corner.xMm + b.x * back, yMm: corner.yMm + b.y * back };
  const turn = -Math.sign(cross);
  const centre: PointMm = {
    xMm: from.xMm + turn * corner.radiusMm * a.y,
    yMm: from.yMm - turn * corner.radiusMm * a.x,
  };
  const fromRad = Math.atan2(from.yMm - centre.yMm, from.xMm - centre.xMm);
  const swept = Math.PI - 2 * half;
  return {
    from,
    to,
    piece: {
      kind: 'arc' as const,
      centre,
      radiusMm: corner.radiusMm,
      fromRad,
      toRad: fromRad + turn * swept,
    },
  };
}
