import type { DrawnPlace } from '../../findings/turnout/point-drawing';
import type { Outline } from '../../outline/outline';
import { DEPTH_STEP_MM, faceAt, type FlangeAtRail } from '../../turnout/flange-at-rail';
import type { Shape, Stroke } from '../shapes';
import { textWidth } from '../text-width';
import { clippedArea, clippedLine } from './clip';
import { across, upright } from './dimension';
import { area, box, LETTER, line, open, pen, type Point } from './draw';
import { hatched } from './hatch';
import type { Rect } from './place-labels';

/** How the two stances of the flange are told apart without colour. */
export const STANCE_PENS: Readonly<Record<'square' | 'yawed', Stroke>> = {
  square: pen('wheel', 3),
  yawed: pen('seriesA', 1.3, [5, 3]),
};
/** Under the broken line, so that it is seen where it lies on the full one. */
const CASING = pen('paper', 1.7);

/** The line of a flange, or of its clearances, in one stance. */
export const stanceLine = (
  points: readonly Point[],
  stance: 'square' | 'yawed',
  frame: Rect,
): readonly Shape[] =>
  clippedLine(points, frame).flatMap((run) => [
    ...(stance === 'yawed' ? [open(run, CASING)] : []),
    open(run, STANCE_PENS[stance]),
  ]);

export const RAIL_PEN = pen('rail', 1.6);
export const POINT_PEN = pen('ink', 1.3);

/** What is seen of every section: from this far field side of the gauge line, and above the rail, mm. */
export type PointView = {
  readonly frame: Rect;
  readonly pxPerMm: number;
  /** Towards the field side and the middle of the track from the gauge line. */
  readonly fieldMm: number;
  readonly insideMm: number;
  readonly aboveMm: number;
  /** Looking in the direction of travel: the right stock rail lies to the right. */
  readonly side: 'left' | 'right';
};

type Standing = {
  readonly outlines: { readonly wheel: Outline; readonly rail: Outline } | null;
  readonly square: FlangeAtRail;
  readonly yawed: FlangeAtRail;
};

/** Deeper than anything shown: where metal is closed off, mm. */
const FAR_MM = 300;
/** Plain stock rail of simple readings: a level top this wide and an upright side this deep, mm. */
const PLAIN_HEAD_MM = 300;
/** Arrow outside a narrow dimension, and the gap to its words. */
const OUTSIDE_ARROW = 18;
/** The dimension of a miss over the top stands this far from the edge of the point, mm. */
const BESIDE_EDGE_MM = 4;

/** Where a place of the section (mm from the gauge line towards the middle of the track, mm down) lies on the drawing. */
export function onPanel({ frame, pxPerMm, fieldMm, aboveMm, side }: PointView) {
  const gaugeLine = side === 'left' ? frame.x + fieldMm * pxPerMm : frame.x + frame.width - fieldMm * pxPerMm;
  const inward = side === 'left' ? 1 : -1;
  return (xMm: number, downMm: number): Point => [
    gaugeLine + inward * xMm * pxPerMm,
    frame.y + (aboveMm + downMm) * pxPerMm,
  ];
}

const placed = ({ xMm, yMm }: Outline, at: ReturnType<typeof onPanel>): Point[] =>
  Array.from(xMm, (x, i) => at(x, yMm[i] ?? NaN));

/** The face of a flange from a depth down to its tip. */
const faceLine = (flange: FlangeAtRail, at: ReturnType<typeof onPanel>, fromMm: number): Point[] => [
  ...Array.from(flange.faceMm, (face, k): Point => at(face, k * DEPTH_STEP_MM)).slice(
    Math.ceil(fromMm / DEPTH_STEP_MM),
  ),
  at(faceAt(flange, flange.tipDepthMm), flange.tipDepthMm),
];

function railShapes(outlines: Standing['outlines'], view: PointView): readonly Shape[] {
  const at = onPanel(view);
  const head =
    outlines === null ? [at(-PLAIN_HEAD_MM, 0), at(0, 0), at(0, PLAIN_HEAD_MM)] : placed(outlines.rail, at);
  const [first, last] = [head[0], head.at(-1)];
  if (first === undefined || last === undefined) return [];
  const foot = view.frame.y + FAR_MM * view.pxPerMm;
  const metal: readonly Point[] = [...head, [last[0], foot], [first[0], foot]];
  return [
    area(clippedArea(metal, view.frame), 'shade'),
    ...clippedLine(head, view.frame).map((run) => open(run, RAIL_PEN)),
  ];
}

