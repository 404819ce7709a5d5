import type { OtherExplanation } from '../explanation';

export const harmonicRoll: OtherExplanation = {
  id: 'harmonicRoll',
  name: 'Resonance (rock-and-roll)',
  description: 'Low staggered joints rocked a high car at its own rhythm until wheels lifted.',
  speaksFor: [
    'Five or more low joints one after another on staggered rail',
    'Speed about 12 to 25 mph (common practice, no source)',
    'A high car with trucks about a rail length apart',
    'Side bearings hammered on both sides',
  ],
  toExclude: [
    'Measure crosslevel at every joint for 400 ft back',
    'Match speed from the recorder',
    'Read the harmonic roll screen: speed over the resonant speed of 39-ft staggered joints',
    'Look at side bearings, springs and wedges',
  ],
  observations: ['obsLowJointsInRow'],
  findings: ['harmonicRollSpeed'],
  readings: ['crosslevel', 'speedAtPod', 'truckCentres', 'wedgeRise', 'springs'],
};
