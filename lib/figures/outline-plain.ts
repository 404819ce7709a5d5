import type { Outline } from '../outline/outline';
import type { UnitSystem } from '../readings/unit';
import { LETTER, line, open, pen, words, type Point } from './pieces/draw';
import type { Figure, Shape, Stroke } from './shapes';
import { textWidth } from './text-width';

export type DrawnOutline = {
  readonly outline: Outline;
  readonly as: 'trace' | 'reference' | 'earlier';
  readonly label: string;
};

export type PlainOutlines = {
  readonly title: string;
  readonly description: string;
  readonly lines: readonly DrawnOutline[];
  /** Draws the two axes of the shape's own frame; a line not yet placed has none. */
  readonly axes: boolean;
  readonly system: UnitSystem;
};

const PENS: Readonly<Record<DrawnOutline['as'], Stroke>> = {
  reference: pen('faint', 1.5, [6, 3]),
  earlier: pen('seriesB', 1.5, [2, 3]),
  trace: pen('wheel', 2),
};

const EDGE = 14;
const LEGEND = 24;
const MM_PER_INCH = 25.4;
/** A line of one point or of no height still gets a picture. */
const LEAST_SPAN_MM = 10;

type Box = { readonly left: number; readonly right: number; readonly low: number; readonly high: number };

function boxOf(lines: readonly DrawnOutline[]): Box {
  let left = Infinity;
  let right = -Infinity;
  let low = Infinity;
  let high = -Infinity;
  for (const { outline } of lines) {
    outline.xMm.forEach((x, i) => {
      const y = outline.yMm[i] ?? NaN;
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
    });
  }
  return Number.isFinite(left + right + low + high)
    ? { left, right, low, high }
    : { left: 0, right: LEAST_SPAN_MM, low: 0, high: LEAST_SPAN_MM };
}

/** Divisions of the grid and how one is called: 10 mm, or half an inch. */
const DIVISIONS: Readonly<Record<UnitSystem, { readonly mm: number; readonly label: string }>> = {
  metric: { mm: 10, label: 'one square 10 mm' },
  us: { mm: MM_PER_INCH / 2, label: 'one square 1/2 in' },
};

/** Most squares of the grid across the picture; a line at the wrong scale would have thousands. */
const MOST_SQUARES = 60;

function grid(box: Box, place: (x: number, y: number) => Point, mm: number): Shape[] {
  if (Math.max(box.right - box.left, box.high - box.low) / mm > MOST_SQUARES) return [];
  const steps = (from: number, to: number): number[] => {
    const first = Math.ceil(from / mm);
    return Array.from({ length: Math.max(0, Math.floor(to / mm) - first + 1) }, (_, i) => (first + i) * mm);
  };
  const hair = pen('shade', 1);
  return [
    ...steps(box.left, box.right).map((x) => line(place(x, box.low), place(x, box.high), hair)),
    ...steps(box.low, box.high).map((y) => line(place(box.left, y), place(box.right, y), hair)),
  ];
}

function legend(lines: readonly DrawnOutline[], y: number, note: string): Shape[] {
  let x = EDGE;
  const shapes = lines.flatMap(({ as, label }): Shape[] => {
    const from = x;
    x += 30 + textWidth(label, LETTER) + 18;
    return [line([from, y - 4], [from + 24, y - 4], PENS[as]), words(from + 30, y, label)];
  });
  return [...shapes, words(x, y, note, { ink: 'faint' })];
}

/** Outlines laid over one another to one scale, on squares of paper, as many as are given. */
export function outlinePlain(
  { title, description, lines, axes, system }: PlainOutlines,
  { width }: { readonly width: number },
): Figure {
  const tight = boxOf(lines);
  const spanX = Math.max(LEAST_SPAN_MM, tight.right - tight.left);
  const spanY = Math.max(LEAST_SPAN_MM, tight.high - tight.low);
  const pxPerMm = Math.min((width - 2 * EDGE) / spanX, (0.75 * width) / spanY);
  const middle = (width - spanX * pxPerMm) / 2;
  const height = spanY * pxPerMm + 2 * EDGE + LEGEND;
  const place = (x: number, y: number): Point => [
    middle + (x - tight.left) * pxPerMm,
    EDGE + (tight.high - y) * pxPerMm,
  ];
  const box = { ...tight, right: tight.left + spanX, low: tight.high - spanY };
  const within = (value: number, from: number, to: number): boolean => value >= from && value <= to;
  const axis = pen('faint', 1);
  return {
    width,
    height,
    title,
    description,
    shapes: [
      ...grid(box, place, DIVISIONS[system].mm),
      ...(axes && within(0, box.low, box.high) ? [line(place(box.left, 0), place(box.right, 0), axis)] : []),
      ...(axes && within(0, box.left, box.right) ? [line(place(0, box.low), place(0, box.high), axis)] : []),
      ...lines.map(({ outline, as }) =>
        open(
          Array.from(outline.xMm, (x, i) => place(x, outline.yMm[i] ?? NaN)),
          PENS[as],
        ),
      ),
      ...legend(lines, height - 8, DIVISIONS[system].label),
    ],
  };
}
