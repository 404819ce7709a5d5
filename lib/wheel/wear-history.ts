import type { Method } from '../findings/finding';
import { inverseNormal } from '../readings/inverse-normal';
import { studentFactor } from '../readings/inverse-student';
import { ok, refuse, type Result } from '../readings/result';

/** One feature of one wheel at one time: flange thickness, hollow and so on. */
export type WearPoint = {
  /** Since new or since turned. */
  readonly distanceRunKm: number;
  readonly valueMm: number;
  /** Standard uncertainty (k = 1). */
  readonly uMm: number;
};

/** 95 % intervals throughout. */
const CONFIDENCE = 0.95;

const KM_PER_MILE = 1.609344;
const RATE_OVER = 100_000;

/** A value with the ends of its 95 % interval. */
export type WithInterval = { readonly value: number; readonly low: number; readonly high: number };

export type LimitReach =
  /** An end that is null is open: the rate is known too poorly to close it. */
  | {
      readonly kind: 'reached';
      readonly atKm: number;
      readonly lowKm: number | null;
      readonly highKm: number | null;
    }
  /** The line runs away from the limit, or level. */
  | { readonly kind: 'never'; readonly why: string };

export type WearHistory = {
  /** In the order of distance run. */
  readonly points: readonly WearPoint[];
  /** Weighted mean of the points, through which the line passes. */
  readonly meanKm: number;
  readonly meanMm: number;
  readonly slopeMmPerKm: number;
  /** Standard uncertainties of mean and slope; the two are independent. */
  readonly uMeanMm: number;
  readonly uSlopeMmPerKm: number;
  /** Half a 95 % interval in standard uncertainties. */
  readonly factor: number;
  /** What the intervals rest on: the wider of the two. */
  readonly intervalFrom: 'scatter' | 'readings';
  /** Standard deviation of the readings about the line, weighted; null for two points, which always lie on it. */
  readonly scatterMm: number | null;
  /** mm per 100,000 km and per 100,000 miles. */
  readonly per100000Km: WithInterval;
  readonly per100000Miles: WithInterval;
  readonly limitMm: number | null;
  /** Null without a limit. */
  readonly reach: LimitReach | null;
};

/**
 * Straight line through a feature of one wheel against the distance it had run, weighted by the
 * readings' uncertainties: value = m + b·(x − x̄), w = 1/u². With three points or more the interval is
 * the wider of the one from their scatter (Student's t, n − 2) and the one from their uncertainties;
 * with two, of their uncertainties. `sense`: the limit is a least (`min`) or a greatest (`max`) value.
 * The distance at which the line reaches the limit has an interval after Fieller, open where the rate
 * cannot be told from none. Refuses fewer than two points or two at one distance only.
 */
export function wearHistory(
  points: readonly WearPoint[],
  limitMm: number | null,
  sense: 'min' | 'max',
): Result<WearHistory> {
  if (points.length < 2) {
    return refuse(
      'A rate of wear needs at least two dated traces or readings of the same wheel, each with the distance run.',
    );
  }
  const wrong = points.findIndex(
    ({ distanceRunKm, valueMm, uMm }) =>
      !(distanceRunKm >= 0 && Number.isFinite(distanceRunKm) && Number.isFinite(valueMm) && uMm > 0) ||
      !Number.isFinite(uMm),
  );
  if (wrong >= 0) {
    return refuse(
      `Reading ${wrong + 1} needs a distance run of 0 or more, a value and an uncertainty above 0.`,
    );
  }
  if (limitMm !== null && !Number.isFinite(limitMm)) return refuse('Enter the limit as a number.');
  const sorted = [...points].sort((a, b) => a.distanceRunKm - b.distanceRunKm);
  if (sorted[0]?.distanceRunKm === sorted[sorted.length - 1]?.distanceRunKm) {
    return refuse('All readings were taken at one distance run: enter how far the wheel had run at each.');
  }

  let [weight, weightX, weightY] = [0, 0, 0];
  for (const { distanceRunKm, valueMm, uMm } of sorted) {
    const w = 1 / (uMm * uMm);
    weight += w;
    weightX += w * distanceRunKm;
    weightY += w * valueMm;
  }
  const meanKm = weightX / weight;
  const meanMm = weightY / weight;
  let [spread, together] = [0, 0];
  for (const { distanceRunKm, valueMm, uMm } of sorted) {
    const w = 1 / (uMm * uMm);
    spread += w * (distanceRunKm - meanKm) ** 2;
    together += w * (distanceRunKm - meanKm) * (valueMm - meanMm);
  }
  const slopeMmPerKm = together / spread;
  let misfit = 0;
  for (const { distanceRunKm, valueMm, uMm } of sorted) {
    misfit += ((valueMm - meanMm - slopeMmPerKm * (distanceRunKm - meanKm)) / uMm) ** 2;
  }
  const freedom = sorted.length - 2;
  const excess = freedom > 0 ? Math.sqrt(misfit / freedom) : 0;
  const fromReadings = inverseNormal((1 + CONFIDENCE) / 2);
  const fromScatter = freedom > 0 ? studentFactor(CONFIDENCE, freedom) : 0;
  const scatterGoverns = excess * fromScatter > fromReadings;
  const stretch = scatterGoverns ? excess : 1;
  const line = {
    points: sorted,
    meanKm,
    meanMm,
    slopeMmPerKm,
    uMeanMm: stretch / Math.sqrt(weight),
    uSlopeMmPerKm: stretch / Math.sqrt(spread),
    factor: scatterGoverns ? fromScatter : fromReadings,
    intervalFrom: scatterGoverns ? ('scatter' as const) : ('readings' as const),
    scatterMm: freedom > 0 ? excess * Math.sqrt(sorted.length / weight) : null,
  };
  const rate = (over: number): WithInterval => {
    const half = line.factor * line.uSlopeMmPerKm * over;
    return { value: slopeMmPerKm * over, low: slopeMmPerKm * over - half, high: slopeMmPerKm * over + half };
  };
  return ok({
    ...line,
    per100000Km: rate(RATE_OVER),
    per100000Miles: rate(RATE_OVER * KM_PER_MILE),
    limitMm,
    reach: limitMm === null ? null : reachOf(line, limitMm, sense),
  });
}

