import { remarked } from '../build';
import type { Context } from '../context';
import { otherSide, type Side } from '../pod-sides';
import type { Taken } from '../reading-index';
import { backToBackOf } from '../wheels/back-to-back-of';

const SIDES = ['left', 'right'] as const;

/** A wheel of the first derailed wheelset; where the side is not known, the less favourable of those read. */
function wheelReading(
  context: Context,
  quantity: string,
  side: Side | null,
  worse: 'least' | 'most',
  sideRemark: string,
): Taken | null {
  const { wheelset } = context.first;
  if (wheelset === null) return null;
  const all = (side === null ? SIDES : [side]).flatMap((slot) => {
    const taken = context.read.take('wheelset', wheelset.entity.id, quantity, slot);
    return taken === null ? [] : [remarked(taken, `Read on the ${slot} wheel.`)];
  });
  const sign = worse === 'most' ? 1 : -1;
  const chosen = all.reduce<Taken | null>(
    (worst, each) => (worst === null || sign * each.value > sign * worst.value ? each : worst),
    null,
  );
  return chosen === null ? null : remarked(chosen, wheelset.remark, sideRemark);
}

/** Wheel whose flange bears on its rail. */
export const flangingWheel = (context: Context, quantity: string, worse: 'least' | 'most'): Taken | null =>
  wheelReading(context, quantity, context.sides.flanging, worse, context.sides.remark);

/** The other wheel of the axle: the one that would drop, or rides the low rail. */
export function farWheel(context: Context, quantity: string, worse: 'least' | 'most'): Taken | null {
  const { flanging, remark } = context.sides;
  return wheelReading(
    context,
    quantity,
    flanging === null ? null : otherSide(flanging),
    worse,
    flanging === null ? remark : 'Wheel opposite the flanging one.',
  );
}

/** Smallest back-to-back round the first derailed wheelset. */
export function leastBackToBack(context: Context): Taken | null {
  const { wheelset } = context.first;
  if (wheelset === null) return null;
  const found = backToBackOf(context, wheelset.entity.id);
  return found === null ? null : remarked(found.least, wheelset.remark);
}

/** Smallest side-bearing clearance of the first derailed truck. */
export function leastSideBearing(context: Context): Taken | null {
  const { truck } = context.first;
  if (truck === null) return null;
  const least = SIDES.flatMap(
    (slot) => context.read.take('truck', truck.entity.id, 'sideBearingClearance', slot) ?? [],
  ).reduce<Taken | null>((worst, each) => (worst === null || each.value < worst.value ? each : worst), null);
  return least === null ? null : remarked(least, truck.remark);
}
