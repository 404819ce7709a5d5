import { type Method } from '../findings/finding';
import { ok, refuse, type Result } from '../readings/result';
import { contactAt, type ContactState } from './state';
import { type ContactSetup, type Side } from './setup';

/** From this contact angle on, the flange is said to bear: in the throat it is less, on a flange face more. */
export const FLANGE_BEARS_RAD = Math.PI / 4;

const SEARCH_STEP_MM = 0.25;
const FURTHEST_MM = 60;

export type FlangeClearance = {
  /** Lateral shift from the middle of the track to flange contact, mm, both positive outward. */
  readonly leftMm: number;
  readonly rightMm: number;
};

/** Whether a place on this side bears with the flange. */
export const flangeBears = (state: ContactState, side: Side): boolean =>
  state[side].points.some(({ contactAngleRad }) => contactAngleRad >= FLANGE_BEARS_RAD);

/**
 * How far the wheelset can move from the middle of the track to each side until the flange bears: until a
 * place of contact on that side reaches 45° against the plane of the track. Found in steps of 0.25 mm and
 * then by halving, to 0.0001 mm. Refuses where a flange bears in the middle already, or never does.
 */
export function flangeClearance(setup: ContactSetup): Result<FlangeClearance> {
  const left = clearanceOf(setup, 'left');
  if (!left.ok) return left;
  const right = clearanceOf(setup, 'right');
  if (!right.ok) return right;
  return ok({ leftMm: left.value, rightMm: right.value });
}

function clearanceOf(setup: ContactSetup, side: Side): Result<number> {
  const way = side === 'right' ? 1 : -1;
  const middle = contactAt(setup, 0);
  if (!middle.ok) return middle;
  if (flangeBears(middle.value, side) || climbsOver(middle.value, side)) {
    return refuse(
      `With the wheelset in the middle of the track the ${side} flange already bears on its rail: there is no clearance. Check gauge, back-to-back and outlines.`,
    );
  }
  for (let free = 0; free < FURTHEST_MM; free += SEARCH_STEP_MM) {
    const next = contactAt(setup, way * (free + SEARCH_STEP_MM));
    if (!next.ok) break;
    if (!flangeBears(next.value, side)) continue;
    let [low, high] = [free, free + SEARCH_STEP_MM];
    while (high - low > 1e-4) {
      const between = (low + high) / 2;
      const state = contactAt(setup, way * between);
      if (state.ok && flangeBears(state.value, side)) high = between;
      else low = between;
    }
    return ok((low + high) / 2);
  }
  return refuse(
    `The ${side} wheel meets no flange contact within ${FURTHEST_MM} mm. Check that its outline includes the flange.`,
  );
}

/** A wheel standing this far above its tread stands on its flange, whatever the angle. */
const ON_FLANGE_MM = 10;

const climbsOver = (state: ContactState, side: Side): boolean =>
  state[side].points[0].onWheel.yMm > ON_FLANGE_MM;

export const clearanceMethod: Method = {
  id: 'flange-clearance',
  name: 'Flange clearance',
  formula:
    'Smallest lateral shift from the middle of the track at which a place of contact on that side reaches 45° against the plane of the track.',
  validRange: 'Rigid wheels and rails, no yaw; wheels whose flange passes 45°.',
  sources: [{ text: 'The border of 45° between throat and flange face', status: 'engineering judgement' }],
};
