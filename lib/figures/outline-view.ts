import type { Outline, PointMm } from '../outline/outline';
import type { Point } from './pieces/draw';

/** Box in the frame of a shape, mm, y upward. */
export type BoxMm = {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
};

/** One figure unit is 0.75 pt on paper; mm of paper to one unit. */
export const PAPER_MM = (0.75 * 25.4) / 72;

/** Ratios a drawing office uses: largest first. */
const RATIOS = [5, 2, 1.5, 1, 0.75, 0.5, 0.25] as const;

export const boxOfPoints = (points: readonly PointMm[]): BoxMm => ({
  left: Math.min(...points.map(({ xMm }) => xMm)),
  right: Math.max(...points.map(({ xMm }) => xMm)),
  low: Math.min(...points.map(({ yMm }) => yMm)),
  high: Math.max(...points.map(({ yMm }) => yMm)),
});

export const pointsOf = ({ xMm, yMm }: Outline): PointMm[] =>
  Array.from(xMm, (x, i) => ({ xMm: x, yMm: yMm[i]! }));

export const around = (boxes: readonly BoxMm[]): BoxMm => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  right: Math.max(...boxes.map(({ right }) => right)),
  low: Math.min(...boxes.map(({ low }) => low)),
  high: Math.max(...boxes.map(({ high }) => high)),
});

/** Figure units to one mm and, where it is one of the usual ratios, how the scale is called. */
export type DrawnScale = { readonly pxPerMm: number; readonly ratio: string | null };

const ratioText = (ratio: number): string =>
  ratio >= 1
    ? Number.isInteger(ratio)
      ? `${ratio}:1`
      : `${ratio * 2}:2`
    : Number.isInteger(1 / ratio)
      ? `1:${1 / ratio}`
      : `${ratio * 4}:4`;

/**
 * The scale a shape is drawn to in a room of figure units. `paper`: a usual ratio at the size the figure
 * is printed, so that a gauge can be laid on the page; else as large as fits.
 */
export function scaleFor(
  wideMm: number,
  highMm: number,
  room: { readonly width: number; readonly height: number },
  lengthScale: 'paper' | 'fit',
): DrawnScale {
  const most = Math.min(room.width / wideMm, room.height / highMm);
  const ratio = lengthScale === 'paper' ? RATIOS.find((each) => each / PAPER_MM <= most) : undefined;
  return ratio === undefined
    ? { pxPerMm: most, ratio: null }
    : { pxPerMm: ratio / PAPER_MM, ratio: ratioText(ratio) };
}

/** How the frame of a shape comes onto the drawing: x0, y0 is where its origin lies, y turned downward. */
export type View = { readonly originPx: Point; readonly pxPerMm: number };

export const onView =
  ({ originPx, pxPerMm }: View) =>
  ({ xMm, yMm }: PointMm): Point => [originPx[0] + xMm * pxPerMm, originPx[1] - yMm * pxPerMm];

/** The line inside a box: pieces of it that lie within. */
export function insideBox(points: readonly PointMm[], box: BoxMm): readonly (readonly PointMm[])[] {
  const within = ({ xMm, yMm }: PointMm): boolean =>
    xMm >= box.left && xMm <= box.right && yMm >= box.low && yMm <= box.high;
  const runs: PointMm[][] = [];
  let run: PointMm[] = [];
  for (const point of points) {
    if (within(point)) run.push(point);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  return run.length > 0 ? [...runs, run] : runs;
}
