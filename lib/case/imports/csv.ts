import Papa from 'papaparse';
import { ok, refuse, type Result } from '../../readings/result';

/** A CSV file as cells: nothing interpreted yet. Row numbers shown to people count the header as row 1. */
export type CsvSheet = {
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
};

/**
 * Text of a CSV file, from its bytes: UTF-8 with or without a byte-order mark, or UTF-16 with one.
 *
 * Refuses bytes that are none of these, since a guessed code page could change a reporting mark.
 */
export function decodeText(bytes: Uint8Array): Result<string> {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : 'utf-8';
  try {
    return ok(new TextDecoder(encoding, { fatal: true }).decode(bytes));
  } catch {
    return refuse('The file is not written in UTF-8. Save it again as “CSV UTF-8” and choose the new file.');
  }
}

/**
 * Cells of a CSV text (RFC 4180, and with semicolons or tabs). The first row names the columns.
 *
 * Refuses an empty text, a text with a header only, a quoted field that never ends, two columns of
 * one name, and rows longer or shorter than the header, naming the row.
 */
export function readCsv(text: string): Result<CsvSheet> {
  if (text.includes('\0'))
    return refuse('This is not a CSV text file. Export the table as CSV and choose that file.');
  const parsed = Papa.parse<string[]>(text, { delimiter: delimiterOf(text) });
  const broken = parsed.errors.find((error) => error.type === 'Quotes');
  if (broken !== undefined) {
    return refuse(
      `Row ${(broken.row ?? 0) + 1} has a quotation mark that is not closed. Close it or take it out, then choose the file again.`,
    );
  }
  const [first, ...rows] = withoutBlankRows(parsed.data);
  if (first === undefined)
    return refuse('The file is empty. Choose a CSV file with a header row and at least one row below it.');
  const header = first.map((cell) => cell.trim());
  if (rows.length === 0)
    return refuse('The file has a header row and nothing below it. Choose a file with rows of data.');
  if (header.length < 2)
    return refuse('Only one column was found. Separate the columns with commas, semicolons or tabs.');
  const twice = header.find((name, index) => name !== '' && header.indexOf(name) !== index);
  if (twice !== undefined)
    return refuse(`Two columns are called “${twice}”. Give each column a name of its own.`);
  const ragged = rows.findIndex((row) => row.length !== header.length);
  if (ragged !== -1) {
    return refuse(
      `Row ${ragged + 2} has ${rows[ragged]?.length ?? 0} columns and the header has ${header.length}. ` +
        'Put quotation marks around cells that contain the separator, then choose the file again.',
    );
  }
  return ok({ header, rows, delimiter: parsed.meta.delimiter });
}

const isBlank = (row: readonly string[]): boolean => row.every((cell) => cell === '' || cell.trim() === '');

/** A recorder file has 100,000 rows: they are copied only where there is a blank one to leave out. */
function withoutBlankRows(rows: readonly string[][]): readonly string[][] {
  return rows.some(isBlank) ? rows.filter((row) => !isBlank(row)) : rows;
}

/** No header row is longer than this; looking no further keeps large files quick. */
const LONGEST_HEADER = 65_536;

/** The separator that splits the first row into the most columns. */
function delimiterOf(text: string): string {
  const start = text.slice(0, LONGEST_HEADER);
  const columns = (delimiter: string): number =>
    Papa.parse<string[]>(start, { delimiter, preview: 1 }).data[0]?.length ?? 0;
  return [',', ';', '\t'].reduce((best, next) => (columns(next) > columns(best) ? next : best));
}
