import { fitCircle, fitLine } from '../outline/fit';
import { type Outline, type PointMm } from '../outline/outline';
import { resampled, type EvenOutline } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { ok, refuse, type Result } from '../readings/result';
import { type WheelFeatureId } from './feature-table';
import { fieldSide } from './field-side';
import { flangeFace, type FlangeFace } from './flange-face';
import { STEP_MM } from './lay';
import { levelNear } from './level';
import { checkWheelLine, TREAD_REFERENCE_MM } from './register';

/** A number (mm, rad, 1) and the points of the outline it is taken between. */
export type FoundWheelFeature = { readonly value: number; readonly where: readonly PointMm[] };

export type WheelFeatures = Readonly<Record<WheelFeatureId, Result<FoundWheelFeature>>>;

const DEGREE = Math.PI / 180;
const DIRECTION_HALF_WINDOW_MM = 3;
const TIP_HALF_WINDOW_MM = 4;
const THICKNESS_AT_MM = 10;
const THICKNESS_NA_AT_MM = 25.4 * (3 / 8);
const QR_BELOW_TIP_MM = 2;
/** Where the flange stops holding a wheel at a friction of 0.5: tan⁻¹ 0.5 (TCRP Report 71 vol. 5). */
const CLIMB_ENDS_RAD = 26.6 * DEGREE;
const LARGEST_RADIUS_MM = 200;
const TIP_WITHIN_RAD = 25 * DEGREE;
const SLOPE_HALF_MM = 10;
/** The plane of the back is known where the line runs within this distance of x = 0 for this far. */
const BACK = { withinMm: 0.9, forMm: 4 };
const FLANGE_ENDS_MM = 60;

/**
 * The features of `WHEEL_FEATURES` of an outline in the frame of the wheel (`./register`). A feature the
 * line does not reach is refused with the reason. Refuses a line without a flange. Never throws.
 */
export function wheelFeatures(outline: Outline): Result<WheelFeatures> {
  const checked = checkWheelLine(outline);
  return checked.ok ? featuresOf(outline) : checked;
}

/** As `wheelFeatures`, of a line that has been checked. */
export function featuresOf(outline: Outline): Result<WheelFeatures> {
  const line = resampled(outline, STEP_MM);
  const flange = flangeOf(line);
  if (flange === null) {
    return refuse(
      'No flange was found in the line. Trace over the tip of the flange and along the tread, and place the line with the back of the flange at 0 and the flange upward.',
    );
  }
  const back = backReached(line, flange.tip);
  const field = fieldSide(line, flange.tip);
  const datum = onTread(line, flange.tip, TREAD_REFERENCE_MM);
  const face = flangeFace(line, flange.heading, flange.tip, flange.treadFrom);
  return ok({
    flangeHeight: found(flange.top.yMm, flange.top, { xMm: TREAD_REFERENCE_MM, yMm: 0 }),
    flangeThickness: thickness(flange, THICKNESS_AT_MM, back),
    flangeThicknessNa: thickness(flange, THICKNESS_NA_AT_MM, back),
    qR: qR(flange),
    flangeAngle: face === null ? NO_FACE : found(face.angleRad, face.top, face.bottom),
    climbLength: face === null ? NO_FACE : climbLength(flange, face),
    rootRadius: face === null ? NO_FACE : rootRadius(face),
    tipRadius: tipRadius(line, flange),
    treadSlope: treadSlope(line, flange.tip),
    treadHollow: field.ok ? found(field.value.hollowMm, field.value.lowest, field.value.top) : field,
    falseFlange: !field.ok
      ? field
      : datum === null
        ? NO_DATUM
        : found(Math.max(0, field.value.top.yMm), datum, field.value.top),
    rimWidth: rimWidth(line, flange, back),
  });
}

const NO_FACE = refuse('The flange face is not in the trace.');
const NO_BACK = refuse('The trace does not reach the back of the flange.');
const found = (value: number, ...where: readonly PointMm[]): Result<FoundWheelFeature> =>
  ok({ value, where });
