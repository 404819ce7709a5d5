import type { Method } from '../findings/finding';
import { climbLimit } from './climb-limit';

/**
 * Limit of |L/V| summed over the two wheels of an axle: the climb limit of the flanging wheel
 * plus the friction of the other. `contactAngleRad` 0 to π/2, frictions ≥ 0.
 * Source: Weinstock, 1984.
 */
export function axleSumLimit(contactAngleRad: number, flangeFriction: number, otherFriction: number): number {
  return climbLimit(contactAngleRad, flangeFriction) + otherFriction;
}

/** |L/V| of the two wheels of an axle, summed. Forces in any one unit, verticals > 0. */
export function axleSum(lateral: readonly [number, number], vertical: readonly [number, number]): number {
  return Math.abs(lateral[0] / vertical[0]) + Math.abs(lateral[1] / vertical[1]);
}

export const axleSumMethod: Method = {
  id: 'axle-sum',
  name: 'Axle-sum climb limit',
  formula:
    '|L/V| of the flanging wheel + |L/V| of the other wheel ≤ (tan δ − μ)/(1 + μ·tan δ) + μ₂. δ, μ: contact angle and friction of the flanging wheel; μ₂: tread friction of the other.',
  validRange:
    'As the single-wheel limit, less sensitive to friction and to the angle of attack because the other wheel’s friction is counted.',
  sources: [{ text: 'Weinstock, ASME 84-WA/RT-1 (1984)', status: 'from memory' }],
};
