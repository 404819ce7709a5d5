import Papa from 'papaparse';
import { ok, refuse, type Result } from '../readings/result';
import { middleOf } from './numbers';
import type { NumberLine, OutlineFile } from './outline-file';

/** A line that gave no point, and why. */
export type SkippedLine = {
  readonly line: number;
  readonly kind: 'comment' | 'heading' | 'unreadable';
  readonly text: string;
  /** What is wrong with a line that cannot be read; empty for comments and headings. */
  readonly message: string;
};

export type OutlineTable = Pick<
  OutlineFile,
  'rows' | 'columnCount' | 'headings' | 'separator' | 'decimalComma' | 'places' | 'skippedLines'
> & {
  readonly said: readonly string[];
  /** Text of headings and comments, lower case. */ readonly words: string;
};

type Separator = OutlineFile['separator'];
type TextLine = { readonly line: number; readonly text: string };

const COMMENT = /^\s*(#|!|%|\/\/|\*|'|;|rem\b|--\s)/i;
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
const NUMBER_WITH_COMMA = /^[+-]?(\d+,\d*|,\d+|\d+)(e[+-]?\d{1,3})?$/i;
const LONGEST_SHOWN = 60;

const plain = (cell: string): string =>
  cell
    .trim()
    .replace(/[−‒–]/g, '-')
    .replace(/\s*(mm|in|")$/i, '');

function numberIn(cell: string, decimalComma: boolean): number | null {
  const text = plain(cell);
  const written = decimalComma && NUMBER_WITH_COMMA.test(text) ? text.replace(',', '.') : text;
  if (!NUMBER.test(written)) return null;
  const value = Number(written);
  return Number.isFinite(value) ? value : null;
}

const DELIMITERS: Readonly<Record<Separator, string | null>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  space: null,
};

/** One line as cells. A separator at the end of a line makes no column. */
function cellsOf(text: string, separator: Separator): readonly string[] {
  const delimiter = DELIMITERS[separator];
  const cells =
    delimiter === null
      ? text
          .trim()
          .split(/\s+/)
          .map((cell) => cell.replace(/^"(.*)"$/, '$1'))
      : (Papa.parse<string[]>(text, { delimiter, preview: 1 }).data[0] ?? []);
  return cells.length > 1 && cells.at(-1)?.trim() === '' ? cells.slice(0, -1) : cells;
}

const DIGIT = /\d/;

/** The separator that most lines with a number use: a tab or semicolon is never anything else. */
function separatorOf(lines: readonly TextLine[]): {
  readonly separator: Separator;
  readonly decimalComma: boolean;
} {
  const numeric = lines.filter(({ text }) => DIGIT.test(text));
  const share = (has: (text: string) => boolean): number =>
    numeric.filter(({ text }) => has(text)).length / Math.max(1, numeric.length);
  const most = 0.5;
  const point = share((text) => /\d\.\d/.test(text)) > 0;
  const comma = share((text) => /\d,\d/.test(text)) > 0;
  if (share((text) => /\S\t+\s*\S/.test(text)) > most)
    return { separator: 'tab', decimalComma: comma && !point };
  if (share((text) => /\S\s*;\s*\S/.test(text)) > most)
    return { separator: 'semicolon', decimalComma: comma && !point };
  if (share((text) => /\S\s*,\s*\S/.test(text)) > most) {
    // "12,5 3,4" is two numbers, "12, 5" and "12.5,3.4" as well: only the first has its commas inside them.
    const inside = share((text) => /^\s*[+-]?\d+(,\d+)?(\s+[+-]?\d+(,\d+)?)+\s*$/.test(text)) > most;
    return inside && !point
      ? { separator: 'space', decimalComma: true }
      : { separator: 'comma', decimalComma: false };
  }
  return { separator: 'space', decimalComma: comma && !point };
}

const NAMES: Readonly<Record<Separator, string>> = {
  comma: 'commas',
  semicolon: 'semicolons',
  tab: 'tabs',
  space: 'spaces',
};

const placesIn = (cell: string): number => /[.,](\d+)/.exec(plain(cell))?.[1]?.length ?? 0;

/**
 * The numbers of a text, line by line, and what was said about them. Lines are those an editor
 * counts. Refuses a text that is no text.
 */
export function readTable(text: string): Result<OutlineTable> {
  if (text.includes('\0'))
    return refuse(
      'This is not a text file. Export the outline as a table of x and y (CSV or TXT) and choose that file.',
    );
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((each, index): TextLine => ({ line: index + 1, text: each }))
    .filter((each) => each.text.trim() !== '');
  if (lines.length === 0) return refuse('The file is empty. Choose a file with an x and a y on each line.');
  const skipped: SkippedLine[] = [];
  const skip = ({ line, text: whole }: TextLine, kind: SkippedLine['kind'], message = ''): void => {
    skipped.push({ line, kind, text: whole.trim().slice(0, LONGEST_SHOWN), message });
  };
  const said = lines.filter((each) => {
    const isComment = COMMENT.test(each.text);
    if (isComment) skip(each, 'comment');
    return !isComment;
  });
  const { separator, decimalComma } = separatorOf(said);
  const rows: (NumberLine & { readonly places: number })[] = [];
  let headings: readonly string[] = [];
  for (const each of said) {
    const cells = cellsOf(each.text, separator);
    const numbers = cells.map((cell) => numberIn(cell, decimalComma));
    const known = numbers.filter((value) => value !== null).length;
    if (known >= 2) rows.push({ line: each.line, numbers, places: Math.max(...cells.map(placesIn)) });
    else if (rows.length === 0) {
      skip(each, 'heading');
      if (known === 0 && cells.length >= 2) headings = cells.map((cell) => cell.trim());
    } else if (known === 0 && !DIGIT.test(each.text)) skip(each, 'heading');
    else
      skip(
        each,
        'unreadable',
        `Line ${each.line} holds no two numbers. Put an x and a y there, or take the line out.`,
      );
  }
  const columnCount = middleOf(rows.map(({ numbers }) => numbers.length));
  const whole = rows.filter((row) => {
    const fits = row.numbers.length >= Math.min(2, columnCount) && row.numbers.length <= columnCount;
    if (!fits) {
      skip(
        { line: row.line, text: said.find(({ line }) => line === row.line)?.text ?? '' },
        'unreadable',
        `Line ${row.line} has ${row.numbers.length} columns and most have ${columnCount}. Put it right, or take it out.`,
      );
    }
    return fits;
  });
  return ok({
    rows: whole.map(({ line, numbers }) => ({ line, numbers })),
    columnCount,
    headings: headings.length === columnCount ? headings : [],
    separator,
    decimalComma,
    places: middleOf(whole.map(({ places }) => places)),
    skippedLines: skipped.sort((a, b) => a.line - b.line),
    said: [
      `Columns are separated by ${NAMES[separator]}${decimalComma ? ', with a comma for decimals' : ''}.`,
    ],
    words: skipped
      .filter(({ kind }) => kind !== 'unreadable')
      .map((each) => each.text)
      .join(' ')
      .toLowerCase(),
  });
}
