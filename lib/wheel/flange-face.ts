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
/** How far about the best so far, and how finely, the ends of the straight part are looked for. */
const REFINED = [
  [3, 0.75],
  [1.5, 0.3],
  [0.75, 0.15],
] as const;
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
  /** Radius of the round towards the root, and where the part that was fitted ends in it. */
  readonly rootRadiusMm: number;
  readonly root: PointMm;
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
  return {
    angleRad: -(direction + Math.atan(best.slope)),
    top: at(best.u1),
    bottom: at(best.u2),
    rootRadiusMm: 1 / (2 * best.q2),
    root: { xMm: line.xMm[last]!, yMm: line.yMm[last]! },
  };
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
  const line = centred(u, v);
  const low = u[0]!;
  const high = u[u.length - 1]!;
  let radii: readonly [number, number] = [FIRST_RADIUS_MM, FIRST_RADIUS_MM];
  let noise = 0;
  const search = (from1: number, to1: number, from2: number, to2: number, step: number): Fit | null => {
    const best = fitsOver(
      line,
      rounds(line, steps(from1, to1, step), radii[0], -1),
      rounds(line, steps(from2, to2, step), radii[1], 1),
      noise,
    ).reduce<Fit | null>((least, fit) => (least === null || fit.squares < least.squares ? fit : least), null);
    if (best === null) return null;
    radii = [radiusOf(best.q1), radiusOf(best.q2)];
    noise = noiseOf(best, u.length);
    return best;
  };
  let best = search(low, high, low, high, COARSE_MM);
  for (const [within, step] of REFINED) {
    if (best === null) return null;
    best = search(
      Math.max(low, best.u1 - within),
      best.u1 + within,
      best.u2 - within,
      Math.min(high, best.u2 + within),
      step,
    );
  }
  if (best === null) return null;
  const all = steps(low, high, MEAN_STEP_MM);
  return averaged(
    [best, ...fitsOver(line, rounds(line, all, radii[0], -1), rounds(line, all, radii[1], 1), noise)],
    best,
    noise,
  );
}

/**
 * The slope and the ends averaged over all that the noise leaves possible, each weighted by how well it
 * fits, instead of the one that happens to fit best: on a clean line these are the same.
 */
function averaged(fits: readonly Fit[], best: Fit, noise: number): Fit {
  const sum = { weight: 0, u1: 0, u2: 0, level: 0, slope: 0, q2: 0 };
  const least = fits.reduce((lowest, { squares }) => Math.min(lowest, squares), Infinity);
  for (const { u1, u2, level, slope, q2, squares } of fits) {
    const weight = noise > 0 ? Math.exp((least - squares) / (2 * noise)) : Number(squares === least);
    sum.weight += weight;
    sum.u1 += weight * u1;
    sum.u2 += weight * u2;
    sum.level += weight * level;
    sum.slope += weight * slope;
    sum.q2 += weight * q2;
  }
  const mean = (total: number): number => total / sum.weight;
  return {
    ...best,
    u1: mean(sum.u1),
    u2: mean(sum.u2),
    level: mean(sum.level),
    slope: mean(sum.slope),
    q2: mean(sum.q2),
  };
}

const steps = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / step + 1e-9)) + 1 }, (_, i) => from + i * step);

/** Variance of one point's noise, counted as often as points err together, mm². */
const noiseOf = ({ misfit }: Fit, points: number): number => (TOGETHER * misfit) / (points - UNKNOWNS);

const radiusOf = (q: number): number =>
  Math.min(Math.max(1 / (2 * q), ROUND_RADIUS_MM[0]), ROUND_RADIUS_MM[1]);

/** Points of the part that is fitted about their mean, and the sums that all fits share. */
type Centred = {
  readonly u: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly meanU: number;
  readonly meanV: number;
  readonly uu: number;
  readonly uv: number;
  readonly vv: number;
};

function centred(u: Float64Array, v: Float64Array): Centred {
  const n = u.length;
  let [meanU, meanV, uu, uv, vv] = [0, 0, 0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    meanU += u[i]! / n;
    meanV += v[i]! / n;
  }
  const x = u.map((value) => value - meanU);
  const y = v.map((value) => value - meanV);
  for (let i = 0; i < n; i += 1) {
    uu += x[i]! * x[i]!;
    uv += x[i]! * y[i]!;
    vv += y[i]! * y[i]!;
  }
  return { u, x, y, meanU, meanV, uu, uv, vv };
}

/** A round that begins at `end`: what it rises at each point, about its mean, and its sums with the line. */
type Round = {
  readonly end: number;
  readonly mean: number;
  readonly rise: Float64Array;
  readonly withU: number;
  readonly withV: number;
  readonly square: number;
};

/** Rounds of one radius beginning at each of the places, rising beyond them on the side `side`, for a weight of 1/(2·radius). */
function rounds({ u, x, y }: Centred, ends: readonly number[], radius: number, side: 1 | -1): Round[] {
  const n = u.length;
  const deepest = 0.95 * radius;
  return ends.map((end) => {
    const rise = new Float64Array(n);
    let mean = 0;
    for (let i = 0; i < n; i += 1) {
      const d = Math.min(side * (u[i]! - end), deepest);
      if (d <= 0) continue;
      rise[i] = side * 2 * radius * (radius - Math.sqrt(radius * radius - d * d));
      mean += rise[i]! / n;
    }
    let [withU, withV, square] = [0, 0, 0];
    for (let i = 0; i < n; i += 1) {
      const r = rise[i]! - mean;
      rise[i] = r;
      withU += r * x[i]!;
      withV += r * y[i]!;
      square += r * r;
    }
    return { end, mean, rise, withU, withV, square };
  });
}

/** The fits of every pair of rounds that leave a straight part between them, or meet. */
function fitsOver(line: Centred, before: readonly Round[], after: readonly Round[], noise: number): Fit[] {
  const fits: Fit[] = [];
  for (const first of before) {
    for (const second of after) {
      if (second.end >= first.end) fits.push(fitWith(line, first, second, noise));
    }
  }
  return fits;
}

/**
 * Least squares of v = level + slope·u + q1·before + q2·after with q1 and q2 not negative, both held
 * towards expected rounds, and their distance towards an expected straight part, as far as there is noise.
 */
function fitWith(line: Centred, before: Round, after: Round, noise: number): Fit {
  const { uu, uv, vv } = line;
  const held = noise / HALF_CURVATURE.u ** 2;
  const { withU: ub, withV: bv, square: bb } = before;
  const { withU: ua, withV: av, square: aa } = after;
  let ba = 0;
  for (let i = 0; i < before.rise.length; i += 1) ba += before.rise[i]! * after.rise[i]!;
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
  const misfit = Math.max(
    0,
    vv -
      slope * (2 * uv - slope * uu - 2 * q1 * ub - 2 * q2 * ua) -
      q1 * (2 * bv - q1 * bb - 2 * q2 * ba) -
      q2 * (2 * av - q2 * aa),
  );
  const offStraight = (after.end - before.end - STRAIGHT_MM.expected) / STRAIGHT_MM.u;
  const off1 = q1 - HALF_CURVATURE.expected;
  const off2 = q2 - HALF_CURVATURE.expected;
  return {
    u1: before.end,
    u2: after.end,
    level: line.meanV - slope * line.meanU - q1 * before.mean - q2 * after.mean,
    slope,
    q1,
    q2,
    misfit,
    squares: misfit + held * (off1 * off1 + off2 * off2) + noise * offStraight * offStraight,
  };
}
