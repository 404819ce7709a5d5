import { SHEET_COLUMNS, STATION_GROUPS, type SheetColumn } from './columns';

/** What nearly every field book has; the rest is shown where something was read, or when asked for. */
const USUAL: ReadonlySet<string> = new Set([
  'name',
  'stationPosition',
  'gauge',
  'crosslevel',
  'midOrdinate62',
  'disturbance',
  'joint',
  'note',
]);

/** What a column is asked for by: its quantity, both sides together, or its field. */
const askedBy = (column: SheetColumn): string => (column.type === 'reading' ? column.quantity.id : column.id);

/** Columns in which something stands at any station, by their place in the sheet. */
export function filledColumns(rows: readonly { readonly cells: readonly string[] }[]): ReadonlySet<number> {
  const filled = new Set<number>();
  for (const { cells } of rows) {
    cells.forEach((text, index) => {
      if (text !== '') filled.add(index);
    });
  }
  return filled;
}

/**
 * Which columns the open sheet shows, by their place: the usual ones, those with something in them, both
 * sides where one side has, and those asked for by quantity.
 */
export function shownColumns(filled: ReadonlySet<number>, asked: readonly string[]): readonly number[] {
  const wanted = new Set([...USUAL, ...asked]);
  for (const index of filled) {
    const column = SHEET_COLUMNS[index];
    if (column) wanted.add(askedBy(column));
  }
  return SHEET_COLUMNS.flatMap((column, index) => (wanted.has(askedBy(column)) ? [index] : []));
}

export type MoreColumns = readonly {
  readonly group: string;
  readonly quantities: readonly { readonly id: string; readonly name: string; readonly asked: boolean }[];
}[];

/** Quantities that are not in the sheet of themselves, by group, and whether they were asked for. */
export function moreColumns(filled: ReadonlySet<number>, asked: readonly string[]): MoreColumns {
  const own = new Set(
    shownColumns(filled, []).flatMap((index) => {
      const column = SHEET_COLUMNS[index];
      return column ? [askedBy(column)] : [];
    }),
  );
  return STATION_GROUPS.flatMap(({ name, quantities }) => {
    const more = quantities.filter(({ id }) => !own.has(id));
    return more.length === 0
      ? []
      : [
          {
            group: name,
            quantities: more.map((each) => ({
              id: each.id,
              name: each.name,
              asked: asked.includes(each.id),
            })),
          },
        ];
  });
}

/** Quantities asked for in an address or a form; what is no column of the sheet is passed over. */
export const askedColumns = (sent: readonly unknown[]): readonly string[] => {
  const known = new Set(SHEET_COLUMNS.map(askedBy));
  return [...new Set(sent.map(String))].filter((id) => known.has(id));
};
