import type { Method } from '../findings/finding';

/** Standard gravity, m/s² (3rd CGPM, 1901; NIST SP 811). */
const STANDARD_GRAVITY = 9.80665;

/**
 * Static load of one wheel (kN) with the weight spread evenly: W·g/(2n). `grossWeightKg` on rail;
 * `axles` n ≥ 1. Source: statics.
 */
export function staticWheelLoadKn(grossWeightKg: number, axles: number): number {
  return (grossWeightKg * STANDARD_GRAVITY) / (2 * axles) / 1000;
}

export const staticWheelLoadMethod: Method = {
  id: 'static-wheel-load',
  name: 'Static wheel load',
  formula: 'V = W·g/(2n). W: gross weight on rail; n: axles; g = 9.80665 m/s².',
  validRange:
    'Weight spread evenly over all wheels: a load to one side or end, a twisted frame or warped track changes it. A scale reading per truck and side is better.',
  sources: [{ text: 'Statics; standard gravity from NIST SP 811', status: 'published' }],
};
