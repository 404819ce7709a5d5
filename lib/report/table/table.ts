import type { Face, Measure } from '../type/faces';
import { breakLines, plainText, type Inline, type Line } from '../type/inline';
import { columnWidths } from './columns';

export type Column = {
  readonly head: string;
  readonly align?: 'left' | 'right' | 'centre';
  readonly face?: Face;
  /** Fixed width in points, or as a share of the table; else the column takes what its words need. */
  readonly width?: number;
  readonly share?: number;
};

export type Row = {
  readonly cells: readonly Inline[];
  /** Name of the place other pages lead to. */
  readonly anchor?: string;
  /** A line across the whole table that heads the rows below it. */
  readonly heads?: boolean;
  readonly faint?: boolean;
};

export type Table = {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly size?: number;
  /** Printed below the table, small. */
  readonly notes?: readonly string[];
};

export type LaidRow = {
  readonly row: Row;
  readonly cells: readonly (readonly Line[])[];
  readonly height: number;
};

export type LaidTable = {
  readonly table: Table;
  readonly size: number;
  readonly lead: number;
  readonly widths: readonly number[];
  readonly head: readonly (readonly Line[])[];
  readonly headHeight: number;
  readonly rows: readonly LaidRow[];
};

export const CELL = { side: 4, above: 2.4, below: 2.5 } as const;
export const TABLE_SIZE = 7.6;
const LEADING = 1.28;

/** Width of the longest word and of the longest line of a cell. */
function needs(text: string, face: Face, size: number, measure: Measure): readonly [number, number] {
  let least = 0;
  let natural = 0;
  for (const line of text.split('\n')) {
    natural = Math.max(natural, measure(line, face, size));
    for (const word of line.split(' ')) least = Math.max(least, measure(word, face, size));
  }
  return [least, natural];
}

/** A single word is not given more than this share of the table before it is broken. */
const WORD_SHARE = 0.3;

/** Lays a table out in `width` points: widths of its columns, lines of its cells, heights of its rows. */
export function layoutTable(table: Table, width: number, measure: Measure): LaidTable {
  const size = table.size ?? TABLE_SIZE;
  const lead = size * LEADING;
  const pad = 2 * CELL.side;
  const widths = columnWidths(
    table.columns.map((column, i) => {
      const [headLeast, headNatural] = needs(column.head, 'bold', size, measure);
      let least = headLeast;
      let natural = Math.min(headNatural, headLeast * 2);
      for (const row of table.rows) {
        if (row.heads) continue;
        const [l, n] = needs(plainText(row.cells[i] ?? ''), column.face ?? 'body', size, measure);
        least = Math.max(least, l);
        natural = Math.max(natural, n);
      }
      return {
        // Some styles in a cell are wider than the column's own; a hair of room covers it.
        least: Math.min(least * 1.06, width * WORD_SHARE) + pad,
        natural: natural * 1.04 + pad,
        fixed: column.width ?? (column.share === undefined ? undefined : column.share * width),
      };
    }),
    width,
  );
  const cellLines = (cell: Inline, i: number, face: Face, faint: boolean): readonly Line[] =>
    breakLines(cell, (widths[i] ?? 0) - pad, { size, face, ink: faint ? 'faint' : 'text' }, measure);
  const height = (cells: readonly (readonly Line[])[]): number =>
    Math.max(1, ...cells.map((lines) => lines.length)) * lead + CELL.above + CELL.below;

  const head = table.columns.map((column, i) => cellLines(column.head, i, 'bold', false));
  return {
    table,
    size,
    lead,
    widths,
    head,
    headHeight: table.columns.every((column) => column.head === '') ? 0 : height(head) + 1,
    rows: table.rows.map((row) => {
      const cells = row.heads
        ? [breakLines(row.cells[0] ?? '', width - pad, { size, face: 'bold' }, measure)]
        : table.columns.map((column, i) =>
            cellLines(row.cells[i] ?? '', i, column.face ?? 'body', row.faint ?? false),
          );
      return { row, cells, height: height(cells) + (row.heads ? 2 : 0) };
    }),
  };
}

/** A row higher than `most` points as several, each with the next lines of every cell. */
export function divideRow(row: LaidRow, most: number, lead: number): readonly LaidRow[] {
  if (row.height <= most) return [row];
  const fit = Math.max(1, Math.floor((most - CELL.above - CELL.below) / lead));
  const longest = Math.max(...row.cells.map((lines) => lines.length));
  return Array.from({ length: Math.ceil(longest / fit) }, (_, part): LaidRow => {
    const cells = row.cells.map((lines) => lines.slice(part * fit, (part + 1) * fit));
    const count = Math.max(...cells.map((lines) => lines.length));
    return {
      row: part === 0 ? row.row : { ...row.row, anchor: undefined },
      cells,
      height: count * lead + CELL.above + CELL.below,
    };
  });
}
