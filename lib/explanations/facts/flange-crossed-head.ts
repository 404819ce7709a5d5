import type { Fact } from '../fact';
import { looked, marked } from './build';

export const flangeCrossedHead: Fact = {
  id: 'flangeCrossedHead',
  name: 'A flange crossed the head of a rail',
  definition:
    'A flange of the first wheel to leave rolled up the gauge face, over the head of a rail that stood upright, and off its field side.',
  negation: 'no flange crossed the head of an upright rail',
  witnesses: [
    looked('obsFlangeAcrossHead', {
      ifTrue: 0.85,
      ifFalse: 0.06,
      orMarks: ['flangeOnHead'],
      reason:
        'A climbing flange nearly always leaves its line over the head; a hop, a lost or a polished rail can hide it. A later wheel of the pile leaves one now and then.',
    }),
    looked('obsMateInside', {
      ifTrue: 0.75,
      ifFalse: 0.12,
      reason:
        'When one wheel goes off field side its mate must come down between the rails at the same station; ballast and plates may swallow the mark. Other drops seldom pair like that.',
    }),
    marked('markDropField', 'Drop to the field side on record', ['dropFieldSide'], {
      ifTrue: 0.8,
      ifFalse: 0.2,
      reason:
        'The wheel that crossed comes down outside. Wheels thrown out later by the pile do so too, farther on.',
    }),
    looked('obsTieMarksOrder', {
      ifTrue: 0.75,
      ifFalse: 0.45,
      reason:
        'A climb takes one axle off by itself, and the rest follow it or never leave. Wide gauge does much the same, so this tells little.',
    }),
  ],
};
