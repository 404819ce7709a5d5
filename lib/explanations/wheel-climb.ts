import type { Explanation } from './explanation';

export const wheelClimb: Explanation = {
  id: 'wheelClimb',
  name: 'Wheel climb',
  description:
    'The flange rolled up the gauge face of a rail that stood, over its head and off the field side.',
  clause: 'a wheel climbed the rail',
  characteristic: ['flangeCrossedHead', 'flangeShallowOrDry', 'sideForceHigh', 'wheelLight'],
  expectations: {
    flangeCrossedHead: {
      probability: 0.93,
      reason: 'It is what a climb is; a wheel that is lifted and hops over leaves no crossing.',
    },
    railRolledFirst: {
      probability: 0.04,
      reason: 'The rail stands upright under a climbing wheel; it is turned over afterwards, if at all.',
    },
    droppedInside: {
      probability: 0.04,
      reason: 'The mate comes down inside, but only because its fellow crossed the other head.',
    },
    pointPicked: {
      probability: 0.02,
      reason: 'A climb needs no switch; one on top of a point would be a pick.',
    },
    flangeShallowOrDry: {
      probability: 0.8,
      reason:
        'Flanges climb where they grip: dry face, worn angle. A very light wheel climbs on a good one too.',
    },
    sideForceHigh: {
      probability: 0.75,
      reason:
        'Something must push the flange up: a sharp curve, a stiff truck, a kink, slack. A very light wheel needs less.',
    },
    wheelLight: {
      probability: 0.75,
      reason: 'Most climbs are of empty cars, or on twisted track that lifts load off a wheel.',
    },
    fieldSideContact: {
      probability: 0.2,
      reason: 'Has no part in a climb; hollow wheels steer a little worse.',
    },
    railsWeaklyHeld: {
      probability: 0.2,
      reason: 'Has no part in a climb, and is about as common as elsewhere.',
    },
    gaugeBeyondSpan: {
      probability: 0.03,
      reason: 'Where the wheelset does not span the gauge it drops before it climbs.',
    },
    pointCouldBeStruck: { probability: 0.1, reason: 'As common as anywhere; most places have no switch.' },
  },
};
