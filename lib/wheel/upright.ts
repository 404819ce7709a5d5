import { type EvenOutline } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { DIRECTION_HALF_WINDOW_MM } from './lay';

/** Direction within which points on the back of the flange are taken for the fit, from upright. */
const NEARLY_UPRIGHT_RAD = (14 * Math.PI) / 180;

/** Straight back shorter than this says nothing of the upright. */
export const SHORTEST_BACK_MM = 6;

const COARSE_MM = 0.5;
const FINE_MM = 0.05;

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
 * x = c + m·y + q·max(0, y − y₀)², is fitted by least squares to all points within 14° of upright, so
 * that the round neither tilts the back nor has to be cut off by eye; y₀ is the one that fits best.
 * Null when less than 6 mm of it is straight.
 */
export function flangeBack(line: EvenOutline, tip: number): FlangeBack | null {
  const { headingRad } = smoothed(line, DIRECTION_HALF_WINDOW_MM);
  const off = (i: number): number => Math.abs(Math.sin(headingRad[i]! - Math.PI / 2));
  const upright = (i: number): boolean =>
    Math.sin(headingRad[i]!) > 0 && off(i) < Math.sin(NEARLY_UPRIGHT_RAD);
  let to = tip;
  while (to > 0 && !upright(to - 1)) to -= 1;
  let from = to;
  while (from > 0 && upright(from - 1)) from -= 1;
  if (to - from < 4) return null;
  let [low, high] = [Infinity, -Infinity];
  for (let i = from; i < to; i += 1) {
    low = Math.min(low, line.yMm[i]!);
    high = Math.max(high, line.yMm[i]!);
  }
  if (high - low < SHORTEST_BACK_MM) return null;
  const search = (first: number, last: number, step: number): Broken => {
    let best = brokenLine(line, from, to, last);
    for (let y0 = first; y0 < last; y0 += step) {
      const next = brokenLine(line, from, to, y0);
      if (next.squares < best.squares) best = next;
    }
    return best;
  };
  const coarse = search(low + SHORTEST_BACK_MM / 2, high, COARSE_MM);
  const best = search(
    Math.max(low + SHORTEST_BACK_MM / 2, coarse.y0 - COARSE_MM),
    Math.min(high, coarse.y0 + COARSE_MM),
    FINE_MM,
  );
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

/** Least squares of x = level + slope·y + q·max(0, y − y0)², q not negative: the round leaves the back towards the field side. */
function brokenLine({ xMm, yMm }: EvenOutline, from: number, to: number, y0: number): Broken {
  const n = to - from;
  let [meanX, meanY, meanZ] = [0, 0, 0];
  const round = (y: number): number => (y > y0 ? (y - y0) * (y - y0) : 0);
  for (let i = from; i < to; i += 1) {
    meanX += xMm[i]! / n;
    meanY += yMm[i]! / n;
    meanZ += round(yMm[i]!) / n;
  }
  let [yy, yz, zz, xy, xz, xx] = [0, 0, 0, 0, 0, 0];
  for (let i = from; i < to; i += 1) {
    const x = xMm[i]! - meanX;
    const y = yMm[i]! - meanY;
    const z = round(yMm[i]!) - meanZ;
    yy += y * y;
    yz += y * z;
    zz += z * z;
    xy += x * y;
    xz += x * z;
    xx += x * x;
  }
  const determinant = yy * zz - yz * yz;
  const fitted = determinant > 1e-12 * yy * zz ? (xz * yy - xy * yz) / determinant : 0;
  const q = Math.max(0, fitted);
  const slope = (xy - q * yz) / yy;
  const squares = xx - 2 * slope * xy - 2 * q * xz + slope * slope * yy + 2 * slope * q * yz + q * q * zz;
  return { y0, level: meanX - slope * meanY - q * meanZ, slope, squares };
}
