/**
 * The outline of a wheel or of a rail head as a line of points in one plane across the track.
 * Points follow the line; they are not sorted by x (a gauge face can lean under itself).
 * Both shapes are looked at in a frame of their own, the same for left and right:
 *
 * - wheel: x from the back of the flange towards the field side; y away from the axle, 0 at the
 *   tread reference point 70 mm from the flange back (the tip of the flange is positive).
 *   The line runs from the back of the flange over its tip to the field side.
 * - rail: x from the upright axis of the section towards the field side (the gauge face is
 *   negative); y upward, 0 at the top of the head as it now is, in the frame of the section: cant
 *   is not in it. The line runs from the gauge side over the top to the field side.
 *
 * Before registration (`../wheel/register`, `../rail/register`) the frame is the drawing's own.
 */
export type Outline = {
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
};

export type PointMm = { readonly xMm: number; readonly yMm: number };

/** Outline of x, y pairs; throws when the two do not have the same length (a bug, never a user's error). */
export function outlineOf(xMm: ArrayLike<number>, yMm: ArrayLike<number>): Outline {
  if (xMm.length !== yMm.length) throw new Error('An outline has as many x as y.');
  return { xMm: Float64Array.from(xMm), yMm: Float64Array.from(yMm) };
}

export const pointCount = ({ xMm }: Outline): number => xMm.length;
