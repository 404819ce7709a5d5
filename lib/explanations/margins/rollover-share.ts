import { leverArms, leverArmsMethod } from '../../rail/lever-arms';
import { RAIL_SECTIONS } from '../../rail/sections';
import { rolloverLimit, rolloverMethod } from '../../mechanics/rollover';
import type { MarginWitness } from '../witness';

/** A middling section; shares of its own usual resistance hardly differ from section to section. */
const section = RAIL_SECTIONS.find((each) => each.id === '136RE')!;
const outerArms = leverArms(section, 'gaugeCorner', 'gaugeFace');
const midHead = leverArms(section, 'midHead', 'topOfRail');
const fieldSide = leverArms(section, 'fieldSide', 'topOfRail');
const usualOuter = rolloverLimit(outerArms, 0);
const usualInner = rolloverLimit(midHead, 0);

/**
 * Resistance to rolling over that is left, as a share of that of the same rail upright and loaded
 * mid-head (inner) or at the gauge corner (outer); the lesser of the two rails.
 */
function shareLeft(ride: number, outerCantRad: number, innerCantRad: number): number {
  const rides = Math.min(1, Math.max(0, ride));
  const dMm = midHead.dMm + rides * (fieldSide.dMm - midHead.dMm);
  const inner = rolloverLimit({ dMm, hMm: midHead.hMm }, innerCantRad) / usualInner;
  const outer = rolloverLimit(outerArms, outerCantRad) / usualOuter;
  return Math.min(inner, outer);
}

export const rolloverShareMargin: MarginWitness = {
  kind: 'margin',
  id: 'rolloverShare',
  name: 'Resistance to rolling over that is left',
  needsUndisturbed: true,
  inputs: ['fieldSideRide', 'railCantOuter', 'railCantInner'],
  assumed: [],
  formula:
    'share = (d′/h″ as found)/(d′/h″ upright and usually loaded), the lesser of both rails; d of the inner rail moves to the field side with the share of positions at which its wheel stands there by the outlines of both, else as the hollow grows from 2 to 5 mm; 136RE sizes',
  sources: [
    ...rolloverMethod.sources,
    ...leverArmsMethod.sources,
    {
      text: 'A tread begins to ride its field-side edge at about 2 mm of hollow',
      status: 'engineering judgement',
    },
  ],
  unit: 'share',
  compute: ([ride = NaN, outerCant = NaN, innerCant = NaN]) => shareLeft(ride, outerCant, innerCant),
  upTo: [0.8, 0.95],
  outcomes: [
    { id: 'little', label: 'below 0.80', ifTrue: 0.6, ifFalse: 0.15 },
    { id: 'less', label: '0.80 to 0.95', ifTrue: 0.25, ifFalse: 0.25 },
    { id: 'usual', label: 'above 0.95', ifTrue: 0.15, ifFalse: 0.6 },
  ],
  findings: ['rolloverFlangingRail', 'rolloverOtherRail'],
  reason:
    'A false flange or a rail leaning out leaves two thirds of the usual resistance or less; upright rail under sound treads keeps all of it.',
};
