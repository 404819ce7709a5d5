import type { Fact } from '../fact';
import { counted, looked } from './build';

export const railRolledFirst: Fact = {
  id: 'railRolledFirst',
  name: 'A rail rolled before wheels dropped',
  definition:
    'A rail turned over about the field-side corner of its base before any wheel came down beside it.',
  negation: 'no rail rolled before the wheels were down',
  witnesses: [
    looked('obsRunningOnWeb', {
      ifTrue: 0.8,
      ifFalse: 0.08,
      orMarks: ['runningOnWeb'],
      reason:
        'Wheels that follow onto a rail lying over run on its web and fillet. A rail turned over by derailed wheels is rubbed too, but in short, heavy scrapes.',
    }),
    looked('obsRailLyingOver', {
      ifTrue: 0.75,
      ifFalse: 0.25,
      reason: 'A rolled rail may spring back or be torn out; derailed wheels also turn rails over.',
    }),
    looked('obsGaugeSpikesLifted', {
      ifTrue: 0.8,
      ifFalse: 0.15,
      reason:
        'A rail that turns over its field corner draws the gauge-side spikes and leaves the field-side ones. Derailed wheels and machines draw spikes without order.',
    }),
    counted('gaugeSpikesDrawn', {
      bands: [
        [0, 0.15, 0.6],
        [3, 0.35, 0.3],
        [7, 0.5, 0.1],
      ],
      reason:
        'Seven or more of ten gauge-side spikes drawn in a row is what a rolling rail leaves; one or two loose ones are found on any secondary track.',
    }),
  ],
};
