import { type PointMm } from '../outline/outline';
import { type EvenOutline } from '../outline/resample';
import { ok, refuse, type Result } from '../readings/result';
import { levelNear } from './level';

const DEGREE = Math.PI / 180;

/** The edge of the tread is where the line lies farthest out in this direction, up from the field side: between tread and chamfer. */
const EDGE_SEEN_FROM_RAD = 65 * DEGREE;

/** The running band begins here from the back of the flange: beyond the root on any wheel. */
const BAND_FROM_MM = 50;

/** A field-side edge nearer than this to the back is no edge of a rim but the end of the trace. */
const EDGE_FROM_MM = 90;

/** The raised edge is looked for within this distance of the edge. */
const RAISED_WITHIN_MM = 35;

/** Half of the width that one height is fitted over. */
const HALF_WINDOW_MM = 5;
const STEP_MM = 1;

/** How much of the line there must be beyond the edge for it to be the tread's edge and not the trace's end. */
const BEYOND_EDGE_MM = 1;

/** A trace that reaches this far shows the field side even without the edge itself. */
const REACHES_MM = 118;

export type FieldSide = {
  /** Lowest place of the running band, and the highest of the field side. */
  readonly lowest: PointMm;
  readonly top: PointMm;
  readonly hollowMm: number;
};

/**
 * Running band and field-side edge of the tread, each height a parabola fitted over 10 mm of the tread.
 * Refuses, with the reason, a line that ends before the field-side edge.
 */
export function fieldSide(line: EvenOutline, tip: number): Result<FieldSide> {
  const [cos, sin] = [Math.cos(EDGE_SEEN_FROM_RAD), Math.sin(EDGE_SEEN_FROM_RAD)];
  let edge = -1;
  let farthest = -Infinity;
  let reached = -Infinity;
  for (let i = tip; i < line.xMm.length; i += 1) {
    reached = Math.max(reached, line.xMm[i]!);
    const out = line.xMm[i]! * cos + line.yMm[i]! * sin;
    if (line.xMm[i]! < BAND_FROM_MM || out <= farthest) continue;
    farthest = out;
    edge = i;
  }
  const beyond = edge < 0 ? 0 : (line.xMm.length - 1 - edge) * line.stepMm;
  const edgeMm = edge < 0 ? -Infinity : line.xMm[edge]!;
  if (edgeMm < EDGE_FROM_MM || (beyond < BEYOND_EDGE_MM && reached < REACHES_MM)) {
    return refuse('The trace does not reach the field-side edge of the tread.');
  }
  const tread = { xMm: line.xMm.slice(tip, edge + 1), yMm: line.yMm.slice(tip, edge + 1) };
  const at = (xMm: number): PointMm | null => {
    const yMm = levelNear(tread, xMm, HALF_WINDOW_MM, 0);
    return yMm === null ? null : { xMm, yMm };
  };
  let top: PointMm | null = null;
  // The last two millimetres run into the edge's round.
  for (let x = edgeMm - 2; x > Math.max(BAND_FROM_MM, edgeMm - RAISED_WITHIN_MM); x -= STEP_MM) {
    const here = at(x);
    if (here !== null && (top === null || here.yMm > top.yMm)) top = here;
  }
  if (top === null) return refuse('The trace has a gap in the tread.');
  let lowest = top;
  for (let x = BAND_FROM_MM; x < top.xMm; x += STEP_MM) {
    const here = at(x);
    if (here !== null && here.yMm < lowest.yMm) lowest = here;
  }
  return ok({ lowest, top, hollowMm: top.yMm - lowest.yMm });
}
