import type { PixelPoint } from './line';

export type PictureSize = { readonly width: number; readonly height: number };

/**
 * A camera with square pixels over a flat sheet of paper. Lengths in the picture are shares of its
 * longer side, counted from the middle.
 *
 * - `logFocal`: logarithm of the focal length;
 * - `centreX`, `centreY`: where the lens looks straight out, from the middle of the picture;
 * - `tiltX`, `tiltY`: turn of the sheet out of square about the picture's axes, rad;
 * - `turn`: of the sheet's x axis in the picture, rad;
 * - `originX`, `originY`: where the sheet's origin is seen, as a slope from the axis of the lens;
 * - `logDistance`: logarithm of the distance to the sheet's origin along the axis, mm.
 */
export type Camera = readonly [
  logFocal: number,
  centreX: number,
  centreY: number,
  tiltX: number,
  tiltY: number,
  turn: number,
  originX: number,
  originY: number,
  logDistance: number,
];

type Matrix = readonly (readonly [number, number, number])[];

/** Turn by the vector (x, y, 0), its length the angle (Rodrigues' formula). */
function tilted(x: number, y: number): Matrix {
  const angle = Math.hypot(x, y);
  const cos = Math.cos(angle);
  const sinc = angle < 1e-8 ? 1 : Math.sin(angle) / angle;
  const rest = angle < 1e-8 ? 0.5 : (1 - cos) / (angle * angle);
  return [
    [cos + rest * x * x, rest * x * y, sinc * y],
    [rest * x * y, cos + rest * y * y, -sinc * x],
    [-sinc * y, sinc * x, cos],
  ];
}

/** Homography from the sheet (mm, y down as in the picture) to the picture: K·[r₁ r₂ t] (R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed., 8.1.1). */
export function sheetToPicture([
  logFocal,
  cx,
  cy,
  tiltX,
  tiltY,
  turn,
  originX,
  originY,
  logDistance,
]: Camera): Matrix {
  const focal = Math.exp(logFocal);
  const distance = Math.exp(logDistance);
  const r = tilted(tiltX, tiltY);
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const rows = r.map(([a, b]) => [a * cos + b * sin, b * cos - a * sin] as const);
  const away = [originX * distance, originY * distance, distance] as const;
  const [x, y, z] = rows.map(([first, second], i) => [first, second, away[i]!] as const) as [
    readonly [number, number, number],
    readonly [number, number, number],
    readonly [number, number, number],
  ];
  const through = (
    row: readonly [number, number, number],
    centre: number,
  ): readonly [number, number, number] => [
    focal * row[0] + centre * z[0],
    focal * row[1] + centre * z[1],
    focal * row[2] + centre * z[2],
  ];
  return [through(x, cx), through(y, cy), z];
}

/** Where a homography takes a point; NaN where the point lies on or beyond the horizon. */
export function taken(h: Matrix, [x, y]: PixelPoint): PixelPoint {
  const [a, b, c] = h.map((row) => row[0] * x + row[1] * y + row[2]) as [number, number, number];
  return c > 0 ? [a / c, b / c] : [NaN, NaN];
}

/** The way back of a homography, scaled so that points in front of the camera stay in front; null for one without. */
export function backwards(h: Matrix): Matrix | null {
  const [[a, b, c], [d, e, f], [g, k, l]] = h as [Matrix[0], Matrix[0], Matrix[0]] as [
    readonly [number, number, number],
    readonly [number, number, number],
    readonly [number, number, number],
  ];
  const determinant = a * (e * l - f * k) - b * (d * l - f * g) + c * (d * k - e * g);
  if (!Number.isFinite(determinant) || determinant === 0) return null;
  const over = 1 / determinant;
  return [
    [(e * l - f * k) * over, (c * k - b * l) * over, (b * f - c * e) * over],
    [(f * g - d * l) * over, (a * l - c * g) * over, (c * d - a * f) * over],
    [(d * k - e * g) * over, (b * g - a * k) * over, (a * e - b * d) * over],
  ];
}

/** Pixels as shares of the longer side, from the middle of the picture. */
export function normalised([x, y]: PixelPoint, { width, height }: PictureSize): PixelPoint {
  const longer = Math.max(width, height);
  return [(x - (width - 1) / 2) / longer, (y - (height - 1) / 2) / longer];
}
