import { toCanonical } from '../../readings/convert';
import { ok, refuse, type Result } from '../../readings/result';
import { DIMENSIONS, type Unit, type UnitSystem } from '../../readings/unit';
import { RECORDER_CHANNELS, recorderChannel, type RecorderChannel } from '../recorder';
import type { CsvSheet } from './csv';
import type { ColumnMapping, Matchable } from './mapping';
import type { RowProblem } from './table';

export type RecorderSeries = {
  readonly channel: string;
  readonly unit: string;
  readonly values: Float64Array;
};

export type RecorderPreview = {
  readonly rows: number;
  readonly series: readonly RecorderSeries[];
  readonly problems: readonly RowProblem[];
  /** Gaps and backward steps of the clock, told and not mended. */
  readonly notes: readonly string[];
};

/** Problems beyond this many would bury the first ones. */
const MOST_PROBLEMS = 50;

const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  time: ['time', 'clock', 'timestamp', 'local time', 'seconds', 'elapsed time'],
  distance: ['distance', 'dist', 'odometer'],
  speed: ['speed', 'train speed', 'velocity'],
  throttle: ['throttle', 'notch', 'throttle position'],
  dynamicBrakeNotch: ['dynamic brake', 'dyn brake', 'db notch', 'dynamic'],
  dynamicBrakeShare: ['dynamic brake', 'dyn brake', 'dynamic brake percent', 'dynamic'],
  brakePipe: ['brake pipe', 'bp', 'brake pipe pressure', 'automatic brake'],
  brakeCylinder: ['brake cylinder', 'bc', 'brake cylinder pressure'],
  independentBrake: ['independent brake', 'independent'],
  endOfTrainPressure: ['end of train', 'eot', 'rear brake pipe'],
  emergency: ['emergency', 'emergency brake', 'pcs'],
  tractiveEffort: ['tractive effort', 'te'],
};

export const RECORDER_TARGETS: readonly (Matchable & { readonly required: boolean })[] =
  RECORDER_CHANNELS.map((channel) => ({
    id: channel.id,
    label: channel.label,
    units: channel.units,
    required: channel.id === 'time' || channel.id === 'speed',
    alsoCalled: OTHER_NAMES[channel.id] ?? [],
  }));

export const usualChannelUnit = (id: string, system: UnitSystem): string | null =>
  recorderChannel(id)?.bareUnit[system] ?? null;

const CLOCK = /^(?:(\d{4})-(\d{2})-(\d{2})[T ])?(\d{1,2}):(\d{2}):(\d{2}(?:\.\d+)?)$/;

/** Seconds: a plain number in `unit`, a clock time of day, or a date with a clock time (no zone). */
function readTime(cell: string, factor: number): number {
  const plain = Number(cell);
  if (!Number.isNaN(plain)) return plain * factor;
  const match = CLOCK.exec(cell.trim());
  if (match === null) return NaN;
  const [, year, month, day, hours, minutes, seconds] = match;
  const date = year === undefined ? 0 : Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000;
  return date + Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
}

const WORDS: Readonly<Record<string, number>> = { on: 1, yes: 1, true: 1, idle: 0, off: 0, no: 0, false: 0 };

function readNumber(cell: string): number {
  const value = Number(cell);
  return Number.isNaN(value) ? (WORDS[cell.trim().toLowerCase()] ?? NaN) : value;
}

/** A linear unit's factor and offset into the canonical one, found once so that 100,000 cells stay quick. */
function linear(unit: Unit, channel: RecorderChannel): readonly [factor: number, offset: number] {
  const offset = toCanonical(0, unit, channel.dimension);
  return [toCanonical(1, unit, channel.dimension) - offset, offset];
}

const asUnit = (text: string | null, channel: RecorderChannel, system: UnitSystem): Unit =>
  DIMENSIONS[channel.dimension].units.find((unit) => unit === text) ?? channel.bareUnit[system];

const SPACE = 32;
/** Eight hundred thousand cells: only one that starts with a blank is looked at as a whole. */
const isBlank = (cell: string): boolean => cell === '' || (cell.charCodeAt(0) <= SPACE && cell.trim() === '');

