import { and, asc, eq, sql } from 'drizzle-orm';
import type { Reading } from '~/lib/case/record';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import type { Db } from './open';
import { reading } from './schema';
import { requireSubject } from './subject';

/** A reading as it comes from a form or a file. */
export type NewReading = Omit<Reading, 'id' | 'createdAt' | 'replaces' | 'reason' | 'withdrawn'>;

/** Adds readings, all or none, as one entry of the log. */
export const addReadings = (
  db: Db,
  caseId: string,
  list: readonly NewReading[],
  actor: Actor,
): readonly string[] =>
  write(db, caseId, actor, (tx, at) => {
    const rows = list.map((given) => freshReading(given, at));
    insertReadings(tx, caseId, rows);
    return {
      result: rows.map((row) => row.id),
      change:
        rows.length === 0
          ? null
          : { action: 'add', subject: { kind: 'reading', id: null }, before: null, after: { rows } },
    };
  });

/**
 * Puts a new reading in the place of one that was wrong; both stay in the case. A withdrawal can
 * be replaced too, which puts the reading back. Refused when the reading was already replaced.
 */
export const correctReading = (
  db: Db,
  caseId: string,
  readingId: string,
  replacement: NewReading,
  reason: string,
  actor: Actor,
): Result<string> =>
  replace(db, caseId, readingId, reason, actor, 'correct', (_, at) => freshReading(replacement, at));

/** Takes a reading out of the case, with the reason; the row itself stays. */
export const withdrawReading = (
  db: Db,
  caseId: string,
  readingId: string,
  reason: string,
  actor: Actor,
): Result<string> =>
  replace(db, caseId, readingId, reason, actor, 'withdraw', (old, at) => ({
    ...old,
    id: newId(),
    entered: '',
    value: null,
    state: null,
    examined: null,
    note: '',
    withdrawn: true,
    createdAt: at,
  }));

function replace(
  db: Db,
  caseId: string,
  readingId: string,
  reason: string,
  actor: Actor,
  action: 'correct' | 'withdraw',
  make: (old: Reading, at: string) => Reading,
): Result<string> {
  const why = reason.trim();
  if (why === '') return refuse('Say why: a few words, such as “misread the scale”.');
  return write<Result<string>>(db, caseId, actor, (tx, at) => {
    const old = tx
      .select()
      .from(reading)
      .where(and(eq(reading.caseId, caseId), eq(reading.id, readingId)))
      .get();
    if (old === undefined) throw new Error('No such reading in this case.');
    const later = tx.select({ id: reading.id }).from(reading).where(eq(reading.replaces, readingId)).get();
    if (later !== undefined)
      return {
        result: refuse(
          'This reading was already corrected or withdrawn. Open the newest one and correct that.',
        ),
        change: null,
      };
    if (action === 'withdraw' && old.withdrawn)
      return { result: refuse('This reading is already withdrawn. Nothing more is needed.'), change: null };
    const before = toReading(old);
    const row: Reading = { ...make(before, at), replaces: readingId, reason: why };
    insertReadings(tx, caseId, [row]);
    return {
      result: ok(row.id),
      change: { action, subject: { kind: 'reading', id: readingId }, before, after: row },
    };
  });
}

export const freshReading = (given: NewReading, at: string): Reading => ({
  subject: { kind: given.subject.kind, id: given.subject.id },
  quantity: given.quantity,
  slot: given.slot,
  entered: given.entered,
  unit: given.unit,
  value: given.value,
  state: given.state,
  examined: given.examined,
  instrumentId: given.instrumentId,
  personId: given.personId,
  takenAt: given.takenAt,
  disturbance: given.disturbance,
  sampling: given.sampling,
  note: given.note,
  id: newId(),
  replaces: null,
  reason: null,
  withdrawn: false,
  createdAt: at,
});

const COLUMNS = [
  'id',
  'caseId',
  'subjectKind',
  'subjectId',
  'quantity',
  'slot',
  'entered',
  'unit',
  'value',
  'state',
  'examined',
  'instrumentId',
  'personId',
  'takenAt',
  'disturbance',
  'sampling',
  'note',
  'replaces',
  'reason',
  'withdrawn',
  'createdAt',
] as const;

/** Inserts within a transaction that is already running. */
export function insertReadings(tx: Tx, caseId: string, rows: readonly Reading[]): void {
  if (rows.length === 0) return;
  const values = Object.fromEntries(COLUMNS.map((column) => [column, sql.placeholder(column)]));
  const insert = tx
    .insert(reading)
    .values(values as Record<(typeof COLUMNS)[number], ReturnType<typeof sql.placeholder>>)
    .prepare();
  const known = new Set<string>();
  for (const row of rows) {
    const key = `${row.subject.kind} ${row.subject.id}`;
    if (!known.has(key)) requireSubject(tx, caseId, row.subject);
    known.add(key);
    const { subject, ...columns } = row;
    insert.run({ ...columns, caseId, subjectKind: subject.kind, subjectId: subject.id });
  }
}

/** Words that rows repeat, each held once. */
const heldOnce = (): (<T extends string>(text: T) => T) => {
  const held = new Map<string, string>();
  return <T extends string>(text: T): T => {
    const before = held.get(text);
    if (before === undefined) held.set(text, text);
    return (before ?? text) as T;
  };
};

/** A long sheet says the same few words in every row: `once` lets it hold each of them once. */
const toReading = (
  row: typeof reading.$inferSelect,
  once: <T extends string>(text: T) => T = (text) => text,
): Reading => ({
  id: row.id,
  subject: { kind: once(row.subjectKind), id: once(row.subjectId) },
  quantity: once(row.quantity),
  slot: once(row.slot),
  entered: once(row.entered),
  unit: once(row.unit),
  value: row.value,
  state: row.state,
  examined: row.examined,
  instrumentId: row.instrumentId,
  personId: row.personId,
  takenAt: row.takenAt,
  disturbance: once(row.disturbance),
  sampling: once(row.sampling),
  note: row.note,
  replaces: row.replaces,
  reason: row.reason,
  withdrawn: row.withdrawn,
  createdAt: once(row.createdAt),
});

/** All readings of the case in the order they were entered, replaced and withdrawn ones included. */
export function readReadings(db: Db | Tx, caseId: string): readonly Reading[] {
  const once = heldOnce();
  return db
    .select()
    .from(reading)
    .where(eq(reading.caseId, caseId))
    .orderBy(asc(reading.seq))
    .all()
    .map((row) => toReading(row, once));
}
