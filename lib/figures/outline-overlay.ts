import type { Source } from '../findings/finding';
import type { Outline, PointMm } from '../outline/outline';
import { formatMeasure } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import type { StandardShape } from '../case/trace';
import { differenceAreas, type DifferenceArea } from './outline-difference';
import { drawDimension, type DrawnDimension, type OutlineDimension } from './outline-dimensions';
import { around, boxOfPoints, insideBox, onView, pointsOf, scaleFor, type BoxMm } from './outline-view';
import { area, LETTER, line, open, pen, words, type Point } from './pieces/draw';
import { hatched } from './pieces/hatch';
import { legend, type LegendItem } from './pieces/legend';
import { moved } from './pieces/moved';
import { leaderEnd, placeLabels, type Rect } from './pieces/place-labels';
import { scaleBar } from './pieces/scale-bar';
import type { Figure, Shape, Stroke } from './shapes';
import { textWidth, wrapText } from './text-width';

export type OutlineOverlayData = {
  readonly shape: StandardShape;
  readonly system: UnitSystem;
  /** What the trace is of. */
  readonly name: string;
  /** Placed in the frame of its shape. */
  readonly traced: Outline;
  /** Standard uncertainty across the traced line, mm: what is closer than twice this is not shaded. */
  readonly uAcrossMm: number;
  readonly reference: {
    readonly name: string;
    readonly status: Source['status'] | 'own shape';
    readonly outline: Outline;
  } | null;
  readonly dimensions?: readonly OutlineDimension[];
  /** Earlier traces of the same wheel or rail, latest first. */
  readonly earlier?: readonly { readonly label: string; readonly outline: Outline }[];
};

export type OutlineOverlayLayout = {
  readonly width: number;
  /** `paper`: to a usual ratio at the size the figure is printed. */
  readonly lengthScale?: 'paper' | 'fit';
};

/** Room round the shape for dimensions and their words; what stays empty is cut away afterwards. */
const AROUND = 92;
const EDGE = 8;
/** Metal shown below a wheel's lowest point, and beside a shape that ends steeply, mm. */
const METAL_MM = 6;
const BESIDE_MM = 3;
/** Tallest a shape is drawn. */
const MOST_HEIGHT = 430;
/** Narrower than this the words stand below the drawing, under letters. */
const WORDS_IN_DRAWING = 520;
const LEAST_SHADED_MM = 0.2;
const LINE = LETTER * 1.3;
/** Where the tread reference point lies from the back of the flange (`../outline/outline`). */
const DATUM_MM = 70;

const EARLIER: readonly Stroke[] = [pen('ink', 1.5, [2, 2.5]), pen('seriesC', 1.4, [8, 2, 2, 2])];
const REFERENCE = pen('faint', 1.3, [6, 3]);
const AXIS = pen('faint', 0.7, [10, 3, 2, 3]);

const SIDES: Readonly<Record<StandardShape, readonly [string, string]>> = {
  wheel: ['back of flange', 'field side'],
  rail: ['gauge side', 'field side'],
};

type Against = { readonly name: string; readonly outline: Outline };

/** What the shaded difference is taken from: the reference, else the latest earlier trace. */
const againstOf = ({ reference, earlier = [] }: OutlineOverlayData): Against | null =>
  reference ?? (earlier[0] === undefined ? null : { name: earlier[0].label, outline: earlier[0].outline });

function shadeOf({ kind, polygon }: DifferenceArea, place: (at: PointMm) => Point): readonly Shape[] {
  const points = polygon.map(place);
  return kind === 'lost'
    ? [area(points, 'mark', undefined, 0.16), ...hatched(points, -Math.PI / 4, 4.5, pen('mark', 0.8))]
    : [
        area(points, 'seriesA', undefined, 0.2),
        ...hatched(points, Math.PI / 4, 3, pen('seriesA', 0.9)),
        ...hatched(points, -Math.PI / 4, 3, pen('seriesA', 0.9)),
      ];
}

/** The traced part of the reference: what lies below the trace's ends is left out. */
function viewBox(data: OutlineOverlayData): BoxMm {
  const trace = boxOfPoints(pointsOf(data.traced));
  const others = [...(data.reference === null ? [] : [data.reference]), ...(data.earlier ?? [])].flatMap(
    ({ outline }) => {
      const points = pointsOf(outline).filter(({ yMm }) => yMm >= trace.low - BESIDE_MM);
      return points.length === 0 ? [] : [boxOfPoints(points)];
    },
  );
  const all = around([trace, ...others]);
  return { ...all, low: all.low - (data.shape === 'wheel' ? METAL_MM : BESIDE_MM) };
}