function wheelShapes(outlines: Standing['outlines'], view: PointView): readonly Shape[] {
  if (outlines === null) return [];
  const line = placed(outlines.wheel, onPanel(view));
  const [first, last] = [line[0], line.at(-1)];
  if (first === undefined || last === undefined) return [];
  const up = view.frame.y - FAR_MM * view.pxPerMm;
  return [
    area(clippedArea([...line, [last[0], up], [first[0], up]], view.frame), 'wheel', undefined, 0.12),
    ...clippedLine(line, view.frame).map((run) => open(run, pen('wheel', 0.9))),
  ];
}

/** Where the point stands outside the face of the flange: shaded and hatched. */
function outsideFace(place: DrawnPlace, flange: FlangeAtRail, view: PointView): readonly Shape[] {
  const at = onPanel(view);
  const inside = place.square.clearances.filter(({ clearanceMm }) => clearanceMm < 0);
  if (inside.length < 2) return [];
  const polygon = clippedArea(
    [
      ...inside.map(({ depthMm }) => at(faceAt(flange, depthMm), depthMm)),
      ...inside
        .map(({ depthMm, clearanceMm }) => at(faceAt(flange, depthMm) - clearanceMm, depthMm))
        .reverse(),
    ],
    view.frame,
  );
  if (polygon.length < 3) return [];
  // Farther back the point is there to push the flange aside.
  const ink = place.id === 'behind' ? 'faint' : 'mark';
  return [area(polygon, ink, undefined, 0.2), ...hatched(polygon, -Math.PI / 4, 4, pen(ink, 0.8))];
}

/** The smallest clearance where it is, or how far the flange passes over the point. */
function dimension(place: DrawnPlace, flange: FlangeAtRail, view: PointView, text: string): readonly Shape[] {
  const at = onPanel(view);
  const { x: left, y: head, width, height } = view.frame;
  const { reachMm, least } = place.square.fit;
  if (least === null) {
    const edgeMm = Math.max(...place.point.xMm.slice(0, 3), 0);
    const [x, top] = at(edgeMm + BESIDE_EDGE_MM, place.topMm);
    const [, tip] = at(0, place.topMm + reachMm);
    const [edge] = at(edgeMm, place.topMm);
    return upright(tip, Math.min(top, head + height), x, null, edge, text, {
      beside: view.side === 'left' ? 'after' : 'before',
      backed: true,
    });
  }
  const face = faceAt(flange, least.depthMm);
  const [fromFlange, y] = at(face, least.depthMm);
  const [fromPoint] = at(face - least.clearanceMm, least.depthMm);
  // The side of a thick point may lie off the drawing, as a low top may: the dimension then runs to the edge.
  const end = Math.min(left + width, Math.max(left, fromPoint));
  const inner = view.side === 'left' ? Math.max(fromFlange, end) : Math.min(fromFlange, end);
  const beyond = view.side === 'left' ? left + width - inner : inner - left;
  return across(fromFlange, end, y, null, null, text, {
    outside: view.side === 'left' ? 'after' : 'before',
    // Where the words would leave the frame beside the arrows, they stand above them.
    ...(beyond < textWidth(text, LETTER) + OUTSIDE_ARROW ? { beside: 'before' as const } : {}),
    backed: true,
  });
}

/** One section: stock rail, point and flange in both stances, the smallest clearance dimensioned. */
export function pointPanel(
  standing: Standing,
  place: DrawnPlace,
  view: PointView,
  text: string,
): readonly Shape[] {
  const { frame } = view;
  const at = onPanel(view);
  const point = placed(place.point, at);
  const [left, top] = at(0, 0);
  const [, foot] = at(0, FAR_MM);
  return [
    ...railShapes(standing.outlines, view),
    ...(point.length === 0
      ? []
      : [
          area(clippedArea(point, frame), 'seriesB', undefined, 0.16),
          ...clippedLine(point, frame).map((run) => open(run, POINT_PEN)),
        ]),
    ...wheelShapes(standing.outlines, view),
    ...outsideFace(place, standing.square, view),
    ...stanceLine(faceLine(standing.square, at, 0), 'square', frame),
    // Higher up, where it does not touch, the yawed flange is not held against the stock rail.
    ...stanceLine(faceLine(standing.yawed, at, standing.yawed.bearsAtMm), 'yawed', frame),
    line(
      [left, Math.max(top, frame.y)],
      [left, Math.min(foot, frame.y + frame.height)],
      pen('faint', 0.7, [10, 3, 2, 3]),
    ),
    ...dimension(place, standing.square, view, text),
    box(frame.x, frame.y, frame.width, frame.height, { stroke: pen('faint', 0.8) }),
  ];
}
