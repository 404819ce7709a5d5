import { checkOutline } from '../outline/check';
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
import { TREAD_REFERENCE_MM } from './register';

/** A number and the points of the outline it is taken between, or why there is none. Canonical units: mm, rad, 1. */
export type WheelFeature =
  | { readonly value: number; readonly where: readonly PointMm[] }
  | { readonly value: null; readonly why: string };

export type WheelFeatures = Readonly<Record<WheelFeatureId, WheelFeature>>;

const DEGREE = Math.PI / 180;
const DIRECTION_HALF_WINDOW_MM = 3;
const TIP_HALF_WINDOW_MM = 4;
const THICKNESS_AT_MM = 10;
const THICKNESS_NA_AT_MM = 25.4 * (3 / 8);
const QR_BELOW_TIP_MM = 2;
/** Where the flange stops holding a wheel at a friction of 0.5: tan⁻¹ 0.5 (TCRP Report 71 vol. 5). */
const CLIMB_ENDS_RAD = 26.6 * DEGREE;
const ROOT = { fromShare: 0.6, shortRad: 3 * DEGREE };
const TIP_WITHIN_RAD = 25 * DEGREE;
const SLOPE_HALF_MM = 10;
/** The plane of the back is known where the line runs within this distance of x = 0 for this far. */
const BACK = { withinMm: 0.9, forMm: 4 };
const FLANGE_ENDS_MM = 60;

/**
 * The features of `WHEEL_FEATURES` of an outline in the frame of the wheel (`./register`). A feature the
 * line does not reach is null with the reason. Refuses a line without a flange. Never throws.
 */
export function wheelFeatures(outline: Outline): Result<WheelFeatures> {
  const checked = checkOutline(outline);
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
    flangeHeight: {
      value: flange.top.yMm,
      where: [flange.top, { xMm: TREAD_REFERENCE_MM, yMm: 0 }],
    },
    flangeThickness: thickness(flange, THICKNESS_AT_MM, back),
    flangeThicknessNa: thickness(flange, THICKNESS_NA_AT_MM, back),
    qR: qR(flange),
    flangeAngle: face === null ? NO_FACE : { value: face.angleRad, where: [face.top, face.bottom] },
    climbLength: face === null ? NO_FACE : climbLength(flange, face),
    rootRadius: face === null ? NO_FACE : rootRadius(line, flange, face),
    tipRadius: tipRadius(line, flange),
    treadSlope: treadSlope(line, flange.tip),
    treadHollow: field.ok
      ? { value: field.value.hollowMm, where: [field.value.lowest, field.value.top] }
      : { value: null, why: field.message },
    falseFlange: !field.ok
      ? { value: null, why: field.message }
      : datum === null
        ? { value: null, why: NO_DATUM }
        : { value: Math.max(0, field.value.top.yMm), where: [datum, field.value.top] },
    rimWidth: rimWidth(line, flange, back),
  });
}

const NO_FACE = { value: null, why: 'The flange face is not in the trace.' } as const;
const NO_DATUM = `The trace does not reach the tread ${TREAD_REFERENCE_MM} mm from the back of the flange.`;

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

function thickness(flange: Flange, heightMm: number, back: boolean): WheelFeature {
  if (!back) return { value: null, why: 'The trace does not reach the back of the flange.' };
  const face = onFace(flange, heightMm);
  return face === null ? NO_FACE : { value: face.xMm, where: [{ xMm: 0, yMm: heightMm }, face] };
}

function qR(flange: Flange): WheelFeature {
  const low = onFace(flange, THICKNESS_AT_MM);
  const high = onFace(flange, flange.top.yMm - QR_BELOW_TIP_MM);
  return low === null || high === null ? NO_FACE : { value: low.xMm - high.xMm, where: [low, high] };
}

function climbLength({ smooth, heading, tip, treadFrom }: Flange, face: FlangeFace): WheelFeature {
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
  return { value: length, where: [face.bottom, at] };
}