const NO_DATUM = refuse(
  `The trace does not reach the tread ${TREAD_REFERENCE_MM} mm from the back of the flange.`,
);

type Flange = {
  /** Smoothed line and its direction. */
  readonly smooth: EvenOutline;
  readonly heading: Float64Array;
  readonly tip: number;
  readonly top: PointMm;
  /** First point that is no longer flange. */
  readonly treadFrom: number;
};

function flangeOf(line: EvenOutline): Flange | null {
  const wide = smoothed(line, TIP_HALF_WINDOW_MM);
  let tip = -1;
  for (let i = 0; i < wide.xMm.length; i += 1) {
    const x = wide.xMm[i]!;
    if (x > -5 && x < FLANGE_ENDS_MM && (tip < 0 || wide.yMm[i]! > wide.yMm[tip]!)) tip = i;
  }
  if (tip < 0 || !(wide.yMm[tip]! > THICKNESS_AT_MM)) return null;
  const treadFrom = line.xMm.findIndex((x, i) => i > tip && x > FLANGE_ENDS_MM);
  const { headingRad, ...smooth } = smoothed(line, DIRECTION_HALF_WINDOW_MM);
  // The direction along the tip is taken as the one near level, not a whole turn from it.
  const turns = 2 * Math.PI * Math.round(headingRad[tip]! / (2 * Math.PI));
  return {
    smooth,
    heading: headingRad.map((angle) => angle - turns),
    tip,
    top: { xMm: wide.xMm[tip]!, yMm: wide.yMm[tip]! },
    treadFrom: treadFrom < 0 ? line.xMm.length : treadFrom,
  };
}

function backReached({ xMm, yMm }: EvenOutline, tip: number): boolean {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < tip; i += 1) {
    if (Math.abs(xMm[i]!) > BACK.withinMm) continue;
    low = Math.min(low, yMm[i]!);
    high = Math.max(high, yMm[i]!);
  }
  return high - low >= BACK.forMm;
}

/** Where the face of the flange passes a height, going from the tip down. */
function onFace({ smooth: { xMm, yMm }, tip, treadFrom }: Flange, heightMm: number): PointMm | null {
  for (let i = tip + 1; i < treadFrom; i += 1) {
    if (yMm[i]! <= heightMm && yMm[i - 1]! > heightMm) {
      const share = (yMm[i - 1]! - heightMm) / (yMm[i - 1]! - yMm[i]!);
      return { xMm: xMm[i - 1]! + share * (xMm[i]! - xMm[i - 1]!), yMm: heightMm };
    }
  }
  return null;
}

function thickness(flange: Flange, heightMm: number, back: boolean): Result<FoundWheelFeature> {
  if (!back) return NO_BACK;
  const face = onFace(flange, heightMm);
  return face === null ? NO_FACE : found(face.xMm, { xMm: 0, yMm: heightMm }, face);
}

function qR(flange: Flange): Result<FoundWheelFeature> {
  const low = onFace(flange, THICKNESS_AT_MM);
  const high = onFace(flange, flange.top.yMm - QR_BELOW_TIP_MM);
  return low === null || high === null ? NO_FACE : found(low.xMm - high.xMm, low, high);
}

function climbLength(
  { smooth, heading, tip, treadFrom }: Flange,
  face: FlangeFace,
): Result<FoundWheelFeature> {
  let end = tip;
  while (end < treadFrom && heading[end]! > -CLIMB_ENDS_RAD) end += 1;
  if (end === tip || end >= treadFrom) return NO_FACE;
  // Where between two points the direction passes 26.6°.
  const share = (-CLIMB_ENDS_RAD - heading[end - 1]!) / (heading[end]! - heading[end - 1]!);
  const at: PointMm = {
    xMm: smooth.xMm[end - 1]! + share * (smooth.xMm[end]! - smooth.xMm[end - 1]!),
    yMm: smooth.yMm[end - 1]! + share * (smooth.yMm[end]! - smooth.yMm[end - 1]!),
  };
  let length = 0;
  let last = at;
  for (let i = end; i < treadFrom; i += 1) {
    const next = { xMm: smooth.xMm[i]!, yMm: smooth.yMm[i]! };
    if (next.yMm < face.bottom.yMm) break;
    length += Math.hypot(next.xMm - last.xMm, next.yMm - last.yMm);
    last = next;
  }
  length += Math.hypot(face.bottom.xMm - last.xMm, face.bottom.yMm - last.yMm);
  return found(length, face.bottom, at);
}

