import type { Statement } from 'better-sqlite3';
import { eq, sql } from 'drizzle-orm';
import { caseKind } from '~/lib/case/kinds';
import {
  CASE_RECORD_VERSION,
  ENTITY_KINDS,
  type CaseRecord,
  type Entity,
  type EntityKind,
} from '~/lib/case/record';
import type { Actor } from './actor';
import { recalled, remember } from './case-cache';
import { write } from './change';
import { readEntities } from './entities';
import { completeFields, difference, fieldsOf, type Fields } from './fields';
import { newId } from './id';
import { readJudgements, readNarrative, readStandings } from './narrative';
import type { Db } from './open';
import { readOwnShapes } from './own-shapes';
import { readPhotos } from './photos';
import { readRailroadLimits } from './railroad-limits';
import { readReadings } from './readings';
import { readRecorderRuns } from './recorder';
import { caseFile } from './schema';
import { readTraces } from './traces';

export type CaseSummary = {
  readonly id: string;
  readonly number: string;
  readonly title: string;
  readonly occurredAt: string | null;
  readonly railroad: string | null;
  readonly subdivision: string | null;
  readonly milepost: string | null;
  /** Photos and readings that stand. */
  readonly photos: number;
  readonly readings: number;
  readonly updatedAt: string;
};

/** Every case, the one changed last first. */
export const listCases = (db: Db): readonly CaseSummary[] =>
  db
    .select({
      id: caseFile.id,
      number: caseFile.number,
      title: caseFile.title,
      occurredAt: caseFile.occurredAt,
      railroad: caseFile.railroad,
      subdivision: caseFile.subdivision,
      milepost: caseFile.milepost,
      photos: sql<number>`(select count(*) from photo where photo.case_id = ${caseFile}.id and photo.removed_at is null)`,
      readings: sql<number>`(select count(*) from reading r where r.case_id = ${caseFile}.id and r.withdrawn = 0
        and not exists (select 1 from reading later where later.replaces = r.id))`,
      updatedAt: sql<string>`(select at from change_log where change_log.case_id = ${caseFile}.id order by seq desc limit 1)`,
    })
    .from(caseFile)
    .all()
    .sort((a, b) => (a.updatedAt < b.updatedAt ? 1 : -1));

/** Opens a new case and returns its id. */
export function createCase(db: Db, given: Fields, actor: Actor): string {
  const id = newId();
  return write(db, id, actor, (tx, at) => {
    const fields = completeFields(caseKind, given);
    tx.insert(caseFile)
      .values({ ...(fields as Omit<typeof caseFile.$inferInsert, 'id' | 'createdAt'>), id, createdAt: at })
      .run();
    return {
      result: id,
      change: { action: 'open', subject: { kind: 'case', id }, before: null, after: { id, fields } },
    };
  });
}

/** Changes the given fields of the case; fields not given stay as they are. */
export function updateCase(db: Db, caseId: string, given: Fields, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const now = tx.select().from(caseFile).where(eq(caseFile.id, caseId)).get();
    if (now === undefined) throw new Error('No such case.');
    const changed = difference(caseKind, fieldsOf(caseKind, now), given);
    if (changed === null) return { result: undefined, change: null };
    tx.update(caseFile).set(changed.after).where(eq(caseFile.id, caseId)).run();
    return {
      result: undefined,
      change: { action: 'update', subject: { kind: 'case', id: caseId }, ...changed },
    };
  });
}

const heads = new WeakMap<Db, Statement<[string], string>>();

/** The version of the case: the hash of the last entry of its log; null when there is no such case. */
export function caseHead(db: Db, caseId: string): string | null {
  // Asked for with every page, so the statement is kept.
  const statement =
    heads.get(db) ??
    db.$client
      .prepare<[string], string>('select hash from change_log where case_id = ? order by seq desc limit 1')
      .pluck();
  heads.set(db, statement);
  return statement.get(caseId) ?? null;
}

/** Everything known about the case, as of one moment; null when there is no such case. */
export function readCase(db: Db, caseId: string): CaseRecord | null {
  const head = caseHead(db, caseId);
  if (head === null) return null;
  return (
    recalled(db, caseId, head) ??
    db.transaction(() => remember(db, caseId, caseHead(db, caseId) ?? head, assemble(db, caseId)))
  );
}

function assemble(db: Db, caseId: string): CaseRecord {
  const row = db.select().from(caseFile).where(eq(caseFile.id, caseId)).get();
  if (row === undefined) throw new Error('The log speaks of a case that is not there.');
  const entities = Object.fromEntries(
    ENTITY_KINDS.map((kind) => [kind, readEntities(db, caseId, kind)]),
  ) as Record<EntityKind, readonly Entity[]>;
  return {
    version: CASE_RECORD_VERSION,
    id: caseId,
    fields: fieldsOf(caseKind, row),
    entities,
    readings: readReadings(db, caseId),
    photos: readPhotos(db, caseId),
    recorderRuns: readRecorderRuns(db, caseId),
    traces: readTraces(db, caseId),
    ownShapes: readOwnShapes(db, caseId),
    railroadLimits: readRailroadLimits(db, caseId),
    narrative: readNarrative(db, caseId),
    standings: readStandings(db, caseId),
    judgementChanges: readJudgements(db, caseId),
    createdAt: row.createdAt,
  };
}
