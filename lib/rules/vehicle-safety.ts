import type { Source } from '../findings/finding';
import { fromCanonical, toCanonical } from '../readings/convert';

const FROM_MEMORY: Source = {
  text: '49 CFR 213.333, table of vehicle/track interaction safety limits (78 FR 16052, 2013; the table is an image in the reprints read)',
  status: 'from memory',
};

const FEET_5_M = toCanonical(5, 'ft', 'alongTrack');

export type VehicleSafetyLimit = {
  readonly id: 'singleWheelLV' | 'truckSideLV' | 'singleWheelVerticalRatio' | 'netAxleLV';
  readonly name: string;
  readonly formula: string;
  readonly sense: 'max' | 'min';
  /** Exceeding it counts when it lasts over this length of track. */
  readonly overM: number;
  readonly citation: string;
  readonly source: Source;
};

const limit = (
  id: VehicleSafetyLimit['id'],
  name: string,
  formula: string,
  sense: VehicleSafetyLimit['sense'],
): VehicleSafetyLimit => ({
  id,
  name,
  formula,
  sense,
  overM: FEET_5_M,
  citation: '49 CFR 213.333',
  source: FROM_MEMORY,
});

/**
 * Wheel-force limits for the qualification of vehicles at high speed or high cant deficiency, on
 * forces from instrumented wheelsets low-pass filtered at 25 Hz or more. They are shown for
 * orientation: they are not limits on a freight car in ordinary service, and 0.6 is not the
 * rollover threshold of a given rail.
 */
export const VEHICLE_SAFETY_LIMITS: readonly VehicleSafetyLimit[] = [
  limit(
    'singleWheelLV',
    'L/V of one wheel',
    '(tan δ − 0.5)/(1 + 0.5 tan δ), δ = flange angle of the wheel',
    'max',
  ),
  limit('truckSideLV', 'Sum of L over sum of V on one side of a truck', '0.6', 'max'),
  limit('singleWheelVerticalRatio', 'Wheel load over its static value', '0.15', 'min'),
  limit(
    'netAxleLV',
    'Net lateral force of an axle over its static load',
    '0.4 + 5.0/Va, Va = static axle load in kips',
    'max',
  ),
];

export const TRUCK_SIDE_LV_MOST = 0.6;
export const SINGLE_WHEEL_VERTICAL_RATIO_LEAST = 0.15;

/**
 * Most L/V of one wheel: (tan δ − 0.5)/(1 + 0.5 tan δ). δ: flange angle, rad, above tan⁻¹ 0.5 and
 * below π/2; outside that range NaN. Source: 49 CFR 213.333 (from memory); it is the climb limit of
 * Nadal (1896) with a friction coefficient of 0.5.
 */
export const singleWheelLvMost = (flangeAngleRad: number): number => {
  const slope = Math.tan(flangeAngleRad);
  const inRange = flangeAngleRad > Math.atan(0.5) && flangeAngleRad < Math.PI / 2;
  return inRange ? (slope - 0.5) / (1 + 0.5 * slope) : NaN;
};

/**
 * Most net axle L/V: 0.4 + 5.0/Va, Va the static axle load in kips. Input in kN, greater than 0,
 * otherwise NaN. Source: 49 CFR 213.333 (from memory).
 */
export const netAxleLvMost = (staticAxleLoadKn: number): number =>
  staticAxleLoadKn > 0 ? 0.4 + 5 / fromCanonical(staticAxleLoadKn, 'kip', 'force') : NaN;
