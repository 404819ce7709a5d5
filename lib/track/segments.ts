import { bisectLeft } from 'd3-array';
import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';
import { brokenLine, covariance } from './broken-line';

export type PartKind = 'tangent' | 'transition' | 'curve';

/** A stretch of line over which curvature is steady or changes steadily. Positions m, curvature 1/m. */
export type LinePart = {
  readonly kind: PartKind;
  readonly fromM: number;
  readonly toM: number;
  /** Standard uncertainty of where it begins and ends; null where the sheet begins or ends. */
  readonly uFromM: number | null;
  readonly uToM: number | null;
  /** Mean curvature of the part, signed, and its standard uncertainty. */
  readonly curvaturePerM: number;
  readonly uPerM: number;
  readonly curvatureFromPerM: number;
  readonly curvatureToPerM: number;
  /** Stations whose reading it was fitted to. */
  readonly used: number;
};

export type FittedLine = {
  readonly parts: readonly LinePart[];
  /** Root mean square of what the parts leave of the readings, 1/m. */
  readonly leftOverPerM: number;
};

/** Curvature below which a steady part counts as tangent even where it is known better: 0.1 degree. */
export const TANGENT_BELOW_PER_M = toCanonical(0.1, '°curve', 'curvature');

/** Change over a part below which it is steady even where it is known better: 0.25 degree. */
const STEADY_BELOW_PER_M = toCanonical(0.25, '°curve', 'curvature');

/** Coverage of the uncertainty a change must exceed to count (JCGM 100:2008, 6.2.1: k = 2, about 95 %). */
const COVERAGE = 2;

/**
 * Tangents, transitions and curves of a line, fitted to curvature readings as a continuous line of
 * straight pieces (see `brokenLine`). `positionsM` ascending; `curvatures` 1/m, NaN where not read:
 * such a station is passed over. `uPerM` > 0: standard uncertainty of one curvature.
 * null with fewer than six readings. Uncertainties take what the parts leave of the readings as
 * independent errors, and no less than `uPerM`.
 */
export function segmentLine(
  positionsM: ArrayLike<number>,
  curvatures: ArrayLike<number>,
  uPerM: number,
): FittedLine | null {
  const at: number[] = [];
  for (let i = 0; i < positionsM.length; i += 1) {
    if (Number.isFinite(curvatures[i] ?? NaN) && Number.isFinite(positionsM[i] ?? NaN)) at.push(i);
  }
  if (at.length < FEWEST_READINGS || !(uPerM > 0)) return null;
  // Counted in spacings from the middle and in uncertainties: sums of squares then keep their digits.
  const first = positionsM[at[0]!]!;
  const spacing = (positionsM[at[at.length - 1]!]! - first) / (at.length - 1);
  if (!(spacing > 0)) return null;
  const [x, y] = [new Float64Array(at.length), new Float64Array(at.length)];
  at.forEach((i, k) => {
    x[k] = (positionsM[i]! - first) / spacing;
    y[k] = curvatures[i]! / uPerM;
  });
  const line = brokenLine(x, y, 1);
  if (line === null) return null;
  const { knots, heights, squares } = line;
  const free = Math.max(1, at.length - (2 * knots.length - 2));
  const spread = covariance(x, line, Math.max(1, squares / free));
  const cov = (i: number, j: number): number => spread?.[i]?.[j] ?? NaN;
  const parts = knots.slice(0, -1).map((knot, j): LinePart => {
    const next = knots[j + 1]!;
    const [a, b] = [2 * j, 2 * j + 2];
    const [from, to] = [heights[j]!, heights[j + 1]!];
    const uMean = Math.sqrt(cov(a, a) + cov(b, b) + 2 * cov(a, b)) / 2;
    const uChange = Math.sqrt(Math.max(0, cov(a, a) + cov(b, b) - 2 * cov(a, b)));
    const place = (index: number): number | null =>
      index === 0 || index === knots.length - 1
        ? null
        : Math.sqrt(cov(2 * index + 1, 2 * index + 1)) * spacing;
    return {
      kind: kindOf({ from, to, uMean, uChange }, uPerM),
      fromM: first + knot * spacing,
      toM: first + next * spacing,
      uFromM: place(j),
      uToM: place(j + 1),
      curvaturePerM: ((from + to) / 2) * uPerM,
      uPerM: uMean * uPerM,
      curvatureFromPerM: from * uPerM,
      curvatureToPerM: to * uPerM,
      used: (j + 2 === knots.length ? x.length : bisectLeft(x, next)) - bisectLeft(x, knot),
    };
  });
  return { parts, leftOverPerM: Math.sqrt(squares / at.length) * uPerM };
}

const FEWEST_READINGS = 6;

function kindOf(
  { from, to, uMean, uChange }: { from: number; to: number; uMean: number; uChange: number },
  uPerM: number,
): PartKind {
  const beyond = (value: number, u: number, least: number): boolean =>
    Math.abs(value) > Math.max(COVERAGE * u, least / uPerM);
  if (beyond(to - from, uChange, STEADY_BELOW_PER_M)) return 'transition';
  return beyond((from + to) / 2, uMean, TANGENT_BELOW_PER_M) ? 'curve' : 'tangent';
}

export const segmentationMethod: Method = {
  id: 'line-segments',
  name: 'Tangents, transitions and curves fitted to the curvature readings',
  formula:
    'κ(x) = a continuous line of straight pieces, fitted by least squares; the number of pieces is the one for which n·ln σ² + RSS/σ² + (2K + 2)·ln n is least, σ² = RSS/n but not less than the squared uncertainty of a reading. κ: curvature; n: readings; K: breakpoints; RSS: sum of squares left over. Uncertainties: σ²·(JᵀJ)⁻¹.',
  validRange:
    'Six readings or more. A piece is a transition when its curvature changes by more than twice the uncertainty of the change and more than 0.25°, tangent when its mean is less than twice its uncertainty or 0.1°, a curve otherwise. A chord spreads every change over half its length to either side, so a transition shorter than the chord cannot be told from an abrupt change. Not more than 48 breakpoints.',
  sources: [
    {
      text: 'Schwarz, “Estimating the dimension of a model”, Annals of Statistics 6 (1978), 461–464 (criterion)',
      status: 'published',
    },
    {
      text: 'The search for the breakpoints, and the 0.1° and 0.25° below which a part is tangent or steady',
      status: 'engineering judgement',
    },
  ],
};
