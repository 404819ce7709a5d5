import type { Fact } from '../fact';
import { climbLimitMargin } from '../margins/climb-limit';
import { chosen, looked } from './build';

export const flangeShallowOrDry: Fact = {
  id: 'flangeShallowOrDry',
  name: 'The flange was too shallow or too dry to hold',
  definition:
    'Contact angle and friction together left the flange a climb limit that side forces of ordinary curving reach.',
  negation: 'flange angle and lubrication were such as hold in ordinary running',
  witnesses: [
    climbLimitMargin,
    chosen('gaugeFaceCondition', {
      on: 'outerRail',
      outcomes: [
        ['greased', 0.05, 0.35],
        ['damp', 0.15, 0.2],
        ['dry', 0.4, 0.35],
        ['dryRough', 0.4, 0.1],
      ],
      reason:
        'A rough face that sheds flakes grips; a greased one does not. Dry by itself is met on most track without lubricators.',
    }),
    looked('obsDryGaugeFace', {
      ifTrue: 0.6,
      ifFalse: 0.2,
      needsUndisturbed: true,
      unlessChosen: 'gaugeFaceCondition',
      reason:
        'Steel flakes at the foot of the face are fresh wear from flanges that grip. Rain and dirt change it within hours.',
    }),
  ],
};
