import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';

const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;
const psi = (value: number): number => toCanonical(value, 'psi', 'pressure');

/** Cylinder pressure for each unit of reduction, until reservoir and cylinder are equal. */
const CYLINDER_PER_REDUCTION = 2.5;
/** A reduction smaller than this moves no brake. */
const LEAST_REDUCTION_KPA = psi(4);
/** Full service from 90 psi, at which the braking ratio is stated. */
export const FULL_SERVICE_KPA = psi(64);
const EMERGENCY = 1.2;

/** Cylinder pressure, kPa, after a reduction of the brake pipe; emergency gives a fifth more than full service. */
export function cylinderPressureKpa(reductionKpa: number, emergency: boolean): number {
  if (emergency) return EMERGENCY * FULL_SERVICE_KPA;
  if (!(reductionKpa >= LEAST_REDUCTION_KPA)) return 0;
  return Math.min(CYLINDER_PER_REDUCTION * reductionKpa, FULL_SERVICE_KPA);
}

/**
 * Retarding force of one vehicle’s air brake, kN: r·W·μ·p/p_full. `brakingRatio` r: shoe force at
 * full service over the weight of the vehicle; `friction` μ of shoe on wheel; `cylinderKpa` p.
 */
export const brakeForceKn = (
  massKg: number,
  brakingRatio: number,
  friction: number,
  cylinderKpa: number,
): number =>
  (((brakingRatio * massKg * STANDARD_GRAVITY) / N_PER_KN) * friction * cylinderKpa) / FULL_SERVICE_KPA;

/** Shoe force at full service over the weight on rail, lowest and highest. */
export const BRAKING_RATIOS = { loaded: [0.085, 0.13], empty: [0.18, 0.32] } as const;
/** Composition shoe on steel. */
export const SHOE_FRICTION = [0.25, 0.4] as const;

/** How fast an application runs along the train, m/s: service, and emergency. */
export const PROPAGATION_MS = { service: 150, emergency: 280 } as const;

export const trainBrakeMethod: Method = {
  id: 'train-brake',
  name: 'Air brake force from the reduction of the brake pipe',
  formula:
    'B = r·W·μ·p/p_full; p = 2.5 × reduction, at most p_full = 64 psi (441 kPa), nothing below 4 psi; 1.2 p_full in emergency. r: braking ratio, loaded 0.085 to 0.13, empty 0.18 to 0.32; μ: shoe friction 0.25 to 0.40.',
  validRange:
    'Quasi-static, every brake cut in and of ordinary travel, brake pipe charged to 90 psi. Leaking, cut-out and sticking brakes change it; so does a pipe not fully charged. Locomotives: the recorded cylinder pressure where there is one, for their brakes may be released or set by themselves.',
  sources: [
    {
      text: 'Cylinder pressure 2.5 times the reduction; full service 64 psi from 90 psi; emergency a fifth more',
      status: 'from memory',
    },
    { text: 'Ranges of braking ratio and of shoe friction', status: 'engineering judgement' },
  ],
};
