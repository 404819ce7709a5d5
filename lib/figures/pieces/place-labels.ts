import type { Point } from './draw';

export type Rect = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

export type Label = {
  readonly width: number;
  readonly height: number;
  /** What the label names, on the drawing. */
  readonly anchor: Point;
};

/** Cells of the map of what is drawn already, figure units: finer than the gap between two lines of words. */
const CELL = 3;
/** Clear paper kept round every label. */
const CLEAR = 3;
/** And between two labels beside each other. */
const BETWEEN = 6;
/** A leader may pass this far along what it comes from before it counts as crossing something. */
const OWN_LINE = 7;
/** Distance a label rather goes than have its leader cross a line. */
const CROSSING = 60;

/** What is drawn where, in cells; counts over any box come from a table of sums. */
function mapOf(frame: Rect) {
  const columns = Math.ceil(frame.width / CELL);
  const rows = Math.ceil(frame.height / CELL);
  const taken = new Uint8Array(columns * rows);
  const sums = new Int32Array((columns + 1) * (rows + 1));
  const column = (x: number): number => Math.floor((x - frame.x) / CELL);
  const row = (y: number): number => Math.floor((y - frame.y) / CELL);
  const inside = (c: number, r: number): boolean => c >= 0 && r >= 0 && c < columns && r < rows;
  return {
    takeLine(from: Point, to: Point): void {
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / (CELL / 2)));
      for (let i = 0; i <= steps; i += 1) {
        const [c, r] = [
          column(from[0] + ((to[0] - from[0]) * i) / steps),
          row(from[1] + ((to[1] - from[1]) * i) / steps),
        ];
        if (inside(c, r)) taken[r * columns + c] = 1;
      }
    },
    takeBox({ x, y, width, height }: Rect): void {
      for (let r = row(y); r <= row(y + height); r += 1) {
        for (let c = column(x); c <= column(x + width); c += 1) if (inside(c, r)) taken[r * columns + c] = 1;
      }
    },
    sum(): void {
      for (let r = 0; r < rows; r += 1) {
        let along = 0;
        for (let c = 0; c < columns; c += 1) {
          along += taken[r * columns + c]!;
          sums[(r + 1) * (columns + 1) + c + 1] = sums[r * (columns + 1) + c + 1]! + along;
        }
      }
    },
    free({ x, y, width, height }: Rect): boolean {
      const [c0, r0, c1, r1] = [column(x), row(y), column(x + width) + 1, row(y + height) + 1];
      if (c0 < 0 || r0 < 0 || c1 > columns || r1 > rows) return false;
      const at = (c: number, r: number): number => sums[r * (columns + 1) + c]!;
      return at(c1, r1) - at(c0, r1) - at(c1, r0) + at(c0, r0) === 0;
    },
    crossings(from: Point, to: Point): number {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      let count = 0;
      let on = true;
      for (let along = OWN_LINE; along < length - CLEAR - 1; along += CELL / 2) {
        const share = along / length;
        const [c, r] = [
          column(from[0] + (to[0] - from[0]) * share),
          row(from[1] + (to[1] - from[1]) * share),
        ];
        const here = inside(c, r) && taken[r * columns + c] === 1;
        if (here && !on) count += 1;
        on = here;
      }
      return count;
    },
  };
}

/** Where a leader from the anchor meets a label's box: its nearest point. */
export const leaderEnd = ({ x, y, width, height }: Rect, [ax, ay]: Point): Point => [
  Math.min(Math.max(ax, x), x + width),
  Math.min(Math.max(ay, y), y + height),
];

/**
 * Finds for each label, in order, the free place nearest to what it names: off every line and box
 * already drawn, off the other labels, its leader crossing as little as can be. Top left corners; null
 * where the frame has no free place left.
 */
export function placeLabels(
  labels: readonly Label[],
  frame: Rect,
  lines: readonly (readonly Point[])[],
  boxes: readonly Rect[] = [],
): readonly (Rect | null)[] {
  const map = mapOf(frame);
  for (const points of lines) {
    for (let i = 1; i < points.length; i += 1) map.takeLine(points[i - 1]!, points[i]!);
  }
  for (const box of boxes) map.takeBox(box);
  return labels.map(({ width, height, anchor }) => {
    map.sum();
    let best: { readonly rect: Rect; readonly cost: number } | null = null;
    for (let y = frame.y + CLEAR; y + height + CLEAR <= frame.y + frame.height; y += CELL) {
      for (let x = frame.x + CLEAR; x + width + CLEAR <= frame.x + frame.width; x += CELL) {
        const rect = { x, y, width, height };
        const end = leaderEnd(rect, anchor);
        const away = Math.hypot(end[0] - anchor[0], end[1] - anchor[1]);
        if (best !== null && away >= best.cost) continue;
        const clear = { x: x - CLEAR, y: y - CLEAR, width: width + 2 * CLEAR, height: height + 2 * CLEAR };
        if (!map.free(clear)) continue;
        const cost = away + CROSSING * map.crossings(anchor, end);
        if (best === null || cost < best.cost) best = { rect, cost };
      }
    }
    if (best === null) return null;
    const { x, y, width: wide, height: high } = best.rect;
    map.takeBox({ x: x - BETWEEN, y, width: wide + 2 * BETWEEN, height: high });
    map.takeLine(anchor, leaderEnd(best.rect, anchor));
    return best.rect;
  });
}