function readChannel(
  sheet: CsvSheet,
  index: number,
  channel: RecorderChannel,
  unit: Unit,
  problems: RowProblem[],
): Float64Array {
  const { rows } = sheet;
  const [factor, offset] = linear(unit, channel);
  const [low, high] = channel.possible;
  const values = new Float64Array(rows.length);
  const complain = (row: number, message: string): void => {
    if (problems.length < MOST_PROBLEMS)
      problems.push({ row: row + 2, column: sheet.header[index] ?? '', message });
  };
  const isTime = channel.id === 'time';
  for (let row = 0; row < rows.length; row += 1) {
    const cell = rows[row]?.[index] ?? '';
    // Number() reads blanks as 0, which must stay a gap.
    if (isBlank(cell)) {
      values[row] = NaN;
      if (isTime) complain(row, 'The time is empty. Every row needs one.');
      continue;
    }
    const value = isTime ? readTime(cell, factor) : readNumber(cell) * factor + offset;
    values[row] = value;
    if (Number.isNaN(value)) {
      complain(
        row,
        isTime
          ? `“${cell}” is not a time. Use seconds, 13:05:07.5, or 2031-05-06 13:05:07.`
          : `“${cell}” is not a number. Leave the cell empty where the recorder gave nothing.`,
      );
    } else if (!isTime && (value < low || value > high)) {
      complain(
        row,
        `${cell}${unit === '1' ? '' : ` ${unit}`} is not possible for ${channel.label.toLowerCase()}. Check the unit of the column, and what it holds.`,
      );
    }
  }
  return values;
}

const MOST_NAMED = 3;
const HEADER_ROWS = 1;

/** "21.0 s before row 122, 4.0 s before row 300 and more". */
const listed = (found: readonly { readonly seconds: number; readonly row: number }[], join: string): string =>
  found
    .slice(0, MOST_NAMED)
    .map(({ seconds, row }) => `${seconds.toFixed(1)} s ${join} row ${row}`)
    .join(', ') + (found.length > MOST_NAMED ? ' and more' : '');

/** Times counted from the first row, with gaps and backward steps named. */
function fromStart(values: Float64Array, notes: string[]): Float64Array {
  const start = values[0] ?? 0;
  for (let row = 0; row < values.length; row += 1) values[row] = (values[row] ?? 0) - start;
  const steps = values.subarray(1).map((here, i) => here - values[i]!);
  const usual = Float64Array.from(steps).sort()[Math.floor(steps.length / 2)] ?? 0;
  const where = (is: (step: number) => boolean) =>
    Array.from(steps).flatMap((step, i) =>
      is(step) ? [{ seconds: Math.abs(step), row: i + 2 + HEADER_ROWS }] : [],
    );
  const backward = where((step) => step < 0);
  const gaps = usual > 0 ? where((step) => step > 3 * usual) : [];
  if (backward.length > 0)
    notes.push(
      `Backward steps of the clock: ${backward.length} (${listed(backward, 'back at')}). The times are kept as they are.`,
    );
  if (gaps.length > 0)
    notes.push(
      `Gaps of more than three times the usual ${usual.toPrecision(3)} s between rows: ${gaps.length} (${listed(gaps, 'before')}). Nothing is filled in.`,
    );
  return values;
}

/**
 * Recorder channels from a file, in canonical units, NaN where a cell is empty. Times are seconds
 * from the first row. Refuses a sheet with no matched time column; everything else is a problem
 * named by row, and nothing may be recorded while there is one.
 */
export function previewRecorder(
  sheet: CsvSheet,
  mapping: ColumnMapping,
  system: UnitSystem,
): Result<RecorderPreview> {
  const problems: RowProblem[] = [];
  const notes: string[] = [];
  const series: RecorderSeries[] = [];
  sheet.header.forEach((name, index) => {
    const match = mapping[name];
    const channel = match && recorderChannel(match.target);
    if (!match || channel === undefined) return;
    const unit = asUnit(match.unit, channel, system);
    const values = readChannel(sheet, index, channel, unit, problems);
    series.push({
      channel: channel.id,
      unit,
      values: channel.id === 'time' ? fromStart(values, notes) : values,
    });
  });
  if (!series.some((one) => one.channel === 'time')) return refuse('Say which column holds the time.');
  return ok({ rows: sheet.rows.length, series, problems, notes });
}
