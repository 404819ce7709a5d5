import type { Method } from '../findings/finding';
import { fromCanonical } from '../readings/convert';
import { degreesOfCurve } from '../track/curvature';

/** Pounds of resistance per short ton of 2,000 lb: dividing by this gives force over weight. */
const POUNDS_PER_TON = 2000;
const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;

/** Air-resistance factor K of the modified Davis formula. */
export const DRAG_FACTORS = {
  conventional: 0.07,
  containers: 0.0935,
  trailersOnFlatcars: 0.16,
} as const;

/** Grade resistance, lb/ton: 20 for every per cent, uphill positive. */
export function gradeResistance(gradePercent: number): number {
  return 20 * gradePercent;
}

/** Curve resistance, lb/ton: 0.8 for every degree of curve, either hand. */
export function curveResistance(degrees: number): number {
  return 0.8 * Math.abs(degrees);
}

/**
 * Rolling and air resistance, lb/ton: 0.6 + 20/w + 0.01·V + K·V²/(w·n).
 * `tonsPerAxle` w > 0, short tons; `axles` n; `mph` V ≥ 0; `dragFactor` K.
 * Source: modified Davis formula, AREMA Manual ch. 16.
 */
export function davisResistance(
  tonsPerAxle: number,
  axles: number,
  mph: number,
  dragFactor: number = DRAG_FACTORS.conventional,
): number {
  return 0.6 + 20 / tonsPerAxle + 0.01 * mph + (dragFactor * mph * mph) / (tonsPerAxle * axles);
}

export type VehicleOnTrack = {
  readonly massKg: number;
  readonly axles: number;
  readonly speedMs: number;
  /** Rise over run, uphill positive: 0.01 is 1 %. */
  readonly grade: number;
  readonly curvaturePerM: number;
  readonly dragFactor: number;
};

/** What a vehicle resists, kN; negative grade resistance pushes it along. */
export type Resistance = {
  readonly gradeKn: number;
  readonly curveKn: number;
  readonly rollingKn: number;
};

/** Resistance of one vehicle in canonical units, part by part. Mass and axles > 0. */
export function vehicleResistance(vehicle: VehicleOnTrack): Resistance {
  const weightKn = (vehicle.massKg * STANDARD_GRAVITY) / N_PER_KN;
  const perPoundPerTon = weightKn / POUNDS_PER_TON;
  const tonsPerAxle = fromCanonical(vehicle.massKg, 'ton', 'mass') / vehicle.axles;
  const mph = fromCanonical(vehicle.speedMs, 'mph', 'speed');
  return {
    gradeKn: gradeResistance(vehicle.grade * 100) * perPoundPerTon,
    curveKn: curveResistance(degreesOfCurve(vehicle.curvaturePerM)) * perPoundPerTon,
    rollingKn: davisResistance(tonsPerAxle, vehicle.axles, mph, vehicle.dragFactor) * perPoundPerTon,
  };
}

export const resistanceMethod: Method = {
  id: 'train-resistance',
  name: 'Train resistance: grade, curve and rolling',
  formula:
    'lb/ton: grade 20 per %; curve 0.8 per degree; rolling 0.6 + 20/w + 0.01·V + K·V²/(w·n). w: short tons per axle; n: axles; V: mile/h; K: 0.07 conventional, 0.0935 containers, 0.16 trailers on flatcars.',
  validRange:
    'Moving freight equipment with roller bearings. Starting resistance, wind and stiff trucks are not in it; treat as an estimate.',
  sources: [
    {
      text: 'Grade 20 lb/ton per %, curve 0.8 lb/ton per degree: US Army subcourse TR0603, paras 2.7, 2.8 and 2.11',
      status: 'published',
    },
    { text: 'K of the modified Davis formula: AREA committee 16, as taught', status: 'published' },
    { text: 'Other coefficients of the modified Davis formula: AREMA Manual ch. 16', status: 'from memory' },
  ],
};
