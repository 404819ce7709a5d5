import type { CaseRecord, Entity, Reading } from '~/lib/case/record';
import { unitLabel } from '~/lib/readings/spelling';
import { DIMENSIONS, type Unit, type UnitSystem } from '~/lib/readings/unit';
import type { SheetColumn } from './columns';

const UNITS = new Set<string>(Object.values(DIMENSIONS).flatMap(({ units }) => units));
const isUnit = (text: string): text is Unit => UNITS.has(text);

/**
 * A reading as it stands in its cell: as it was entered, with its unit where a bare number would
 * be taken in another one here. What stands there means the same when it is read again.
 */
export function readingCell(reading: Reading, column: SheetColumn, system: UnitSystem): string {
  const entered = reading.entered.trim();
  if (column.type !== 'reading' || column.quantity.kind !== 'measure') return entered;
  const { unit } = reading;
  const bare = column.quantity.bareUnit[system];
  const saysUnit = /[a-z°'"′″%#]/i.test(entered);
  return unit === bare || saysUnit || !isUnit(unit) ? entered : `${entered} ${unitLabel(unit)}`;
}

/** A field of a station as it stands in its cell: a choice by its label. */
export function fieldCell(column: SheetColumn, fields: Entity['fields']): string {
  if (column.type !== 'field') return '';
  const value = fields[column.id];
  if (value === null || value === undefined) return '';
  if (column.field.type !== 'choice') return String(value);
  return column.field.choices.find(({ id }) => id === value)?.label ?? String(value);
}

/** The readings that stood when the record had `count` rows of readings, by station and column. */
export function readingsAt(record: CaseRecord, count: number): ReadonlyMap<string, readonly Reading[]> {
  const known = record.readings.slice(0, count);
  const replaced = new Set(known.flatMap(({ replaces }) => replaces ?? []));
  const cells = new Map<string, Reading[]>();
  for (const reading of known) {
    if (reading.subject.kind !== 'station' || reading.withdrawn || replaced.has(reading.id)) continue;
    const key = readingKey(reading.subject.id, reading.quantity, reading.slot);
    const cell = cells.get(key);
    if (cell) cell.push(reading);
    else cells.set(key, [reading]);
  }
  return cells;
}

export const readingKey = (stationId: string, quantity: string, slot: string): string =>
  `${stationId}|${quantity}|${slot}`;
