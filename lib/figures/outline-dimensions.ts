import type { PointMm } from '../outline/outline';
import { across, angleBetween, upright } from './pieces/dimension';
import { line, open, pen, type Point } from './pieces/draw';
import type { Shape } from './shapes';

/** One dimension of an outline, mm in its frame: what is measured, where, and how it reads. */
export type OutlineDimension = {
  readonly name: string;
  /** Value with its uncertainty and unit. */
  readonly text: string;
} & (
  | {
      /** Upright distance between two points, drawn at a place across the shape. */
      readonly kind: 'upright';
      readonly from: PointMm;
      readonly to: PointMm;
      readonly xMm: number;
    }
  | {
      /** Level distance between two points, drawn at a height. */
      readonly kind: 'across';
      readonly from: PointMm;
      readonly to: PointMm;
      readonly yMm: number;
    }
  /** Slope of the line at a point against the level, rad counter-clockwise; the tangent is drawn. */
  | { readonly kind: 'tangent'; readonly at: PointMm; readonly angleRad: number }
  /** A length measured along the line. */
  | { readonly kind: 'along'; readonly path: readonly PointMm[] }
  /** Something at one place, such as a radius. */
  | { readonly kind: 'spot'; readonly at: PointMm }
);

export type DrawnDimension = {
  readonly shapes: readonly Shape[];
  /** What words must keep off. */
  readonly lines: readonly (readonly Point[])[];
  /** Where the words belong. */
  readonly anchor: Point;
};

/** Half length of a drawn tangent, and the radius at which its angle is shown, figure units. */
const TANGENT = 46;
const ANGLE_RADIUS = 34;
/** How far an arc length is drawn off the line it measures. */
const OFF = 6;

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

function tangent(at: Point, angleRad: number): DrawnDimension {
  // On the drawing angles grow clockwise; the slope is shown on the side where it opens upward.
  const turn = -angleRad;
  const direction = Math.sin(turn) < 0 ? turn : turn + Math.PI;
  const level = Math.cos(direction) < 0 ? Math.PI : 0;
  const sweep = level === 0 ? Math.atan2(Math.sin(direction), Math.cos(direction)) : direction;
  const upTo = level === 0 ? sweep : ((sweep % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  const ends: readonly [Point, Point] = [
    [at[0] - TANGENT * 0.6 * cos, at[1] - TANGENT * 0.6 * sin],
    [at[0] + TANGENT * cos, at[1] + TANGENT * sin],
  ];
  const flat: readonly [Point, Point] = [at, [at[0] + (level === 0 ? 1 : -1) * (ANGLE_RADIUS + 8), at[1]]];
  const half = (level + upTo) / 2;
  const anchor: Point = [at[0] + ANGLE_RADIUS * Math.cos(half), at[1] + ANGLE_RADIUS * Math.sin(half)];
  return {
    shapes: [
      line(...ends, pen('mark', 1)),
      line(...flat, pen('mark', 0.7)),
      ...angleBetween(at, ANGLE_RADIUS, level, upTo, '', at, { ink: 'mark' }),
    ],
    lines: [ends, flat, [flat[1], anchor, ends[1]]],
    anchor,
  };
}

function along(path: readonly Point[]): DrawnDimension {
  // Outside the metal, which lies to the right of the line as it is walked.
  const off = path.map(([x, y], i): Point => {
    const [before, after] = [path[Math.max(0, i - 1)]!, path[Math.min(path.length - 1, i + 1)]!];
    const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
    const length = Math.hypot(dx, dy) || 1;
    return [x + (OFF * dy) / length, y - (OFF * dx) / length];
  });
  const [first, last] = [0, path.length - 1];
  const tick = (i: number): Shape => line(path[i]!, off[i]!, pen('mark', 0.9));
  return {
    shapes: [open(off, pen('mark', 1.6)), tick(first), tick(last)],
    lines: [off],
    anchor: off[Math.floor(off.length / 2)]!,
  };
}

/** A dimension on the drawing without its words: these are placed when everything else is known. */
export function drawDimension(dimension: OutlineDimension, place: (at: PointMm) => Point): DrawnDimension {
  switch (dimension.kind) {
    case 'upright': {
      const [from, to] = [place(dimension.from), place(dimension.to)];
      const [x] = place({ xMm: dimension.xMm, yMm: 0 });
      return {
        shapes: upright(from[1], to[1], x, from[0], to[0], ''),
        lines: [
          [from, [x, from[1]], [x, to[1]], to],
          [
            [x, Math.min(from[1], to[1]) - 14],
            [x, Math.max(from[1], to[1]) + 14],
          ],
        ],
        anchor: [x, (from[1] + to[1]) / 2],
      };
    }
    case 'across': {
      const [from, to] = [place(dimension.from), place(dimension.to)];
      const [, y] = place({ xMm: 0, yMm: dimension.yMm });
      return {
        shapes: across(from[0], to[0], y, from[1], to[1], ''),
        lines: [
          [from, [from[0], y], [to[0], y], to],
          [
            [Math.min(from[0], to[0]) - 14, y],
            [Math.max(from[0], to[0]) + 14, y],
          ],
        ],
        anchor: middle([from[0], y], [to[0], y]),
      };
    }
    case 'tangent':
      return tangent(place(dimension.at), dimension.angleRad);
    case 'along':
      return along(dimension.path.map(place));
    case 'spot': {
      const at = place(dimension.at);
      return {
        shapes: [{ type: 'circle', cx: at[0], cy: at[1], r: 2, fill: 'mark' }],
        lines: [],
        anchor: at,
      };
    }
  }
}
