import type { Fact } from '../fact';
import { dropInMarginWitness } from '../margins/drop-in';
import { gauged } from './build';

export const gaugeBeyondSpan: Fact = {
  id: 'gaugeBeyondSpan',
  name: 'Gauge under load exceeded what the wheelset spans',
  definition:
    'With one flange hard against its rail, the other tread had no support left: gauge under load reached back-to-back, flange and rim less the overlap needed.',
  negation: 'the wheelset spanned the gauge under load',
  witnesses: [
    dropInMarginWitness,
    gauged('flangeThicknessCheck', {
      ifTrue: 0.3,
      ifFalse: 0.05,
      unlessMeasured: 'flangeThickness',
      reason: 'A flange worn past its condemning thickness takes up to half an inch off the span.',
    }),
  ],
};
