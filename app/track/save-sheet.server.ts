import { z } from 'zod';
import type { LoadedCase } from '~/app/case.server';
import { readSharedEntry, type SharedEntry } from '~/app/readings/shared-entry';
import { systemOf } from '~/app/readings/take.server';
import type { Actor } from '~/db/actor';
import type { NewReading } from '~/db/readings';
import { saveStationSheet } from '~/db/station-sheet';
import { standing } from '~/lib/case/current';
import type { Reading } from '~/lib/case/record';
import { cellName, instrumentBox, isNewRow, SHEET_COLUMNS } from './columns';
import { askedColumns } from './shown-columns';
import { planSheet, type CellReading, type SentRow, type SheetPlan } from './sheet-plan';

/** How many of each were kept. */
export type SheetCounts = {
  readonly stations: number;
  readonly readings: number;
  readonly changed: number;
};

export type SheetAnswer = {
  readonly counts: SheetCounts;
  readonly questions: readonly string[];
  /** Cell, or name of a shared box → what to enter instead. */
  readonly errors: Readonly<Record<string, string>>;
  /** What is to stand in the boxes again. */
  readonly values: Readonly<Record<string, string>>;
  /** Stations with a marked cell, which may lie on another page. */
  readonly marked: readonly string[];
  /** Name of the first station that was added; '' when none was. */
  readonly firstAdded: string;
  /** Further columns that were asked for, by quantity. */
  readonly columns: readonly string[];
  readonly stamp: string;
};

const NOTHING: SheetCounts = { stations: 0, readings: 0, changed: 0 };

const wasSchema = z.record(z.string(), z.record(z.string(), z.string()));

function readWas(text: string): z.infer<typeof wasSchema> {
  try {
    return wasSchema.catch({}).parse(JSON.parse(text));
  } catch {
    return {};
  }
}

/** Rows of cells in the order in which they stand in the form. */
export function sentRows(form: FormData): readonly SentRow[] {
  const rows = new Map<string, Record<string, string>>();
  for (const [name, value] of form.entries()) {
    const [kind, row, column] = name.split(':');
    if (kind !== 'cell' || !row || !column || typeof value !== 'string') continue;
    const cells = rows.get(row);
    if (cells) cells[column] = value;
    else rows.set(row, { [column]: value });
  }
  return [...rows].map(([row, cells]) => ({ row, cells }));
}

const textsOf = (form: FormData): Record<string, string> =>
  Object.fromEntries([...form].filter((pair): pair is [string, string] => typeof pair[1] === 'string'));

function changesOf(plan: SheetPlan, form: FormData, { record }: LoadedCase, shared: SharedEntry) {
  const instruments = new Set(standing(record, 'instrument').map(({ id }) => id));
  const instrumentOf = (quantity: string): string | null => {
    const id = String(form.get(instrumentBox(quantity)) ?? '');
    return instruments.has(id) ? id : null;
  };
  const fresh = (cell: CellReading): Omit<NewReading, 'subject'> => ({
    ...shared,
    quantity: cell.quantity,
    slot: cell.slot,
    entered: cell.entered,
    unit: cell.unit,
    value: cell.value,
    state: cell.state,
    examined: null,
    instrumentId: instrumentOf(cell.quantity),
    disturbance: cell.disturbance,
  });
  const readAgain = form.get('change') === 'again';
  /** A slip of the pen leaves who, when and with what as they were. */
  const replacement = (old: Reading, to: CellReading): NewReading => ({
    ...(readAgain && old.entered !== to.entered
      ? fresh(to)
      : {
          ...fresh(to),
          instrumentId: old.instrumentId,
          personId: old.personId,
          takenAt: old.takenAt,
          sampling: old.sampling,
          note: old.note,
        }),
    subject: old.subject,
  });
  return {
    added: plan.added.map(({ fields, readings }) => ({ fields, readings: readings.map(fresh) })),
    fields: plan.fields,
    readings: plan.readings.map((cell): NewReading => ({
      ...fresh(cell),
      subject: { kind: 'station', id: cell.stationId },
    })),
    corrections: plan.corrections.map(({ old, to }) => ({
      readingId: old.id,
      replacement: replacement(old, to),
    })),
    withdrawals: plan.withdrawals.map(({ id }) => id),
  };
}

const SHARED = [
  'person',
  'takenAt',
  'justNow',
  'disturbance',
  'sampling',
  'note',
  'change',
  'reason',
] as const;

/**
 * Saves the cells of a sent sheet that can be read and says of the others why they cannot. Nothing
 * is saved while one of the shared boxes is wrong: it would be wrong in every reading.
 */
export function saveSheet(form: FormData, loaded: LoadedCase, actor: Actor): SheetAnswer {
  const { db, caseId, record } = loaded;
  const { entry, errors: sharedErrors } = readSharedEntry(form, record);
  const stamp = new Date().toISOString();
  const columns = askedColumns(form.getAll('columns'));
  const refused = (errors: Readonly<Record<string, string>>): SheetAnswer => ({
    counts: NOTHING,
    questions: [],
    errors,
    values: textsOf(form),
    marked: [],
    firstAdded: '',
    columns,
    stamp,
  });
  if (Object.keys(sharedErrors).length > 0) return refused(sharedErrors);

  const reason = String(form.get('reason') ?? '').trim();
  const plan = planSheet(
    record,
    {
      rows: sentRows(form),
      asOf: Math.min(Number(form.get('asOf')) || 0, record.readings.length),
      was: readWas(String(form.get('was') ?? '{}')),
      reason,
      newState: entry.disturbance,
    },
    systemOf(record.fields),
  );
  const saved = saveStationSheet(db, caseId, { ...changesOf(plan, form, loaded, entry), reason }, actor);
  if (!saved.ok) return refused({ reason: saved.message });

  // A row that was new is a station now; its marked cells move to that station's row.
  const idOf = new Map(plan.added.map(({ row }, index) => [row, saved.value[index] ?? row]));
  const values: Record<string, string> = {};
  const errors: Record<string, string> = {};
  const marked = new Set<string>();
  const keep = (cell: string): string => {
    const [, row = '', column = ''] = cell.split(':');
    const now = cellName(idOf.get(row) ?? row, column);
    values[now] = String(form.get(cell) ?? '');
    if (!isNewRow(idOf.get(row) ?? row)) marked.add(idOf.get(row) ?? row);
    return now;
  };
  for (const [cell, message] of Object.entries(plan.errors)) errors[keep(cell)] = message;
  for (const cell of plan.waiting) keep(cell);
  if (plan.waiting.length > 0)
    errors.reason = `Say why ${plan.waiting.length === 1 ? 'a cell' : `${plan.waiting.length} cells`} that had been saved should change: a few words, such as “misread the tape”.`;
  for (const { row, cells } of sentRows(form)) {
    if (!isNewRow(row) || idOf.has(row)) continue;
    for (const { id } of SHEET_COLUMNS) if (cells[id]) values[cellName(row, id)] = cells[id];
  }
  if (Object.keys(errors).length > 0) {
    for (const name of SHARED) values[name] = String(form.get(name) ?? '');
    for (const [name, value] of form) if (name.startsWith('with:')) values[name] = String(value);
  }
  return {
    counts: {
      stations: plan.added.length,
      readings: plan.readings.length + plan.added.reduce((sum, { readings }) => sum + readings.length, 0),
      changed: plan.corrections.length + plan.withdrawals.length + plan.fields.length,
    },
    questions: plan.questions,
    errors,
    values,
    marked: [...marked],
    firstAdded: String(plan.added[0]?.fields.name ?? ''),
    columns,
    stamp,
  };
}
