import { climbLimit, climbLimitMethod } from '../../mechanics/climb-limit';
import type { MarginWitness } from '../witness';

/** L/V at which the wheel climbs; the contact angle is that of the outlines of wheel and rail on each other, else the shallower of flange and worn gauge face. */
export const climbLimitMargin: MarginWitness = {
  kind: 'margin',
  id: 'climbLimit',
  name: 'Climb limit of this wheel on this rail',
  needsUndisturbed: true,
  inputs: ['flangeAngle', 'gaugeFaceAngle', 'gaugeFaceFriction'],
  assumed: [],
  formula:
    'L/V = (tan δ − μ)/(1 + μ·tan δ), δ the smaller of flange angle and contact angle of the outlines of wheel and rail, or gauge-face angle without them',
  sources: climbLimitMethod.sources,
  unit: 'L/V',
  compute: ([flangeAngle = NaN, gaugeFaceAngle = NaN, friction = NaN]) =>
    climbLimit(Math.min(flangeAngle, gaugeFaceAngle), friction),
  upTo: [0.85, 1.15],
  outcomes: [
    { id: 'low', label: 'below 0.85', ifTrue: 0.6, ifFalse: 0.12 },
    { id: 'middle', label: '0.85 to 1.15', ifTrue: 0.3, ifFalse: 0.28 },
    { id: 'high', label: 'above 1.15', ifTrue: 0.1, ifFalse: 0.6 },
  ],
  findings: ['climbLimit'],
  reason:
    'A 75° flange on dry steel (µ = 0.5) holds to 1.13; ordinary curving seldom passes 0.8, so a limit below that is reached, and one well above it hardly ever.',
};
