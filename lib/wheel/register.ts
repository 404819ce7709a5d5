import { lengthMm, extentMm } from '../outline/arc';
import { checkOutline } from '../outline/check';
import { fitLine } from '../outline/fit';
import { outlineOf, type Outline } from '../outline/outline';
import { afterwards, placed, type Placing } from '../outline/placing';
import { resampled, type EvenOutline } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { ok, refuse, type Result } from '../readings/result';
import { inOrder, STEP_MM, wheelLay, type WheelLay } from './lay';
import { levelNear } from './level';
import { flangeBack } from './upright';

/** The tread reference point lies this far from the back of the flange (EN 15313). */
export const TREAD_REFERENCE_MM = 70;

/** How much tread on either side of the reference point its height is fitted over. */
const DATUM_HALF_WINDOW_MM = 6;

/** A line from a wheel is about as large as the wheel's rim. */
const LINE_EXTENT_MM = [60, 400] as const;
const LONGEST_LINE_MM = 3000;

/** Beyond these no flange is as high or as thick, worn or new: the scale must be wrong. */
const FLANGE_HEIGHT_MM = [15, 55] as const;
/** The tip of a flange lies this far from its back. */
const TIP_FROM_BACK_MM = [3, 28] as const;

/** A back shorter than this is used, with a warning. */
const SHORT_BACK_MM = 15;

/**
 * What is taken for granted where a trace does not reach the straight back of the flange: slope of the
 * tread between 100 and 50 mm beyond the tip, and how far the tip lies from the back. The uncertainty
 * of a trace draws them. Common practice, no source: treads are coned 1:20 or 1:40 when new.
 */
export type Assumed = { readonly treadSlope: number; readonly tipFromBackMm: number };
export const ASSUMED: Assumed = { treadSlope: 1 / 25, tipFromBackMm: 15 };
export const U_ASSUMED: Assumed = { treadSlope: 1 / 60, tipFromBackMm: 2 };

const TIP_WINDOW_HALF_MM = 2;
const TREAD_FROM_TIP_MM = [35, 85] as const;
/** A line this steep at its beginning touches the plane of the back, although no straight part shows it. */
const TOUCHES_BACK_RAD = (85 * Math.PI) / 180;

export type RegisteredWheel = {
  /** Moves the traced line into the frame of the wheel. */
  readonly placing: Placing;
  /** The line placed, its points from the back of the flange to the field side. */
  readonly outline: Outline;
  readonly remarks: readonly string[];
};

/**
 * Places a traced line in the frame of the wheel: back of the flange upright at x = 0, tread at 70 mm
 * from it at y = 0 (EN 15313). The drawing may be turned by any angle, upside down, of either hand and
 * in either order; `mirrored` is what the user said of it, and what the line itself shows prevails, with
 * a remark. Where the line does not reach the straight back, the upright comes from the slope of the
 * tread, with a remark. Refuses, saying what to do, a line that is no outline, has no flange and tread,
 * does not reach the tread reference point, or is of a size no wheel has. Never throws.
 */
export function registerWheel(
  outline: Outline,
  { mirrored }: { readonly mirrored: boolean },
): Result<RegisteredWheel> {
  const found = layOf(outline);
  if (!found.ok) return found;
  const placedWheel = registerAs(outline, found.value, ASSUMED);
  if (!placedWheel.ok) return placedWheel;
  const { placing, remarks } = placedWheel.value;
  const hand =
    placing.mirrored === mirrored
      ? []
      : [
          `The flange is on the other side from what was said: the drawing ${placing.mirrored ? 'is a mirror image and was mirrored' : 'is not a mirror image and was not mirrored'}.`,
        ];
  return ok({ ...placedWheel.value, remarks: [...hand, ...remarks] });
}

/** Whether a line can be the outline of a wheel by its points and its size; says what to do otherwise. */
export function checkWheelLine(outline: Outline): Result<Outline> {
  const checked = checkOutline(outline);
  if (!checked.ok) return checked;
  const { from, to } = extentMm(outline);
  const extent = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  if (extent < LINE_EXTENT_MM[0] || extent > LINE_EXTENT_MM[1]) return refuse(wrongSize(extent));
  return lengthMm(outline) > LONGEST_LINE_MM
    ? refuse(
        'The line is far longer than the outline of a wheel: its points must follow the outline once, from one end to the other.',
      )
    : ok(outline);
}

/** How the wheel lies in a line, or why the line cannot be a wheel. */
export function layOf(outline: Outline): Result<WheelLay> {
  const checked = checkWheelLine(outline);
  if (!checked.ok) return checked;
  const lay = wheelLay(outline);
  return lay === null
    ? refuse(
        'No flange with a tread beside it was found in the line. Trace without a break from the back of the flange over its tip and along the tread to the field side.',
      )
    : ok(lay);
}

function wrongSize(extent: number): string {
  const small = extent < LINE_EXTENT_MM[0];
  const inchesMisread = small && extent * 25.4 > LINE_EXTENT_MM[0] && extent * 25.4 < LINE_EXTENT_MM[1];
  const mmMisread = !small && extent / 25.4 > LINE_EXTENT_MM[0] && extent / 25.4 < LINE_EXTENT_MM[1];
  const hint = inchesMisread
    ? ' The file may be in inches: choose inches.'
    : mmMisread
      ? ' The file may be in millimetres: choose millimetres.'
      : '';
  return `Wrong scale: the line is ${extent < 100 ? extent.toFixed(1) : extent.toFixed(0)} mm from end to end, and the outline of a wheel is between ${LINE_EXTENT_MM[0]} and ${LINE_EXTENT_MM[1]} mm.${hint || ' Check the unit and the scale, or trace more of the wheel.'}`;
}

