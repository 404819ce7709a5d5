import type { MarginWitness } from '../witness';

export const defectiveTiesMargin: MarginWitness = {
  kind: 'margin',
  id: 'defectiveTiesMost',
  name: 'Most defective ties in 39 ft before the POD',
  needsUndisturbed: true,
  inputs: ['defectiveTies'],
  assumed: [],
  formula: 'greatest count of defective ties in any 39 ft',
  sources: [{ text: '49 CFR 213.109(b): 39-ft segment', status: 'published' }],
  unit: 'ties',
  compute: ([ties = NaN]) => ties,
  upTo: [7.5, 13.5],
  outcomes: [
    { id: 'few', label: 'up to 7', ifTrue: 0.2, ifFalse: 0.7 },
    { id: 'many', label: '8 to 13', ifTrue: 0.35, ifFalse: 0.23 },
    { id: 'most', label: '14 and more', ifTrue: 0.45, ifFalse: 0.07 },
  ],
  findings: ['defectiveTies'],
  reason:
    'Of about 24 ties in 39 ft, 49 CFR 213.109 asks eight good ones of classes 2 and 3 and twelve of classes 4 and 5; with 14 bad ones ten are left, and where they lie decides.',
};
