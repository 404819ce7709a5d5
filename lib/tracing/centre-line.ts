import { evenedOut, squareTo, type PixelPoint } from './line';
import { middleOf } from './numbers';
import type { PreparedImage } from './prepare-image';
import { valueAt } from './raster';

/** A line moved to the middle of the pencil stroke, and how wide the stroke is; 0 where none was found. */
export type CentredLine = { readonly points: readonly PixelPoint[]; readonly widthPx: number };

type Across = { readonly offset: number; readonly width: number };

const STEP_PX = 0.5;
const TANGENT_REACH = 6;
const SHARE_OF_PEAK = 0.3;
/** A stroke of this share of the paper's light is a line whatever the grain. */
const FAINTEST = 0.03;

/** Middle and width of the stroke along one cut across the line; null where the cut shows none. */
function acrossAt(
  image: PreparedImage,
  [x, y]: PixelPoint,
  square: PixelPoint,
  reach: number,
): Across | null {
  const raster = { width: image.width, height: image.height, values: image.darkness };
  const cuts = Math.round(reach / STEP_PX);
  const cut = Array.from({ length: 2 * cuts + 1 }, (_, i) => {
    const out = (i - cuts) * STEP_PX;
    return valueAt(raster, x + out * square[0], y + out * square[1]);
  });
  const n = cut.length;
  const paper = (cut[0]! + cut[1]! + cut[n - 1]! + cut[n - 2]!) / 4;
  const peak = Math.max(...cut) - paper;
  if (peak < FAINTEST) return null;
  // Two halves of one stroke: what lies beyond a gap in it is another line.
  const floor = SHARE_OF_PEAK * peak;
  const top = cut.reduce((best, value, i) => {
    const nearer = value - 0.02 * Math.abs(i - cuts) * peak;
    return nearer > cut[best]! - 0.02 * Math.abs(best - cuts) * peak ? i : best;
  }, cuts);
  let first = top;
  let last = top;
  while (first > 0 && cut[first - 1]! - paper > floor) first -= 1;
  while (last < n - 1 && cut[last + 1]! - paper > floor) last += 1;
  let weight = 0;
  let moment = 0;
  let ink = 0;
  for (let i = first; i <= last; i += 1) {
    const above = cut[i]! - paper - floor;
    weight += Math.max(0, above);
    moment += Math.max(0, above) * (i - cuts) * STEP_PX;
    ink += cut[i]! - paper;
  }
  return weight > 0 ? { offset: moment / weight, width: (ink / peak) * STEP_PX } : null;
}

/** Each offset the median of five, so that one blot does not pull the line; gaps filled from their neighbours. */
function steadied(found: readonly (Across | null)[]): Float64Array {
  const known = found.map((each, i) => {
    const near: number[] = [];
    for (let reach = 2; near.length === 0 && reach <= 32; reach *= 2) {
      for (let j = Math.max(0, i - reach); j <= Math.min(found.length - 1, i + reach); j += 1) {
        const other = found[j];
        if (other) near.push(other.offset);
      }
    }
    return each === null && near.length === 0 ? 0 : middleOf(near);
  });
  return evenedOut(evenedOut(known, 3), 3);
}

const ROUNDS = 2;
const FIRST_REACH_PX = 8;

/**
 * A line that lies within a few pixels of a pencil stroke, moved square to itself into the middle of
 * the stroke: the centroid of the ink along a cut across each point, a running median and mean along
 * the line over it. Points should stand about a pixel apart. The width is ink over darkest ink, its median.
 */
export function centred(
  image: PreparedImage,
  points: readonly PixelPoint[],
  expectedWidthPx?: number,
): CentredLine {
  let line = points;
  let widthPx = expectedWidthPx ?? 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const reach = widthPx > 0 ? Math.min(30, Math.max(5, 0.9 * widthPx + 4)) : FIRST_REACH_PX;
    const cuts = line.map((point, i) => {
      const square = squareTo(line, i, TANGENT_REACH);
      return square === null ? null : { square, across: acrossAt(image, point, square, reach) };
    });
    const found = cuts.map((cut) => cut?.across ?? null);
    const widths = found.flatMap((across) => (across === null ? [] : [across.width]));
    if (widths.length === 0) return { points: line, widthPx };
    widthPx = middleOf(widths);
    const offsets = steadied(found);
    line = line.map((point, i) => {
      const square = cuts[i]?.square;
      if (square === undefined) return point;
      return [point[0] + offsets[i]! * square[0], point[1] + offsets[i]! * square[1]];
    });
  }
  return { points: line, widthPx };
}
