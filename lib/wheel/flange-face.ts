import { type PointMm } from '../outline/outline';
import { type EvenOutline } from '../outline/resample';

/** How far the line turns away from the steepest direction, on either side, within the part that is fitted. */
const FITTED_RAD = (32 * Math.PI) / 180;

/** Radii the rounds above and below a flange face can have, mm. */
const ROUND_RADIUS_MM = [5, 80] as const;
const FIRST_RADIUS_MM = 15;

/**
 * What the rounds of flanges are, before the line speaks: half of the curvature, 1/mm. Radii of 1/2 in to
 * 20 mm stand on the drawings of new wheels in `../shapes`; worn ones are taken from 8 to 40 mm.
 */
const HALF_CURVATURE = { expected: 1 / 32, u: 0.007 };

/** What the straight part between them is, before the line speaks, mm: 3 to 4 on the same drawings. */
const STRAIGHT_MM = { expected: 3.5, u: 1.5 };

const COARSE_MM = 1.5;
const FINE_MM = 0.3;
const MEAN_STEP_MM = 0.75;
const FEWEST_POINTS = 12;
/** Level, slope, two rounds and their two ends. */
const UNKNOWNS = 6;
/** Neighbouring points of a line err together: noise is taken to hold together over this many of them. */
const TOGETHER = 2;

export type FlangeFace = {
  /** Steepest angle of the flange, rad from the axle's direction. */
  readonly angleRad: number;
  /** Ends of the straight part: towards the tip, and towards the root where the steepest angle begins. */
  readonly top: PointMm;
  readonly bottom: PointMm;
};

/**
 * The steepest part of the flange, from a fit of round, straight and round: the part of the line within
 * 32° of the steepest direction is fitted by least squares with a straight line that goes over into a
 * circle at either end, with both radii, both ends and the direction free. About 20 mm of the line speak
 * together, so that noise does not make the angle steeper, as the steepest of many short pieces would be,
 * and the rounds do not make it flatter, as one long straight line would. `headingRad` is the smoothed
 * direction of `line`; `from` is the tip, `to` a point on the tread. Null when the line has no face.
 */
export function flangeFace(
  line: EvenOutline,
  headingRad: Float64Array,
  from: number,
  to: number,
): FlangeFace | null {
  let steepest = from;
  for (let i = from; i < to; i += 1) if (headingRad[i]! < headingRad[steepest]!) steepest = i;
  const direction = headingRad[steepest]!;
  let first = steepest;
  while (first > from && headingRad[first - 1]! - direction < FITTED_RAD) first -= 1;
  let last = steepest;
  while (last < to - 1 && headingRad[last + 1]! - direction < FITTED_RAD) last += 1;
  const n = last - first + 1;
  if (n < FEWEST_POINTS) return null;
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const x = line.xMm[first + i]! - line.xMm[steepest]!;
    const y = line.yMm[first + i]! - line.yMm[steepest]!;
    u[i] = x * cos + y * sin;
    v[i] = y * cos - x * sin;
  }
  const best = bestFit(u, v);
  if (best === null) return null;
  const at = (along: number): PointMm => {
    const across = best.level + best.slope * along;
    return {
      xMm: line.xMm[steepest]! + along * cos - across * sin,
      yMm: line.yMm[steepest]! + along * sin + across * cos,
    };
  };
  return { angleRad: -(direction + Math.atan(best.slope)), top: at(best.u1), bottom: at(best.u2) };
}

type Fit = {
  readonly u1: number;
  readonly u2: number;
  readonly level: number;
  readonly slope: number;
  readonly q1: number;
  readonly q2: number;
  /** Squares of the residuals, and with what departing from expected rounds costs. */
  readonly misfit: number;
  readonly squares: number;
};

function bestFit(u: Float64Array, v: Float64Array): Fit | null {
  const low = u[0]!;
  const high = u[u.length - 1]!;
  let radii: readonly [number, number] = [FIRST_RADIUS_MM, FIRST_RADIUS_MM];
  let best: Fit | null = null;
  let noise = 0;
  const search = (from1: number, to1: number, from2: number, to2: number, step: number): void => {
    best = null;
    for (let u1 = from1; u1 <= to1; u1 += step) {
      const before = rise(u, u1, radii[0], -1);
      for (let u2 = Math.max(u1, from2); u2 <= to2; u2 += step) {
        const fit = fitWith(u, v, u1, u2, before, rise(u, u2, radii[1], 1), noise);
        if (best === null || fit.squares < best.squares) best = fit;
      }
    }
    if (best === null) return;
    radii = [radiusOf(best.q1), radiusOf(best.q2)];
    noise = noiseOf(best, u.length);
  };
  search(low, high, low, high, COARSE_MM);
  for (const [within, step] of [
    [2 * COARSE_MM, COARSE_MM / 2],
    [COARSE_MM, FINE_MM],
    [COARSE_MM / 2, FINE_MM / 2],
  ] as const) {
    // Narrowing cannot read a result the search itself sets, as far as the compiler sees.
    const last = best as Fit | null;
    if (last === null) return null;
    search(
      Math.max(low, last.u1 - within),
      last.u1 + within,
      last.u2 - within,
      Math.min(high, last.u2 + within),
      step,
    );
  }
  return averaged(u, v, best as Fit | null, radii);
}