function metal({ shape, traced }: OutlineOverlayData, box: BoxMm): readonly PointMm[] {
  const points = pointsOf(traced);
  if (shape === 'rail') return points;
  return [
    ...points,
    { xMm: points[points.length - 1]!.xMm, yMm: box.low },
    { xMm: points[0]!.xMm, yMm: box.low },
  ];
}

type Worded = { readonly lines: readonly string[]; readonly drawn: DrawnDimension };

/** Two lines: the name, and the value in bold; or a letter. */
function labelShapes(worded: Worded, rect: Rect): readonly Shape[] {
  const { anchor } = worded.drawn;
  const end = leaderEnd(rect, anchor);
  const away = Math.hypot(end[0] - anchor[0], end[1] - anchor[1]);
  const right = rect.x + rect.width / 2 < anchor[0];
  const x = right ? rect.x + rect.width : rect.x;
  return [
    ...(away > 9 ? [line(anchor, end, pen('ink', 0.6))] : []),
    ...worded.lines.map((text, i) =>
      words(x, rect.y + LETTER * 0.82 + i * LINE, text, {
        bold: i === worded.lines.length - 1,
        ...(right ? { anchor: 'end' as const } : {}),
      }),
    ),
  ];
}

function legendItems(data: OutlineOverlayData, areas: readonly DifferenceArea[]): readonly LegendItem[] {
  const stroke =
    (with_: Stroke) =>
    (x: number, y: number): readonly Shape[] => [line([x, y - 4], [x + 24, y - 4], with_)];
  const patch =
    (kind: DifferenceArea['kind']) =>
    (x: number, y: number): readonly Shape[] => {
      const corners: readonly Point[] = [
        [x, y - 9],
        [x + 24, y - 9],
        [x + 24, y + 1],
        [x, y + 1],
      ];
      return shadeOf(
        { kind, mostMm: 0, polygon: corners.map(([px, py]) => ({ xMm: px, yMm: py })) },
        ({ xMm, yMm }) => [xMm, yMm],
      );
    };
  const most = (kind: DifferenceArea['kind']): number =>
    Math.max(0, ...areas.filter((each) => each.kind === kind).map(({ mostMm }) => mostMm));
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system: data.system, form: 'decimal' });
  const against = againstOf(data);
  return [
    { text: `as traced: ${data.name}`, sample: stroke(pen(data.shape, 2.2)) },
    ...(data.reference === null
      ? []
      : [
          {
            text: `${data.reference.name} (${data.reference.status})`,
            sample: stroke(REFERENCE),
          },
        ]),
    ...(data.earlier ?? []).map(({ label }, i) => ({
      text: label,
      sample: stroke(EARLIER[i % EARLIER.length]!),
    })),
    ...(against === null
      ? []
      : (['lost', 'gained'] as const)
          .filter((kind) => most(kind) > 0)
          .map((kind) => ({
            text: `metal ${kind}, ${size(most(kind))} at most`,
            sample: patch(kind),
          }))),
  ];
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

function notesOf(data: OutlineOverlayData, leastMm: number): readonly string[] {
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system: data.system, form: 'decimal' });
  const against = againstOf(data);
  return [
    data.shape === 'wheel'
      ? `Flange upward, axle below. Level line: the tread ${data.system === 'us' ? '2 3/4 in (70 mm)' : '70 mm'} from the back of the flange. Laid over each other at the back and the tip of the flange, which hardly wear.`
      : 'Seen along the rail, in the frame of its own section: cant is not drawn. Level line: top of the head as it now is.',
    ...(against === null
      ? ['No reference shape is laid under it.']
      : [
          `Shaded: the difference from ${against.name}, where it is more than ${size(leastMm)} anywhere along a stretch; distances to the nearest point.`,
        ]),
    ...((data.dimensions?.length ?? 0) > 0 ? ['±: k = 2.'] : []),
  ];
}

const tipMm = ({ yMm }: Outline): number => yMm.reduce((most, y) => Math.max(most, y), -Infinity);

/** Wheels are laid on each other tip on tip: y = 0 is the tread, which wears. */
function laidAtTip(data: OutlineOverlayData): OutlineOverlayData {
  const tip = tipMm(data.traced);
  const laid = (line: Outline): Outline => {
    const by = tip - tipMm(line);
    return { xMm: line.xMm, yMm: line.yMm.map((y) => y + by) };
  };
  return {
    ...data,
    reference: data.reference && { ...data.reference, outline: laid(data.reference.outline) },
    earlier: (data.earlier ?? []).map((each) => ({ ...each, outline: laid(each.outline) })),
  };
}

