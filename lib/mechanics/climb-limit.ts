import type { Method } from '../findings/finding';

/**
 * L/V at which a wheel can climb the rail: (tan δ − μ)/(1 + μ tan δ).
 * `contactAngleRad` δ is the angle of this wheel on this rail, 0 to π/2: a gauge face worn
 * shallower than the flange governs. `friction` μ ≥ 0 at the flange. At or below zero when
 * friction alone could hold the wheel up (tan δ ≤ μ).
 * Source: Nadal, 1896; TCRP Report 71 vol. 5, ch. 2.
 */
export function climbLimit(contactAngleRad: number, friction: number): number {
  const tangent = Math.tan(contactAngleRad);
  return (tangent - friction) / (1 + friction * tangent);
}

export const climbLimitMethod: Method = {
  id: 'climb-limit',
  name: 'Single-wheel climb limit',
  formula:
    'L/V = (tan δ − μ)/(1 + μ·tan δ). L, V: lateral and vertical force of the flanging wheel; δ: contact angle; μ: friction at the flange.',
  validRange:
    'δ between 0 and 90°. Assumes a positive angle of attack with lateral friction saturated; conservative at small or negative angles of attack. Exceeding it is necessary for climb, not sufficient.',
  sources: [
    { text: 'Nadal, 1896', status: 'published' },
    { text: '49 CFR part 238, appendix C(a)(1), with μ = 0.5 over five feet', status: 'published' },
    { text: 'TCRP Report 71 vol. 5 (2005), ch. 2, fig. 2.1', status: 'published' },
  ],
};
