import { stationKind } from '~/lib/case/kinds/ground';
import type { Field } from '~/lib/case/kind';
import type { Quantity } from '~/lib/readings/quantity';
import { GROUPS } from '~/lib/readings/quantities';
import { unitLabel } from '~/lib/readings/spelling';
import type { UnitSystem } from '~/lib/readings/unit';

/** A column of the station sheet: a field of the station, or a reading taken at it. */
export type SheetColumn = {
  readonly id: string;
  /** Heading; the unit of bare numbers goes below it. */
  readonly short: string;
  /** Says what it is where it stands alone. */
  readonly label: string;
} & (
  | { readonly type: 'field'; readonly field: Field }
  | { readonly type: 'reading'; readonly quantity: Quantity; readonly slot: string }
);

const FIELD_SHORT: Readonly<Record<string, string>> = { name: 'Station', disturbance: 'State', note: 'Note' };

function fieldColumn(id: string): readonly SheetColumn[] {
  const field = stationKind.fields.find((each) => each.id === id);
  if (!field) return [];
  return [{ id, short: FIELD_SHORT[id] ?? field.label, label: field.label, type: 'field', field }];
}

const readingColumns = (quantity: Quantity): readonly SheetColumn[] =>
  quantity.slots.length === 0
    ? [{ id: quantity.id, short: quantity.short, label: quantity.name, type: 'reading', quantity, slot: '' }]
    : quantity.slots.map((slot) => ({
        id: `${quantity.id}.${slot.id}`,
        short: `${quantity.short}, ${slot.label.toLowerCase()}`,
        label: `${quantity.name}, ${slot.label.toLowerCase()}`,
        type: 'reading',
        quantity,
        slot: slot.id,
      }));

export const STATION_GROUPS = GROUPS.filter(
  ({ screen, subject }) => screen === 'track' && subject === 'station',
);

/** Columns in the order in which a field book has them: where, what was read, in which state. */
export const SHEET_COLUMNS: readonly SheetColumn[] = [
  ...fieldColumn('name'),
  ...STATION_GROUPS.flatMap(({ quantities }) => quantities).flatMap(readingColumns),
  ...stationKind.fields.filter(({ id }) => id !== 'name').flatMap(({ id }) => fieldColumn(id)),
];

/** The unit bare numbers of the column are taken in; '' where there is none. */
export const columnUnit = (column: SheetColumn, system: UnitSystem): string =>
  column.type === 'reading' && column.quantity.kind === 'measure'
    ? unitLabel(column.quantity.bareUnit[system])
    : '';

/** Name of a cell's box. `row` is the id of a station, or n1, n2, … for a row that is new. */
export const cellName = (row: string, column: string): string => `cell:${row}:${column}`;

export const isNewRow = (row: string): boolean => /^n\d+$/.test(row);

/** Name of the box that says with what a quantity was read. */
export const instrumentBox = (quantity: string): string => `with:${quantity}`;
