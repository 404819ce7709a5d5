import type { TracedShape, TraceUncertainty } from '../case/trace';
import { outlineOf, type Outline } from '../outline/outline';
import { toCanonical } from '../readings/convert';
import { ok, refuse, type Result } from '../readings/result';
import { combine, standardUncertaintyFromHalfWidth } from '../readings/uncertainty';
import { guessedChoice, type OutlineGuess } from './outline-guess';
import { spanOf, twoDigits } from './numbers';
import { readTable, type SkippedLine } from './outline-table';

/** How the numbers of a file become an outline; what was guessed, or what the user changed it to. */
export type OutlineChoice = {
  /** Columns of x and y, counted from 0. */
  readonly columns: readonly [number, number];
  readonly unit: 'mm' | 'in';
  readonly flipped: { readonly x: boolean; readonly y: boolean };
};

/** A line of the file that holds numbers. */
export type NumberLine = {
  /** As an editor counts it, from 1. */
  readonly line: number;
  /** One for each column; null where the cell holds no number. */
  readonly numbers: readonly (number | null)[];
};

export type OutlineFile = OutlineChoice & {
  readonly rows: readonly NumberLine[];
  readonly columnCount: number;
  /** Headings of the columns; empty when the file has none. */
  readonly headings: readonly string[];
  readonly separator: 'comma' | 'semicolon' | 'tab' | 'space';
  readonly decimalComma: boolean;
  /** Decimal places most written in the two columns. */
  readonly places: number;
  readonly skippedLines: readonly SkippedLine[];
  /** A sentence for each thing that was guessed, so that the user can put it right. */
  readonly guesses: readonly string[];
};

export type OutlineFileOptions = {
  /** What the outline is of, which tells which way up it belongs. */
  readonly shape?: TracedShape;
};

const LEAST_POINTS = 5;
const MOST_POINTS = 200_000;

/**
 * A text of x, y points: comma, semicolon, tab or spaces between the columns, decimal point or
 * comma, quoted or not, headings and comment lines anywhere, more columns than two. What the file
 * does not say is guessed, and each guess said in `guesses`.
 *
 * Refuses a text that is no table of numbers, and one with fewer than five points. Lines that
 * cannot be read are in `skippedLines` with the reason. Never throws.
 */
export function parseOutlineFile(text: string, { shape }: OutlineFileOptions = {}): Result<OutlineFile> {
  const table = readTable(text);
  if (!table.ok) return table;
  const { rows, columnCount } = table.value;
  if (columnCount < 2) {
    return refuse(
      'Only one column of numbers was found. The file needs an x and a y on each line, with a comma, semicolon, tab or space between them.',
    );
  }
  if (rows.length < LEAST_POINTS) {
    return refuse(
      `Only ${rows.length} ${rows.length === 1 ? 'line' : 'lines'} with numbers were found. An outline needs at least ${LEAST_POINTS} points, one x and y on each line.`,
    );
  }
  if (rows.length > MOST_POINTS) {
    return refuse(
      `The file has ${rows.length} points. Choose a file with at most ${MOST_POINTS}: one outline, not a whole scan.`,
    );
  }
  const guess: Result<OutlineGuess> = guessedChoice(table.value, shape ?? null);
  if (!guess.ok) return guess;
  return ok({ ...table.value, ...guess.value.choice, guesses: [...table.value.said, ...guess.value.said] });
}

/** Share of the lines that may be unreadable before the file is refused; a few spoilt lines leave the line whole. */
const MOST_UNREADABLE = 0.05;
const NARROWEST_MM = 15;
const WIDEST_MM = 700;

const named = (lines: readonly number[]): string =>
  `${lines.length === 1 ? 'line' : 'lines'} ${lines.slice(0, 5).join(', ')}${lines.length > 5 ? ' and more' : ''}`;

