import { DEPTH_STEP_MM } from './flange-at-rail';

/** The gauge side of a point as an outline shows it. */
export type PointSide = {
  /**
   * How much farther out than the gauge-side edge it stands at 0, 0.25, 0.5 … mm below the top of the point;
   * negative in the rounding of the top.
   */
  readonly outMm: Float64Array;
  /** How much of it counts, over 0 to 1; the rest is a straight side, as between a traced section and one only read. */
  readonly share: number;
};

/**
 * How much farther out than its edge a gauge side stands at a depth below the top of the point, mm:
 * `lean` × depth for a straight one, where `lean` = 1/tan β; below the end of an outline it goes on straight.
 */
export function sideOutMm(
  side: PointSide | undefined,
  belowTopMm: number,
  lean: number,
  cutMm: number = 0,
): number {
  const straight = belowTopMm * lean;
  if (side === undefined) return straight;
  const { outMm, share } = side;
  const last = outMm.length - 1;
  const place = Math.max(0, (belowTopMm + cutMm) / DEPTH_STEP_MM);
  const before = Math.min(Math.floor(place), last);
  const [here = NaN, next = here] = [outMm[before], outMm[before + 1]];
  const traced =
    place >= last ? here + (place - last) * DEPTH_STEP_MM * lean : here + (next - here) * (place - before);
  return share * traced + (1 - share) * straight;
}

/** The side a share of the way from one section to another, at equal depth below the top; undefined where neither was traced. */
export function sideBetween(
  from: PointSide | undefined,
  to: PointSide | undefined,
  share: number,
): PointSide | undefined {
  const [a, b] = [(1 - share) * (from?.share ?? 0), share * (to?.share ?? 0)];
  if (!(a + b > 0)) return undefined;
  if (from === undefined || a === 0) return to && { ...to, share: b };
  if (to === undefined || b === 0) return { ...from, share: a };
  const n = Math.min(from.outMm.length, to.outMm.length);
  const outMm = Float64Array.from(
    { length: n },
    (_, k) => (a * (from.outMm[k] ?? NaN) + b * (to.outMm[k] ?? NaN)) / (a + b),
  );
  return { outMm, share: a + b };
}