/**
 * A trace laid over the shape it had when new, or over earlier traces of the same wheel or rail, to one
 * scale: what is gone and what has been added shaded apart, the features as dimensions, the sides named.
 * Wheels are laid back on back and tip on tip; rails as they are given. On a narrow drawing the dimensions carry letters and their words stand below.
 */
export function outlineOverlay(
  given: OutlineOverlayData,
  { width, lengthScale = 'fit' }: OutlineOverlayLayout,
): Figure {
  const data = given.shape === 'wheel' ? laidAtTip(given) : given;
  const boxMm = viewBox(data);
  const inDrawing = width >= WORDS_IN_DRAWING;
  const beside = data.shape === 'wheel' ? (inDrawing ? 24 : 12) : inDrawing ? 130 : 58;
  // Dimensions drawn beside the shape need their room too.
  const acrossMm = (data.dimensions ?? []).flatMap((each) => (each.kind === 'upright' ? [each.xMm] : []));
  const leftMm = Math.min(boxMm.left, ...acrossMm);
  const wideMm = Math.max(boxMm.right, ...acrossMm) - leftMm;
  const highMm = boxMm.high - boxMm.low;
  const { pxPerMm, ratio } = scaleFor(
    wideMm,
    highMm,
    { width: width - 2 * beside, height: MOST_HEIGHT },
    lengthScale,
  );
  const originPx: Point = [(width - wideMm * pxPerMm) / 2 - leftMm * pxPerMm, AROUND + boxMm.high * pxPerMm];
  const place = onView({ originPx, pxPerMm });
  const bottom = AROUND + highMm * pxPerMm;
  const frame: Rect = { x: 0, y: 0, width, height: bottom + AROUND };

  const leastMm = Math.max(LEAST_SHADED_MM, 2 * data.uAcrossMm);
  const against = againstOf(data);
  const areas = against === null ? [] : differenceAreas(data.traced, against.outline, leastMm);
  const tracePx = pointsOf(data.traced).map(place);
  const clipped = (outline: Outline): readonly (readonly Point[])[] =>
    insideBox(pointsOf(outline), boxMm).map((run) => run.map(place));
  const referencePx = data.reference === null ? [] : clipped(data.reference.outline);
  const earlierPx = (data.earlier ?? []).map(({ outline }) => clipped(outline));
  const shading = areas.flatMap((each) => shadeOf(each, place));
  const drawn = (data.dimensions ?? []).map((dimension) => ({
    dimension,
    drawn: drawDimension(dimension, place),
  }));

  const [leftName, rightName] = SIDES[data.shape];
  const sideY = bottom + LETTER + 3;
  const sideNames = [
    words(place({ xMm: boxMm.left, yMm: 0 })[0], sideY, leftName, { ink: 'faint' }),
    words(place({ xMm: boxMm.right, yMm: 0 })[0], sideY, rightName, { ink: 'faint', anchor: 'end' }),
  ];
  const nameBox = (x: number, text: string, end: boolean): Rect => {
    const wide = textWidth(text, LETTER);
    return { x: end ? x - wide : x, y: sideY - LETTER, width: wide, height: LETTER + 3 };
  };
  const axes = axesOf(data.shape, boxMm, place);
  const obstacles = [
    tracePx,
    ...referencePx,
    ...earlierPx.flat(),
    ...shading.flatMap((each) =>
      each.type === 'line'
        ? [
            [
              [each.x1, each.y1],
              [each.x2, each.y2],
            ] as const,
          ]
        : [],
    ),
    ...drawn.flatMap((each) => each.drawn.lines),
    ...axes,
    [place({ xMm: boxMm.left, yMm: boxMm.low }), place({ xMm: boxMm.right, yMm: boxMm.low })],
  ];
  const taken = [
    nameBox(place({ xMm: boxMm.left, yMm: 0 })[0], leftName, false),
    nameBox(place({ xMm: boxMm.right, yMm: 0 })[0], rightName, true),
  ];
  const wordedAs = (asWords: boolean): readonly Worded[] =>
    drawn.map(({ dimension, drawn: each }, i) => ({
      drawn: each,
      lines: asWords ? [dimension.name, dimension.text] : [LETTERS[i % LETTERS.length]!],
    }));
  const placedAs = (worded: readonly Worded[]): readonly (Rect | null)[] =>
    placeLabels(
      worded.map(({ lines, drawn: { anchor } }) => ({
        anchor,
        width: Math.max(...lines.map((text) => textWidth(text, LETTER, 'bold'))),
        height: LETTER + (lines.length - 1) * LINE,
      })),
      frame,
      obstacles,
      taken,
    );
  let worded = wordedAs(inDrawing);
  let rects = placedAs(worded);
  const asWords = inDrawing && rects.every((rect) => rect !== null);
  if (inDrawing && !asWords) {
    worded = wordedAs(false);
    rects = placedAs(worded);
  }

  const outside = drawn.flatMap((each) => each.drawn.lines).flat();
  const topMost = Math.min(
    AROUND,
    ...rects.flatMap((rect) => (rect === null ? [] : [rect.y])),
    ...outside.map(([, y]) => y),
  );
  const lowMost = Math.max(
    sideY + 3,
    ...rects.flatMap((rect) => (rect === null ? [] : [rect.y + rect.height])),
    ...outside.map(([, y]) => y),
  );

  const key = asWords
    ? []
    : drawn.flatMap(({ dimension }, i) =>
        wrapText(`${dimension.name} ${dimension.text}`, width - 2 * EDGE - 20, LETTER).map((text, row) => ({
          text,
          letter: row === 0 ? LETTERS[i % LETTERS.length]! : '',
        })),
      );
  const keyTop = lowMost + 14;
  const keyBottom = keyTop + key.length * LINE;
  const legendDrawn = legend(
    legendItems(data, areas),
    EDGE,
    width - EDGE,
    keyBottom + (key.length > 0 ? 6 : 0),
  );
  const barY = legendDrawn.bottom + 20;
  const bar = scaleBar(EDGE, barY, pxPerMm, data.system);
  const notes = wrapText(
    [
      ratio === null ? 'Drawn to one scale, the bar.' : `Scale ${ratio} as printed.`,
      ...notesOf(data, leastMm),
    ].join(' '),
    width - 2 * EDGE,
    LETTER,
  );
  const notesTop = barY + LINE + 4;
  const up = topMost - EDGE;
  const shapes: Shape[] = [
    area(metal(data, boxMm).map(place), 'shade', undefined, 0.45),
    ...axes.map((axis) => open(axis, AXIS)),
    ...shading,
    ...referencePx.map((run) => open(run, REFERENCE)),
    ...earlierPx.flatMap((runs, i) => runs.map((run) => open(run, EARLIER[i % EARLIER.length]!))),
    open(tracePx, pen(data.shape, 2.2)),
    ...drawn.flatMap((each) => each.drawn.shapes),
    ...worded.flatMap((each, i) => {
      const rect = rects[i];
      return rect === null || rect === undefined ? [] : labelShapes(each, rect);
    }),
    ...sideNames,
    ...key.flatMap(({ text, letter }, i) => [
      words(EDGE, keyTop + (i + 0.8) * LINE, letter, { bold: true }),
      words(EDGE + 20, keyTop + (i + 0.8) * LINE, text),
    ]),
    ...legendDrawn.shapes,
    ...bar.shapes,
    ...notes.map((text, i) => words(EDGE, notesTop + i * LINE, text, { ink: 'faint' })),
  ];
  return {
    width,
    height: notesTop + notes.length * LINE - up,
    title: `Outline, ${data.name}`,
    description: describe(data, areas),
    shapes: shapes.map((shape) => moved(shape, 0, -up)),
  };
}

