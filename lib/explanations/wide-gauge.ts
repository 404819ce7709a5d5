import type { Explanation } from './explanation';

export const wideGauge: Explanation = {
  id: 'wideGauge',
  name: 'Wide gauge (drop-in)',
  description: 'The rails spread until a wheel fell between them.',
  clause: 'the rails spread and a wheel dropped in',
  characteristic: ['droppedInside', 'gaugeBeyondSpan', 'railsWeaklyHeld'],
  expectations: {
    flangeCrossedHead: { probability: 0.04, reason: 'No head is crossed; the mark stays inside.' },
    railRolledFirst: {
      probability: 0.12,
      reason: 'Base and plates slide out with the head upright; some rails tilt as they go.',
    },
    droppedInside: { probability: 0.93, reason: 'It is what a drop-in is.' },
    pointPicked: { probability: 0.02, reason: 'Has no part in it.' },
    flangeShallowOrDry: {
      probability: 0.25,
      reason: 'Has little part; thin flanges are often steep rather than shallow.',
    },
    sideForceHigh: {
      probability: 0.4,
      reason: 'Weak track spreads under ordinary forces; strong ones make it sooner.',
    },
    wheelLight: {
      probability: 0.25,
      reason: 'A light wheel pushes less; if anything loaded cars spread the rails.',
    },
    fieldSideContact: { probability: 0.25, reason: 'Tilting rail is met where ties are bad.' },
    railsWeaklyHeld: {
      probability: 0.88,
      reason: 'Ties and fastenings that hold keep the gauge, save where it was laid wide.',
    },
    gaugeBeyondSpan: {
      probability: 0.92,
      reason:
        'A wheel drops only where it is no longer carried; what is measured standing may miss some of it.',
    },
    pointCouldBeStruck: { probability: 0.1, reason: 'As common as anywhere.' },
  },
};
