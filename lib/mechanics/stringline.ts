import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';
import { CONTACT_SPACING_MM } from './unbalance-load';

/** Height of the coupler above the rail, lowest and highest allowed: 31 1/2 and 34 1/2 in. */
export const COUPLER_HEIGHTS_MM = [
  toCanonical(31.5, 'in', 'crossLength'),
  toCanonical(34.5, 'in', 'crossLength'),
] as const;

/**
 * Share of its load that a rail loses when a car is pulled or pushed sideways at coupler height and
 * leans by unbalance: 2·(T·h_c/s + W·Eu′·h/s²)/W; 1: its wheels lift. `towardsKn` T: lateral force of
 * both couplers towards the other rail; `unbalanceTowardsMm` Eu′: unbalance towards it; `weightKn` W.
 * Source: moments about the other rail.
 */
export function unloadedShare(
  towardsKn: number,
  couplerHeightMm: number,
  unbalanceTowardsMm: number,
  gravityCentreMm: number,
  weightKn: number,
): number {
  const byCoupler = (towardsKn * couplerHeightMm) / CONTACT_SPACING_MM;
  const byLean = (weightKn * unbalanceTowardsMm * gravityCentreMm) / CONTACT_SPACING_MM ** 2;
  return (2 * (byCoupler + byLean)) / weightKn;
}

export const stringlineMethod: Method = {
  id: 'stringline',
  name: 'Stringline screen: load lifted off the outer rail by draft',
  formula:
    'share = 2·(T·h_c/s + W·Eu′·h/s²)/W; at 1 the wheels of the outer rail lift. T: lateral force of both couplers, inward; h_c: coupler height 31 1/2 to 34 1/2 in; Eu′ = Ea − 0.0007·D·V²; h: height of the centre of gravity; s = 60 in.',
  validRange: 'Quasi-static; suspension roll, which adds to it, is not in it. Slack action is not in it.',
  sources: [
    { text: 'Moments about the inner rail', status: 'published' },
    { text: 'Coupler heights: 49 CFR 231.31', status: 'from memory' },
  ],
};

/** Coupler swing to its stop, either way: 7 to 13 degrees. */
export const COUPLER_SWING_RAD = [toCanonical(7, '°', 'angle'), toCanonical(13, '°', 'angle')] as const;

export const jackknifeMethod: Method = {
  id: 'jackknife',
  name: 'Jackknife screen: couplers swung to their stops in buff',
  formula:
    'L/V of a truck side = |F|·sin α·(pin to pin)/(truck centres)/(W·g/4); α: coupler swing to its stop, 7 to 13°, opposite at the two ends; F: buff, else nothing.',
  validRange:
    'A car between neighbours that have swung over with it. What a coupler’s aligning shoulders hold back is not in it: treat as an upper bound.',
  sources: [
    { text: 'Statics, moments about one truck centre', status: 'published' },
    { text: 'Swing of ordinary couplers 7 to 13°', status: 'from memory' },
  ],
};
