import type { Fact } from '../fact';
import { pointReachMargin } from '../margins/point-reach';
import { gauged, looked } from './build';

export const pointCouldBeStruck: Fact = {
  id: 'pointCouldBeStruck',
  name: 'The point could be struck',
  definition:
    'The tip of a facing point, or the floor of a chip in it, lay within reach of the flange and stood outside its face, or offered it a slope.',
  negation: 'no point lay open to the flange, or there was none',
  witnesses: [
    pointReachMargin,
    looked('obsPointChipped', {
      ifTrue: 0.6,
      ifFalse: 0.12,
      reason: 'Most points that are picked were worn or chipped for months; so is one in eight in service.',
    }),
    looked('obsPointStandsOpen', {
      ifTrue: 0.55,
      ifFalse: 0.06,
      needsUndisturbed: true,
      reason:
        'An open point is an open door. It may have been forced open after the derailment: look before anyone throws it.',
    }),
    looked('obsThinSharpFlange', {
      ifTrue: 0.4,
      ifFalse: 0.12,
      reason:
        'A thin, steep or sharp flange finds a gap that a full one passes. About one wheel in eight looks so.',
    }),
    gauged('flangeHeightCheck', {
      ifTrue: 0.25,
      ifFalse: 0.05,
      unlessMeasured: 'flangeHeight',
      reason: 'A high flange reaches deeper beside the point.',
    }),
  ],
};
