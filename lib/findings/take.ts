import type { Reading } from '../case/record';
import type { Quantity } from '../readings/quantity';
import { findQuantity } from '../readings/quantities';
import type { Cell, CellColumn } from './cells';
import type { Taken, TakenState } from './reading-index';
import { LEFT_OUT_WORDS, type LeftOutWhy } from './reading-state';
import type { UncertaintyOf } from './uncertainty-by-writing';

/** Why there is nothing to take at a place although something was read. */
export function whyLeftOut({ cells }: CellColumn, place: number): LeftOutWhy | null {
  const cell = cells[place];
  return !cell || cell.usable.length > 0 ? null : (cell.leftOut[0] ?? null);
}

export const dayOf = ({ takenAt }: Reading): string | null => takenAt?.slice(0, 10) ?? null;

const MONTH_MS = 31 * 24 * 60 * 60 * 1000;

/** A wheel read more than a month before its latest reading had another size then. */
export function setHistoryAside(cell: Cell): void {
  const times = cell.usable.flatMap((reading) => Date.parse(dayOf(reading) ?? '') || []);
  if (times.length < 2) return;
  const latest = Math.max(...times);
  const old = (reading: Reading): boolean => latest - (Date.parse(dayOf(reading) ?? '') || latest) > MONTH_MS;
  cell.history = cell.usable.filter(old).sort((a, b) => (a.takenAt ?? '').localeCompare(b.takenAt ?? ''));
  cell.usable = cell.usable.filter((reading) => !old(reading));
}

/** Quantities whose readings are numbers. */
type Counted = Extract<Quantity, { readonly kind: 'measure' | 'count' }>;

/** What the readings at a place of a column come to; null when there is no number among them. */
export function takeAt(column: CellColumn, place: number): Taken | null {
  const { quantity, uncertainty, lone, cells } = column;
  if (quantity?.kind !== 'measure' && quantity?.kind !== 'count') return null;
  const only = lone[place];
  if (only) return takeOne(only, uncertainty);
  const cell = cells[place];
  return cell ? takeMean(cell, quantity, uncertainty) : null;
}

function takeMean(cell: Cell, quantity: Counted, uncertainty: UncertaintyOf): Taken | null {
  const numbers = cell.usable.filter((r) => r.value !== null && Number.isFinite(r.value));
  const [first, ...others] = numbers;
  if (first === undefined) return null;
  const values = numbers.map((reading) => reading.value ?? 0);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const instrument = Math.max(...numbers.map(uncertainty));
  const scatter =
    values.length < 2
      ? 0
      : Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  return {
    value: mean,
    u: Math.max(instrument, scatter),
    readings: [first.id, ...others.map((reading) => reading.id)],
    remarks: [
      ...(values.length < 2
        ? []
        : [
            `Mean of ${values.length} standing readings of ${quantity.name.toLowerCase()}; uncertainty from their scatter or the instrument, whichever is larger.`,
          ]),
      ...samplingRemarks(numbers),
      ...besideRemarks(cell),
      ...(cell.history.length === 0
        ? []
        : [
            `${cell.history.length} earlier reading${cell.history.length === 1 ? '' : 's'} of it, from more than a month before, kept as history.`,
          ]),
    ],
  };
}

/** One reading as it was taken: by far the most common case, and a sheet has thousands of them. */
export function takeOne(reading: Reading, uncertainty: UncertaintyOf): Taken | null {
  const { value } = reading;
  if (value === null || !Number.isFinite(value)) return null;
  return {
    value,
    u: uncertainty(reading),
    readings: [reading.id],
    remarks:
      reading.sampling === 'worst' || reading.sampling === 'picked' ? samplingRemarks([reading]) : NONE,
  };
}

const NONE: readonly string[] = [];

/** What the readings of a cell say that are no number. */
export function takeState(cell: Cell, quantityId: string): TakenState | null {
  const said = cell.usable.filter((reading) => reading.state !== null);
  const [first, ...others] = said;
  if (first === undefined) return null;
  const states = new Set(said.map((reading) => reading.state));
  // Of a pass and a fail the fail is shown: it is the one somebody has to look into.
  const state = states.has('fail') ? 'fail' : (said.at(-1)?.state ?? '');
  const name = findQuantity(quantityId)?.name ?? quantityId;
  return {
    state,
    readings: [first.id, ...others.map((reading) => reading.id)],
    remarks: [
      ...(states.size < 2 ? [] : [`${name}: the standing records differ; ${state} is taken.`]),
      ...samplingRemarks(said),
      ...besideRemarks(cell),
    ],
  };
}

const samplingRemarks = (readings: readonly Reading[]): readonly string[] => [
  ...(readings.some((r) => r.sampling === 'worst')
    ? ['Read as the worst that was found, not as one of many.']
    : []),
  ...(readings.some((r) => r.sampling === 'picked') ? ['Picked for reading, not one of a full series.'] : []),
];

/** Says when other readings of the same thing were left out beside those taken. */
const besideRemarks = (cell: Cell): readonly string[] =>
  cell.leftOut.length === 0
    ? []
    : [
        `${cell.leftOut.length} other reading${cell.leftOut.length === 1 ? '' : 's'} of it left out: ${[
          ...new Set(cell.leftOut),
        ]
          .map((why) => LEFT_OUT_WORDS[why])
          .join(', ')}.`,
      ];
