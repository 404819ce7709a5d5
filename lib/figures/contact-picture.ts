import type { HeadPart } from '../contact/head-part';
import { placedOutlines } from '../contact/placed';
import type { ContactSetup, Side } from '../contact/setup';
import type { ContactPoint, ContactState } from '../contact/state';
import type { Outline, PointMm } from '../outline/outline';
import { fromCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import { drawDimension } from './outline-dimensions';
import { boxOfPoints, onView, pointsOf } from './outline-view';
import { area, box, LETTER, line, lines, open, pen, words, type Point } from './pieces/draw';
import { clippedArea, clippedLine } from './pieces/clip';
import { leaderEnd, placeLabels, type Rect } from './pieces/place-labels';
import { scaleBar } from './pieces/scale-bar';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type ContactPictureData = {
  readonly setup: ContactSetup;
  readonly state: ContactState;
  readonly system: UnitSystem;
  /** What is said about the position: "centred", "left flange bears". */
  readonly position?: string;
};

const EDGE = 8;
const LINE = LETTER * 1.3;
/** Narrower than this the two sides stand below each other. */
const BESIDE = 560;
/** Part of the section shown: around the head, and the height above and below its top, mm. */
const AROUND_HEAD_MM = 16;
const HEAD_DEPTH_MM = 44;
const ABOVE_TOP_MM = 20;
/** Depth of head and height of rim in the small whole, mm. */
const WHOLE_DEPTH_MM = 60;
const WHOLE_RIM_MM = 40;
/** Thickness of the axle in the small whole: a sign that the wheels belong together, not to scale. */
const AXLE = 7;
/** Half the length along the rail drawn as loaded, mm: about a contact patch. */
const PATCH_MM = 4;
/** Flatter than this the angle is written but not drawn: its arrows would lie on each other. */
const DRAWN_ANGLE_RAD = (18 * Math.PI) / 180;

export const HEAD_PART_NAMES: Readonly<Record<HeadPart, string>> = {
  gaugeFace: 'gauge face',
  gaugeCorner: 'gauge corner',
  crown: 'crown',
  fieldSide: 'field side of the head',
};

const SIDES: readonly Side[] = ['left', 'right'];
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const degrees = (rad: number): string => {
  const size = Math.abs((rad * 180) / Math.PI).toFixed(1);
  return `${rad < 0 && Number(size) !== 0 ? '−' : ''}${size}°`;
};

const length = (mm: number, system: UnitSystem): string => {
  const unit = system === 'us' ? 'in' : 'mm';
  const shown = fromCanonical(Math.abs(mm), unit, 'crossLength').toFixed(system === 'us' ? 3 : 2);
  return `${mm < 0 && Number(shown) !== 0 ? '−' : ''}${shown} ${unit}`;
};

/** "one-point contact, crown" or "two-point contact, gauge face and crown". */
export function contactWords(state: ContactState, side: Side): string {
  const { points } = state[side];
  const [first, second] = points;
  return second === undefined
    ? `one-point contact, ${HEAD_PART_NAMES[first.part]}`
    : first.part === second.part
      ? `two-point contact, both ${HEAD_PART_NAMES[first.part]}`
      : `two-point contact, ${HEAD_PART_NAMES[first.part]} and ${HEAD_PART_NAMES[second.part]}`;
}

/** Metal of a wheel reaches up to the edge of what is shown, of a rail down. */
function metal(outline: Outline, towardsMm: number): readonly PointMm[] {
  const points = pointsOf(outline);
  const first = points[0]!;
  const last = points[points.length - 1]!;
  return [...points, { xMm: last.xMm, yMm: towardsMm }, { xMm: first.xMm, yMm: towardsMm }];
}

type Placer = (at: PointMm) => Point;

function outlineShapes(
  outline: Outline,
  kind: 'wheel' | 'rail',
  place: Placer,
  frame: Rect,
  width: number,
): readonly Shape[] {
  const far = kind === 'wheel' ? 400 : -400;
  return [
    area(clippedArea(metal(outline, far).map(place), frame), kind === 'wheel' ? 'paper' : 'shade'),
    ...clippedLine(pointsOf(outline).map(place), frame).map((run) => open(run, pen(kind, width))),
  ];
}

/** The part of the rail's line round a point of contact. */
function loaded(rail: Outline, { at }: ContactPoint, place: Placer): readonly Point[] {
  return pointsOf(rail)
    .filter((point) => Math.hypot(point.xMm - at.xMm, point.yMm - at.yMm) <= PATCH_MM)
    .map(place);
}

const headBox = (rail: Outline) => boxOfPoints(pointsOf(rail).filter(({ yMm }) => yMm > -HEAD_DEPTH_MM));

/** One scale for both sides, so that they can be compared. */
function scaleOfPanels({ setup, state }: ContactPictureData, width: number): number {
  const placedSides = placedOutlines(setup, state);
  const widest = Math.max(
    ...SIDES.map((side) => {
      const { left, right } = headBox(placedSides[side].rail);
      return right - left;
    }),
  );
  return width / (widest + 2 * AROUND_HEAD_MM);
}

function enlarged(data: ContactPictureData, side: Side, frame: Rect, pxPerMm: number): readonly Shape[] {
  const { setup, state } = data;
  const { wheel, rail } = placedOutlines(setup, state)[side];
  const head = headBox(rail);
  const place = onView({
    pxPerMm,
    originPx: [
      frame.x + frame.width / 2 - ((head.left + head.right) / 2) * pxPerMm,
      frame.y + ABOVE_TOP_MM * pxPerMm,
    ],
  });
  const contacts = state[side].points.map((point, i) => {
    const at = place(point.at);
    const angleRad = (side === 'right' ? 1 : -1) * point.contactAngleRad;
    const drawn =
      Math.abs(angleRad) >= DRAWN_ANGLE_RAD
        ? drawDimension({ kind: 'tangent', name: '', text: '', at: point.at, angleRad }, place)
        : null;
    const [cos, sin] = [Math.cos(angleRad), -Math.sin(angleRad)];
    const flat: readonly [Point, Point] = [
      [at[0] - 30 * cos, at[1] - 30 * sin],
      [at[0] + 30 * cos, at[1] + 30 * sin],
    ];
    return {
      at,
      words: [`${degrees(point.contactAngleRad)}, ${HEAD_PART_NAMES[point.part]}`],
      anchor: at,
      shapes: [
        open(loaded(rail, point, place), pen('mark', 5)),
        ...(drawn === null ? [line(...flat, pen('mark', 1))] : drawn.shapes),
        {
          type: 'circle',
          cx: at[0],
          cy: at[1],
          r: 4,
          fill: i === 0 ? 'mark' : 'paper',
          stroke: pen('mark', 1.6),
        } satisfies Shape,
      ],
      lines: drawn === null ? [flat] : drawn.lines,
    };
  });
  const clip = (outline: Outline): readonly (readonly Point[])[] =>
    clippedLine(pointsOf(outline).map(place), frame);
  const rects = placeLabels(
    contacts.map((each) => ({
      anchor: each.anchor,
      width: Math.max(...each.words.map((text) => textWidth(text, LETTER, 'bold'))),
      height: LETTER,
    })),
    frame,
    [...clip(wheel), ...clip(rail), ...contacts.flatMap((each) => each.lines)],
    contacts.map(({ at }) => ({ x: at[0] - 6, y: at[1] - 6, width: 12, height: 12 })),
  );
  return [
    box(frame.x, frame.y, frame.width, frame.height, { stroke: pen('faint', 0.7) }),
    ...outlineShapes(rail, 'rail', place, frame, 1.8),
    ...outlineShapes(wheel, 'wheel', place, frame, 1.8),
    ...contacts.flatMap((each) => each.shapes),
    ...contacts.flatMap((each, i) => {
      const rect = rects[i];
      if (rect === null || rect === undefined) return [];
      return [
        line(each.anchor, leaderEnd(rect, each.anchor), pen('ink', 0.6)),
        ...lines(rect.x, rect.y + LETTER * 0.82, each.words, { bold: true }),
      ];
    }),
  ];
}

function whole(
  data: ContactPictureData,
  width: number,
  top: number,
): { shapes: readonly Shape[]; height: number } {
  const placedSides = placedOutlines(data.setup, data.state);
  const all = boxOfPoints(
    SIDES.flatMap((side) => [...pointsOf(placedSides[side].wheel), ...pointsOf(placedSides[side].rail)]),
  );
  const pxPerMm = (width - 2 * EDGE) / (all.right - all.left);
  const place = onView({
    pxPerMm,
    originPx: [EDGE - all.left * pxPerMm, top + WHOLE_RIM_MM * pxPerMm],
  });
  const height = (WHOLE_RIM_MM + WHOLE_DEPTH_MM) * pxPerMm;
  const frame: Rect = { x: EDGE, y: top, width: width - 2 * EDGE, height };
  const shapes = SIDES.flatMap((side) => {
    const { wheel, rail } = placedSides[side];
    return [
      ...outlineShapes(rail, 'rail', place, frame, 1.1),
      ...outlineShapes(wheel, 'wheel', place, frame, 1.1),
      ...data.state[side].points.map(({ at }): Shape => {
        const [cx, cy] = place(at);
        return { type: 'circle', cx, cy, r: 2.6, fill: 'mark' };
      }),
    ];
  });
  const [axis] = place({ xMm: 0, yMm: 0 });
  const [from] = place({ xMm: Math.max(...placedSides.left.wheel.xMm), yMm: 0 });
  const [to] = place({ xMm: Math.min(...placedSides.right.wheel.xMm), yMm: 0 });
  const [axle] = place({ xMm: data.state.shiftMm, yMm: 0 });
  return {
    height,
    shapes: [
      box(from, top - AXLE / 2, to - from, AXLE, { fill: 'shade', stroke: pen('wheel', 0.9) }),
      ...shapes,
      line([axis, top], [axis, top + height], pen('faint', 0.7, [10, 3, 2, 3])),
      line([axle, top], [axle, top + height * 0.4], pen('wheel', 1)),
    ],
  };
}

const rollWords = (rollRad: number): string => {
  const size = (Math.abs(rollRad) * 1000).toFixed(2);
  return Number(size) === 0
    ? 'level'
    : `rolled ${size} mrad, the ${rollRad > 0 ? 'right' : 'left'} wheel higher`;
};

function factsOf({ state, system, position }: ContactPictureData): readonly string[] {
  const { shiftMm, rollRad, radiusDifferenceMm } = state;
  const where =
    Math.abs(shiftMm) < 0.005
      ? 'Wheelset in the middle of the track'
      : `Wheelset ${length(Math.abs(shiftMm), system)} to the ${shiftMm < 0 ? 'left' : 'right'} of the middle`;
  return [
    `${where}${position === undefined ? '' : ` (${position})`}, ${rollWords(rollRad)}.`,
    `Rolling radius right less left: ${length(radiusDifferenceMm, system)}.`,
    ...(SIDES.some((side) => state[side].points.some(({ atEnd }) => atEnd))
      ? ['A contact lies at the end of a traced line: its place is not sure.']
      : []),
    'Looking ahead. Filled point: bears first; open point: the second. Angles against the plane of the track; thick: the part of the head that is loaded.',
  ];
}

/**
 * A wheelset of two traced wheels on two traced rails at one lateral shift: small the whole, and each
 * side enlarged round its rail head, with the points of contact, their angles and the part of the head.
 */
export function contactPicture(data: ContactPictureData, { width }: { readonly width: number }): Figure {
  const small = whole(data, width, EDGE + LINE);
  const beside = width >= BESIDE;
  const gap = 14;
  const panelWidth = beside ? (width - 2 * EDGE - gap) / 2 : width - 2 * EDGE;
  const pxPerMm = scaleOfPanels(data, panelWidth);
  const panelHeight = (ABOVE_TOP_MM + HEAD_DEPTH_MM) * pxPerMm;
  const top = EDGE + LINE + small.height + 8;
  const titles = SIDES.map((side) =>
    wrapText(`${capital(side)}: ${contactWords(data.state, side)}`, panelWidth, LETTER, 'bold'),
  );
  const titleHeight = Math.max(...titles.map((rows) => rows.length)) * LINE + 4;
  const pitch = panelHeight + titleHeight + 10;
  const panels = SIDES.map((side, i) => {
    const y = top + (beside ? 0 : i * pitch);
    const x = EDGE + (beside ? i * (panelWidth + gap) : 0);
    return {
      title: lines(x, y + LETTER, titles[i] ?? [], { bold: true }),
      shapes: enlarged(
        data,
        side,
        { x, y: y + titleHeight, width: panelWidth, height: panelHeight },
        pxPerMm,
      ),
    };
  });
  const barY = top + (beside ? 1 : 2) * pitch + 10;
  const bar = scaleBar(EDGE, barY, pxPerMm, data.system, 90);
  const bottom = barY + 6;
  const notes = factsOf(data).flatMap((text, i) =>
    wrapText(text, width - 2 * EDGE, LETTER).map((each) => ({ each, faint: i > 1 })),
  );
  return {
    width,
    height: bottom + (notes.length + 0.6) * LINE,
    title: 'Where wheels and rails touch',
    description: [
      ...factsOf(data),
      ...SIDES.map(
        (side) =>
          `${capital(side)}: ${contactWords(data.state, side)}, ${data.state[side].points
            .map(({ contactAngleRad }) => degrees(contactAngleRad))
            .join(' and ')}.`,
      ),
    ].join(' '),
    shapes: [
      words(EDGE, EDGE + LETTER, 'left', { ink: 'faint' }),
      words(width - EDGE, EDGE + LETTER, 'right', { ink: 'faint', anchor: 'end' }),
      ...small.shapes,
      ...bar.shapes,
      ...panels.map(({ title, shapes }) => ({ type: 'group' as const, shapes: [...title, ...shapes] })),
      ...notes.map(({ each, faint }, i) =>
        words(EDGE, bottom + (i + 0.8) * LINE, each, faint ? { ink: 'faint' } : {}),
      ),
    ],
  };
}
