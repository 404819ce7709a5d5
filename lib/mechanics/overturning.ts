import type { Method } from '../findings/finding';
import { CONTACT_SPACING_MM } from './unbalance-load';

/**
 * Share of its load that the inner rail loses to unbalance: 2·k·h·Eu/s²; at 1 the car is about to
 * turn over. `unbalanceMm` Eu outward positive; `gravityCentreMm` h; `rollFactor` k ≥ 1 for the roll
 * of the body on its springs. Source: moments about the outer rail.
 */
export const overturningShare = (unbalanceMm: number, gravityCentreMm: number, rollFactor: number): number =>
  (2 * rollFactor * gravityCentreMm * unbalanceMm) / CONTACT_SPACING_MM ** 2;

/** Unbalance (mm) at which `overturningShare` is 1: s²/(2·k·h). */
export const overturningUnbalanceMm = (gravityCentreMm: number, rollFactor: number): number =>
  CONTACT_SPACING_MM ** 2 / (2 * rollFactor * gravityCentreMm);

/** Roll of the body on its springs adds up to a quarter; engineering judgement. */
export const ROLL_FACTORS = [1, 1.25] as const;

export const overturningMethod: Method = {
  id: 'overturning',
  name: 'Overspeed screen: overturning outward',
  formula:
    'Share of load off the inner rail = 2·k·h·Eu/s²; overturns at 1, at V = √((Ea + s²/(2·k·h))/(0.0007·D)). h: height of the centre of gravity; s = 60 in; k = 1 to 1.25 for roll on the springs.',
  validRange: 'Steady curve, no wind, lading that does not move. Slosh and irregularities bring it earlier.',
  sources: [
    { text: 'Moments about the outer rail; 49 CFR 213.57(b) for unbalance', status: 'published' },
    { text: 'Roll factor 1 to 1.25', status: 'engineering judgement' },
  ],
};
