import type { Method } from '../findings/finding';

/** Distance between the wheel contacts that the 0.0007 of the speed formula implies: 60 in. */
export const CONTACT_SPACING_MM = 1524;

/**
 * Net lateral force of an axle from unbalance, positive outward: W·Eu/s.
 * `axleLoadKn` W; `unbalanceMm` Eu signed, positive when the train is faster than balance.
 * The net of both wheels, not the flange force: steering is not in it.
 * Source: resolution of weight on a canted plane, small angles.
 */
export function unbalanceLateralKn(
  axleLoadKn: number,
  unbalanceMm: number,
  spacingMm: number = CONTACT_SPACING_MM,
): number {
  return (axleLoadKn * unbalanceMm) / spacingMm;
}

/**
 * Vertical load moved to the high-rail wheel of an axle, and off the low-rail one: W·Eu·h/s².
 * Negative (high rail unloads) below balance speed. `gravityCentreMm` h: height of the centre
 * of gravity above the rail heads. Units and source as `unbalanceLateralKn`; suspension roll,
 * which adds to the shift, is not in it.
 */
export function unbalanceShiftKn(
  axleLoadKn: number,
  unbalanceMm: number,
  gravityCentreMm: number,
  spacingMm: number = CONTACT_SPACING_MM,
): number {
  return (axleLoadKn * unbalanceMm * gravityCentreMm) / (spacingMm * spacingMm);
}

export const unbalanceLoadMethod: Method = {
  id: 'unbalance-load',
  name: 'Axle lateral force and load shift from unbalance',
  formula:
    'L_axle = W·Eu/s; ΔV = W·Eu·h/s². W: axle load; Eu: unbalance, positive outward; s: contact spacing, 60 in; h: height of the centre of gravity. ΔV is added to the high-rail wheel and taken from the low-rail wheel.',
  validRange:
    'Quasi-static, uniform curve, small angles, no suspension roll. A net lateral: flange force in a sharp curve is dominated by steering.',
  sources: [
    { text: 'Statics of a vehicle on canted track', status: 'published' },
    { text: 's = 60 in: the spacing for which 0.0007·D·V² (49 CFR 213.57(b)) balances', status: 'published' },
  ],
};
