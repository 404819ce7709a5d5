import type { OtherExplanation } from '../explanation';

export const inTrainForce: OtherExplanation = {
  id: 'inTrainForce',
  name: 'Train forces: stringline or jackknife',
  description: 'Draft pulled cars to the inside of a curve, or buff pushed them out.',
  speaksFor: [
    'Slack running in or out in the half minute before',
    'Couplers jammed hard over at the first derailed car',
    'Long and short cars together, empties ahead of heavy tonnage',
    'Derailed to the inside in draft, to the outside in buff',
  ],
  toExclude: [
    'Read the recorder: throttle, dynamic brake, brake pipe against distance',
    'Set out the consist by length and weight',
    'Read the coupler forces, steady and simulated, and the stringline and jackknife screens',
    'Look at couplers, strikers and carrier irons of the first derailed car',
  ],
  observations: ['obsSlackEvent', 'obsCouplerAngle'],
  findings: ['couplerForceAhead', 'couplerLateralRatio', 'stringline', 'jackknife'],
  readings: ['grossWeight', 'lengthOverPullingFaces', 'truckCentres', 'gradeAtPod'],
};
