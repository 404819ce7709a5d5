import type { OtherExplanation } from '../explanation';

export const runThroughSwitch: OtherExplanation = {
  id: 'runThroughSwitch',
  name: 'Improperly lined or run-through switch',
  description: 'A switch lay wrong, was run through, or moved under the train.',
  speaksFor: [
    'Bent rods, broken lock, points forced',
    'Indication log against the route given',
    'Two trucks on different routes with an undamaged tip',
  ],
  toExclude: [
    'Position of both points, lock and rods before anyone throws it',
    'Indication and control log',
    'Who passed last, in which direction',
  ],
  observations: ['obsRunThrough', 'obsRoutesSplit'],
  findings: [],
  readings: ['pointGap', 'pointThrow'],
};