function axesOf(
  shape: StandardShape,
  boxMm: BoxMm,
  place: (at: PointMm) => Point,
): readonly (readonly Point[])[] {
  const level = [
    place({ xMm: boxMm.left - BESIDE_MM, yMm: 0 }),
    place({ xMm: boxMm.right + BESIDE_MM, yMm: 0 }),
  ];
  const at = shape === 'wheel' ? DATUM_MM : 0;
  const [high, low] = shape === 'wheel' ? [BESIDE_MM, -BESIDE_MM] : [boxMm.high + BESIDE_MM, boxMm.low];
  return [level, [place({ xMm: at, yMm: high }), place({ xMm: at, yMm: low })]];
}

function describe(data: OutlineOverlayData, areas: readonly DifferenceArea[]): string {
  const { reference, earlier = [], dimensions = [], system } = data;
  const size = (mm: number): string =>
    formatMeasure(mm, { dimension: 'crossLength', system, form: 'decimal' });
  const over =
    reference === null
      ? earlier.length === 0
        ? 'by itself, no reference shape chosen'
        : `over ${earlier.map(({ label }) => label).join(' and ')}`
      : `over ${reference.name} (${reference.status})`;
  const said = (['lost', 'gained'] as const).flatMap((kind) => {
    const found = areas.filter((each) => each.kind === kind);
    return found.length === 0
      ? []
      : [`metal ${kind}: ${size(Math.max(...found.map(({ mostMm }) => mostMm)))} at most`];
  });
  const features = dimensions.map(({ name, text }) => `${name} ${text}`);
  return [`The traced outline of ${data.name}, drawn ${over}`, ...said, ...features].join('; ').concat('.');
}
