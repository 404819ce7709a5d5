import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { feet } from '../../readings/quantities/build';
import type { Context } from '../context';
import { along } from '../words';

/**
 * Where the tip of a point may lie, in the direction of travel, m from the POD: a flange that took the
 * wrong side leaves the rails within the lead of the turnout, 156 ft for a long one; past the POD as far
 * as the POD itself may have been set too early. Engineering judgement.
 */
export const POINT_WINDOW_M = { before: feet(200), after: feet(50) } as const;

/** Where a turnout lies and whether its point can have to do with the POD; not entered: it may. */
export type PointPlace = { readonly counts: boolean; readonly remark: string };

export function pointPlace(context: Context, turnout: Entity): PointPlace {
  const taken = context.read.take('turnout', turnout.id, 'pointPlace');
  if (taken === null) {
    return {
      counts: true,
      remark: 'The distance of the point from the POD is not entered: it is taken as near enough.',
    };
  }
  const { value } = taken;
  const counts = value >= -POINT_WINDOW_M.before && value <= POINT_WINDOW_M.after;
  const where = `The tip lies ${along(Math.abs(value))} ${value < 0 ? 'before' : 'past'} the POD`;
  return {
    counts,
    remark: counts
      ? `${where}.`
      : `${where}, outside the ${along(POINT_WINDOW_M.before)} before it to ${along(POINT_WINDOW_M.after)} past it that count (about the lead of a long turnout; engineering judgement): it says nothing for or against a switch-point pick.`,
  };
}

export const facingTurnouts = (context: Context): readonly Entity[] =>
  standing(context.record, 'turnout').filter(({ fields }) => fields.movement === 'facing');

/** Facing turnouts whose point can have to do with the POD, nearest first. */
export function facingNearPod(context: Context): readonly Entity[] {
  const place = ({ id }: Entity): number =>
    Math.abs(context.read.take('turnout', id, 'pointPlace')?.value ?? 0);
  return facingTurnouts(context)
    .filter((turnout) => pointPlace(context, turnout).counts)
    .sort((a, b) => place(a) - place(b) || a.order - b.order);
}
