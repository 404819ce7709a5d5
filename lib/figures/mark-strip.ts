import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { facingTravel } from '../case/facing';
import type { CaseRecord } from '../case/record';
import { toCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import { caseMarks, systemOf, type CaseMark } from './case-marks';
import { arrow } from './pieces/arrow';
import { scaleOf } from './pieces/axis';
import { area, box, LETTER, line, lines, pen, words, type Point } from './pieces/draw';
import { shiftApart } from './pieces/shift-labels';
import type { Figure, Shape, Stroke } from './shapes';
import { textWidth, wrapText } from './text-width';

export type MarkStripData = {
  readonly system: UnitSystem;
  readonly marks: readonly CaseMark[];
  /** The rail that lies outside in the curve at the POD, when the case says. */
  readonly outerRail: 'left' | 'right' | null;
};

/** The marks of a case, and which rail is the high one. */
export function markStripData(asEntered: CaseRecord): MarkStripData {
  const record = facingTravel(asEntered);
  return {
    system: systemOf(record),
    marks: caseMarks(record),
    outerRail:
      record.fields.alignment === 'curveLeft'
        ? 'right'
        : record.fields.alignment === 'curveRight'
          ? 'left'
          : null,
  };
}

/** Standard gauge and a head of usual width: the strip is a picture of places across the head, not of sizes. */
const GAUGE_MM = 1435;
const HEAD_MM = 74;
/** Along the track is to scale; across it is drawn this much larger than a head would be at 1 px to 3 mm. */
const HEAD_PX = 26;
const MM_TO_PX = HEAD_PX / HEAD_MM;
/** Between the gauge faces the gauge is squeezed, so that both heads are legible. */
const INSIDE_PX = 96;
/** Kept free of badges for the name of the rail, at the right end of their rows. */
const NAME_ROOM = 120;

/** How each kind of mark is drawn: never by colour alone. */
type Look = { readonly stroke: Stroke; readonly end: 'slash' | 'square' | 'none' };

const LOOKS: Readonly<Record<string, Look>> = {
  flangeOnHead: { stroke: pen('mark', 2.6), end: 'slash' },
  treadRimInside: { stroke: pen('seriesA', 2.6, [8, 3]), end: 'slash' },
  dropFieldSide: { stroke: pen('mark', 2.2, [2, 2.5]), end: 'square' },
  dropGaugeSide: { stroke: pen('seriesA', 2.2, [2, 2.5]), end: 'square' },
  flangeOnTie: { stroke: pen('seriesB', 2, [10, 4, 2, 4]), end: 'none' },
  treadOnTie: { stroke: pen('seriesB', 4, [3, 3]), end: 'none' },
  runningOnWeb: { stroke: pen('seriesC', 3.4), end: 'none' },
  pointStrike: { stroke: pen('warn', 3), end: 'square' },
  flangeOnPoint: { stroke: pen('warn', 2.2, [6, 2]), end: 'slash' },
  railEndBatter: { stroke: pen('limit', 3), end: 'square' },
  other: { stroke: pen('ink', 1.6, [1, 3]), end: 'slash' },
};
const lookOf = (type: string): Look => LOOKS[type] ?? LOOKS.other!;

type Rails = { readonly leftFace: number; readonly rightFace: number };

/** Distance from the gauge face, positive over the head, as a height on the drawing. */
function acrossAt(mark: CaseMark, offsetMm: number, rails: Rails, room: number): number {
  const face = mark.rail === 'left' ? rails.leftFace : rails.rightFace;
  const outward = mark.rail === 'left' ? -1 : 1;
  const px = offsetMm >= 0 ? offsetMm * MM_TO_PX : (offsetMm / GAUGE_MM) * INSIDE_PX;
  return face + outward * Math.min(Math.max(px, -INSIDE_PX * 0.9), HEAD_PX + room);
}

const NOMINAL_OFFSET: Readonly<Record<string, number>> = {
  treadRimInside: 6,
  dropGaugeSide: -120,
  dropFieldSide: HEAD_MM + 25,
  flangeOnTie: HEAD_MM + 45,
  treadOnTie: -260,
  runningOnWeb: -20,
};

/** Where the mark lies across the track when nobody measured it: where its kind puts it. */
const offsetsOf = (mark: CaseMark): readonly [number, number] => {
  const nominal = NOMINAL_OFFSET[mark.type] ?? HEAD_MM / 2;
  const from = Number.isFinite(mark.offsetFromMm) ? mark.offsetFromMm : nominal;
  const to = Number.isFinite(mark.offsetToMm) ? mark.offsetToMm : from;
  return [from, to];
};

function markShape(
  mark: CaseMark,
  x: (m: number) => number,
  rails: Rails,
  badgeX: number,
  badgeY: number,
): Shape {
  const { stroke, end } = lookOf(mark.type);
  const [offsetFrom, offsetTo] = offsetsOf(mark);
  const from: Point = [x(mark.fromM), acrossAt(mark, offsetFrom, rails, 30)];
  const toX = Number.isFinite(mark.toM) ? x(mark.toM) : from[0];
  const to: Point = [Math.abs(toX - from[0]) < 3 ? from[0] + 3 : toX, acrossAt(mark, offsetTo, rails, 30)];
  const edge = badgeY < from[1] ? badgeY + 8 : badgeY - 8;
  return {
    type: 'group',
    label: `Mark ${mark.number}: ${mark.label}, ${mark.rail} rail`,
    shapes: [
      line([badgeX, edge], from, pen('faint', 0.8)),
      line(from, to, stroke),
      ...(end === 'slash'
        ? [line([from[0], from[1] - 5], [from[0], from[1] + 5], pen(stroke.ink, 1.4))]
        : []),
      ...(end === 'square'
        ? [box(from[0] - 3, from[1] - 3, 6, 6, { fill: 'paper', stroke: pen(stroke.ink, 1.6) })]
        : []),
      badge(mark, badgeX, badgeY),
    ],
  };
}

const badge = (mark: CaseMark, x: number, y: number): Shape => ({
  type: 'group',
  shapes: [
    {
      type: 'circle',
      cx: x,
      cy: y,
      r: 8,
      fill: 'paper',
      stroke: pen(mark.isPod ? 'mark' : 'ink', mark.isPod ? 2.2 : 1),
    },
    words(x, y + 4, String(mark.number), {
      anchor: 'middle',
      bold: mark.isPod,
      size: mark.number > 9 ? 9.5 : LETTER,
    }),
  ],
});

const APPEARANCE: Readonly<Record<string, string>> = { fresh: 'fresh', old: 'old' };

function keyText(mark: CaseMark, system: UnitSystem): string {
  const scale = scaleOf('alongTrack', system);
  const at = (m: number): string => scale.text(Number(scale.toShown(m).toFixed(1)));
  const where = !Number.isFinite(mark.fromM)
    ? 'place not read'
    : Number.isFinite(mark.toM) && Math.abs(mark.toM - mark.fromM) > 0.01
      ? `${at(mark.fromM)} to ${at(mark.toM)} ${scale.unitLabel}`
      : `at ${at(mark.fromM)} ${scale.unitLabel}`;
  const across = Number.isFinite(mark.offsetFromMm) ? '' : ', across not read';
  const state = APPEARANCE[mark.appearance];
  return `${mark.label}, ${mark.rail}, ${where}${across}${state === undefined ? '' : `, ${state}`}`;
}

function keyEntry(mark: CaseMark, system: UnitSystem, left: number, top: number, width: number): Shape[] {
  const { stroke, end } = lookOf(mark.type);
  const middle = top + 10;
  return [
    badge(mark, left + 9, middle),
    line([left + 24, middle], [left + 58, middle], stroke),
    ...(end === 'slash'
      ? [line([left + 24, middle - 5], [left + 24, middle + 5], pen(stroke.ink, 1.4))]
      : []),
    ...(end === 'square'
      ? [box(left + 23, middle - 3, 6, 6, { fill: 'paper', stroke: pen(stroke.ink, 1.6) })]
      : []),
    ...lines(left + 66, middle + 4, wrapText(keyText(mark, system), width - 74, LETTER)),
  ];
}

function keyShapes(
  data: MarkStripData,
  x: number,
  y: number,
  width: number,
): { shapes: Shape[]; height: number } {
  const columns = width >= 900 ? 2 : 1;
  const each = width / columns;
  const rows = Math.ceil(data.marks.length / columns);
  const bottoms = Array.from({ length: columns }, () => y);
  const shapes = data.marks.flatMap((mark, i) => {
    const column = Math.floor(i / rows);
    const top = bottoms[column]!;
    const count = wrapText(keyText(mark, data.system), each - 74, LETTER).length;
    bottoms[column] = top + Math.max(20, 6 + count * LETTER * 1.25 + 2);
    return keyEntry(mark, data.system, x + column * each, top, each);
  });
  return { shapes, height: Math.max(...bottoms) - y };
}

const rail = (face: number, outward: 1 | -1, left: number, right: number): Shape[] => {
  const [top, bottom] = outward < 0 ? [face - HEAD_PX, face] : [face, face + HEAD_PX];
  return [
    box(left, top, right - left, bottom - top, { fill: 'shade', stroke: pen('rail', 1.2) }),
    line([left, face], [right, face], pen('rail', 2.4)),
  ];
};

const NOTE =
  'Along the track to scale. Across it the heads are drawn larger and the gauge smaller than they are; the heavy line of each rail is its gauge face.';

/**
 * The marks in plan, drawn along the two rails with the train moving to the right: where each
 * begins and ends, where it lies across the head (offset from the gauge face, towards the field
 * positive), numbers and a key. Marks without a place are in the key alone.
 */
export function markStrip(data: MarkStripData, { width }: { readonly width: number }): Figure {
  const placed = data.marks.filter((mark) => Number.isFinite(mark.fromM));
  const scale = scaleOf('alongTrack', data.system);
  const left = 14;
  const right = width - 14;
  const places = [0, ...placed.flatMap((mark) => [mark.fromM, mark.toM])].filter(Number.isFinite);
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const pad = Math.max((high - low) * 0.08, 1.5);
  const x = scaleLinear()
    .domain([low - pad, high + pad])
    .range([left, right]);

  const headTop = 34;
  const leftFace = headTop + 58 + HEAD_PX;
  const rails: Rails = { leftFace, rightFace: leftFace + INSIDE_PX };
  const bottomBadges = rails.rightFace + HEAD_PX + 52;
  const axisY = bottomBadges + 20;
  const tieEnds: [number, number] = [leftFace - HEAD_PX - 26, rails.rightFace + HEAD_PX + 26];
  const spacing = toCanonical(19.5, 'in', 'alongTrack');
  const tieWidth = x(spacing * 0.42) - x(0);
  const first = Math.ceil((low - pad) / spacing);
  const last = Math.floor((high + pad) / spacing);
  // Over a long stretch single ties would be a grey blur.
  const ties =
    x(spacing) - x(0) < 5
      ? []
      : Array.from({ length: last - first + 1 }, (_, i) =>
          box(x((first + i) * spacing) - tieWidth / 2, tieEnds[0], tieWidth, tieEnds[1] - tieEnds[0], {
            fill: 'shade',
            fillOpacity: 0.5,
          }),
        ).filter((tie) => tie.type === 'rect' && tie.x >= left && tie.x + tie.width <= right);

  const byRail = (which: 'left' | 'right'): readonly CaseMark[] =>
    placed.filter((mark) => mark.rail === which);
  const drawn = (['left', 'right'] as const).flatMap((which) => {
    const marks = byRail(which);
    const xs = shiftApart(
      marks.map((mark) => x(mark.fromM)),
      marks.map(() => 21),
      left,
      right - NAME_ROOM,
    );
    return marks.map((mark, i) =>
      markShape(mark, x, rails, xs[i]!, which === 'left' ? headTop + 8 : bottomBadges),
    );
  });

  const podX = x(0);
  const [podLabel] = shiftApart([podX], [36], left, right) as [number];
  const shown = x.domain().map(scale.toShown) as [number, number];
  const tickValues = ticks(shown[0], shown[1], Math.max(3, Math.floor(width / 80)));
  const railName = (which: 'left' | 'right'): string =>
    `${which === 'left' ? 'Left' : 'Right'} rail${data.outerRail === null ? '' : data.outerRail === which ? ' (outer)' : ' (inner)'}`;
  const keyTop = axisY + 42;
  const key = keyShapes(data, left, keyTop, width - 28);
  const noteTop = keyTop + key.height + 14;
  const noteLines = wrapText(NOTE, width - 28, LETTER);
  const podBox: Point[] = [
    [podLabel - 17, axisY - 6],
    [podLabel + 17, axisY - 6],
    [podLabel + 17, axisY + 8],
    [podLabel - 17, axisY + 8],
  ];

  return {
    width,
    height: noteTop + (noteLines.length - 1) * LETTER * 1.25 + 8,
    title: 'Marks along the track',
    description:
      data.marks.length === 0
        ? 'No marks are recorded.'
        : `${NOTE} Direction of travel from left to right. ${data.marks
            .map((mark) => `${mark.number}: ${keyText(mark, data.system)}${mark.isPod ? ' (POD)' : ''}.`)
            .join(' ')}`,
    shapes: [
      ...arrow([left, 12], [left + 34, 12], { width: 1.6 }),
      words(left + 40, 16, 'direction of travel', { bold: true }),
      ...ties,
      ...rail(leftFace, -1, left, right),
      ...rail(rails.rightFace, 1, left, right),
      words(right, headTop + 12, railName('left'), { bold: true, anchor: 'end' }),
      words(right, bottomBadges + 4, railName('right'), { bold: true, anchor: 'end' }),
      line([podX, leftFace - HEAD_PX - 14], [podX, axisY], pen('mark', 1.2, [9, 3, 2, 3])),
      ...drawn,
      line([left, axisY], [right, axisY], pen('ink', 1)),
      ...tickValues.flatMap((tick) => {
        const at = x(toCanonical(tick, data.system === 'us' ? 'ft' : 'm', 'alongTrack'));
        const text = `${tick > 0 ? '+' : ''}${scale.text(tick)}`;
        const half = textWidth(text, LETTER) / 2;
        return [
          line([at, axisY], [at, axisY + 5], pen('ink', 1)),
          words(Math.min(Math.max(at, half), width - half), axisY + 19, text, { anchor: 'middle' }),
        ];
      }),
      area(podBox, 'mark'),
      words(podLabel, axisY + 5, 'POD', { anchor: 'middle', bold: true, ink: 'paper' }),
      words(left, axisY + 34, `${scale.unitLabel} from the POD`, { bold: true }),
      ...key.shapes,
      ...(data.marks.length === 0
        ? [words(left, keyTop + 10, 'No marks are recorded.', { ink: 'faint' })]
        : []),
      ...lines(left, noteTop, noteLines, { ink: 'faint' }),
    ],
  };
}
