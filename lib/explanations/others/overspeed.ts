import type { OtherExplanation } from '../explanation';

export const overspeed: OtherExplanation = {
  id: 'overspeed',
  name: 'Overspeed, overturning',
  description: 'The train ran through the curve fast enough to overturn outward.',
  speaksFor: [
    'Speed far above balance of the curve',
    'Cars over on the outer side, no flange marks',
    'Wheels of the inner rail off the rail without a mark',
  ],
  toExclude: [
    'Recorder speed with its wheel-diameter and clock errors',
    'Measure curvature and elevation over 155 ft',
    'Compare with the balance and maximum speed of the curve',
    'Read the overspeed screen: load off the inner rail, and the speed at which the car would turn over',
  ],
  observations: [],
  findings: ['overturningShare', 'overturningSpeed'],
  readings: ['speedAtPod', 'authorisedSpeed', 'crosslevel', 'midOrdinate62'],
};
