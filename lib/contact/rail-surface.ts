import { placeOnCurve, type Curve } from './curve';

/**
 * What a wheel coming down from above can meet of a rail head: height and slope over x at even steps.
 * Seen in the frame of its side: x outward from the track centre, y up from the top of the rail.
 */
export type RailSurface = {
  readonly fromXMm: number;
  readonly stepMm: number;
  readonly heightMm: Float64Array;
  readonly slope: Float64Array;
};

/** Step of the table, mm: straight lines between its entries lie within 0.0003 mm of a 13 mm corner as steep as 75°. */
const TABLE_STEP_MM = 0.02;

/** A face steeper than this (about 88°) is taken as upright: nothing comes down on it. */
const UPRIGHT_COS = 0.035;

const SUBSTEPS = 12;

/**
 * The part of a rail's curve around its highest node, to both hands as far as the line keeps running
 * outward, as a table. `curve` lies in the frame of the side already and runs from the gauge side to the
 * field side. Null when that part is shorter than two nodes.
 */
export function railSurface(curve: Curve): RailSurface | null {
  const [first, last] = seenFromAbove(curve);
  if (last - first < 2) return null;
  const fromXMm = curve.xMm[first]!;
  const count = Math.floor((curve.xMm[last]! - fromXMm) / TABLE_STEP_MM) + 1;
  const heightMm = new Float64Array(count);
  const slope = new Float64Array(count);
  const place = new Float64Array(3);
  placeOnCurve(curve, first, 0, place);
  let [x0, y0, h0] = [place[0]!, place[1]!, place[2]!];
  let entry = 0;
  for (let i = first; i < last && entry < count; i += 1) {
    for (let sub = 1; sub <= SUBSTEPS && entry < count; sub += 1) {
      if (sub === SUBSTEPS) placeOnCurve(curve, i + 1, 0, place);
      else placeOnCurve(curve, i, sub / SUBSTEPS, place);
      const [x1, y1, h1] = [place[0]!, place[1]!, place[2]!];
      for (; entry < count && fromXMm + entry * TABLE_STEP_MM <= x1; entry += 1) {
        const share = x1 > x0 ? (fromXMm + entry * TABLE_STEP_MM - x0) / (x1 - x0) : 1;
        heightMm[entry] = y0 + (y1 - y0) * share;
        slope[entry] = Math.tan(h0 + (h1 - h0) * share);
      }
      [x0, y0, h0] = [x1, y1, h1];
    }
  }
  return { fromXMm, stepMm: TABLE_STEP_MM, heightMm, slope };
}

function seenFromAbove({ xMm, yMm, headingRad }: Curve): readonly [number, number] {
  const n = xMm.length;
  let top = 0;
  for (let i = 1; i < n; i += 1) if (yMm[i]! > yMm[top]!) top = i;
  const outward = (i: number, next: number): boolean =>
    Math.cos(headingRad[next]!) > UPRIGHT_COS && (xMm[next]! - xMm[i]!) * (next - i) > 0;
  let first = top;
  while (first > 0 && outward(first, first - 1)) first -= 1;
  let last = top;
  while (last < n - 1 && outward(last, last + 1)) last += 1;
  return [first, last];
}
