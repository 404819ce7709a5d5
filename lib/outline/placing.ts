import { outlineOf, type Outline } from './outline';

/**
 * Where a traced line lies in the frame of its shape: mirrored about the upright if asked, then
 * turned about the drawing's origin (counter-clockwise positive, rad), then moved (mm).
 */
export type Placing = {
  readonly mirrored: boolean;
  readonly angleRad: number;
  readonly dxMm: number;
  readonly dyMm: number;
};

export const AS_DRAWN: Placing = { mirrored: false, angleRad: 0, dxMm: 0, dyMm: 0 };

/** The outline placed. A mirrored line is also turned end for end, so that it still starts at the same side of the frame. */
export function placed({ xMm, yMm }: Outline, { mirrored, angleRad, dxMm, dyMm }: Placing): Outline {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  const n = xMm.length;
  const at = (index: number): number => (mirrored ? n - 1 - index : index);
  const side = mirrored ? -1 : 1;
  const x = (index: number): number => side * (xMm[at(index)] ?? NaN);
  const y = (index: number): number => yMm[at(index)] ?? NaN;
  const indices = Array.from({ length: n }, (_, index) => index);
  return outlineOf(
    indices.map((index) => x(index) * cos - y(index) * sin + dxMm),
    indices.map((index) => x(index) * sin + y(index) * cos + dyMm),
  );
}

/** First one placing, then the other; the second may not mirror. */
export function afterwards(first: Placing, then: Omit<Placing, 'mirrored'>): Placing {
  const cos = Math.cos(then.angleRad);
  const sin = Math.sin(then.angleRad);
  return {
    mirrored: first.mirrored,
    angleRad: first.angleRad + then.angleRad,
    dxMm: first.dxMm * cos - first.dyMm * sin + then.dxMm,
    dyMm: first.dxMm * sin + first.dyMm * cos + then.dyMm,
  };
}
