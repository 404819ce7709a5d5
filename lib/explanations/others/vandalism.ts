import type { OtherExplanation } from '../explanation';

export const vandalism: OtherExplanation = {
  id: 'vandalism',
  name: 'Vandalism',
  description: 'Someone tampered with track, switch or train.',
  speaksFor: [
    'Locks cut, fastenings removed in a row with tools',
    'Things placed on the rail',
    'Earlier reports at the same place',
  ],
  toExclude: [
    'Look for tool marks, locks, and fastenings laid aside',
    'Keep people off and tell the police before moving anything',
  ],
  observations: ['obsTampering', 'obsObstruction'],
  findings: [],
  readings: [],
};