/**
 * The slope and the ends averaged over all that the noise leaves possible, each weighted by how well it
 * fits, instead of the one that happens to fit best: on a clean line these are the same.
 */
function averaged(
  u: Float64Array,
  v: Float64Array,
  best: Fit | null,
  radii: readonly [number, number],
): Fit | null {
  if (best === null) return null;
  const noise = noiseOf(best, u.length);
  const sum = { weight: 0, u1: 0, u2: 0, level: 0, slope: 0 };
  const fits: Fit[] = [best];
  const high = u[u.length - 1]!;
  for (let u1 = u[0]!; u1 <= high; u1 += MEAN_STEP_MM) {
    const before = rise(u, u1, radii[0], -1);
    for (let u2 = u1; u2 <= high; u2 += MEAN_STEP_MM) {
      fits.push(fitWith(u, v, u1, u2, before, rise(u, u2, radii[1], 1), noise));
    }
  }
  const least = fits.reduce((lowest, { squares }) => Math.min(lowest, squares), Infinity);
  for (const { u1, u2, level, slope, squares } of fits) {
    const weight = noise > 0 ? Math.exp((least - squares) / (2 * noise)) : Number(squares === least);
    sum.weight += weight;
    sum.u1 += weight * u1;
    sum.u2 += weight * u2;
    sum.level += weight * level;
    sum.slope += weight * slope;
  }
  const mean = (total: number): number => total / sum.weight;
  return { ...best, u1: mean(sum.u1), u2: mean(sum.u2), level: mean(sum.level), slope: mean(sum.slope) };
}

/** Variance of one point's noise, counted as often as points err together, mm². */
const noiseOf = ({ misfit }: Fit, points: number): number => (TOGETHER * misfit) / (points - UNKNOWNS);

const radiusOf = (q: number): number =>
  Math.min(Math.max(1 / (2 * q), ROUND_RADIUS_MM[0]), ROUND_RADIUS_MM[1]);

/** What a round of this radius rises beyond `end` (on the side `side`), for a weight of 1/(2·radius). */
function rise(u: Float64Array, end: number, radius: number, side: 1 | -1): Float64Array {
  return u.map((at) => {
    const d = Math.min(side * (at - end), 0.95 * radius);
    return d > 0 ? side * 2 * radius * (radius - Math.sqrt(radius * radius - d * d)) : 0;
  });
}

/** Least squares of v = level + slope·u + q1·before + q2·after with q1 and q2 not negative. */
function fitWith(
  u: Float64Array,
  v: Float64Array,
  u1: number,
  u2: number,
  before: Float64Array,
  after: Float64Array,
  noise: number,
): Fit {
  const n = u.length;
  const held = noise / HALF_CURVATURE.u ** 2;
  let [mu, mv, mb, ma] = [0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    mu += u[i]! / n;
    mv += v[i]! / n;
    mb += before[i]! / n;
    ma += after[i]! / n;
  }
  let [uu, ub, ua, bb, ba, aa, uv, bv, av, vv] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const x = u[i]! - mu;
    const b = before[i]! - mb;
    const a = after[i]! - ma;
    const y = v[i]! - mv;
    uu += x * x;
    ub += x * b;
    ua += x * a;
    bb += b * b;
    ba += b * a;
    aa += a * a;
    uv += x * y;
    bv += b * y;
    av += a * y;
    vv += y * y;
  }
  // The slope eliminated, two unknowns are left.
  const [bb1, ba1, aa1] = [bb - (ub * ub) / uu + held, ba - (ub * ua) / uu, aa - (ua * ua) / uu + held];
  const pull = held * HALF_CURVATURE.expected;
  const [bv1, av1] = [bv - (ub * uv) / uu + pull, av - (ua * uv) / uu + pull];
  const determinant = bb1 * aa1 - ba1 * ba1;
  const alone = (right: number, left: number): number => (left > 1e-9 ? Math.max(0, right / left) : 0);
  let [q1, q2] =
    determinant > 1e-9 * bb1 * aa1 && determinant > 0
      ? [(bv1 * aa1 - av1 * ba1) / determinant, (av1 * bb1 - bv1 * ba1) / determinant]
      : [-1, alone(av1, aa1)];
  if (q1 < 0) [q1, q2] = [0, alone(av1, aa1)];
  else if (q2 < 0) [q1, q2] = [alone(bv1, bb1), 0];
  const slope = (uv - q1 * ub - q2 * ua) / uu;
  const misfit =
    vv -
    slope * (2 * uv - slope * uu - 2 * q1 * ub - 2 * q2 * ua) -
    q1 * (2 * bv - q1 * bb - 2 * q2 * ba) -
    q2 * (2 * av - q2 * aa);
  const offStraight = (u2 - u1 - STRAIGHT_MM.expected) / STRAIGHT_MM.u;
  const off1 = q1 - HALF_CURVATURE.expected;
  const off2 = q2 - HALF_CURVATURE.expected;
  return {
    u1,
    u2,
    level: mv - slope * mu - q1 * mb - q2 * ma,
    slope,
    q1,
    q2,
    misfit: Math.max(0, misfit),
    squares: Math.max(0, misfit) + held * (off1 * off1 + off2 * off2) + noise * offStraight * offStraight,
  };
}
