import type { Trace } from '~/lib/case/trace';
import { outlineOf, type Outline } from '~/lib/outline/outline';

/** Straight pieces between corners, a point every half millimetre. */
export function lineThrough(corners: readonly (readonly [number, number])[]): Outline {
  const points = corners.flatMap(([x1, y1], i) => {
    const [x0, y0] = corners[i - 1] ?? [x1, y1];
    const n = Math.max(1, Math.round(Math.hypot(x1 - x0, y1 - y0) / 0.5));
    return Array.from({ length: n }, (_, k) => [
      x0 + ((x1 - x0) * (k + 1)) / n,
      y0 + ((y1 - y0) * (k + 1)) / n,
    ]);
  });
  return outlineOf(
    points.map(([x]) => x ?? NaN),
    points.map(([, y]) => y ?? NaN),
  );
}

/** A point of straight pieces: upright back, level top, gauge side at `faceRad`; as drawn, anywhere on the paper. */
export const straightPoint = (
  thicknessMm: number,
  faceRad: number,
  { downMm = 25, at = [31, 47] }: { readonly downMm?: number; readonly at?: readonly [number, number] } = {},
): Outline => {
  const [x, y] = at;
  return lineThrough([
    [x, y - downMm],
    [x, y],
    [x + thicknessMm, y],
    [x + thicknessMm + downMm / Math.tan(faceRad), y - downMm],
  ]);
};

export const pairsOf = ({ xMm, yMm }: Outline): Float64Array =>
  Float64Array.from({ length: 2 * xMm.length }, (_, i) => (i % 2 === 0 ? xMm : yMm)[i >> 1] ?? NaN);

/** What `tracedPoint` needs of a trace. */
export const asTrace = (
  outline: Outline,
  more: Partial<Trace> = {},
): Pick<Trace, 'pointsMm' | 'mirrored' | 'hand' | 'uncertainty' | 'making'> => ({
  pointsMm: pairsOf(outline),
  mirrored: false,
  hand: null,
  uncertainty: { acrossMm: 0.1, scale: 0, because: [] },
  making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: false } },
  ...more,
});
