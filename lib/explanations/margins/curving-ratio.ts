import {
  carInCurve,
  CENTRE_PLATE_FRICTION,
  CENTRE_PLATE_RADIUS_M,
  SLIDING_FROM_PER_M,
} from '../../mechanics/car-in-curve';
import { frictionCentreMethod, truckSteering } from '../../mechanics/friction-centre';
import type { Assumed, MarginWitness } from '../witness';

/**
 * L/V of the leading outer wheel by the friction centre, of an evenly loaded truck whatever its
 * weight. What lifts a wheel, its load off the middle and twisted track, is a fact of its own; coupler
 * forces hang on the weights that fact is found from. None of them may enter here as well.
 * Written out value by value: it is drawn thousands of times for every reading left out.
 */
function leadingOuterRatio(values: readonly number[]): number {
  const truck = carInCurve({
    curvaturePerM: values[0] ?? NaN,
    elevationMm: values[1] ?? NaN,
    speedMs: values[2] ?? NaN,
    wheelKn: 1,
    friction: values[3] ?? NaN,
    slidingFromPerM: values[6] ?? NaN,
    wheelbaseM: values[4] ?? NaN,
    gravityCentreMm: values[5] ?? NaN,
    offsetMm: 0,
    liftedKn: 0,
    inwardKn: 0,
    plateFriction: values[7] ?? NaN,
    plateRadiusM: values[8] ?? NaN,
  });
  return truckSteering(truck).lateralsKn[0] / truck.verticalsKn[0];
}

const assumed = (id: string, [low, high]: readonly [number, number], text: string): Assumed => ({
  id,
  low,
  high,
  source: { text, status: 'engineering judgement' },
});

export const curvingRatioMargin: MarginWitness = {
  kind: 'margin',
  id: 'curvingRatio',
  name: 'Side force over load from curving and unbalance',
  needsUndisturbed: true,
  inputs: ['curvature', 'elevation', 'speed', 'topOfRailFriction', 'axleSpacing', 'gravityCentreHeight'],
  assumed: [
    assumed('slidingFromPerM', SLIDING_FROM_PER_M, 'Every wheel slides with its full friction from 3 to 6°'),
    assumed('plateFriction', CENTRE_PLATE_FRICTION, 'Friction of the centre plate 0.1 to 0.3'),
    assumed('plateRadiusM', CENTRE_PLATE_RADIUS_M, 'Radius at which the centre plate rubs, 4 to 5 in'),
  ],
  formula:
    'L/V of the leading outer wheel as the curving loads have it, of an evenly loaded truck: P = min over x of [Σμ·V·r + Q·(x − b/2) + T]/x; L = P − μ·V·x/r; V = V₀ ± unbalance. What lifts the wheel, and push and pull of the couplers, are left to their own facts',
  sources: [...frictionCentreMethod.sources, { text: '49 CFR 213.57(b), unbalance', status: 'published' }],
  unit: 'L/V',
  compute: leadingOuterRatio,
  upTo: [0.55, 0.75],
  outcomes: [
    { id: 'low', label: 'below 0.55', ifTrue: 0.2, ifFalse: 0.45 },
    { id: 'middle', label: '0.55 to 0.75', ifTrue: 0.3, ifFalse: 0.3 },
    { id: 'high', label: 'above 0.75', ifTrue: 0.5, ifFalse: 0.25 },
  ],
  findings: ['curvingWheelRatio', 'unbalance', 'unbalanceLateral', 'unbalanceShift'],
  reason:
    'Sharp, dry curves and unbalance give high side forces; kinks, stiff trucks and train forces give them without, so a low figure only makes them less likely.',
};
