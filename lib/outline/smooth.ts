import { type EvenOutline } from './resample';

/**
 * The line smoothed, and its direction: at each point a parabola is fitted to x and to y of the points
 * within `halfWindowMm` along the line (A. Savitzky and M. J. E. Golay, 1964, degree 2) and taken at
 * that point. Near an end the window is the one of the last point that has a whole one, read at its side.
 * A straight line stays as it is; a circle of radius R keeps its radius within w⁴/(280 R³) for a half
 * window w, 0.0002 mm for w = 3 and R = 12; noise independent from point to point falls to about
 * 1.5/√m of itself, m the number of points in the window. A sharp corner is rounded over the window.
 * `headingRad`: direction of the line at each point, unwrapped (no jumps of 2π), counter-clockwise positive.
 */
export function smoothed(
  even: EvenOutline,
  halfWindowMm: number,
): EvenOutline & { readonly headingRad: Float64Array } {
  const n = even.xMm.length;
  const half = Math.min(Math.max(1, Math.round(halfWindowMm / even.stepMm)), Math.floor((n - 1) / 2));
  const heading = new Float64Array(n);
  if (half < 1) return { ...even, headingRad: heading };
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const centre = Math.min(Math.max(i, half), n - 1 - half);
    const [atX, slopeX] = parabola(even.xMm, centre, half, i - centre);
    const [atY, slopeY] = parabola(even.yMm, centre, half, i - centre);
    x[i] = atX;
    y[i] = atY;
    const raw = Math.atan2(slopeY, slopeX);
    const last = i === 0 ? raw : heading[i - 1]!;
    heading[i] = raw - 2 * Math.PI * Math.round((raw - last) / (2 * Math.PI));
  }
  return { xMm: x, yMm: y, stepMm: even.stepMm, headingRad: heading };
}

/** Value and slope per point, `off` points from the centre, of the parabola fitted to 2·half + 1 points. */
function parabola(value: Float64Array, centre: number, half: number, off: number): readonly [number, number] {
  let [s0, s1, s2] = [0, 0, 0];
  for (let j = -half; j <= half; j += 1) {
    const v = value[centre + j]!;
    s0 += v;
    s1 += j * v;
    s2 += j * j * v;
  }
  const m = 2 * half + 1;
  const m2 = (half * (half + 1) * m) / 3;
  const m4 = (m2 * (3 * half * (half + 1) - 1)) / 5;
  const bend = half === 0 ? 0 : (m * s2 - m2 * s0) / (m * m4 - m2 * m2 || Infinity);
  const level = (s0 - bend * m2) / m;
  const slope = s1 / m2;
  return [level + off * slope + off * off * bend, slope + 2 * off * bend];
}
