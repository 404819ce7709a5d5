import { dropInMargin, dropInMethod } from '../../mechanics/drop-in';
import { toCanonical } from '../../readings/convert';
import type { MarginWitness } from '../witness';

const HALF_INCH = toCanonical(0.5, 'in', 'crossLength');

export const dropInMarginWitness: MarginWitness = {
  kind: 'margin',
  id: 'dropInMargin',
  name: 'What is left before a wheel drops in',
  needsUndisturbed: true,
  inputs: ['backToBackMin', 'flangeThickness', 'rimWidth', 'gaugeStanding', 'lateralMovement'],
  assumed: [
    {
      id: 'overlapMm',
      low: HALF_INCH,
      high: 2 * HALF_INCH,
      source: {
        text: 'Overlap needed, 1/2 to 1 in: corner radius and crushed edge of the rim',
        status: 'engineering judgement',
      },
    },
  ],
  formula: 'margin = B + t + W − s − G; G = standing gauge + movement under load',
  sources: dropInMethod.sources,
  unit: 'mm',
  compute: ([
    backToBackMm = NaN,
    flangeThicknessMm = NaN,
    rimWidthMm = NaN,
    staticGaugeMm = NaN,
    movementMm = NaN,
    overlapMm = NaN,
  ]) => dropInMargin({ backToBackMm, flangeThicknessMm, rimWidthMm, overlapMm, staticGaugeMm, movementMm }),
  upTo: [0, 20],
  outcomes: [
    { id: 'none', label: 'nothing left', ifTrue: 0.55, ifFalse: 0.02 },
    { id: 'little', label: 'up to 20 mm (3/4 in)', ifTrue: 0.3, ifFalse: 0.1 },
    { id: 'enough', label: 'more than 20 mm', ifTrue: 0.15, ifFalse: 0.88 },
  ],
  findings: ['dropInMargin'],
  reason:
    'Gauge opens further under the wheels that spread it than slide marks show, so little left on paper may have been none; three quarters of an inch and more left is hard to square with a drop.',
};
