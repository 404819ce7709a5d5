import { outlineOf, type Outline } from './outline';

/** Outline of numbers kept as x0, y0, x1, y1, …; a number without its pair at the end is left out. */
export function outlineOfPairs(pointsMm: Float64Array): Outline {
  const n = Math.floor(pointsMm.length / 2);
  return outlineOf(
    Float64Array.from({ length: n }, (_, i) => pointsMm[2 * i]!),
    Float64Array.from({ length: n }, (_, i) => pointsMm[2 * i + 1]!),
  );
}
