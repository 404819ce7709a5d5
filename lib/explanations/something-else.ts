import type { Explanation } from './explanation';

/**
 * The background every explanation is held against: how common each fact is in ordinary running, where
 * nothing came off. Marks of leaving the rails have no such frequency; theirs is how seldom they
 * are met when a wheel leaves in some other way.
 */
export const somethingElse: Explanation = {
  id: 'somethingElse',
  name: 'Something else',
  description:
    'None of the four: a wheel left the rails in another way, and conditions were as they are in ordinary running, where nothing comes off.',
  clause: 'something else happened',
  characteristic: [],
  expectations: {
    flangeCrossedHead: {
      probability: 0.04,
      reason:
        'In ordinary running none; where a wheel leaves for another reason it may cross a head at the first mark.',
    },
    railRolledFirst: {
      probability: 0.03,
      reason: 'In ordinary running none; a broken rail or a load over the side may turn one over.',
    },
    droppedInside: {
      probability: 0.05,
      reason: 'In ordinary running none; a broken rail or wheel may let one down.',
    },
    pointPicked: { probability: 0.02, reason: 'Nearly none: trains pass points by the thousand.' },
    flangeShallowOrDry: {
      probability: 0.2,
      reason: 'About one wheel and rail in five: dry faces are common, worn angles less so.',
    },
    sideForceHigh: {
      probability: 0.2,
      reason: 'Sharp curves, unbalance and stiff trucks are met on every line every day.',
    },
    wheelLight: { probability: 0.35, reason: 'About a third of wheels run under empty cars.' },
    fieldSideContact: {
      probability: 0.15,
      reason: 'About one in seven, by hollow treads or leaning rail, and it runs.',
    },
    railsWeaklyHeld: {
      probability: 0.18,
      reason: 'Places like that are found on most secondary lines, and hold.',
    },
    gaugeBeyondSpan: { probability: 0.02, reason: 'Hardly ever without a wheel going down.' },
    pointCouldBeStruck: {
      probability: 0.1,
      reason: 'Worn, chipped and open points are in service; most places have no switch at all.',
    },
  },
};