function rootRadius(line: EvenOutline, { heading, tip, treadFrom }: Flange, face: FlangeFace): WheelFeature {
  const bottom = line.yMm.findIndex((y, i) => i > tip && y <= face.bottom.yMm);
  if (bottom < 0) return NO_FACE;
  let from = bottom;
  while (from < treadFrom && heading[from]! < -(face.angleRad - ROOT.shortRad)) from += 1;
  let to = from;
  while (to < treadFrom && heading[to]! < -ROOT.fromShare * face.angleRad) to += 1;
  return circle(line, from, to, 'The throat between flange and tread is too short in the trace.');
}

function tipRadius(line: EvenOutline, { heading, tip }: Flange): WheelFeature {
  const level = (i: number): boolean => Math.abs(heading[i]!) < TIP_WITHIN_RAD;
  let from = tip;
  while (from > 0 && level(from - 1)) from -= 1;
  let to = tip;
  while (to < heading.length && level(to)) to += 1;
  if (from === 0) return { value: null, why: 'The trace does not reach over the tip of the flange.' };
  return circle(line, from, to, 'The tip of the flange is too sharp for a radius.');
}

function circle(line: EvenOutline, from: number, to: number, why: string): WheelFeature {
  const fit = to - from < 6 ? null : fitCircle(line, from, to);
  if (fit === null || fit.radiusMm > 500) return { value: null, why };
  const at = (i: number): PointMm => ({ xMm: line.xMm[i]!, yMm: line.yMm[i]! });
  return { value: fit.radiusMm, where: [at(from), at((from + to) >> 1), at(to - 1)] };
}

function treadSlope(line: EvenOutline, tip: number): WheelFeature {
  const from = line.xMm.findIndex((x, i) => i > tip && x >= TREAD_REFERENCE_MM - SLOPE_HALF_MM);
  const to = line.xMm.findIndex((x, i) => i > tip && x > TREAD_REFERENCE_MM + SLOPE_HALF_MM);
  const fit = from < 0 || to < 0 ? null : fitLine(line, from, to);
  if (fit === null)
    return { value: null, why: 'The trace ends less than 80 mm from the back of the flange.' };
  const slope = Math.tan(fit.headingRad);
  const at = (xMm: number): PointMm => ({
    xMm,
    yMm: fit.through.yMm + slope * (xMm - fit.through.xMm),
  });
  return {
    value: -slope,
    where: [at(TREAD_REFERENCE_MM - SLOPE_HALF_MM), at(TREAD_REFERENCE_MM + SLOPE_HALF_MM)],
  };
}

function onTread(line: EvenOutline, tip: number, xMm: number): PointMm | null {
  const yMm = levelNear(line, xMm, TIP_HALF_WINDOW_MM, tip);
  return yMm === null ? null : { xMm, yMm };
}

/** Direction of a rim face, from straight down; and how much of it must be there. */
const RIM_FACE = { withinRad: 15 * DEGREE, shortestMm: 3 };

function rimWidth(line: EvenOutline, { heading, treadFrom }: Flange, back: boolean): WheelFeature {
  if (!back) return { value: null, why: 'The trace does not reach the back of the flange.' };
  let [x, low, high, n] = [0, Infinity, -Infinity, 0];
  for (let i = treadFrom; i < line.xMm.length; i += 1) {
    if (Math.abs(Math.sin(heading[i]! + Math.PI / 2)) > Math.sin(RIM_FACE.withinRad)) continue;
    if (Math.sin(heading[i]!) > 0) continue;
    x += line.xMm[i]!;
    low = Math.min(low, line.yMm[i]!);
    high = Math.max(high, line.yMm[i]!);
    n += 1;
  }
  if (!(high - low >= RIM_FACE.shortestMm)) {
    return { value: null, why: 'The trace does not reach the face of the rim on the field side.' };
  }
  const value = x / n;
  return {
    value,
    where: [
      { xMm: 0, yMm: low },
      { xMm: value, yMm: low },
    ],
  };
}
