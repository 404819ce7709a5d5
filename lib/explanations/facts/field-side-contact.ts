import type { Fact } from '../fact';
import { rolloverShareMargin } from '../margins/rollover-share';
import { chosen, gauged, looked } from './build';

export const fieldSideContact: Fact = {
  id: 'fieldSideContact',
  name: 'A rail was loaded towards its field side',
  definition:
    'A rail leaned outward, or carried the wheels on the field side of its head, so that little side force was needed to turn it over.',
  negation: 'the rails stood upright and were loaded mid-head or at the gauge side',
  witnesses: [
    rolloverShareMargin,
    chosen('contactBand', {
      on: 'innerRail',
      outcomes: [
        ['gaugeCorner', 0.05, 0.2],
        ['crown', 0.25, 0.7],
        ['fieldSide', 0.7, 0.1],
      ],
      reason: 'The bright band shows where the wheels of the last weeks ran, hollow ones included.',
    }),
    looked('obsFieldBand', {
      ifTrue: 0.7,
      ifFalse: 0.12,
      needsUndisturbed: true,
      unlessChosen: 'contactBand',
      reason: 'As the band on the inner rail: it lies where the load lay.',
    }),
    looked('obsFalseFlange', {
      ifTrue: 0.45,
      ifFalse: 0.12,
      reason:
        'A raised field-side edge bears on the field side of the low rail. About one car in ten has one and runs.',
    }),
    gauged('hollowCheck', {
      ifTrue: 0.35,
      ifFalse: 0.08,
      unlessMeasured: 'treadHollow',
      reason: 'A tread hollowed past the gauge runs on its rim edge on the low rail.',
    }),
  ],
};
