import { type Outline, type PointMm } from './outline';

/** A straight line fitted to points: a point on it, its direction (rad, in the sense of the points) and the scatter about it. */
export type LineFit = { readonly through: PointMm; readonly headingRad: number; readonly rmsMm: number };

/**
 * Straight line through points `from` up to, but without, `to`: least squares of the distances across
 * it (the first principal axis), directed from the first point to the last. Null for fewer than two
 * distinct points.
 */
export function fitLine({ xMm, yMm }: Outline, from: number, to: number): LineFit | null {
  const n = to - from;
  if (n < 2) return null;
  let [meanX, meanY] = [0, 0];
  for (let i = from; i < to; i += 1) {
    meanX += xMm[i]! / n;
    meanY += yMm[i]! / n;
  }
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = from; i < to; i += 1) {
    const x = xMm[i]! - meanX;
    const y = yMm[i]! - meanY;
    xx += x * x;
    xy += x * y;
    yy += y * y;
  }
  if (!(xx + yy > 0)) return null;
  let heading = Math.atan2(2 * xy, xx - yy) / 2;
  const forwardX = xMm[to - 1]! - xMm[from]!;
  const forwardY = yMm[to - 1]! - yMm[from]!;
  if (forwardX * Math.cos(heading) + forwardY * Math.sin(heading) < 0) {
    heading += heading > 0 ? -Math.PI : Math.PI;
  }
  const across = (xx + yy - Math.hypot(xx - yy, 2 * xy)) / 2;
  return {
    through: { xMm: meanX, yMm: meanY },
    headingRad: heading,
    rmsMm: Math.sqrt(Math.max(0, across) / n),
  };
}

export type CircleFit = { readonly centre: PointMm; readonly radiusMm: number; readonly rmsMm: number };

/**
 * Circle through points `from` up to, but without, `to`: V. Pratt (1987), "Direct least-squares fitting
 * of algebraic surfaces", which unlike the plainer Kåsa fit does not make short noisy arcs too small.
 * Null for fewer than three points or points on a straight line.
 */
export function fitCircle({ xMm, yMm }: Outline, from: number, to: number): CircleFit | null {
  const n = to - from;
  if (n < 3) return null;
  let [meanX, meanY] = [0, 0];
  for (let i = from; i < to; i += 1) {
    meanX += xMm[i]! / n;
    meanY += yMm[i]! / n;
  }
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (let i = from; i < to; i += 1) {
    const x = xMm[i]! - meanX;
    const y = yMm[i]! - meanY;
    const z = x * x + y * y;
    xx += (x * x) / n;
    xy += (x * y) / n;
    yy += (y * y) / n;
    xz += (x * z) / n;
    yz += (y * z) / n;
    zz += (z * z) / n;
  }
  const size = xx + yy;
  const covariance = xx * yy - xy * xy;
  const spread = zz - size * size;
  const a2 = 4 * covariance - 3 * size * size - zz;
  const a1 = spread * size + 4 * covariance * size - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - spread * covariance;
  // Smallest root of the characteristic polynomial, by Newton's method from 0 (N. Chernov, "Circular and Linear Regression", 2010, 5.6).
  let root = 0;
  for (let step = 0; step < 30; step += 1) {
    const value = a0 + root * (a1 + root * (a2 + 4 * root * root));
    const slope = a1 + root * (2 * a2 + 16 * root * root);
    const next = root - value / slope;
    if (!Number.isFinite(next) || next < 0) break;
    if (Math.abs(next - root) <= 1e-14 * size) {
      root = next;
      break;
    }
    root = next;
  }
  const determinant = root * root - root * size + covariance;
  const centreX = (xz * (yy - root) - yz * xy) / determinant / 2;
  const centreY = (yz * (xx - root) - xz * xy) / determinant / 2;
  const radius = Math.sqrt(centreX * centreX + centreY * centreY + size + 2 * root);
  if (!Number.isFinite(radius)) return null;
  let squares = 0;
  for (let i = from; i < to; i += 1) {
    const off = Math.hypot(xMm[i]! - meanX - centreX, yMm[i]! - meanY - centreY) - radius;
    squares += off * off;
  }
  return {
    centre: { xMm: meanX + centreX, yMm: meanY + centreY },
    radiusMm: radius,
    rmsMm: Math.sqrt(squares / n),
  };
}
