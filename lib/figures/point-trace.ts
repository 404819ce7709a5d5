import type { Outline } from '../outline/outline';
import { EDGE_DEPTH_MM, LOWER_MM, type TracedPoint } from '../turnout/point-trace';
import { formatMeasure } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { featureText } from './trace-dimensions';
import { area, LETTER, line, lines, open, pen, words, type Point } from './pieces/draw';
import { hatched } from './pieces/hatch';
import { scaleBar } from './pieces/scale-bar';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type PointTraceData = {
  /** What it is of: "right point 1 ft behind the tip". */
  readonly name: string;
  readonly system: UnitSystem;
  /** x from the back edge towards the gauge side, y upward from the highest part. */
  readonly outline: Outline;
  /** Back edge to gauge side at depths below the highest part, with their words. */
  readonly thicknesses: readonly { readonly depthMm: number; readonly mm: number; readonly text: string }[];
};

/** The thicknesses that an outline gives, with their words. */
export const pointTraceData = (
  name: string,
  { outline, features }: TracedPoint,
  system: UnitSystem,
): PointTraceData => ({
  name,
  system,
  outline,
  thicknesses: (
    [
      ['pointThickness', EDGE_DEPTH_MM],
      ['pointThicknessLower', LOWER_MM],
    ] as const
  ).flatMap(([id, depthMm]) => {
    const found = features[id];
    return found.ok
      ? [
          {
            depthMm,
            mm: found.value.value,
            text: featureText(found.value.value, found.value.u, 'crossLength', system),
          },
        ]
      : [];
  }),
});

const EDGE = 8;
/** From the shape to the words beside it. */
const TO_WORDS = 30;
/** Narrower than this the sides are named below the drawing. */
const NAMED_BESIDE = 420;
const BACK = ['back, against', 'the stock rail'];
const ABOVE = 30;
const MOST_HEIGHT = 300;
const MOST_PX_PER_MM = 14;

/**
 * The traced cross-section of a switch point by itself, to one scale: its metal, the level of its highest
 * part, the upright of its back edge, and its thickness at stated depths.
 */
export function pointTraceFigure(
  { name, system, outline, thicknesses }: PointTraceData,
  { width }: { readonly width: number },
): Figure {
  const { xMm, yMm } = outline;
  const [left, right] = [Math.min(0, ...xMm), Math.max(...xMm)];
  const [low, high] = [Math.min(...yMm), Math.max(0, ...yMm)];
  const named = width >= NAMED_BESIDE;
  const wide = (texts: readonly string[], weight?: 'bold'): number =>
    Math.max(0, ...texts.map((text) => textWidth(text, LETTER, weight)));
  const before = EDGE + TO_WORDS + (named ? wide(BACK) : 0);
  const after =
    EDGE +
    TO_WORDS +
    wide(
      thicknesses.map(({ text }) => text),
      'bold',
    );
  const pxPerMm = Math.min(
    (width - before - after) / Math.max(1, right - left),
    MOST_HEIGHT / Math.max(1, high - low),
    MOST_PX_PER_MM,
  );
  const middle = before + (width - before - after - (right - left) * pxPerMm) / 2;
  const place = (x: number, y: number): Point => [
    middle + (x - left) * pxPerMm,
    ABOVE + (high - y) * pxPerMm,
  ];
  const trace = Array.from(xMm, (x, i) => place(x, yMm[i] ?? NaN));
  const bottom = ABOVE + (high - low) * pxPerMm;
  const axis = pen('faint', 0.8, [10, 3, 2, 3]);
  const [fromX] = place(left, 0);
  const [toX] = place(right, 0);
  const bar = scaleBar(EDGE, bottom + 28, pxPerMm, system);
  const notes = wrapText(
    `${named ? '' : 'At the left the back, against the stock rail; at the right the gauge side. '}Gap and depth read at the same distance behind the tip put the back edge (upright line) and the highest part (level line) in their place.`,
    width - 2 * EDGE,
    LETTER,
  );
  const notesTop = bottom + 28 + LETTER * 2;
  return {
    width,
    height: notesTop + notes.length * LETTER * 1.3,
    title: `Outline, ${name}`,
    description: [
      `Cross-section of the ${name}: back against the stock rail at the left, gauge side at the right`,
      ...thicknesses.map(({ depthMm, text }) => `thickness ${text} ${depthText(depthMm, system)}`),
    ]
      .join('; ')
      .concat('.'),
    shapes: [
      area(trace, 'rail', undefined, 0.12),
      ...hatched(trace, Math.PI / 4, 6, pen('rail', 0.5)),
      line([fromX - 24, place(0, 0)[1]], [toX + 24, place(0, 0)[1]], axis),
      line(place(0, high), [place(0, 0)[0], bottom + 6], axis),
      open(trace, pen('rail', 2)),
      ...(named
        ? [
            ...lines(fromX - TO_WORDS, ABOVE + 18, BACK, { anchor: 'end' }),
            words(fromX - TO_WORDS, place(0, 0)[1] + 4, 'highest part', { anchor: 'end', ink: 'faint' }),
            words(toX + 20, bottom - 4, 'gauge side'),
          ]
        : []),
      ...thicknesses.flatMap(({ depthMm, mm, text }): Shape[] => {
        const [x, y] = place(mm, -depthMm);
        return [
          line(place(0, -depthMm), [x, y], pen('ink', 1)),
          line([x, y], [toX + 16, y], pen('ink', 0.6)),
          words(toX + 20, y + 4, text, { bold: true }),
        ];
      }),
      ...bar.shapes,
      ...lines(EDGE, notesTop, notes, { ink: 'faint' }),
    ],
  };
}

const depthText = (mm: number, system: UnitSystem): string =>
  `${formatMeasure(mm, { dimension: 'crossLength', system })} below the highest part`;
