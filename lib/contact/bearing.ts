import { placeOnCurve, type Curve } from './curve';
import { type RailSurface } from './rail-surface';

/** Where a wheel would bear on its rail, in the frame of the side. */
export type Bearing = {
  /** Height of the wheelset's reference point at which this place touches; the highest of them bears. */
  readonly standsAtMm: number;
  /** The touching point on the wheel, before it is moved and rolled. */
  readonly wheelXMm: number;
  readonly wheelYMm: number;
  /** Of the touching point, from the track centre outward. */
  readonly xMm: number;
  /** Of the touching point, from the wheelset's reference point upward. */
  readonly aboveReferenceMm: number;
  /** Inclination of the common tangent, positive where the flange bears on the gauge face. */
  readonly angleRad: number;
  readonly railSlope: number;
  /** At an end of the wheel or of what can be seen of the rail: the outlines ought to go further. */
  readonly atEnd: boolean;
};

/**
 * A wheel of one side moved outward by `shiftMm` and rolled by `rollRad` (outer end up) about the
 * wheelset's reference point, the middle of the axle at tread level:
 * X = s + x cos ψ − y sin ψ, Y = z + x sin ψ + y cos ψ. It touches where z = rail(X) − x sin ψ − y cos ψ
 * is greatest over the wheel. `room` is scratch with as many entries as the wheel has nodes.
 */
export type Pose = { readonly shiftMm: number; readonly rollRad: number };

/** A place found on a 0.25 mm grid lies below its true height by less than this, even on a flange face. */
const GRID_LOSS_MM = 0.02;

/**
 * Every local highest place whose height is within `withinMm` of the highest, the highest first.
 * Empty when no part of the wheel is over the rail.
 */
export function bearings(
  wheel: Curve,
  rail: RailSurface,
  pose: Pose,
  withinMm: number,
  room: Float64Array,
): Bearing[] {
  const best = scan(wheel, rail, pose, room);
  if (best === -Infinity) return [];
  const from = best - withinMm - GRID_LOSS_MM;
  const n = wheel.xMm.length;
  const found: Bearing[] = [];
  for (let i = 0; i < n; i += 1) {
    const z = room[i]!;
    if (!(z >= from)) continue;
    const before = i === 0 ? -Infinity : room[i - 1]!;
    const after = i === n - 1 ? -Infinity : room[i + 1]!;
    if (z >= before && z > after) found.push(refined(wheel, rail, pose, i, before, after));
  }
  found.sort((a, b) => b.standsAtMm - a.standsAtMm);
  const top = found[0]?.standsAtMm ?? 0;
  return found.filter(({ standsAtMm }) => standsAtMm >= top - withinMm);
}

function scan(wheel: Curve, rail: RailSurface, { shiftMm, rollRad }: Pose, room: Float64Array): number {
  const { xMm, yMm } = wheel;
  const { fromXMm, stepMm, heightMm } = rail;
  const [cos, sin] = [Math.cos(rollRad), Math.sin(rollRad)];
  const last = heightMm.length - 1;
  const perMm = 1 / stepMm;
  const startMm = shiftMm - fromXMm;
  let best = -Infinity;
  for (let i = 0; i < xMm.length; i += 1) {
    const x = xMm[i]!;
    const y = yMm[i]!;
    const at = (startMm + x * cos - y * sin) * perMm;
    if (!(at >= 0 && at < last)) {
      room[i] = -Infinity;
      continue;
    }
    const k = Math.floor(at);
    const low = heightMm[k]!;
    const z = low + (heightMm[k + 1]! - low) * (at - k) - x * sin - y * cos;
    room[i] = z;
    if (z > best) best = z;
  }
  return best;
}