/** The fine part of the registration, for a line whose lay is known: what is repeated for every draw of a trace. */
export function registerAs(outline: Outline, lay: WheelLay, assumed: Assumed): Result<RegisteredWheel> {
  const ordered = inOrder(outline, lay);
  const line = resampled(ordered, STEP_MM);
  const tip = tipOf(line);
  const reached = line.xMm.reduce((most, x) => Math.max(most, x), -Infinity);
  const back = flangeBack(line, tip);
  const remarks: string[] = [];
  let upright: { readonly angleRad: number; readonly xMm: number };
  if (back === null) {
    const other = uprightFromTread(line, tip, assumed);
    if (!other.ok) return other;
    upright = other.value;
    remarks.push(other.value.remark);
  } else {
    upright = back;
    if (back.straightMm < SHORT_BACK_MM) {
      remarks.push(
        `Only ${back.straightMm.toFixed(0)} mm of the straight back of the flange is in the trace: the upright is less certain than with 15 mm or more.`,
      );
    }
  }
  const turned = afterwards(
    { mirrored: lay.mirrored, angleRad: lay.angleRad, dxMm: 0, dyMm: 0 },
    { angleRad: upright.angleRad, dxMm: -upright.xMm, dyMm: 0 },
  );
  const upLine = placed(line, { mirrored: false, angleRad: upright.angleRad, dxMm: -upright.xMm, dyMm: 0 });
  const datum = levelNear(upLine, TREAD_REFERENCE_MM, DATUM_HALF_WINDOW_MM, tip);
  if (datum === null) {
    return refuse(
      `The trace ends ${(reached - upright.xMm).toFixed(0)} mm from the back of the flange, and the tread reference point is at ${TREAD_REFERENCE_MM} mm. Trace the tread further; if it was traced, check the scale.`,
    );
  }
  const height = upLine.yMm.reduce((most, y) => Math.max(most, y), -Infinity) - datum;
  if (height < FLANGE_HEIGHT_MM[0] || height > FLANGE_HEIGHT_MM[1]) {
    return refuse(
      `Wrong scale: the flange would be ${height.toFixed(1)} mm high, and flanges are between ${FLANGE_HEIGHT_MM[0]} and ${FLANGE_HEIGHT_MM[1]} mm. Check the unit and the scale.`,
    );
  }
  const tipMm = upLine.xMm[tip]!;
  if (tipMm < TIP_FROM_BACK_MM[0] || tipMm > TIP_FROM_BACK_MM[1]) {
    return refuse(
      `Wrong scale: the tip of the flange would lie ${tipMm.toFixed(1)} mm from its back, and tips lie ${TIP_FROM_BACK_MM[0]} to ${TIP_FROM_BACK_MM[1]} mm from it. Check the unit and the scale.`,
    );
  }
  const placing = { ...turned, dyMm: turned.dyMm - datum };
  if (Math.cos(placing.angleRad) < 0) remarks.push('The drawing is upside down and was turned round.');
  return ok({
    placing,
    outline: placed(ordered, {
      mirrored: false,
      angleRad: upright.angleRad,
      dxMm: -upright.xMm,
      dyMm: -datum,
    }),
    remarks,
  });
}

function tipOf(line: EvenOutline): number {
  const { yMm } = smoothed(line, TIP_WINDOW_HALF_MM);
  let tip = 0;
  for (let i = 0; i < yMm.length; i += 1) if (yMm[i]! > yMm[tip]!) tip = i;
  return tip;
}

function uprightFromTread(
  line: EvenOutline,
  tip: number,
  assumed: Assumed,
): Result<{ readonly angleRad: number; readonly xMm: number; readonly remark: string }> {
  if (tip * line.stepMm < TIP_WINDOW_HALF_MM) {
    return refuse(
      'The trace does not reach over the tip of the flange. Trace from the back of the flange, with at least 15 mm of its straight part, over the tip to the field side.',
    );
  }
  const [from, to] = TREAD_FROM_TIP_MM.map((beyond) => {
    const at = line.xMm.findIndex((x, i) => i > tip && x > line.xMm[tip]! + beyond);
    return at < 0 ? line.xMm.length : at;
  });
  const tread = fitLine(line, from!, to!);
  if (tread === null) {
    return refuse(
      `The trace reaches neither the straight back of the flange nor the tread reference point at ${TREAD_REFERENCE_MM} mm from it: trace more of both.`,
    );
  }
  const angleRad = -Math.atan(assumed.treadSlope) - tread.headingRad;
  const turned = placed(line, { mirrored: false, angleRad, dxMm: 0, dyMm: 0 });
  const even: EvenOutline = { ...outlineOf(turned.xMm, turned.yMm), stepMm: line.stepMm };
  const smooth = smoothed(even, TIP_WINDOW_HALF_MM);
  const steepest = smooth.headingRad.slice(0, tip).reduce((most, a) => Math.max(most, Math.sin(a)), 0);
  const touches = steepest > Math.sin(TOUCHES_BACK_RAD);
  const slope = `1:${Math.round(1 / ASSUMED.treadSlope)}`;
  if (touches) {
    const xMm = smooth.xMm.slice(0, tip).reduce((least, x) => Math.min(least, x), Infinity);
    return ok({
      angleRad,
      xMm,
      remark: `The straight back of the flange is not in the trace: the upright was taken from the tread, as if it were coned ${slope}. Angles and heights are less certain; trace at least 15 mm of the back.`,
    });
  }
  return ok({
    angleRad,
    xMm: turned.xMm[tip]! - assumed.tipFromBackMm,
    remark: `The back of the flange is not in the trace: the upright was taken from the tread, as if it were coned ${slope}, and the back of the flange ${ASSUMED.tipFromBackMm} mm from the tip. Flange thickness cannot be told; trace at least 15 mm of the back.`,
  });
}
