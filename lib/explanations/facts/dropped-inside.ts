import type { Fact } from '../fact';
import { looked, marked } from './build';

export const droppedInside: Fact = {
  id: 'droppedInside',
  name: 'A wheel dropped between the rails, no head crossed',
  definition:
    'The first wheel to leave came down between the rails, its tread rim sliding down the inside of the head, with no flange over any head.',
  negation: 'the first wheel did not simply drop between the rails',
  witnesses: [
    looked('obsRimMarkInside', {
      ifTrue: 0.85,
      ifFalse: 0.1,
      orMarks: ['treadRimInside'],
      reason:
        'The rim must scrape down the gauge corner as the tread lets go. The mate of a climbing wheel and following wheels leave shorter, later scrapes.',
    }),
    looked('obsMateHardAgainst', {
      ifTrue: 0.7,
      ifFalse: 0.2,
      reason:
        'The wheel that stays up is held hard against its rail by the one going down. Any sharp curve also rubs the outer rail.',
    }),
    marked('markDropGauge', 'Drop between the rails on record', ['dropGaugeSide'], {
      ifTrue: 0.85,
      ifFalse: 0.4,
      reason:
        'Where a wheel came down inside there is a mark; but the mate of a climbing wheel also comes down inside.',
    }),
  ],
};
