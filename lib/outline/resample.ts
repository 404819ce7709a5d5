import { arcLengths, thinned } from './arc';
import { outlineOf, type Outline } from './outline';

/** A line whose points lie `stepMm` apart along it. */
export type EvenOutline = Outline & { readonly stepMm: number };

/**
 * The line with its points at even distances along it, about `stepMm` apart (the step that divides the
 * length exactly). Points closer together than half a step are first made one; between the points the
 * line is a cubic through each with the tangent of its neighbours (Catmull and Rom, 1974), weighted by
 * distance, so that a coarse but clean line keeps its curvature: a circle of radius R with points h
 * apart is met within about h⁴/(100 R³). Lines of fewer than two distinct points come back as they are.
 */
export function resampled(outline: Outline, stepMm: number): EvenOutline {
  const line = thinned(outline, stepMm / 2);
  const along = arcLengths(line);
  const n = along.length;
  const length = along[n - 1] ?? 0;
  if (n < 2 || !(length > 0)) return { ...line, stepMm };
  const pieces = Math.max(1, Math.round(length / stepMm));
  const tangentX = tangents(line.xMm, along);
  const tangentY = tangents(line.yMm, along);
  const x = new Float64Array(pieces + 1);
  const y = new Float64Array(pieces + 1);
  let piece = 0;
  for (let i = 0; i <= pieces; i += 1) {
    const at = (length * i) / pieces;
    while (piece < n - 2 && along[piece + 1]! <= at) piece += 1;
    const h = along[piece + 1]! - along[piece]!;
    const t = (at - along[piece]!) / h;
    x[i] = hermite(line.xMm, tangentX, piece, t, h);
    y[i] = hermite(line.yMm, tangentY, piece, t, h);
  }
  return { ...outlineOf(x, y), stepMm: length / pieces };
}

/** Slope against arc length at each point: of the parabola through it and its two neighbours. */
function tangents(value: Float64Array, along: Float64Array): Float64Array {
  const n = value.length;
  const slope = (i: number): number => (value[i + 1]! - value[i]!) / (along[i + 1]! - along[i]!);
  return Float64Array.from({ length: n }, (_, i) => {
    if (n === 2) return slope(0);
    const k = Math.min(Math.max(i, 1), n - 2);
    const before = along[k]! - along[k - 1]!;
    const after = along[k + 1]! - along[k]!;
    const bend = (slope(k) - slope(k - 1)) / (before + after);
    return slope(k - 1) + bend * (before + 2 * (along[i]! - along[k]!));
  });
}

function hermite(value: Float64Array, tangent: Float64Array, piece: number, t: number, h: number): number {
  const rest = 1 - t;
  return (
    value[piece]! * rest * rest * (1 + 2 * t) +
    value[piece + 1]! * t * t * (3 - 2 * t) +
    h * t * rest * (tangent[piece]! * rest - tangent[piece + 1]! * t)
  );
}
