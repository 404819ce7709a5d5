import type { Fact } from '../fact';
import { looked } from './build';

export const pointPicked: Fact = {
  id: 'pointPicked',
  name: 'A flange took the wrong side of a switch point',
  definition:
    'At a facing point a flange struck or rode up the point and took the wrong route, before any other wheel had left the rails.',
  negation: 'no flange took the wrong side of a switch point',
  witnesses: [
    looked('obsFirstMarkAtPoint', {
      ifTrue: 0.93,
      ifFalse: 0.05,
      reason:
        'If the point was picked, the first mark is there. Derailments of other kinds begin at a switch about one time in twenty.',
    }),
    looked('obsFlangeOnPoint', {
      ifTrue: 0.8,
      ifFalse: 0.03,
      orMarks: ['flangeOnPoint'],
      reason: 'A flange that rides the point leaves its line on top of it; hardly anything else does.',
    }),
    looked('obsPointTipStruck', {
      ifTrue: 0.75,
      ifFalse: 0.2,
      orMarks: ['pointStrike'],
      reason: 'A struck tip shows it; but cars already on the ground batter the tip of any switch they meet.',
    }),
    looked('obsRoutesSplit', {
      ifTrue: 0.75,
      ifFalse: 0.04,
      reason:
        'Two trucks or two wheels of an axle on different routes means that one was diverted. A switch thrown under the train does the same.',
    }),
  ],
};
