import type { Method } from '../findings/finding';
import { fromCanonical, toCanonical } from '../readings/convert';

/**
 * Inputs for which the report tabulates its equation. Outside them the equation has poles
 * (at 76.62° and 76.96°, and at 55.1°) and means nothing: it gives 17 ft at 76.5° and a negative
 * distance at 76.7°. Ranges from memory of table 2.1.
 */
export const CLIMB_DISTANCE_RANGE = {
  flangeAngleDeg: [63, 75],
  climbLengthIn: [0.4, 0.75],
  angleOfAttackMrad: [0, 20],
} as const;

/** A reading converted there and back may sit a rounding beyond the edge of the range. */
const ROUNDING = 1e-9;

/**
 * Distance (ft) over which a wheel above its climb limit must stay there to climb:
 * A·B·Len/(AOA + B·Len), in the units of the report and without any check of range.
 * `flangeAngleDeg` maximum flange angle; `climbLengthIn` flange length; `angleOfAttackMrad`.
 * Source: TCRP Report 71 vol. 5, eq. 2.4.
 */
export function climbDistanceFt(
  flangeAngleDeg: number,
  climbLengthIn: number,
  angleOfAttackMrad: number,
): number {
  const a =
    (100 / (-1.9128 * flangeAngleDeg + 146.56) + 3.1) * climbLengthIn -
    1 / (-0.0092 * flangeAngleDeg * flangeAngleDeg + 1.2152 * flangeAngleDeg - 39.031) +
    1.23;
  const b =
    (10 / (-21.157 * climbLengthIn + 2.1052) + 0.05) * flangeAngleDeg +
    10 / (0.2688 * climbLengthIn - 0.0266) -
    5;
  return (a * b * climbLengthIn) / (angleOfAttackMrad + b * climbLengthIn);
}

export type ClimbDistance =
  | { readonly kind: 'measured'; readonly distanceM: number }
  | { readonly kind: 'outOfRange'; readonly why: string };

/**
 * Climb distance (m) with a check of range: rad, mm, rad. Out of range says which input and what
 * to use instead; the share of draws that are out of range must be reported with the rest.
 */
export function climbDistance(
  flangeAngleRad: number,
  climbLengthMm: number,
  angleOfAttackRad: number,
): ClimbDistance {
  const angle = fromCanonical(flangeAngleRad, '°', 'angle');
  const length = fromCanonical(climbLengthMm, 'in', 'crossLength');
  const attack = fromCanonical(angleOfAttackRad, 'mrad', 'angle');
  const { flangeAngleDeg, climbLengthIn, angleOfAttackMrad } = CLIMB_DISTANCE_RANGE;
  if (!within(angle, flangeAngleDeg)) {
    return outOfRange(`a flange angle of ${angle.toFixed(1)}°`, `${flangeAngleDeg.join(' to ')}°`);
  }
  if (!within(length, climbLengthIn)) {
    return outOfRange(`a flange length of ${length.toFixed(2)} in`, `${climbLengthIn.join(' to ')} in`);
  }
  if (!within(attack, angleOfAttackMrad)) {
    return outOfRange(
      `an angle of attack of ${attack.toFixed(1)} mrad`,
      `${angleOfAttackMrad.join(' to ')} mrad`,
    );
  }
  return {
    kind: 'measured',
    distanceM: toCanonical(climbDistanceFt(angle, length, attack), 'ft', 'alongTrack'),
  };
}

/** As `climbDistance`, NaN when out of range: for drawing many samples. */
export function climbDistanceM(
  flangeAngleRad: number,
  climbLengthMm: number,
  angleOfAttackRad: number,
): number {
  const angle = fromCanonical(flangeAngleRad, '°', 'angle');
  const length = fromCanonical(climbLengthMm, 'in', 'crossLength');
  const attack = fromCanonical(angleOfAttackRad, 'mrad', 'angle');
  const covered =
    within(angle, CLIMB_DISTANCE_RANGE.flangeAngleDeg) &&
    within(length, CLIMB_DISTANCE_RANGE.climbLengthIn) &&
    within(attack, CLIMB_DISTANCE_RANGE.angleOfAttackMrad);
  return covered ? toCanonical(climbDistanceFt(angle, length, attack), 'ft', 'alongTrack') : NaN;
}

/** NaN is never within. */
function within(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low - ROUNDING && value <= high + ROUNDING;
}

function outOfRange(what: string, range: string): ClimbDistance {
  return {
    kind: 'outOfRange',
    why: `The climb-distance equation is used only for ${range}; ${what} is outside, where its poles make it meaningless. Use the climb limit held over 5 ft instead (as 49 CFR part 238, appendix C(a) does).`,
  };
}

export const climbDistanceMethod: Method = {
  id: 'climb-distance',
  name: 'Flange-climb distance',
  formula:
    'D < A·B·Len/(AOA + B·Len); A = (100/(−1.9128·Ang + 146.56) + 3.1)·Len − 1/(−0.0092·Ang² + 1.2152·Ang − 39.031) + 1.23; B = (10/(−21.157·Len + 2.1052) + 0.05)·Ang + 10/(0.2688·Len − 0.0266) − 5. D: ft; Ang: maximum flange angle, degrees; Len: flange length, in; AOA: angle of attack, mrad.',
  validRange:
    'Ang 63 to 75°, Len 0.4 to 0.75 in, AOA 0 to 20 mrad (from memory of the report’s table 2.1). Anything else is out of range and is reported, not computed. For transit wheelsets; for a 75° freight wheel on 136-lb rail see appendix C of the report. Len: from where the maximum angle begins, over the tip side, to where the angle has fallen to 26.6° (tan⁻¹ 0.5), from memory of §2.4.',
  sources: [
    { text: 'TCRP Report 71 vol. 5 (2005), eq. 2.4', status: 'published' },
    { text: 'Range of table 2.1 and definition of flange length, §2.4', status: 'from memory' },
  ],
};
