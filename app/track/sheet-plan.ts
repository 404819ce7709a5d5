import { standing } from '~/lib/case/current';
import { parseField } from '~/lib/case/fields';
import {
  DISTURBANCES,
  type CaseRecord,
  type Disturbance,
  type Entity,
  type Reading,
} from '~/lib/case/record';
import { parseReading } from '~/lib/readings/parse';
import type { UnitSystem } from '~/lib/readings/unit';
import { fieldCell, readingCell, readingKey, readingsAt } from './cell-text';
import { cellName, isNewRow, SHEET_COLUMNS, type SheetColumn } from './columns';

/** What was in the boxes of one row, by column. */
export type SentRow = { readonly row: string; readonly cells: Readonly<Record<string, string>> };

export type SentSheet = {
  readonly rows: readonly SentRow[];
  /** How many rows of readings the record had when the sheet was shown. */
  readonly asOf: number;
  /** Fields of the stations when the sheet was shown, by station. */
  readonly was: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Why standing readings change; '' leaves them as they are. */
  readonly reason: string;
  /** State of new stations whose own cell says nothing. */
  readonly newState: Disturbance;
};

/** A reading as far as its cell says. */
export type CellReading = {
  readonly quantity: string;
  readonly slot: string;
  readonly entered: string;
  readonly unit: string;
  readonly value: number | null;
  readonly state: string | null;
  readonly disturbance: Disturbance;
};

/** What saving a sheet would do. Everything with a message is left out and stays in its box. */
export type SheetPlan = {
  readonly added: readonly {
    readonly row: string;
    readonly fields: Entity['fields'];
    readonly readings: readonly CellReading[];
  }[];
  readonly fields: readonly { readonly id: string; readonly fields: Entity['fields'] }[];
  readonly readings: readonly (CellReading & { readonly stationId: string })[];
  readonly corrections: readonly { readonly old: Reading; readonly to: CellReading }[];
  readonly withdrawals: readonly Reading[];
  /** Cell → what to enter instead. */
  readonly errors: Readonly<Record<string, string>>;
  /** Cells that are right by themselves and wait for the reason. */
  readonly waiting: readonly string[];
  /** Kept, but unusual. */
  readonly questions: readonly string[];
};

type Draft = {
  readonly added: SheetPlan['added'][number][];
  readonly fields: SheetPlan['fields'][number][];
  readonly readings: SheetPlan['readings'][number][];
  readonly corrections: SheetPlan['corrections'][number][];
  readonly withdrawals: Reading[];
  readonly errors: Record<string, string>;
  readonly waiting: string[];
  readonly questions: string[];
};

type Sheet = {
  readonly sent: SentSheet;
  readonly system: UnitSystem;
  readonly stations: ReadonlyMap<string, Entity>;
  readonly before: ReadonlyMap<string, readonly Reading[]>;
  readonly now: ReadonlyMap<string, readonly Reading[]>;
  /** Station names in use → the row that uses them. */
  readonly names: Map<string, string>;
};