/** From the highest node to the place between nodes where the directions agree, or to the end of a line. */
function refined(
  wheel: Curve,
  rail: RailSurface,
  pose: Pose,
  node: number,
  before: number,
  after: number,
): Bearing {
  const from = node + (before === -Infinity ? 0 : -1);
  const to = node + (after === -Infinity ? 0 : 1);
  const lower = before === -Infinity ? reach(wheel, rail, pose, node, -1) : from;
  const upper = after === -Infinity ? reach(wheel, rail, pose, node, 1) : to;
  let [a, b] = [lower, upper];
  let fa = climb(wheel, rail, pose, a);
  let fb = climb(wheel, rail, pose, b);
  if (!(fa > 0)) return bearingAt(wheel, rail, pose, before === -Infinity ? a : node, before === -Infinity);
  if (!(fb < 0)) return bearingAt(wheel, rail, pose, after === -Infinity ? b : node, after === -Infinity);
  let at = node;
  // False position, halving the stuck end (Illinois); the directions are nearly straight over two nodes.
  for (let step = 0; step < 40 && b - a > 1e-7; step += 1) {
    at = (a * fb - b * fa) / (fb - fa);
    const f = climb(wheel, rail, pose, at);
    if (Math.abs(f) < 1e-10) break;
    if (f > 0) {
      [a, fa] = [at, f];
      fb /= 2;
    } else {
      [b, fb] = [at, f];
      fa /= 2;
    }
  }
  return bearingAt(wheel, rail, pose, at, false);
}

/** How far from `node` towards its neighbour the wheel is still over the rail, as a node with a share. */
function reach(wheel: Curve, rail: RailSurface, pose: Pose, node: number, way: 1 | -1): number {
  const neighbour = node + way;
  if (neighbour < 0 || neighbour >= wheel.xMm.length) return node;
  let [inside, outside] = [node, neighbour];
  for (let step = 0; step < 40; step += 1) {
    const middle = (inside + outside) / 2;
    if (Number.isNaN(climb(wheel, rail, pose, middle))) outside = middle;
    else inside = middle;
  }
  return inside;
}

const place = new Float64Array(3);

function onWheel(wheel: Curve, at: number): void {
  const node = Math.min(Math.floor(at), wheel.xMm.length - 1);
  placeOnCurve(wheel, node, at - node, place);
}

/** How z grows along the wheel's line: rail slope · cos(heading) − sin(heading). NaN off the rail. */
function climb(wheel: Curve, rail: RailSurface, { shiftMm, rollRad }: Pose, at: number): number {
  onWheel(wheel, at);
  const heading = place[2]! + rollRad;
  const x = shiftMm + place[0]! * Math.cos(rollRad) - place[1]! * Math.sin(rollRad);
  return inTable(rail, rail.slope, x) * Math.cos(heading) - Math.sin(heading);
}

function inTable({ fromXMm, stepMm }: RailSurface, values: Float64Array, xMm: number): number {
  const at = (xMm - fromXMm) / stepMm;
  if (!(at >= 0 && at <= values.length - 1)) return NaN;
  const k = Math.min(Math.floor(at), values.length - 2);
  return values[k]! + (values[k + 1]! - values[k]!) * (at - k);
}

function bearingAt(wheel: Curve, rail: RailSurface, pose: Pose, at: number, atEnd: boolean): Bearing {
  onWheel(wheel, at);
  const [x, y, heading] = [place[0]!, place[1]!, place[2]!];
  const [cos, sin] = [Math.cos(pose.rollRad), Math.sin(pose.rollRad)];
  const xMm = pose.shiftMm + x * cos - y * sin;
  const aboveReferenceMm = x * sin + y * cos;
  const railSlope = inTable(rail, rail.slope, xMm);
  const wheelEnds = at <= 0 || at >= wheel.xMm.length - 1;
  return {
    standsAtMm: inTable(rail, rail.heightMm, xMm) - aboveReferenceMm,
    wheelXMm: x,
    wheelYMm: y,
    xMm,
    aboveReferenceMm,
    // Where the wheel ends it bears with an edge, and the rail alone has a direction.
    angleRad: wheelEnds ? Math.atan(railSlope) : withinHalfTurn(heading + pose.rollRad),
    railSlope,
    atEnd,
  };
}

/** Headings along a curve are unwrapped; an angle that is shown is not. */
const withinHalfTurn = (rad: number): number => Math.atan2(Math.sin(rad), Math.cos(rad));

/** How the height at which a bearing touches moves with the roll: dz/dψ = −rail′(X)·(Y − z) − (X − s). */
export const standsPerRoll = (bearing: Bearing, pose: Pose): number =>
  -bearing.railSlope * bearing.aboveReferenceMm - (bearing.xMm - pose.shiftMm);
