import type { SheetRow } from './rows.server';

/** A row whose cells travel to the page as one text: a page of the sheet has some 700 of them. */
export type PackedRow = Omit<SheetRow, 'cells'> & { readonly cells: string };

/** Stands in no text that can be entered: control characters are refused or taken out. */
const BETWEEN = '\u001f';

export const packed = (row: SheetRow): PackedRow => ({
  ...row,
  cells: row.cells.map((text) => text.replaceAll(BETWEEN, ' ')).join(BETWEEN),
});

export const unpacked = (row: PackedRow): SheetRow => ({ ...row, cells: row.cells.split(BETWEEN) });
