import type { Fact } from '../fact';
import { wheelLoadMargin } from '../margins/wheel-load';
import { looked } from './build';

export const wheelLight: Fact = {
  id: 'wheelLight',
  name: 'The wheel was light',
  definition:
    'The first derailed wheel carried little load: an empty car, or load lifted off it by twisted track, a hard side bearing, or lading set to one side or end.',
  negation: 'the wheel carried an ordinary load',
  witnesses: [
    wheelLoadMargin,
    looked('obsSideBearingHard', {
      ifTrue: 0.35,
      ifFalse: 0.08,
      reason:
        'A side bearing hard down carries the body on one side; bright and older than the derailment it was so for weeks.',
    }),
    looked('obsLoadShifted', {
      ifTrue: 0.12,
      ifFalse: 0.04,
      reason: 'Seldom, and most lading found shifted was shifted by the pile.',
    }),
  ],
};
