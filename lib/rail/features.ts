import { type Dimension } from '../readings/unit';
import { ok, refuse, type Result } from '../readings/result';
import { type Source } from '../findings/finding';
import { fitLine, type LineFit } from '../outline/fit';
import { partOf } from '../outline/arc';
import { heightAt, placesAtHeight } from '../outline/at';
import { type Outline, type PointMm } from '../outline/outline';
import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { type RegisteredRail } from './register';

export const RAIL_FEATURE_IDS = [
  'verticalLoss',
  'gaugeFaceLoss',
  'gaugeFaceLossEu',
  'gaugeFaceAngle',
  'headWidth',
  'headAreaLoss',
  'railCant',
] as const;
export type RailFeatureId = (typeof RAIL_FEATURE_IDS)[number];

/** What is found from the trace of a rail. */
export type RailFeature = {
  readonly id: RailFeatureId;
  readonly name: string;
  readonly dimension: Dimension;
  readonly meaning: string;
  readonly source: Source;
};

/** Depth of the gauge point below the top: 5/8 in, 49 CFR 213.53(a). */
const GAUGE_POINT_MM = 15.875;
/** The same in Europe: 14 mm, EN 13848-1. */
const GAUGE_POINT_EU_MM = 14;

const GAUGE_POINT: Source = {
  text: 'Gauge point 5/8 in below the top of the rail: 49 CFR 213.53(a)',
  status: 'published',
};
const PRACTICE = (text: string): Source => ({ text, status: 'common practice, no source' });

export const RAIL_FEATURES: readonly RailFeature[] = [
  {
    id: 'verticalLoss',
    name: 'Vertical head loss',
    dimension: 'crossLength',
    meaning: 'How far the top lies below the top of the new section, on its upright axis.',
    source: PRACTICE('Vertical wear on the axis of the rail'),
  },
  {
    id: 'gaugeFaceLoss',
    name: 'Gauge-face loss',
    dimension: 'crossLength',
    meaning:
      'How far the gauge face has moved towards the field side of the new section, 5/8 in below the top as it now is.',
    source: GAUGE_POINT,
  },
  {
    id: 'gaugeFaceLossEu',
    name: 'Gauge-face loss at 14 mm',
    dimension: 'crossLength',
    meaning:
      'How far the gauge face has moved towards the field side of the new section, 14 mm below the top as it now is.',
    source: { text: 'Gauge point 14 mm below the running surface: EN 13848-1', status: 'from memory' },
  },
  {
    id: 'gaugeFaceAngle',
    name: 'Gauge-face angle',
    dimension: 'angle',
    meaning:
      'Angle with the level of the straight line fitted to the gauge face at the gauge point, 5/8 in below the top: to 8 mm of its height, or up to 20 mm as far as the face is straight.',
    source: PRACTICE('Angle of the worn gauge face by a local fit'),
  },
  {
    id: 'headWidth',
    name: 'Head width',
    dimension: 'crossLength',
    meaning: 'Width of the head 5/8 in below the top as it now is.',
    source: GAUGE_POINT,
  },
  {
    id: 'headAreaLoss',
    name: 'Head area lost',
    dimension: 'ratio',
    meaning:
      'Area worn off the head as a share of the area the new section has above a level 3 mm over its lower corners.',
    source: PRACTICE('Loss of head area'),
  },
  {
    id: 'railCant',
    name: 'Rail cant',
    dimension: 'angle',
    meaning:
      'Lean of the upright axis of the rail, inward positive; only a drawing whose upright is square to the track carries it.',
    source: PRACTICE('Cant read with a level board on the base'),
  },
];

/** A placed outline stands upright by itself; only how the drawing was held can tell the cant. */
export const CANT_NOT_CARRIED: Result<never> = refuse(
  'It was not said that the upright of the drawing is square to the track: read the cant with a level board and enter it.',
);

/** Where a dimension is drawn, in the frame of the placed trace. */
export type Where = { readonly from: PointMm; readonly to: PointMm };

/** A value in mm, rad or 1, and where it is drawn. */
export type FoundFeature = { readonly value: number; readonly where: Where };
export type RailFeaturesFound = Readonly<Record<RailFeatureId, Result<FoundFeature>>>;

const STEP_MM = 0.5;
/** Pencil noise is smoothed over this window (`../outline/smooth`) before a place is read off. */
const HALF_WINDOW_MM = 3;
/** The top at the axis is a parabola over this much to each side. */
const AXIS_HALF_WINDOW_MM = 8;
/** Stretches of the face looked at first, mm above and below the gauge point: about it, or below where a large gauge corner reaches down to it. */
const FACE_STARTS = [
  [4, 4],
  [3, 5],
  [2, 6],
  [1, 7],
  [0, 8],
] as const;
const FACE_MOST_MM = 10;
/** A longer stretch of the face is used while its points lie within this of one line, or as close to it as those next to the gauge point or the scatter of the trace. */
const STRAIGHT_MM = 0.03;
/** How much of the scatter of a drawn line a straight stretch may show. */
const SMOOTHED_SCATTER = 1;
const FACE_LEAST_POINTS = 6;

