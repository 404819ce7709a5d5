import { scaleLinear } from 'd3-scale';
import type { DrawnPlace } from '../../findings/turnout/point-drawing';
import type { UnitSystem } from '../../readings/unit';
import type { Shape } from '../shapes';
import { scaleOf } from './axis';
import { box, line, pen, words, type Point } from './draw';
import type { Rect } from './place-labels';
import { STANCE_PENS, stanceLine } from './point-panel';

export type CurveRange = { readonly lowMm: number; readonly highMm: number };

const STANCES = ['square', 'yawed'] as const;
const SMALL = 10;
/** Room left of the frame for the numbers of the depths, and below it for those of the clearance. */
export const DEPTH_NUMBERS = 26;
export const CLEARANCE_NUMBERS = 15;

/** Never less than a flange's play beside a point; more than this says only "far". */
const LEAST: CurveRange = { lowMm: -3, highMm: 6 };
const MOST: CurveRange = { lowMm: -13, highMm: 16 };

/** Clearances that the curves of all places are drawn between, so that they can be compared. */
export function curveRange(places: readonly DrawnPlace[]): CurveRange {
  const all = places.flatMap(({ square, yawed }) =>
    [...square.clearances, ...yawed.clearances].map(({ clearanceMm }) => clearanceMm),
  );
  return {
    lowMm: Math.max(MOST.lowMm, Math.min(LEAST.lowMm, ...all)),
    highMm: Math.min(MOST.highMm, Math.max(LEAST.highMm, ...all)),
  };
}

/**
 * Clearance over depth beside a section, its depths level with the section's: `top` is the top of the stock
 * rail on the drawing. Left of the line of zero, shaded, the point stands outside the face of the flange.
 */
export function clearanceCurve(
  place: DrawnPlace,
  frame: Rect,
  { lowMm, highMm }: CurveRange,
  vertical: { readonly topPx: number; readonly pxPerMm: number },
  system: UnitSystem,
): readonly Shape[] {
  const scale = scaleOf('crossLength', system);
  const [right, bottom] = [frame.x + frame.width, frame.y + frame.height];
  const x = scaleLinear().domain([lowMm, highMm]).range([frame.x, right]);
  const y = (depthMm: number): number => vertical.topPx + depthMm * vertical.pxPerMm;
  const shown = (mm: number): number => scale.toShown(mm);
  const perShown = 1 / scale.toShown(1);
  const across = scale.ticks(shown(lowMm), shown(highMm), 2);
  const down = scale
    .ticks(0, shown((bottom - vertical.topPx) / vertical.pxPerMm), 5)
    .filter((tick) => tick >= 0);
  return [
    box(frame.x, frame.y, x(0) - frame.x, frame.height, { fill: 'shade', fillOpacity: 0.7 }),
    ...across.flatMap((tick) => {
      const at = x(tick * perShown);
      return [
        line([at, frame.y], [at, bottom], pen('faint', tick === 0 ? 1.1 : 0.3)),
        words(at, bottom + 12, scale.text(tick), { anchor: 'middle', size: SMALL }),
      ];
    }),
    ...down.flatMap((tick) => {
      const at = y(tick * perShown);
      return at > bottom
        ? []
        : [
            line([frame.x, at], [right, at], pen('faint', 0.3)),
            words(frame.x - 4, at + 3.5, scale.text(tick), { anchor: 'end', size: SMALL }),
          ];
    }),
    ...STANCES.flatMap((stance) => {
      const points = place[stance].clearances.map(({ depthMm, clearanceMm }): Point => [
        x(clearanceMm),
        y(depthMm),
      ]);
      return stanceLine(points, stance, frame);
    }),
    ...STANCES.flatMap((stance): readonly Shape[] => {
      const { least } = place[stance].fit;
      if (least === null || least.clearanceMm < lowMm || least.clearanceMm > highMm) return [];
      const { ink } = STANCE_PENS[stance];
      const r = stance === 'square' ? 3.4 : 2;
      const fill = stance === 'square' ? ink : 'paper';
      return [
        { type: 'circle', cx: x(least.clearanceMm), cy: y(least.depthMm), r, fill, stroke: pen(ink, 1.2) },
      ];
    }),
    ...offScale(place, frame, { lowMm, highMm }, y),
    box(frame.x, frame.y, frame.width, frame.height, { stroke: pen('faint', 0.8) }),
  ];
}

/** What is said where the curve, or its smallest place, is not within the frame. */
function offScale(
  { square: { fit } }: DrawnPlace,
  frame: Rect,
  { lowMm }: CurveRange,
  y: (depthMm: number) => number,
): readonly Shape[] {
  if (fit.least === null) {
    return [
      words(frame.x + frame.width / 2, frame.y + frame.height / 2, 'not reached', {
        anchor: 'middle',
        size: SMALL,
      }),
    ];
  }
  return fit.least.clearanceMm < lowMm
    ? [words(frame.x + 3, y(fit.least.depthMm) + 3.5, '← off scale', { size: SMALL })]
    : [];
}
