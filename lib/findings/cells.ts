import type { Reading } from '../case/record';
import type { Quantity } from '../readings/quantity';
import type { LeftOutWhy } from './reading-state';
import type { UncertaintyOf } from './uncertainty-by-writing';

/** The readings of one quantity and slot at one subject. */
export type Cell = {
  usable: Reading[];
  /** Readings of a wheel long before the others: its history, not its size now. */
  history: Reading[];
  readonly leftOut: LeftOutWhy[];
};

/** One quantity and slot at the subjects of a kind, by their place in the record. */
export type CellColumn = {
  readonly quantity: Quantity | undefined;
  readonly uncertainty: UncertaintyOf;
  /** How many readings of the record came before the first at a place, counted from 1; 0 where there is none. */
  readonly order: Int32Array;
  /** The reading that is all there is at a place, and may be used: so it is nearly everywhere on a sheet. */
  readonly lone: (Reading | null)[];
  /** The places with more than that. */
  readonly cells: (Cell | null)[];
};

export const cellColumn = (
  quantity: Quantity | undefined,
  uncertainty: UncertaintyOf,
  length: number,
): CellColumn => ({
  quantity,
  uncertainty,
  order: new Int32Array(length),
  lone: new Array<Reading | null>(length).fill(null),
  cells: new Array<Cell | null>(length).fill(null),
});

/** Puts the next reading of a place in its column; `leftOut` says why it may not be used. */
export function putReading(
  { order, lone, cells }: CellColumn,
  place: number,
  { reading, leftOut, count }: { reading: Reading; leftOut: LeftOutWhy | null; count: number },
): void {
  if (order[place] === 0) {
    order[place] = count;
    if (leftOut === null) lone[place] = reading;
    else cells[place] = { usable: [], history: [], leftOut: [leftOut] };
    return;
  }
  const first = lone[place];
  const cell = (cells[place] ??= { usable: first ? [first] : [], history: [], leftOut: [] });
  lone[place] = null;
  if (leftOut === null) cell.usable.push(reading);
  else cell.leftOut.push(leftOut);
}

/** The readings at a place of a column; null where there are none. */
export function cellAt({ lone, cells }: CellColumn, place: number): Cell | null {
  const only = lone[place];
  return only ? { usable: [only], history: [], leftOut: [] } : (cells[place] ?? null);
}
