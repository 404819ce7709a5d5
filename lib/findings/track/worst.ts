import type { Dimension } from '../../readings/unit';
import type { RuleQuantityId } from '../../rules/rule-quantity';
import { measured, notMeasured, remarked, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import type { Taken } from '../reading-index';
import { checkAll } from '../rules-in-force';

/** A value at a station of the context, by the station's place in the list. */
export type At = { readonly index: number; readonly taken: Taken };

/** The value of a column that comes first by `rank`, largest; the earliest of equals. */
export function largestOf(column: readonly (Taken | null)[], rank: (value: number) => number): At | null {
  let worst: At | null = null;
  let most = -Infinity;
  for (let index = 0; index < column.length; index += 1) {
    const taken = column[index];
    if (!taken) continue;
    const here = rank(taken.value);
    if (worst !== null && !(here > most)) continue;
    [worst, most] = [{ index, taken }, here];
  }
  return worst;
}

/** A finding for the worst station of a sheet, which names the station; not measured when there is none. */
export function worstFinding(
  context: Context,
  heading: Heading,
  worst: At | null,
  options: {
    readonly limits?: RuleQuantityId;
    readonly missing: string;
    readonly dimension?: Dimension;
  },
): Finding {
  const remarks = [...(heading.remarks ?? []), ...(options.limits ? context.rules.remarks : [])];
  const full = { ...heading, remarks };
  const station = worst === null ? undefined : context.stations[worst.index];
  if (worst === null || station === undefined) return notMeasured(full, [options.missing]);
  const limits = options.limits === undefined ? [] : context.rules.trackLimits(options.limits);
  return measured(
    full,
    options.dimension ?? 'crossLength',
    remarked(worst.taken, `At station ${station.name}.`),
    checkAll(limits, worst.taken.value, worst.taken.u),
  );
}
