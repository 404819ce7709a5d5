import type { CellColumn } from './cells';
import type { Taken } from './reading-index';
import type { LeftOutWhy } from './reading-state';
import { takeAt, whyLeftOut } from './take';

/** One quantity and slot at each of many subjects: what is taken, or why nothing is. */
export type ColumnRead = {
  readonly at: readonly (Taken | null)[];
  /** `value` and `u` of the same; NaN where nothing is taken. */
  readonly values: Float64Array;
  readonly us: Float64Array;
  readonly leftOut: readonly (LeftOutWhy | null)[];
};

export const emptyColumn = (length: number) => ({
  at: new Array<Taken | null>(length).fill(null),
  values: new Float64Array(length).fill(NaN),
  us: new Float64Array(length).fill(NaN),
  leftOut: new Array<LeftOutWhy | null>(length).fill(null),
});

/**
 * What is taken in all the columns of a sheet. Place by place and not column by column: the readings of
 * a place lie together in memory, and a long sheet spends most of its time in fetching them.
 */
export function readColumns(
  columns: readonly CellColumn[],
  length: number,
): ReadonlyMap<CellColumn, ColumnRead> {
  const read = columns.map((column) => ({ column, ...emptyColumn(length) }));
  for (let place = 0; place < length; place += 1) {
    for (const { column, at, values, us, leftOut } of read) {
      const taken = takeAt(column, place);
      if (taken === null) {
        leftOut[place] = whyLeftOut(column, place);
        continue;
      }
      at[place] = taken;
      values[place] = taken.value;
      us[place] = taken.u;
    }
  }
  return new Map(read.map(({ column, ...each }) => [column, each]));
}

/** The entries of a column at other places in another order; none where the place is −1. */
export function inOrderOf(places: readonly number[], read: ColumnRead): ColumnRead {
  const { at, values, us, leftOut } = emptyColumn(places.length);
  for (let i = 0; i < places.length; i += 1) {
    const place = places[i]!;
    if (place < 0) continue;
    at[i] = read.at[place]!;
    values[i] = read.values[place]!;
    us[i] = read.us[place]!;
    leftOut[i] = read.leftOut[place]!;
  }
  return { at, values, us, leftOut };
}
