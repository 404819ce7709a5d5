import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { remarked } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';

/** The turnout whose point the wheels met: the first that was run over facing. */
export function facingTurnout(context: Context): Entity | null {
  return standing(context.record, 'turnout').find(({ fields }) => fields.movement === 'facing') ?? null;
}

export function pointReading(context: Context, quantity: string): Taken | null {
  const turnout = facingTurnout(context);
  if (turnout === null) return null;
  const taken = context.read.take('turnout', turnout.id, quantity);
  const facing = standing(context.record, 'turnout').filter(({ fields }) => fields.movement === 'facing');
  return (
    taken &&
    remarked(
      taken,
      facing.length > 1 ? `${facing.length} facing turnouts are recorded; the first is taken.` : '',
    )
  );
}
