import { type Outline } from '../outline/outline';

type Eight = [number, number, number, number, number, number, number, number];

/** How far beyond its last point a line is still read, mm: pencil lines end a little early. */
const BEYOND_MM = 0.5;

/**
 * Height of the line at a place across it, mm: a parabola fitted to the points within `halfWindowMm`
 * across, from point `from` on. Null where the line does not reach the place or has too few points there.
 */
export function levelNear(
  { xMm, yMm }: Outline,
  atMm: number,
  halfWindowMm: number,
  from: number,
): number | null {
  const sums: Eight = [0, 0, 0, 0, 0, 0, 0, 0];
  let [least, most] = [Infinity, -Infinity];
  for (let i = from; i < xMm.length; i += 1) {
    const x = (xMm[i]! - atMm) / halfWindowMm;
    if (x < -1 || x > 1) continue;
    least = Math.min(least, x);
    most = Math.max(most, x);
    const y = yMm[i]!;
    const xx = x * x;
    sums[0] += 1;
    sums[1] += x;
    sums[2] += xx;
    sums[3] += xx * x;
    sums[4] += xx * xx;
    sums[5] += y;
    sums[6] += x * y;
    sums[7] += xx * y;
  }
  const [n, s1, s2, s3, s4, t0, t1, t2] = sums;
  const beyond = BEYOND_MM / halfWindowMm;
  if (n < 5 || least > beyond || most < -beyond) return null;
  const determinant = n * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  const level = t0 * (s2 * s4 - s3 * s3) - s1 * (t1 * s4 - s3 * t2) + s2 * (t1 * s3 - s2 * t2);
  return determinant > 1e-9 * n * n * n ? level / determinant : null;
}
