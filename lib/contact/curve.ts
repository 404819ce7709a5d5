import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { type Outline } from '../outline/outline';

/**
 * A line with a direction at every node: between nodes a cubic that keeps the nodes' places and
 * directions. Directions come from the parabola fitted to the neighbourhood, never from two
 * neighbouring points.
 */
export type Curve = {
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly headingRad: Float64Array;
};

/** Distance between nodes along a curve, mm. */
export const NODE_STEP_MM = 0.25;

/**
 * Half the window of the parabola, mm: short for a clean line, which keeps the direction of a flange face
 * between two curves; longer for one that shivers like a pencil line or a profilometer's (0.1 mm).
 */
const CLEAN_HALF_WINDOW_MM = 0.5;
const SHIVERING_HALF_WINDOW_MM = 2;

/** Half of all nodes lie nearer than this to the smoothed line in a clean outline, mm. */
const CLEAN_MM = 0.005;

/** The outline with even nodes, smoothed over `halfWindowMm`, or as its scatter asks when that is not given. */
export function curveOf(outline: Outline, halfWindowMm: number | undefined): Curve {
  const even = resampled(outline, NODE_STEP_MM);
  if (halfWindowMm !== undefined) return smoothed(even, halfWindowMm);
  const wide = smoothed(even, SHIVERING_HALF_WINDOW_MM);
  const off = even.xMm.map((x, i) => Math.hypot(x - wide.xMm[i]!, even.yMm[i]! - wide.yMm[i]!)).sort();
  return off[off.length >> 1]! > CLEAN_MM ? wide : smoothed(even, CLEAN_HALF_WINDOW_MM);
}

/**
 * Place on the curve at node `i` plus a share of the way to the next, 0 to 1, written into `out` as
 * x, y, heading: the search calls this some hundred thousand times, and a new object each time would be
 * most of its cost.
 */
export function placeOnCurve(curve: Curve, i: number, share: number, out: Float64Array): void {
  const { xMm, yMm, headingRad } = curve;
  const x0 = xMm[i]!;
  const y0 = yMm[i]!;
  const h0 = headingRad[i]!;
  if (share === 0) {
    out[0] = x0;
    out[1] = y0;
    out[2] = h0;
    return;
  }
  const x1 = xMm[i + 1]!;
  const y1 = yMm[i + 1]!;
  const h1 = headingRad[i + 1]!;
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const rest = 1 - share;
  const from = rest * rest * (1 + 2 * share);
  const to = share * share * (3 - 2 * share);
  const leave = chord * share * rest * rest;
  const arrive = chord * share * share * rest;
  out[0] = x0 * from + x1 * to + Math.cos(h0) * leave - Math.cos(h1) * arrive;
  out[1] = y0 * from + y1 * to + Math.sin(h0) * leave - Math.sin(h1) * arrive;
  out[2] = h0 + (h1 - h0) * share;
}
