import { type EvenOutline } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { DIRECTION_HALF_WINDOW_MM } from './lay';

/** Direction within which points on the back of the flange and the round above it are taken for the fit, from upright. */
const NEARLY_UPRIGHT_RAD = (32 * Math.PI) / 180;

/** Straight back shorter than this says nothing of the upright. */
export const SHORTEST_BACK_MM = 6;

/** The round between back and tip of a flange, mm: 1/2 in to 20.5 mm on the shapes in `../shapes`. */
const ROUND_RADIUS_MM = [6, 60] as const;

const COARSE_MM = 1;
const FINE_MM = 0.1;

export type FlangeBack = {
  /** To be turned by this much for the back to be upright. */
  readonly angleRad: number;
  /** Where the back lies across, once turned. */
  readonly xMm: number;
  readonly straightMm: number;
};

/**
 * The straight back of the flange in a line that lies nearly upright, from the back of the flange on;
 * `tip` is the point of the flange's tip. A straight line that goes over into the round of the tip,
 * x = c + m·y + R − √(R² − d²) with d = max(0, y − y₀), is fitted by least squares to all points within
 * 32° of upright, so that the round neither tilts the back nor has to be cut off by eye; y₀ and R are
 * those that fit best. Null when less than 6 mm of the back is straight.
 */
export function flangeBack(line: EvenOutline, tip: number): FlangeBack | null {
  const { headingRad } = smoothed(line, DIRECTION_HALF_WINDOW_MM);
  const least = Math.cos(NEARLY_UPRIGHT_RAD);
  const upright = (i: number): boolean => Math.sin(headingRad[i]!) > least;
  let to = tip;
  while (to > 0 && !upright(to - 1)) to -= 1;
  let from = to;
  while (from > 0 && upright(from - 1)) from -= 1;
  if (to - from < 4) return null;
  const part = { xMm: line.xMm.slice(from, to), yMm: line.yMm.slice(from, to) };
  const low = part.yMm.reduce((lowest, y) => Math.min(lowest, y), Infinity);
  const high = part.yMm.reduce((highest, y) => Math.max(highest, y), -Infinity);
  if (high - low < SHORTEST_BACK_MM) return null;
  const search = (first: number, last: number, step: number): Broken => {
    let best = backWithRound(part, last);
    for (let y0 = first; y0 < last; y0 += step) {
      const next = backWithRound(part, y0);
      if (next.squares < best.squares) best = next;
    }
    return best;
  };
  const first = low + SHORTEST_BACK_MM / 2;
  const coarse = search(first, high, COARSE_MM);
  const best = search(Math.max(first, coarse.y0 - COARSE_MM), Math.min(high, coarse.y0 + COARSE_MM), FINE_MM);
  const straightMm = best.y0 - low;
  if (straightMm < SHORTEST_BACK_MM) return null;
  const angleRad = Math.atan(best.slope);
  return { angleRad, xMm: best.level * Math.cos(angleRad), straightMm };
}

type Broken = {
  readonly y0: number;
  readonly level: number;
  readonly slope: number;
  readonly squares: number;
};
type Points = { readonly xMm: Float64Array; readonly yMm: Float64Array };

/**
 * The best straight line with a round beginning at y0. The rise of the round is R·f(d/R); its weight q
 * (1/(2R) of a parabola) is a linear unknown, and R = 1/(2q) then says how much faster than a parabola
 * it rises: settled after three rounds. q is not negative: the round leaves the back towards the field side.
 */
function backWithRound(points: Points, y0: number): Broken {
  let radius = 15;
  let fit = roundFit(points, y0, radius);
  for (let pass = 0; pass < 2; pass += 1) {
    radius = Math.min(Math.max(1 / (2 * fit.q), ROUND_RADIUS_MM[0]), ROUND_RADIUS_MM[1]);
    fit = roundFit(points, y0, radius);
  }
  return fit;
}

function roundFit({ xMm, yMm }: Points, y0: number, radius: number): Broken & { readonly q: number } {
  const n = xMm.length;
  const round = new Float64Array(n);
  let [meanX, meanY, meanZ] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const d = Math.min(yMm[i]! - y0, 0.95 * radius);
    if (d > 0) round[i] = 2 * radius * (radius - Math.sqrt(radius * radius - d * d));
    meanX += xMm[i]! / n;
    meanY += yMm[i]! / n;
    meanZ += round[i]! / n;
  }
  let [yy, yz, zz, xy, xz, xx] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const x = xMm[i]! - meanX;
    const y = yMm[i]! - meanY;
    const z = round[i]! - meanZ;
    yy += y * y;
    yz += y * z;
    zz += z * z;
    xy += x * y;
    xz += x * z;
    xx += x * x;
  }
  const determinant = yy * zz - yz * yz;
  const q = determinant > 1e-12 * yy * zz ? Math.max(0, (xz * yy - xy * yz) / determinant) : 0;
  const slope = (xy - q * yz) / yy;
  const squares = xx - 2 * slope * xy - 2 * q * xz + slope * slope * yy + 2 * slope * q * yz + q * q * zz;
  return { y0, level: meanX - slope * meanY - q * meanZ, slope, squares, q };
}