/**
 * The outline of a file as the user confirmed it: columns taken, converted to mm, turned over where
 * asked, points repeated on the spot left out, starting at the end that lies farther left.
 *
 * Refuses columns that do not exist or are the same, too many lines without a number in them (naming
 * the lines), fewer than five points, and an extent no wheel or rail has, which tells of a wrong unit.
 */
export function outlineFromFile(file: OutlineFile, choice: OutlineChoice = file): Result<Outline> {
  const { columns, unit, flipped } = choice;
  const exists = (column: number): boolean =>
    Number.isInteger(column) && column >= 0 && column < file.columnCount;
  if (!columns.every(exists))
    return refuse(`The file has ${file.columnCount} columns. Choose the columns of x and y among them.`);
  if (columns[0] === columns[1]) return refuse('x and y are the same column. Choose two different columns.');
  const pairs = file.rows.map(({ line, numbers }) => ({
    line,
    x: numbers[columns[0]],
    y: numbers[columns[1]],
  }));
  const unreadable = [
    ...file.skippedLines.filter(({ kind }) => kind === 'unreadable').map(({ line }) => line),
    ...pairs.filter(({ x, y }) => x == null || y == null).map(({ line }) => line),
  ].sort((a, b) => a - b);
  if (unreadable.length > Math.max(1, MOST_UNREADABLE * file.rows.length)) {
    return refuse(
      `There is no number for x or y in ${named(unreadable)}. Choose other columns, or put these lines right in the file and choose it again.`,
    );
  }
  const mm = (value: number, turned: boolean): number =>
    (turned ? -1 : 1) * toCanonical(value, unit, 'crossLength') + 0;
  const points = pairs
    .flatMap(({ x, y }) => (x == null || y == null ? [] : [[mm(x, flipped.x), mm(y, flipped.y)] as const]))
    .filter(([x, y], i, all) => i === 0 || x !== all[i - 1]![0] || y !== all[i - 1]![1]);
  if (points.length < LEAST_POINTS)
    return refuse(
      `These columns give ${points.length} different points. Choose the columns of x and y; an outline needs at least ${LEAST_POINTS}.`,
    );
  const extent = Math.max(spanOf(points.map(([x]) => x)), spanOf(points.map(([, y]) => y)));
  if (extent < NARROWEST_MM || extent > WIDEST_MM) {
    return refuse(
      `The outline would be ${Number(extent.toPrecision(3))} mm across, and wheels, rails and points are between ${NARROWEST_MM} and ${WIDEST_MM} mm. Choose the other unit, or other columns; a file in metres or micrometres must be written in mm.`,
    );
  }
  const forwards = points[0]![0] <= points.at(-1)![0] ? points : [...points].reverse();
  return ok(
    outlineOf(
      forwards.map(([x]) => x),
      forwards.map(([, y]) => y),
    ),
  );
}

/** A profilometer's points. From memory. */
const PROFILOMETER_MM = 0.1;

/**
 * How well the points of a file stand for the shape, k = 1: the last decimal place written, and the
 * instrument's own uncertainty across the line where given (mm); without it 0.1 mm, from memory.
 */
export function uncertaintyOfFile(
  file: OutlineFile,
  unit: 'mm' | 'in',
  instrumentMm: number | null = null,
): TraceUncertainty {
  const placeMm = toCanonical(10 ** -file.places, unit, 'crossLength');
  const written = standardUncertaintyFromHalfWidth(placeMm / 2);
  const instrument = instrumentMm ?? PROFILOMETER_MM;
  return {
    acrossMm: combine(instrument, written),
    scale: 0,
    because: [
      instrumentMm === null
        ? `Points of a file: ${PROFILOMETER_MM} mm across the line, usual for a profilometer (from memory).`
        : `Instrument: ${twoDigits(instrumentMm)} mm across the line.`,
      `Written to ${twoDigits(placeMm)} mm: ${twoDigits(written)} mm.`,
      'The file gives lengths; none is taken for its scale.',
    ],
  };
}
