import type { OtherExplanation } from '../explanation';

export const loadShift: OtherExplanation = {
  id: 'loadShift',
  name: 'Load shift',
  description: 'Lading moved to one side or end, or overhung, and took load off a wheel or struck something.',
  speaksFor: [
    'Lading off centre with traces older than the pile',
    'Scale weights of truck or side unequal',
    'Marks of lading on structures or cars beside',
  ],
  toExclude: [
    'Look at the lading before it is unloaded',
    'Weigh each truck and side',
    'Look at stakes, straps and doors',
  ],
  observations: ['obsLoadShifted'],
  findings: [],
  readings: ['grossWeight'],
};
