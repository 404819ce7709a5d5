import { CONTACT_SPACING_MM } from '../../mechanics/unbalance-load';
import { unbalanceMm } from '../../track/curving-speed';
import { curvatureOfDegrees } from '../../track/curvature';
import type { MarginWitness } from '../witness';

/** Curve at which the leading axle of a three-piece truck slides sideways on the inner rail. */
const SLIDING_FROM = curvatureOfDegrees(5);

/**
 * L/V of the outer leading wheel, quasi-static: friction of the inner wheel sliding sideways plus
 * unbalance, over the static load with the shift of unbalance. The car's weight cancels.
 */
function outerWheelRatio(
  curvature: number,
  elevationMm: number,
  speedMs: number,
  friction: number,
  gravityCentreMm: number,
): number {
  const share = unbalanceMm(curvature, speedMs, elevationMm) / CONTACT_SPACING_MM;
  const shift = (share * gravityCentreMm) / CONTACT_SPACING_MM;
  const outer = Math.max(0.5 + shift, 0.05);
  const inner = Math.max(0.5 - shift, 0);
  const sliding = Math.min(1, Math.abs(curvature) / SLIDING_FROM);
  return (friction * sliding * inner + share) / outer;
}

export const curvingRatioMargin: MarginWitness = {
  kind: 'margin',
  id: 'curvingRatio',
  name: 'Side force over load from curving and unbalance',
  needsUndisturbed: true,
  inputs: ['curvature', 'elevation', 'speed', 'topOfRailFriction'],
  assumed: [
    {
      id: 'gravityCentreMm',
      low: 1500,
      high: 2500,
      source: {
        text: 'Height of the centre of gravity of freight cars, 60 to 98 in',
        status: 'engineering judgement',
      },
    },
  ],
  formula:
    'L/V = (µ·k·(1/2 − ΔV/W) + Eu/s)/(1/2 + ΔV/W); Eu = 0.0007·D·V² − Ea; ΔV/W = Eu·h/s²; k = D/5°, at most 1; s = 60 in',
  sources: [
    { text: '49 CFR 213.57(b), unbalance', status: 'published' },
    { text: 'Statics of an axle on canted track', status: 'published' },
    {
      text: 'The inner leading wheel of a three-piece truck slides sideways from about 5 degrees of curve',
      status: 'engineering judgement',
    },
  ],
  unit: 'L/V',
  compute: ([curvature = NaN, elevation = NaN, speed = NaN, friction = NaN, centre = NaN]) =>
    outerWheelRatio(curvature, elevation, speed, friction, centre),
  upTo: [0.3, 0.45],
  outcomes: [
    { id: 'low', label: 'below 0.30', ifTrue: 0.2, ifFalse: 0.45 },
    { id: 'middle', label: '0.30 to 0.45', ifTrue: 0.3, ifFalse: 0.3 },
    { id: 'high', label: 'above 0.45', ifTrue: 0.5, ifFalse: 0.25 },
  ],
  findings: ['unbalance', 'unbalanceLateral', 'unbalanceShift'],
  reason:
    'Sharp, dry curves and unbalance give high side forces; kinks, stiff trucks and train forces give them without, so a low figure only makes them less likely.',
};
