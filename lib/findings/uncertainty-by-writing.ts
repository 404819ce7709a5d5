import type { Entity, Reading } from '../case/record';
import { uncertaintyOf } from '../readings/instrument';
import type { Measure, Quantity } from '../readings/quantity';
import { childOf } from './child-of';

/** Standard uncertainty (k = 1) of readings of one quantity, in its canonical unit; 0 of a count. */
export type UncertaintyOf = (reading: Reading) => number;

/** A sheet repeats the same few writings many hundred times; each is worked out once. */
export function uncertaintyByWriting(
  instruments: ReadonlyMap<string, Entity>,
): (quantity: Quantity | undefined) => UncertaintyOf {
  const known = new Map<Quantity, UncertaintyOf>();
  return (quantity) =>
    quantity?.kind === 'measure' ? childOf(known, quantity, () => ofMeasure(quantity, instruments)) : () => 0;
}

function ofMeasure(quantity: Measure, instruments: ReadonlyMap<string, Entity>): UncertaintyOf {
  type ByWriting = Map<string, number>;
  const known = new Map<string | null, Map<string, ByWriting>>();
  // Down a column instrument and unit seldom change.
  let last: { instrumentId: string | null; unit: string; writings: ByWriting } | null = null;
  return (reading) => {
    const { entered, unit, instrumentId } = reading;
    if (last?.instrumentId !== instrumentId || last.unit !== unit) {
      const byUnit = childOf(known, instrumentId, () => new Map<string, ByWriting>());
      last = { instrumentId, unit, writings: childOf(byUnit, unit, () => new Map<string, number>()) };
    }
    const { writings } = last;
    // What was written, in which unit, fixes the value too, on which the width of a radius depends.
    const before = writings.get(entered);
    if (before !== undefined) return before;
    const instrument = instrumentId === null ? undefined : instruments.get(instrumentId);
    const { u } = uncertaintyOf(reading, quantity, instrument);
    writings.set(entered, u);
    return u;
  };
}
