import type { Explanation } from './explanation';

export const railRollover: Explanation = {
  id: 'railRollover',
  name: 'Rail rollover',
  description: 'A rail turned over about the field-side corner of its base and let wheels down.',
  clause: 'a rail rolled over',
  characteristic: ['railRolledFirst', 'fieldSideContact', 'sideForceHigh', 'railsWeaklyHeld'],
  expectations: {
    flangeCrossedHead: {
      probability: 0.1,
      reason: 'Wheels run onto the web, not over an upright head; later wheels may cross one.',
    },
    railRolledFirst: {
      probability: 0.95,
      reason: 'It is what a rollover is; a rail that springs back may be denied by its looks.',
    },
    droppedInside: {
      probability: 0.2,
      reason: 'Wheels do come down inside, but off a rail lying over, seldom down an upright head.',
    },
    pointPicked: { probability: 0.02, reason: 'Has no part in it.' },
    flangeShallowOrDry: {
      probability: 0.25,
      reason: 'A flange that grips climbs rather than pushes; dry rail makes both.',
    },
    sideForceHigh: {
      probability: 0.8,
      reason: 'The side forces of a whole truck side must turn the rail over.',
    },
    wheelLight: {
      probability: 0.2,
      reason: 'Light wheels neither push nor hold; rails are rolled by loaded cars as by empty ones.',
    },
    fieldSideContact: {
      probability: 0.65,
      reason: 'Hollow wheels on the low rail or a rail leaning out take the usual resistance away.',
    },
    railsWeaklyHeld: { probability: 0.7, reason: 'Spikes and plates that hold stop a rail that would turn.' },
    gaugeBeyondSpan: {
      probability: 0.2,
      reason: 'A turning head opens the gauge, which slide marks then show.',
    },
    pointCouldBeStruck: { probability: 0.1, reason: 'As common as anywhere.' },
  },
};