const NO_SECTION = 'Choose the new rail section: the loss is measured from it.';
const NOT_TO_GAUGE_POINT =
  'The trace does not reach 5/8 in (15.9 mm) below the top on this side: trace further down the head.';

/**
 * Features of a placed trace (`./register`) against the new section, `reference` in its own frame with
 * the top at 0. Lengths mm, angles rad, area as a share. Each is a value with the place it is drawn at,
 * or the reason it cannot be found. Never throws.
 */
export function railFeatures(
  {
    outline,
    newTopMm,
    parts,
    scatterMm,
  }: Pick<RegisteredRail, 'outline' | 'newTopMm' | 'parts' | 'scatterMm'>,
  reference: Outline | null,
): RailFeaturesFound {
  const line = smoothed(resampled(outline, STEP_MM), HALF_WINDOW_MM);
  const gauge = gaugeSide(line);
  const field = fieldSide(line);
  return {
    verticalLoss: verticalLoss(outline, newTopMm, parts),
    gaugeFaceLoss: gaugeFaceLoss(gauge, GAUGE_POINT_MM, reference, newTopMm, parts),
    gaugeFaceLossEu: gaugeFaceLoss(gauge, GAUGE_POINT_EU_MM, reference, newTopMm, parts),
    gaugeFaceAngle: gaugeFaceAngle(gauge, scatterMm),
    headWidth: headWidth(gauge, field),
    headAreaLoss: headAreaLoss(line, reference, newTopMm),
    railCant: CANT_NOT_CARRIED,
  };
}

const topIndex = ({ yMm }: Outline): number => yMm.reduce((top, y, i) => (y > yMm[top]! ? i : top), 0);
const gaugeSide = (line: Outline): Outline => partOf(line, 0, topIndex(line) + 1);
const fieldSide = (line: Outline): Outline => partOf(line, topIndex(line), line.xMm.length);

/** Last place before the top where the gauge side passes a height. */
const onGaugeSide = (gauge: Outline, yMm: number): number | null => placesAtHeight(gauge, yMm).at(-1) ?? null;
const onFieldSide = (field: Outline, yMm: number): number | null => placesAtHeight(field, yMm)[0] ?? null;

function verticalLoss(
  outline: Outline,
  newTopMm: number | null,
  parts: RegisteredRail['parts'],
): Result<FoundFeature> {
  if (newTopMm === null) {
    return refuse(
      parts === 'ends'
        ? NO_SECTION
        : 'The trace shows nothing below the head that does not wear: trace round a lower corner of the head, or down the web.',
    );
  }
  const line = smoothed(resampled(outline, STEP_MM), AXIS_HALF_WINDOW_MM);
  const top = heightAt(line, 0);
  if (top === null || top < -GAUGE_POINT_MM)
    return refuse('The trace does not pass over the middle of the head.');
  return ok({
    value: newTopMm - top,
    where: { from: { xMm: 0, yMm: newTopMm }, to: { xMm: 0, yMm: top } },
  });
}

function gaugeFaceLoss(
  gauge: Outline,
  depthMm: number,
  reference: Outline | null,
  newTopMm: number | null,
  parts: RegisteredRail['parts'],
): Result<FoundFeature> {
  if (reference === null || parts === 'ends') return refuse(NO_SECTION);
  const at = onGaugeSide(gauge, -depthMm);
  if (at === null) return refuse(NOT_TO_GAUGE_POINT);
  // Without the height of the new top the loss is taken at the same depth below both tops.
  const asNew = onGaugeSide(gaugeSide(reference), -depthMm - (newTopMm ?? 0));
  if (asNew === null)
    return refuse('The new section does not reach so far down: choose a section with its whole head.');
  return ok({
    value: at - asNew,
    where: { from: { xMm: asNew, yMm: -depthMm }, to: { xMm: at, yMm: -depthMm } },
  });
}

