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
  upTo: [5.5, 9.5],
  outcomes: [
    { id: 'few', label: 'up to 5', ifTrue: 0.15, ifFalse: 0.6 },
    { id: 'many', label: '6 to 9', ifTrue: 0.4, ifFalse: 0.32 },
    { id: 'most', label: '10 and more', ifTrue: 0.45, ifFalse: 0.08 },
  ],
  findings: ['defectiveTiesMost'],
  reason:
    'Of about 24 ties in 39 ft, 49 CFR 213.109 asks eight good ones of classes 2 and 3 and twelve of classes 4 and 5. Ten and more bad ones seldom lie so evenly that the rest still hold; up to five are met on good track.',
};