function rootRadius({ rootRadiusMm, bottom, root }: FlangeFace): Result<FoundWheelFeature> {
  return rootRadiusMm > LARGEST_RADIUS_MM
    ? refuse('The flange goes over into the tread without a round.')
    : found(rootRadiusMm, bottom, root);
}

function tipRadius(line: EvenOutline, { heading, tip }: Flange): Result<FoundWheelFeature> {
  const level = (i: number): boolean => Math.abs(heading[i]!) < TIP_WITHIN_RAD;
  let from = tip;
  while (from > 0 && level(from - 1)) from -= 1;
  let to = tip;
  while (to < heading.length && level(to)) to += 1;
  if (from === 0) return refuse('The trace does not reach over the tip of the flange.');
  const fit = to - from < 6 ? null : fitCircle(line, from, to);
  if (fit === null || fit.radiusMm > LARGEST_RADIUS_MM) {
    return refuse('The tip of the flange is too sharp or too flat for a radius.');
  }
  const at = (i: number): PointMm => ({ xMm: line.xMm[i]!, yMm: line.yMm[i]! });
  return found(fit.radiusMm, at(from), at((from + to) >> 1), at(to - 1));
}

function treadSlope(line: EvenOutline, tip: number): Result<FoundWheelFeature> {
  const from = line.xMm.findIndex((x, i) => i > tip && x >= TREAD_REFERENCE_MM - SLOPE_HALF_MM);
  const to = line.xMm.findIndex((x, i) => i > tip && x > TREAD_REFERENCE_MM + SLOPE_HALF_MM);
  const fit = from < 0 || to < 0 ? null : fitLine(line, from, to);
  if (fit === null) return refuse('The trace ends less than 80 mm from the back of the flange.');
  const slope = Math.tan(fit.headingRad);
  const at = (xMm: number): PointMm => ({
    xMm,
    yMm: fit.through.yMm + slope * (xMm - fit.through.xMm),
  });
  return found(-slope, at(TREAD_REFERENCE_MM - SLOPE_HALF_MM), at(TREAD_REFERENCE_MM + SLOPE_HALF_MM));
}

function onTread(line: EvenOutline, tip: number, xMm: number): PointMm | null {
  const yMm = levelNear(line, xMm, TIP_HALF_WINDOW_MM, tip);
  return yMm === null ? null : { xMm, yMm };
}

/** Direction of a rim face, from straight down; and how much of it must be there. */
const RIM_FACE = { withinRad: 15 * DEGREE, shortestMm: 3 };

function rimWidth(
  line: EvenOutline,
  { heading, treadFrom }: Flange,
  back: boolean,
): Result<FoundWheelFeature> {
  if (!back) return NO_BACK;
  let [low, high] = [Infinity, -Infinity];
  const places: number[] = [];
  for (let i = treadFrom; i < line.xMm.length; i += 1) {
    if (Math.abs(Math.sin(heading[i]! + Math.PI / 2)) > Math.sin(RIM_FACE.withinRad)) continue;
    if (Math.sin(heading[i]!) > 0) continue;
    places.push(line.xMm[i]!);
    low = Math.min(low, line.yMm[i]!);
    high = Math.max(high, line.yMm[i]!);
  }
  if (!(high - low >= RIM_FACE.shortestMm)) {
    return refuse('The trace does not reach the face of the rim on the field side.');
  }
  // The middle one: the mean would take in some of the edge's round.
  const value = places.sort((a, b) => a - b)[places.length >> 1]!;
  return found(value, { xMm: 0, yMm: low }, { xMm: value, yMm: low });
}
