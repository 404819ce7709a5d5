import type { Point } from './draw';

/** Largest distance between a flattened curve and the true one, figure units. */
const FLATNESS = 0.08;

/**
 * Points of a circular arc from angle `from` to `to` (rad, 0 to the right, growing clockwise on the
 * drawing, since y grows downwards), close enough together that it looks round.
 */
export function arc(centre: Point, radius: number, from: number, to: number): Point[] {
  const step = 2 * Math.acos(Math.max(0.5, 1 - FLATNESS / Math.max(radius, FLATNESS)));
  const count = Math.min(360, Math.max(2, Math.ceil(Math.abs(to - from) / step)));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / count;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** Points of a cubic Bézier curve. */
export const bezier = (a: Point, b: Point, c: Point, d: Point, count = 16): Point[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const t = i / count;
    const s = 1 - t;
    const at = (k: 0 | 1): number =>
      s ** 3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t ** 3 * d[k];
    return [at(0), at(1)];
  });

/** How a shape drawn in its own millimetres comes onto the drawing. */
export type Placing = {
  readonly at: Point;
  readonly scale: number;
  /** rad, clockwise on the drawing, about the shape's own origin. */
  readonly turn?: number;
  readonly mirror?: boolean;
};

export function place(points: readonly Point[], { at, scale, turn = 0, mirror = false }: Placing): Point[] {
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return points.map(([px, py]) => {
    const x = (mirror ? -px : px) * scale;
    const y = py * scale;
    return [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos];
  });
}
