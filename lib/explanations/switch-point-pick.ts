import type { Explanation } from './explanation';

export const switchPointPick: Explanation = {
  id: 'switchPointPick',
  name: 'Switch-point pick',
  description: 'At a facing point the flange struck or climbed the point and took the wrong route.',
  clause: 'a flange picked a switch point',
  characteristic: ['pointPicked', 'pointCouldBeStruck'],
  expectations: {
    flangeCrossedHead: {
      probability: 0.12,
      reason: 'A flange that rides up the point may go on over the stock rail; most fall back inside.',
    },
    railRolledFirst: { probability: 0.04, reason: 'Has no part in it; points torn over come later.' },
    droppedInside: {
      probability: 0.15,
      reason: 'The wheel between point and stock rail comes down inside when the gap runs out.',
    },
    pointPicked: { probability: 0.95, reason: 'It is what a pick is.' },
    flangeShallowOrDry: {
      probability: 0.35,
      reason: 'A flange rides a point more easily where it grips or is worn.',
    },
    sideForceHigh: {
      probability: 0.3,
      reason: 'Turnouts are sharp, but most points are picked at low speed with little force.',
    },
    wheelLight: { probability: 0.45, reason: 'Light wheels ride up sooner.' },
    fieldSideContact: { probability: 0.18, reason: 'False flanges act feet behind the tip, not at it.' },
    railsWeaklyHeld: {
      probability: 0.2,
      reason: 'Worn ties under switches let the point stand off, now and then.',
    },
    gaugeBeyondSpan: { probability: 0.04, reason: 'Has no part in it.' },
    pointCouldBeStruck: {
      probability: 0.9,
      reason: 'A point that cannot be struck is not picked; some gaps open only under load.',
    },
  },
};
