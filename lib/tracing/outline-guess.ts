import type { TracedShape } from '../case/trace';
import { ok, refuse, type Result } from '../readings/result';
import { highestOf, lowestOf, middleOf, spanOf } from './numbers';
import type { OutlineChoice } from './outline-file';
import type { OutlineTable } from './outline-table';

export type OutlineGuess = { readonly choice: OutlineChoice; readonly said: readonly string[] };

type Column = { readonly index: number; readonly values: readonly number[]; readonly span: number };

const columnsOf = ({ rows, columnCount }: OutlineTable): readonly Column[] =>
  Array.from({ length: columnCount }, (_, index) => {
    const values = rows.flatMap(({ numbers }) => {
      const value = numbers[index];
      return value == null ? [] : [value];
    });
    return { index, values, span: values.length === 0 ? 0 : spanOf(values) };
  });

/** Whether a column only counts its lines. */
const counts = ({ values }: Column): boolean =>
  values.length > 2 && values.every((value, i) => i === 0 || value === values[i - 1]! + 1);

const isNamed = (heading: string, letter: 'x' | 'y'): boolean =>
  new RegExp(`^${letter}([^a-z]|$|mm|in|pos|coord)`, 'i').test(heading.trim());

function guessedColumns(
  table: OutlineTable,
  shape: TracedShape | null,
): Result<readonly [Column, Column, string]> {
  const columns = columnsOf(table);
  const byName = (letter: 'x' | 'y'): Column | undefined =>
    columns[table.headings.findIndex((heading) => isNamed(heading, letter))];
  const [x, y] = [byName('x'), byName('y')];
  if (x !== undefined && y !== undefined && x !== y)
    return ok([x, y, 'x and y are the columns with these headings.']);
  const filled = columns.filter(({ values, span }) => values.length > 0.9 * table.rows.length && span > 0);
  const useful = columns.length > 2 ? filled.filter((column) => !counts(column)) : filled;
  const [first, second] = [...useful].sort((a, b) => b.span - a.span).slice(0, 2);
  if (first === undefined || second === undefined)
    return refuse(
      'No two columns of the file hold numbers that differ from line to line. Choose a file with an x and a y on each line.',
    );
  const inOrder = first.index < second.index ? ([first, second] as const) : ([second, first] as const);
  // A wheel is wider than high; a rail may be either.
  const [across, up] = shape === 'wheel' ? ([first, second] as const) : inOrder;
  const place = (column: Column): string => `column ${column.index + 1}`;
  return ok([
    across,
    up,
    `x is taken from ${place(across)} and y from ${place(up)}, ${shape === 'wheel' ? 'the wider one as x' : 'in the order of the file'}.`,
  ]);
}

/** Largest extent of an outline in inches; no wheel or rail is as small in mm. */
const LARGEST_IN_INCHES = 14;

function guessedUnit(
  { words, headings }: OutlineTable,
  extent: number,
): { readonly unit: 'mm' | 'in'; readonly said: string } {
  const text = `${words} ${headings.join(' ').toLowerCase()}`;
  const mm = /\bmm\b|millimet/.test(text);
  const inch = /\binch(es)?\b|[([]\s*in\.?\s*[)\]]|\bunits?\s*[:=]?\s*in\b|\bin\.(\s|$)/.test(text);
  if (mm !== inch)
    return { unit: mm ? 'mm' : 'in', said: `The unit is ${mm ? 'mm' : 'inches'}, as the file says.` };
  const unit = extent <= LARGEST_IN_INCHES ? 'in' : 'mm';
  return {
    unit,
    said: `The unit is taken for ${unit === 'in' ? 'inches' : 'mm'}, because the outline is ${Number(extent.toPrecision(3))} across.`,
  };
}

/**
 * Whether a shape lies upside down: most of tread or crown is near its top, a flange stands above the tread; of a
 * point both ends of the line lie low.
 */
function guessedUpsideDown(x: Column, y: Column, shape: TracedShape): boolean {
  if (shape === 'point') {
    const ends = [y.values[0]!, y.values.at(-1)!];
    const [low, high] = [lowestOf(y.values), highestOf(y.values)];
    return ends.every((end) => end > (low + high) / 2);
  }
  if (shape === 'rail') {
    const middle = middleOf(y.values);
    const [low, high] = [middle - lowestOf(y.values), highestOf(y.values) - middle];
    return high > low;
  }
  const inner = y.values.filter((_, i) => {
    const share = (x.values[i]! - lowestOf(x.values)) / x.span;
    return share > 0.4 && share < 0.75;
  });
  const tread = middleOf(inner);
  const flank = y.values.filter((_, i) => {
    const share = (x.values[i]! - lowestOf(x.values)) / x.span;
    return share > 0.06 && share < 0.94;
  });
  return flank.length > 0 && tread - lowestOf(flank) > highestOf(flank) - tread;
}

/** Whether the flange of a wheel, the right way up, is at the right: its tip is where y is largest. */
function guessedFlangeRight(x: Column, y: Column, upsideDown: boolean): boolean {
  const sign = upsideDown ? -1 : 1;
  const tip = y.values.reduce((best, value, i) => (sign * value > sign * y.values[best]! ? i : best), 0);
  return (x.values[tip]! - lowestOf(x.values)) / x.span > 0.5;
}

/** What is up in a shape that lies as it should. */
const POINTS_UP: Readonly<Record<TracedShape, string>> = {
  wheel: 'flange',
  rail: 'head',
  point: 'top of the point',
};

/**
 * What a table of numbers most likely means: columns by heading, else the two that differ most;
 * the unit from the text, else from the size; the way up from the shape, flange of a wheel at the
 * upper left, head of a rail up. Everything is said in words, to be put right.
 */
export function guessedChoice(table: OutlineTable, shape: TracedShape | null): Result<OutlineGuess> {
  const columns = guessedColumns(table, shape);
  if (!columns.ok) return columns;
  const [x, y, saidColumns] = columns.value;
  const { unit, said: saidUnit } = guessedUnit(table, Math.max(x.span, y.span));
  const paired = x.values.length === y.values.length && x.span > 0;
  const upsideDown = shape !== null && paired && guessedUpsideDown(x, y, shape);
  const flangeRight = shape === 'wheel' && paired && guessedFlangeRight(x, y, upsideDown);
  const turned = [
    ...(upsideDown ? [`The ${POINTS_UP[shape ?? 'wheel']} points down in the file: y is turned over.`] : []),
    ...(flangeRight ? ['The flange is at the right in the file: x is turned over.'] : []),
  ];
  return ok({
    choice: { columns: [x.index, y.index], unit, flipped: { x: flangeRight, y: upsideDown } },
    said: [saidColumns, saidUnit, ...turned],
  });
}
