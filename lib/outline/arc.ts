import { outlineOf, type Outline, type PointMm } from './outline';

/** Distance along the line from its first point to each of its points, mm. */
export function arcLengths({ xMm, yMm }: Outline): Float64Array {
  const along = new Float64Array(xMm.length);
  for (let i = 1; i < xMm.length; i += 1) {
    along[i] = along[i - 1]! + Math.hypot(xMm[i]! - xMm[i - 1]!, yMm[i]! - yMm[i - 1]!);
  }
  return along;
}

/** Length of the line, mm; 0 for fewer than two points. */
export const lengthMm = (outline: Outline): number => arcLengths(outline).at(-1) ?? 0;

/** Extent of the line in x and y, mm: the box it lies in. */
export function extentMm({ xMm, yMm }: Outline): { readonly from: PointMm; readonly to: PointMm } {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < xMm.length; i += 1) {
    left = Math.min(left, xMm[i]!);
    right = Math.max(right, xMm[i]!);
    low = Math.min(low, yMm[i]!);
    high = Math.max(high, yMm[i]!);
  }
  return { from: { xMm: left, yMm: low }, to: { xMm: right, yMm: high } };
}

/** The line from its other end. */
export const reversed = ({ xMm, yMm }: Outline): Outline => ({
  xMm: xMm.slice().reverse(),
  yMm: yMm.slice().reverse(),
});

/** Points `from` up to, but without, `to`. */
export const partOf = ({ xMm, yMm }: Outline, from: number, to: number): Outline => ({
  xMm: xMm.slice(from, to),
  yMm: yMm.slice(from, to),
});

/**
 * Points that lie closer together than `withinMm` become one, at their mean. Takes the shiver out of a
 * line with many points, which otherwise makes it longer than it is; leaves points further apart alone.
 */
export function thinned({ xMm, yMm }: Outline, withinMm: number): Outline {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 0; i < xMm.length;) {
    let [sumX, sumY, n] = [xMm[i]!, yMm[i]!, 1];
    let j = i + 1;
    for (; j < xMm.length && Math.hypot(xMm[j]! - xMm[i]!, yMm[j]! - yMm[i]!) < withinMm; j += 1) {
      sumX += xMm[j]!;
      sumY += yMm[j]!;
      n += 1;
    }
    // The ends stay where they are, so that thinning does not shorten the line.
    const keep = i === 0 ? 0 : j === xMm.length ? j - 1 : null;
    x.push(keep === null ? sumX / n : xMm[keep]!);
    y.push(keep === null ? sumY / n : yMm[keep]!);
    i = j;
  }
  return outlineOf(x, y);
}
