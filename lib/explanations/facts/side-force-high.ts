import type { Fact } from '../fact';
import { curvingRatioMargin } from '../margins/curving-ratio';
import { chosen, looked } from './build';

export const sideForceHigh: Fact = {
  id: 'sideForceHigh',
  name: 'The side force was high',
  definition:
    'The side force on the outer rail, for the load a wheel of that car carries standing, was well above that of ordinary running: steering in a sharp curve, unbalance, a truck that would not turn, a kink, or push and pull in the train.',
  negation: 'the side force was that of ordinary running',
  witnesses: [
    curvingRatioMargin,
    chosen('centrePlate', {
      on: 'firstDerailedTruck',
      outcomes: [
        ['lubricated', 0.25, 0.55],
        ['dry', 0.35, 0.33],
        ['galled', 0.3, 0.07],
        ['broken', 0.1, 0.05],
      ],
      reason:
        'A galled plate holds the truck askew after every curve; dry and polished plates are common and turn well enough.',
    }),
    looked('obsTruckStiff', {
      ifTrue: 0.35,
      ifFalse: 0.08,
      reason:
        'A stiff truck is one of several ways to a high side force; few cars in service show it plainly.',
    }),
    looked('obsLineKink', {
      ifTrue: 0.4,
      ifFalse: 0.12,
      needsUndisturbed: true,
      reason: 'A kink throws the truck sideways once; most high side forces need none.',
    }),
    looked('obsSlackEvent', {
      ifTrue: 0.4,
      ifFalse: 0.15,
      reason: 'Slack runs in or out on many curves without harm; a derailment with it is more than chance.',
    }),
    looked('obsCouplerAngle', {
      ifTrue: 0.25,
      ifFalse: 0.08,
      reason: 'Couplers jam hard over in the pile as well; before it they show push or pull sideways.',
    }),
  ],
};