function gaugeFaceAngle(gauge: Outline, scatterMm: number): Result<FoundFeature> {
  const tolerance = Math.max(STRAIGHT_MM, SMOOTHED_SCATTER * scatterMm);
  const starts = FACE_STARTS.flatMap(([up, down]) => {
    const fit = faceFit(gauge, up, down);
    return fit === null ? [] : [{ up, down, fit }];
  });
  const [first] = starts;
  if (first === undefined) return refuse(NOT_TO_GAUGE_POINT);
  const start =
    starts.find(({ fit }) => fit.rmsMm <= tolerance) ??
    starts.reduce((best, next) => (next.fit.rmsMm < best.fit.rmsMm ? next : best), first);
  let best = { fit: start.fit, lengthMm: start.up + start.down };
  for (let up = start.up; up <= FACE_MOST_MM; up += 1) {
    for (let down = start.down; down <= FACE_MOST_MM; down += 1) {
      if (up + down <= best.lengthMm) continue;
      const fit = faceFit(gauge, up, down);
      if (fit === null || fit.rmsMm > Math.max(tolerance, start.fit.rmsMm)) continue;
      best = { fit, lengthMm: up + down };
    }
  }
  const { headingRad, through } = best.fit;
  const half = best.lengthMm / 2 / Math.sin(headingRad);
  const end = (side: 1 | -1): PointMm => ({
    xMm: through.xMm + side * half * Math.cos(headingRad),
    yMm: through.yMm + side * half * Math.sin(headingRad),
  });
  return ok({ value: headingRad, where: { from: end(-1), to: end(1) } });
}

/** The line through the part of the gauge side from `down` below to `up` above the gauge point; null when it is not all there. */
function faceFit(gauge: Outline, upMm: number, downMm: number): LineFit | null {
  const { yMm } = gauge;
  if (!(Math.max(...yMm) > -GAUGE_POINT_MM + upMm)) return null;
  let to = yMm.length;
  while (to > 0 && yMm[to - 1]! > -GAUGE_POINT_MM + upMm) to -= 1;
  let from = to;
  while (from > 0 && yMm[from - 1]! >= -GAUGE_POINT_MM - downMm) from -= 1;
  if (to - from < FACE_LEAST_POINTS) return null;
  // Where the trace ends, or comes back in under the head, before the stretch is whole.
  if (yMm[from]! > -GAUGE_POINT_MM - downMm + 2 * STEP_MM) return null;
  return fitLine(gauge, from, to);
}

function headWidth(gauge: Outline, field: Outline): Result<FoundFeature> {
  const left = onGaugeSide(gauge, -GAUGE_POINT_MM);
  const right = onFieldSide(field, -GAUGE_POINT_MM);
  if (left === null || right === null) return refuse(NOT_TO_GAUGE_POINT);
  return ok({
    value: right - left,
    where: { from: { xMm: left, yMm: -GAUGE_POINT_MM }, to: { xMm: right, yMm: -GAUGE_POINT_MM } },
  });
}

/** The lower corners are rounded; above this much over them the sides are whole. */
const OVER_CORNERS_MM = 3;

function headAreaLoss(
  line: Outline,
  reference: Outline | null,
  newTopMm: number | null,
): Result<FoundFeature> {
  if (reference === null) return refuse(NO_SECTION);
  if (newTopMm === null) return refuse('The height of the new top is not known from this trace.');
  const level =
    OVER_CORNERS_MM +
    Math.max(outermostHeight(gaugeSide(reference), -1), outermostHeight(fieldSide(reference), 1));
  const whole = areaAbove(reference, level);
  const left = areaAbove(line, level + newTopMm);
  if (whole === null) return refuse('The new section does not show its whole head.');
  if (left === null) {
    return refuse(
      'The trace does not reach the lower corners of the head on both sides: trace further down.',
    );
  }
  return ok({
    value: 1 - left / whole,
    where: { from: { xMm: 0, yMm: newTopMm }, to: { xMm: 0, yMm: newTopMm + level } },
  });
}

/** Area between the line over the top and a level below it, mm²; null where the line does not come down to it on both sides. */
function areaAbove(line: Outline, levelMm: number): number | null {
  const { xMm, yMm } = line;
  const top = topIndex(line);
  let from = top;
  while (from > 0 && yMm[from]! > levelMm) from -= 1;
  let to = top;
  while (to < yMm.length - 1 && yMm[to]! > levelMm) to += 1;
  const left = placesAtHeight(partOf(line, from, from + 2), levelMm)[0];
  const right = placesAtHeight(partOf(line, to - 1, to + 1), levelMm)[0];
  if (left === undefined || right === undefined) return null;
  let area = 0;
  let [x0, y0] = [left, 0];
  for (let i = from + 1; i <= to; i += 1) {
    const x1 = i === to ? right : xMm[i]!;
    const y1 = i === to ? 0 : yMm[i]! - levelMm;
    area += ((x1 - x0) * (y0 + y1)) / 2;
    [x0, y0] = [x1, y1];
  }
  return area;
}

/** Height of the outermost point of a side of the head, above where the line comes back in to the web. */
function outermostHeight({ xMm, yMm }: Outline, side: 1 | -1): number {
  const from = side === 1 ? 0 : xMm.length - 1;
  let outermost = from;
  for (let i = from; i >= 0 && i < xMm.length; i += side) {
    if (side * xMm[i]! > side * xMm[outermost]!) outermost = i;
    if (side * (xMm[outermost]! - xMm[i]!) > COMES_BACK_MM) break;
  }
  return yMm[outermost] ?? 0;
}

const COMES_BACK_MM = 3;
