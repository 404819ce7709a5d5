import { and, asc, eq, isNull, sql } from 'drizzle-orm';
import { KINDS } from '~/lib/case/kinds';
import type { Entity, EntityKind } from '~/lib/case/record';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { entityTable } from './entity-tables';
import { completeFields, difference, fieldsOf, type Fields } from './fields';
import { newId } from './id';
import { nextOrder } from './next-order';
import type { Db } from './open';
import { setRemoved } from './removal';

/** Adds one record of the case and returns its id. */
export const addEntity = (db: Db, caseId: string, kind: EntityKind, fields: Fields, actor: Actor): string =>
  write(db, caseId, actor, (tx, at) => {
    const [added] = insertEntities(tx, caseId, kind, [fields], at);
    if (added === undefined) throw new Error('Nothing was added.');
    return {
      result: added.id,
      change: { action: 'add', subject: { kind, id: added.id }, before: null, after: added },
    };
  });

/** Adds several records of one kind, all or none, as one entry of the log. */
export const addEntities = (
  db: Db,
  caseId: string,
  kind: EntityKind,
  fieldsList: readonly Fields[],
  actor: Actor,
): readonly string[] =>
  write(db, caseId, actor, (tx, at) => {
    const added = insertEntities(tx, caseId, kind, fieldsList, at);
    return {
      result: added.map((entity) => entity.id),
      change:
        added.length === 0
          ? null
          : { action: 'add', subject: { kind, id: null }, before: null, after: { rows: added } },
    };
  });

/** Changes the given fields; fields not given stay as they are. */
export function updateEntity(
  db: Db,
  caseId: string,
  kind: EntityKind,
  id: string,
  fields: Fields,
  actor: Actor,
): void {
  write(db, caseId, actor, (tx) => {
    const now = rowOf(tx, caseId, kind, id);
    const changed = difference(KINDS[kind], fieldsOf(KINDS[kind], now), fields);
    if (changed === null) return { result: undefined, change: null };
    const table = entityTable(kind);
    tx.update(table).set(changed.after).where(eq(table.id, id)).run();
    return { result: undefined, change: { action: 'update', subject: { kind, id }, ...changed } };
  });
}

/** Takes the record out of the case, with the reason; it stays in the file and can be restored. */
export function removeEntity(
  db: Db,
  caseId: string,
  kind: EntityKind,
  id: string,
  reason: string,
  actor: Actor,
): void {
  setRemoved(db, caseId, { table: entityTable(kind), kind, id, name: 'record' }, reason, actor);
}

/** Takes several records of one kind out of the case with one reason, as one entry of the log; those removed already stay so. */
export function removeEntities(
  db: Db,
  caseId: string,
  kind: EntityKind,
  ids: readonly string[],
  reason: string,
  actor: Actor,
): void {
  const table = entityTable(kind);
  write(db, caseId, actor, (tx, at) => {
    const removed = ids.flatMap((id) =>
      tx
        .update(table)
        .set({ removedAt: at, removedReason: reason })
        .where(and(eq(table.caseId, caseId), eq(table.id, id), isNull(table.removedAt)))
        .returning({ id: table.id })
        .all(),
    );
    return {
      result: undefined,
      change:
        removed.length === 0
          ? null
          : {
              action: 'remove',
              subject: { kind, id: null },
              before: { rows: removed.map(({ id }) => ({ id, removed: null })) },
              after: { rows: removed.map(({ id }) => ({ id, removed: { at, reason } })) },
            },
    };
  });
}

export function restoreEntity(db: Db, caseId: string, kind: EntityKind, id: string, actor: Actor): void {
  setRemoved(db, caseId, { table: entityTable(kind), kind, id, name: 'record' }, null, actor);
}

/** Puts the record just before another of its kind, or last when `beforeId` is null. */
export function moveEntity(
  db: Db,
  caseId: string,
  kind: EntityKind,
  id: string,
  beforeId: string | null,
  actor: Actor,
): void {
  write(db, caseId, actor, (tx) => {
    const table = entityTable(kind);
    const rows = tx
      .select({ id: table.id, order: table.sortOrder })
      .from(table)
      .where(eq(table.caseId, caseId))
      .orderBy(asc(table.sortOrder))
      .all();
    const before = rows.map((row) => row.id);
    const others = before.filter((other) => other !== id);
    const at = beforeId === null ? others.length : others.indexOf(beforeId);
    if (others.length === before.length || at < 0) throw new Error(`No such ${kind} in this case.`);
    const after = [...others.slice(0, at), id, ...others.slice(at)];
    if (after.join() === before.join()) return { result: undefined, change: null };
    after.forEach((rowId, order) =>
      tx.update(table).set({ sortOrder: order }).where(eq(table.id, rowId)).run(),
    );
    return { result: undefined, change: { action: 'move', subject: { kind, id }, before, after } };
  });
}

/** Inserts within a transaction that is already running, after the last record of the kind. */
export function insertEntities(
  tx: Tx,
  caseId: string,
  kind: EntityKind,
  fieldsList: readonly Fields[],
  at: string,
): readonly Pick<Entity, 'id' | 'order' | 'fields'>[] {
  const table = entityTable(kind);
  const first = nextOrder(tx, caseId, table);
  return fieldsList.map((given, index) => {
    const entity = { id: newId(), order: first + index, fields: completeFields(KINDS[kind], given) };
    tx.insert(table)
      .values({
        ...entity.fields,
        id: entity.id,
        caseId,
        sortOrder: entity.order,
        createdAt: at,
        removedAt: null,
        removedReason: null,
      })
      .run();
    return entity;
  });
}

type Row = ReturnType<typeof rowOf>;

function rowOf(tx: Tx, caseId: string, kind: EntityKind, id: string) {
  const table = entityTable(kind);
  const row = tx
    .select()
    .from(table)
    .where(and(eq(table.caseId, caseId), eq(table.id, id)))
    .get();
  if (row === undefined) throw new Error(`No such ${kind} in this case.`);
  return row;
}

const toEntity = (kind: EntityKind, row: Row): Entity => ({
  id: row.id,
  order: row.sortOrder,
  fields: fieldsOf(KINDS[kind], row),
  removed: row.removedAt === null ? null : { at: row.removedAt, reason: row.removedReason ?? '' },
  createdAt: row.createdAt,
});

/** All records of the kind in their order, removed ones included. */
export function readEntities(db: Db | Tx, caseId: string, kind: EntityKind): readonly Entity[] {
  const table = entityTable(kind);
  return db
    .select()
    .from(table)
    .where(eq(table.caseId, caseId))
    .orderBy(asc(table.sortOrder), sql`rowid`)
    .all()
    .map((row) => toEntity(kind, row));
}
