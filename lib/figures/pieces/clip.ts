import type { Point } from './draw';
import type { Rect } from './place-labels';

type Edge = { readonly inside: (p: Point) => boolean; readonly cut: (a: Point, b: Point) => Point };

const edges = ({ x, y, width, height }: Rect): readonly Edge[] => {
  const atX =
    (to: number) =>
    (a: Point, b: Point): Point => [to, a[1] + ((to - a[0]) / (b[0] - a[0])) * (b[1] - a[1])];
  const atY =
    (to: number) =>
    (a: Point, b: Point): Point => [a[0] + ((to - a[1]) / (b[1] - a[1])) * (b[0] - a[0]), to];
  return [
    { inside: (p) => p[0] >= x, cut: atX(x) },
    { inside: (p) => p[0] <= x + width, cut: atX(x + width) },
    { inside: (p) => p[1] >= y, cut: atY(y) },
    { inside: (p) => p[1] <= y + height, cut: atY(y + height) },
  ];
};

/** A closed area cut off at a box (I. Sutherland, G. Hodgman, 1974). */
export function clippedArea(polygon: readonly Point[], box: Rect): readonly Point[] {
  return edges(box).reduce<readonly Point[]>(
    (points, { inside, cut }) =>
      points.flatMap((point, i) => {
        const before = points[(i + points.length - 1) % points.length]!;
        const crossing = inside(point) !== inside(before) ? [cut(before, point)] : [];
        return inside(point) ? [...crossing, point] : crossing;
      }),
    polygon,
  );
}

/** A line cut off at a box: the stretches of it that lie inside. */
export function clippedLine(points: readonly Point[], box: Rect): readonly (readonly Point[])[] {
  return edges(box).reduce<readonly (readonly Point[])[]>(
    (runs, { inside, cut }) =>
      runs.flatMap((run) => {
        const found: Point[][] = [];
        let current: Point[] = [];
        run.forEach((point, i) => {
          const before = run[i - 1];
          if (before !== undefined && inside(point) !== inside(before)) current.push(cut(before, point));
          if (inside(point)) current.push(point);
          else if (current.length > 0) {
            found.push(current);
            current = [];
          }
        });
        return current.length > 0 ? [...found, current] : found;
      }),
    [points],
  );
}
