import { and, asc, eq, sql } from 'drizzle-orm';
import type { Trace } from '~/lib/case/trace';
import { canonicalJson, sha256Hex, type Json } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import { nextOrder } from './next-order';
import { takeStaged } from './imports';
import type { Db } from './open';
import { setRemoved, type Removable } from './removal';
import { fromSamples, toSamples } from './samples';
import { trace } from './schema';
import { requireSubject } from './subject';
import { handSchema, makingSchema, uncertaintySchema } from './trace-json';

/** What is known of an outline whose file is already in the file store. */
export type NewTrace = Omit<Trace, 'id' | 'order' | 'removed' | 'createdAt'> & {
  /** The staged file this comes from; it is used up in the same transaction. */
  readonly stagedImportId?: string;
};

/** What may be changed later: the line, how it was made and the file stay as they came. */
export type TraceChange = Partial<
  Pick<
    Trace,
    'note' | 'takenAt' | 'personId' | 'instrumentId' | 'disturbance' | 'distanceRunKm' | 'mirrored' | 'hand'
  >
>;

/** Adds an outline to the case. Call it once the file store holds the file. */
export const addTrace = (db: Db, caseId: string, given: NewTrace, actor: Actor): string => {
  const points = sealPoints(given.pointsMm);
  const parts = {
    making: makingSchema.parse(given.making),
    uncertainty: uncertaintySchema.parse(given.uncertainty),
    hand: given.hand === null ? null : handSchema.parse(given.hand),
  };
  return write(db, caseId, actor, (tx, at) => {
    if (given.stagedImportId !== undefined) takeStaged(tx, caseId, given.stagedImportId);
    requireSubject(tx, caseId, given.subject);
    const id = newId();
    const row: Row = {
      id,
      caseId,
      sortOrder: nextOrder(tx, caseId, trace),
      createdAt: at,
      removedAt: null,
      removedReason: null,
      shape: given.shape,
      subjectKind: given.subject.kind,
      subjectId: given.subject.id,
      side: given.side,
      behindMm: given.behindMm,
      sha256: given.sha256,
      fileName: given.fileName,
      making: JSON.stringify(parts.making),
      points: points.bytes,
      pointsSha256: points.sha256,
      uncertainty: JSON.stringify(parts.uncertainty),
      mirrored: given.mirrored,
      hand: parts.hand === null ? null : JSON.stringify(parts.hand),
      distanceRunKm: given.distanceRunKm,
      instrumentId: given.instrumentId,
      personId: given.personId,
      takenAt: given.takenAt,
      disturbance: given.disturbance,
      note: given.note,
    };
    tx.insert(trace).values(row).run();
    return {
      result: id,
      change: { action: 'add', subject: { kind: 'trace', id }, before: null, after: sealedTrace(row) },
    };
  });
};

/** Changes what is said about the outline, or its placing by hand; what is not given stays as it is. */
export function updateTrace(db: Db, caseId: string, traceId: string, given: TraceChange, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const before = changeable(toTrace(rowOf(tx, caseId, traceId)));
    const after = { ...before, ...given };
    if (canonicalJson(before) === canonicalJson(after)) return { result: undefined, change: null };
    const hand = after.hand === null ? null : JSON.stringify(handSchema.parse(after.hand));
    tx.update(trace)
      .set({ ...after, hand })
      .where(eq(trace.id, traceId))
      .run();
    return {
      result: undefined,
      change: { action: 'update', subject: { kind: 'trace', id: traceId }, before, after },
    };
  });
}

const changeable = (now: Trace): Required<TraceChange> => ({
  note: now.note,
  takenAt: now.takenAt,
  personId: now.personId,
  instrumentId: now.instrumentId,
  disturbance: now.disturbance,
  distanceRunKm: now.distanceRunKm,
  mirrored: now.mirrored,
  hand: now.hand,
});

const removable = (id: string): Removable => ({ table: trace, kind: 'trace', id, name: 'outline' });

/** Takes the outline out of the case, with the reason; file and line stay and it can be restored. */
export function removeTrace(db: Db, caseId: string, traceId: string, reason: string, actor: Actor): void {
  setRemoved(db, caseId, removable(traceId), reason, actor);
}

export function restoreTrace(db: Db, caseId: string, traceId: string, actor: Actor): void {
  setRemoved(db, caseId, removable(traceId), null, actor);
}

/** The bytes of a line of points and the hash that seals them. Every coordinate is a finite number of mm. */
export function sealPoints(pointsMm: Float64Array): { readonly bytes: Buffer; readonly sha256: string } {
  if (pointsMm.length < 4 || pointsMm.length % 2 !== 0) throw new Error('A line has at least two points.');
  if (!pointsMm.every(Number.isFinite)) throw new Error('A line has finite coordinates.');
  const bytes = toSamples(pointsMm);
  return { bytes, sha256: sha256Hex(bytes) };
}

type Row = typeof trace.$inferSelect;

function rowOf(tx: Tx, caseId: string, traceId: string): Row {
  const row = tx
    .select()
    .from(trace)
    .where(and(eq(trace.caseId, caseId), eq(trace.id, traceId)))
    .get();
  if (row === undefined) throw new Error('No such outline in this case.');
  return row;
}

const toTrace = (row: Row): Trace => ({
  id: row.id,
  order: row.sortOrder,
  shape: row.shape,
  subject: { kind: row.subjectKind, id: row.subjectId },
  side: row.side,
  behindMm: row.behindMm,
  sha256: row.sha256,
  fileName: row.fileName,
  making: makingSchema.parse(JSON.parse(row.making)),
  pointsMm: fromSamples(row.points),
  uncertainty: uncertaintySchema.parse(JSON.parse(row.uncertainty)),
  mirrored: row.mirrored,
  hand: row.hand === null ? null : handSchema.parse(JSON.parse(row.hand)),
  distanceRunKm: row.distanceRunKm,
  instrumentId: row.instrumentId,
  personId: row.personId,
  takenAt: row.takenAt,
  disturbance: row.disturbance,
  note: row.note,
  removed: row.removedAt === null ? null : { at: row.removedAt, reason: row.removedReason ?? '' },
  createdAt: row.createdAt,
});

/** The row as the log has it: the points by their hash. */
function sealedTrace(row: Row): Readonly<Record<string, Json>> {
  const { pointsMm, ...said } = toTrace(row);
  return { ...said, points: pointsMm.length / 2, pointsSha256: row.pointsSha256 };
}

const rowsOf = (db: Db | Tx, caseId: string): readonly Row[] =>
  db
    .select()
    .from(trace)
    .where(eq(trace.caseId, caseId))
    .orderBy(asc(trace.sortOrder), sql`rowid`)
    .all();

/** All outlines of the case in their order, removed ones included. */
export const readTraces = (db: Db | Tx, caseId: string): readonly Trace[] => rowsOf(db, caseId).map(toTrace);

/** What is kept of the case's outlines now, to hold against the log: the hash of the points is computed anew. */
export const keptTraces = (db: Db, caseId: string): readonly Readonly<Record<string, Json>>[] =>
  rowsOf(db, caseId).map((row) => sealedTrace({ ...row, pointsSha256: sha256Hex(row.points) }));
