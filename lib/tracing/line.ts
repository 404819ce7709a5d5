/** A place in a picture, pixels: x to the right, y down; the middle of the first pixel is 0, 0. */
export type PixelPoint = readonly [number, number];

export const gap = (a: PixelPoint, b: PixelPoint): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

export function lengthOf(points: readonly PixelPoint[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) sum += gap(points[i - 1]!, points[i]!);
  return sum;
}

/** Points at equal steps of about `step` along a line, its two ends among them. */
export function evenlySpaced(points: readonly PixelPoint[], step: number): readonly PixelPoint[] {
  const total = lengthOf(points);
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined || total === 0) return points.slice(0, 1);
  const steps = Math.max(1, Math.round(total / step));
  const even = total / steps;
  const out: PixelPoint[] = [first];
  let walked = 0;
  for (let i = 1; i < points.length && out.length < steps; i += 1) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const length = gap(a, b);
    while (out.length < steps && walked + length >= out.length * even) {
      const share = (out.length * even - walked) / length;
      out.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
    }
    walked += length;
  }
  return [...out, last];
}

/** Each value the mean of those within `radius` places, fewer near the ends so that the ends stay. */
export function evenedOut(values: ArrayLike<number>, radius: number): Float64Array {
  const n = values.length;
  const out = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const reach = Math.min(radius, i, n - 1 - i);
    let sum = 0;
    for (let j = i - reach; j <= i + reach; j += 1) sum += values[j]!;
    out[i] = sum / (2 * reach + 1);
  }
  return out;
}

/** A line with the stairs of single pixels taken out: a moving mean of `2·radius + 1` points, twice. */
export function smoothed(points: readonly PixelPoint[], radius: number): readonly PixelPoint[] {
  const even = (axis: 0 | 1): Float64Array =>
    evenedOut(
      evenedOut(
        points.map((point) => point[axis]),
        radius,
      ),
      radius,
    );
  const x = even(0);
  const y = even(1);
  return points.map((_, i) => [x[i]!, y[i]!]);
}

/** Direction square to the line at point `i`, length 1, from the points up to `reach` away; null on a line without length. */
export function squareTo(points: readonly PixelPoint[], i: number, reach: number): PixelPoint | null {
  const before = points[Math.max(0, i - reach)]!;
  const after = points[Math.min(points.length - 1, i + reach)]!;
  const length = gap(before, after);
  return length === 0 ? null : [-(after[1] - before[1]) / length, (after[0] - before[0]) / length];
}