const tidy = (text: string | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim();

const isDisturbance = (value: unknown): value is Disturbance =>
  (DISTURBANCES as readonly unknown[]).includes(value);

const stateOf = (fields: Entity['fields']): Disturbance =>
  isDisturbance(fields.disturbance) ? fields.disturbance : 'notSaid';

const latest = (readings: readonly Reading[] | undefined): Reading | null => readings?.at(-1) ?? null;

type ReadingColumn = Extract<SheetColumn, { type: 'reading' }>;
type FieldColumn = Extract<SheetColumn, { type: 'field' }>;
const READING_COLUMNS = SHEET_COLUMNS.filter((c): c is ReadingColumn => c.type === 'reading');
const FIELD_COLUMNS = SHEET_COLUMNS.filter((c): c is FieldColumn => c.type === 'field');

/** The reading in a cell that is not empty; null when it cannot be read, with the reason noted. */
function readCell(
  { system }: Sheet,
  draft: Draft,
  cell: string,
  column: ReadingColumn,
  entered: string,
  disturbance: Disturbance,
  about: string,
): CellReading | null {
  const parsed = parseReading(entered, column.quantity, system);
  if (!parsed.ok) {
    draft.errors[cell] = parsed.message;
    return null;
  }
  const { unit, value, state, question } = parsed.value;
  if (question !== null) draft.questions.push(`Station ${about}, ${column.label.toLowerCase()}: ${question}`);
  return { quantity: column.quantity.id, slot: column.slot, entered, unit, value, state, disturbance };
}

function takeName(sheet: Sheet, draft: Draft, row: string, name: unknown): boolean {
  const text = String(name ?? '');
  const owner = sheet.names.get(text);
  if (owner === undefined || owner === row) {
    sheet.names.set(text, row);
    return true;
  }
  draft.errors[cellName(row, 'name')] = `There is already a station ${text}. Enter a name of its own.`;
  return false;
}

function planNewRow(sheet: Sheet, draft: Draft, { row, cells }: SentRow): void {
  if (SHEET_COLUMNS.every(({ id }) => tidy(cells[id]) === '')) return;
  const fields: Record<string, Entity['fields'][string]> = {};
  let whole = true;
  for (const { id, field } of FIELD_COLUMNS) {
    const text = tidy(cells[id]);
    const parsed = parseField(field, id === 'disturbance' && text === '' ? sheet.sent.newState : text);
    if (parsed.ok) fields[id] = parsed.value;
    else {
      draft.errors[cellName(row, id)] = parsed.message;
      whole = false;
    }
  }
  if (whole) whole = takeName(sheet, draft, row, fields.name);
  const state = stateOf(fields);
  const readings = READING_COLUMNS.flatMap((column) => {
    const entered = tidy(cells[column.id]);
    if (entered === '') return [];
    const cell = cellName(row, column.id);
    return readCell(sheet, draft, cell, column, entered, state, tidy(cells.name)) ?? [];
  });
  // Without a name there is no station to hang the readings on: the whole row waits.
  if (whole) draft.added.push({ row, fields, readings });
}

function planFields(sheet: Sheet, draft: Draft, station: Entity, cells: SentRow['cells']): Entity['fields'] {
  const changed: Record<string, Entity['fields'][string]> = {};
  const was = sheet.sent.was[station.id] ?? {};
  for (const column of FIELD_COLUMNS) {
    const { id, field } = column;
    const text = tidy(cells[id]);
    if (cells[id] === undefined || text === tidy(was[id])) continue;
    const cell = cellName(station.id, id);
    const now = tidy(fieldCell(column, station.fields));
    if (now !== tidy(was[id]) && now !== text) {
      draft.errors[cell] = `Changed to “${now}” meanwhile. Enter it again if yours is to stand.`;
      continue;
    }
    const parsed = parseField(field, text);
    if (!parsed.ok) draft.errors[cell] = parsed.message;
    else if (parsed.value === station.fields[id]) continue;
    else if (id === 'name' && !takeName(sheet, draft, station.id, parsed.value)) continue;
    else if (id === 'disturbance' && sheet.sent.reason === '') draft.waiting.push(cell);
    else changed[id] = parsed.value;
  }
  return changed;
}

/** Readings that said what the station said follow it; one that said something of its own does not. */
function followState(draft: Draft, readings: readonly Reading[], was: Disturbance, state: Disturbance): void {
  if (was === state) return;
  for (const old of readings) {
    const { quantity, slot, entered, unit, value } = old;
    if (old.disturbance !== was && old.disturbance !== 'notSaid') continue;
    const to = { quantity, slot, entered, unit, value, state: old.state, disturbance: state };
    draft.corrections.push({ old, to });
  }
}

function planReading(
  sheet: Sheet,
  draft: Draft,
  station: Entity,
  column: ReadingColumn,
  text: string,
  state: Disturbance,
): void {
  const { system, sent } = sheet;
  const key = readingKey(station.id, column.quantity.id, column.slot);
  const standingHere = sheet.now.get(key) ?? [];
  const shown = latest(sheet.before.get(key));
  const current = latest(standingHere);
  const cell = cellName(station.id, column.id);
  const was = stateOf(station.fields);
  const currentText = current ? tidy(readingCell(current, column, system)) : '';
  const shownText = shown ? tidy(readingCell(shown, column, system)) : '';
  if (text === shownText || text === currentText) return followState(draft, standingHere, was, state);
  followState(draft, standingHere.slice(0, -1), was, state);
  if (current?.id !== shown?.id) {
    draft.errors[cell] =
      `${current ? `Entered as “${currentText}”` : 'Withdrawn'} meanwhile. Enter it again if yours is to stand.`;
    return;
  }
  const to =
    text === '' ? null : readCell(sheet, draft, cell, column, text, state, String(station.fields.name ?? ''));
  if (to === null && text !== '') return;
  if (current !== null && sent.reason === '') draft.waiting.push(cell);
  else if (to === null) {
    if (current !== null) draft.withdrawals.push(current);
  } else if (current === null) draft.readings.push({ ...to, stationId: station.id });
  else draft.corrections.push({ old: current, to });
}

function planRow(sheet: Sheet, draft: Draft, station: Entity, cells: SentRow['cells']): void {
  const fields = planFields(sheet, draft, station, cells);
  if (Object.keys(fields).length > 0) draft.fields.push({ id: station.id, fields });
  const state = stateOf({ ...station.fields, ...fields });
  for (const column of READING_COLUMNS) {
    const sent = cells[column.id];
    if (sent !== undefined) planReading(sheet, draft, station, column, tidy(sent), state);
  }
}

/**
 * What a sent sheet changes, against what it showed when it was filled in. A filled cell that was
 * empty is a new reading; a changed one corrects, an emptied one withdraws the reading that stood
 * there, both with the reason; a changed state of a station corrects the state of its readings too.
 * A cell that somebody else changed meanwhile is not overwritten.
 */
export function planSheet(record: CaseRecord, sent: SentSheet, system: UnitSystem): SheetPlan {
  const stations = standing(record, 'station');
  const sheet: Sheet = {
    sent,
    system,
    stations: new Map(stations.map((station) => [station.id, station])),
    before: readingsAt(record, sent.asOf),
    now: readingsAt(record, record.readings.length),
    names: new Map(stations.map((station) => [String(station.fields.name ?? ''), station.id])),
  };
  const draft: Draft = {
    added: [],
    fields: [],
    readings: [],
    corrections: [],
    withdrawals: [],
    errors: {},
    waiting: [],
    questions: [],
  };
  for (const row of sent.rows) {
    if (isNewRow(row.row)) {
      planNewRow(sheet, draft, row);
      continue;
    }
    const station = sheet.stations.get(row.row);
    if (station) planRow(sheet, draft, station, row.cells);
    else draft.errors[cellName(row.row, 'name')] = 'This station was removed meanwhile.';
  }
  return draft;
}
