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
  upTo: [12, 25],
  outcomes: [
    { id: 'none', label: 'up to 12 mm (1/2 in), or nothing', ifTrue: 0.65, ifFalse: 0.015 },
    { id: 'little', label: '12 to 25 mm (to 1 in)', ifTrue: 0.25, ifFalse: 0.1 },
    { id: 'enough', label: 'more than 25 mm', ifTrue: 0.1, ifFalse: 0.885 },
  ],
  findings: ['dropInMargin'],
  reason:
    'Gauge opens further under the wheels that spread it than slide marks show, so half an inch left on paper may have been none; an inch and more left is hard to square with a drop.',
};
