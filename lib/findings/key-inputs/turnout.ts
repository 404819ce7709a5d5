import { remarked } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { facingNearPod, pointPlace } from '../turnout/near-pod';

/** A reading of the point that the wheels met: of the nearest turnout run over facing, if one lies near enough. */
export function pointReading(context: Context, quantity: string): Taken | null {
  const [turnout, ...others] = facingNearPod(context);
  if (turnout === undefined) return null;
  const taken = context.read.take('turnout', turnout.id, quantity);
  return (
    taken &&
    remarked(
      taken,
      pointPlace(context, turnout).remark,
      others.length > 0
        ? `${others.length + 1} facing turnouts near the POD are recorded; the nearest is taken.`
        : '',
    )
  );
}
