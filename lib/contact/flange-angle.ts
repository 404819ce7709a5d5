import { type Method } from '../findings/finding';
import { ok, refuse, type Result } from '../readings/result';
import { flangeBears, flangeClearance } from './clearance';
import { type ContactSetup, type Side } from './setup';
import { contactAt, type ContactPoint } from './state';

export type FlangeContactAngle = {
  /** Shift towards the side at which the flange begins to bear, mm. */
  readonly bearsAtMm: number;
  /** Steepest contact the wheel has to pass as its flange climbs: the angle of the climb limit, rad. */
  readonly steepestRad: number;
  /** Shift towards the side at which that is, mm, and the place. */
  readonly steepestAtMm: number;
  readonly steepest: ContactPoint;
};

const STEP_MM = 0.05;
/** A flange 36 mm high at 60° is passed within this shift. */
const FURTHEST_CLIMB_MM = 25;

/**
 * The contact angle that governs the climb limit of this wheel on this rail: from where the flange begins
 * to bear the wheelset is moved further outward in steps of 0.05 mm, the flange climbing, and the steepest
 * contact passed is taken. A gauge face worn shallower than the flange governs. No yaw: the contact of
 * a wheel at an angle of attack lies ahead of the axle, on nearly the same part of the flange.
 */
export function flangeContactAngle(setup: ContactSetup, side: Side): Result<FlangeContactAngle> {
  const clearance = flangeClearance(setup);
  if (!clearance.ok) return clearance;
  const bearsAtMm = side === 'right' ? clearance.value.rightMm : clearance.value.leftMm;
  const way = side === 'right' ? 1 : -1;
  let steepest: ContactPoint | null = null;
  let steepestAtMm = bearsAtMm;
  for (let on = STEP_MM; on <= FURTHEST_CLIMB_MM; on += STEP_MM) {
    const state = contactAt(setup, way * (bearsAtMm + on));
    if (!state.ok || !flangeBears(state.value, side)) break;
    const [first] = state.value[side].points;
    if (steepest !== null && first.contactAngleRad <= steepest.contactAngleRad) continue;
    steepest = first;
    steepestAtMm = bearsAtMm + on;
  }
  if (steepest === null) {
    return refuse(
      `The ${side} flange bears on its rail at one place only and passes over it. Check that wheel and rail are traced down to the flange face and the gauge face.`,
    );
  }
  return ok({ bearsAtMm, steepestRad: steepest.contactAngleRad, steepestAtMm, steepest });
}

export const flangeContactAngleMethod: Method = {
  id: 'flange-contact-angle',
  name: 'Contact angle of this wheel on this rail',
  formula:
    'δ: the steepest contact angle passed as the wheelset is moved on from flange contact and the flange climbs the gauge face, in steps of 0.05 mm.',
  validRange:
    'No yaw. Both outlines must reach down the flange face and the gauge face; a worn gauge face shallower than the flange governs.',
  sources: [
    {
      text: 'TCRP Report 71 vol. 5 (2005), ch. 2: the contact angle of the climb limit',
      status: 'published',
    },
    { text: 'The steepest contact passed is the one to overcome', status: 'engineering judgement' },
  ],
};