type Line = Pick<WearHistory, 'meanKm' | 'meanMm' | 'slopeMmPerKm' | 'uMeanMm' | 'uSlopeMmPerKm' | 'factor'>;

/** The line at a distance run, and half the width of its 95 % interval, mm. */
export function wearLineAt(
  line: Line,
  distanceRunKm: number,
): { readonly valueMm: number; readonly halfMm: number } {
  const along = distanceRunKm - line.meanKm;
  return {
    valueMm: line.meanMm + line.slopeMmPerKm * along,
    halfMm: line.factor * Math.hypot(line.uMeanMm, along * line.uSlopeMmPerKm),
  };
}

/** Fieller: all z with (d − b·z)² ≤ t²·(u(m)² + z²·u(b)²), z from the mean distance, d the limit less the mean. */
function reachOf(line: Line, limitMm: number, sense: 'min' | 'max'): LimitReach {
  const { meanKm, meanMm, slopeMmPerKm: slope, uMeanMm, uSlopeMmPerKm, factor } = line;
  const towards = sense === 'max' ? slope > 0 : slope < 0;
  if (!towards) {
    return {
      kind: 'never',
      why: 'As far as these readings show, the wheel is not wearing towards the limit.',
    };
  }
  const off = limitMm - meanMm;
  const square = slope ** 2 - (factor * uSlopeMmPerKm) ** 2;
  const rest = off ** 2 - (factor * uMeanMm) ** 2;
  const atKm = meanKm + off / slope;
  if (!(square > 0)) return { kind: 'reached', atKm, lowKm: null, highKm: null };
  const root = Math.sqrt((off * slope) ** 2 - square * rest);
  return {
    kind: 'reached',
    atKm,
    lowKm: meanKm + (off * slope - root) / square,
    highKm: meanKm + (off * slope + root) / square,
  };
}

export const wearHistoryMethod: Method = {
  id: 'wear-history',
  name: 'Rate of wear and distance to a limit',
  formula:
    'value = m + b·(x − x̄) by least squares with weights 1/u²; x: distance run; u(m)² = s²/Σw, u(b)² = s²/Σw(x − x̄)²; s² = Σw·r²/(n − 2) with Student’s t for n − 2, or 1 with the normal factor 1.96, whichever interval is wider; limit at x̄ + (L − m)/b with the interval (L − m − b·z)² ≤ t²·(u(m)² + z²·u(b)²)',
  validRange:
    'Two or more readings of one wheel between two turnings, at different distances run; two give no scatter. Wear is taken to go on at one rate: beyond the last reading that is an assumption. The interval of the distance is open where the rate cannot be told from none.',
  sources: [
    { text: 'Weighted least squares: JCGM 100:2008 (GUM), annex H.3', status: 'published' },
    {
      text: 'E. C. Fieller, “Some problems in interval estimation”, Journal of the Royal Statistical Society B 16 (1954) 175–185',
      status: 'published',
    },
    { text: 'One straight line between turnings', status: 'engineering judgement' },
  ],
};
