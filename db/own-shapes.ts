import { asc, eq, sql } from 'drizzle-orm';
import type { OwnShape } from '~/lib/case/trace';
import { sha256Hex, type Json } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import { nextOrder } from './next-order';
import { takeStaged } from './imports';
import type { Db } from './open';
import { setRemoved, type Removable } from './removal';
import { fromSamples } from './samples';
import { ownShape } from './schema';
import { sealPoints } from './traces';

/** What is known of a reference shape whose file is already in the file store. */
export type NewOwnShape = Omit<OwnShape, 'id' | 'order' | 'removed' | 'createdAt'> & {
  /** The staged file this comes from; it is used up in the same transaction. */
  readonly stagedImportId?: string;
};

/** Adds a reference shape to the case. Call it once the file store holds the file. */
export const addOwnShape = (db: Db, caseId: string, given: NewOwnShape, actor: Actor): string => {
  const points = sealPoints(given.pointsMm);
  return write(db, caseId, actor, (tx, at) => {
    if (given.stagedImportId !== undefined) takeStaged(tx, caseId, given.stagedImportId);
    const id = newId();
    const row: Row = {
      id,
      caseId,
      sortOrder: nextOrder(tx, caseId, ownShape),
      createdAt: at,
      removedAt: null,
      removedReason: null,
      shape: given.shape,
      name: given.name,
      source: given.source,
      sha256: given.sha256,
      fileName: given.fileName,
      points: points.bytes,
      pointsSha256: points.sha256,
    };
    tx.insert(ownShape).values(row).run();
    return {
      result: id,
      change: { action: 'add', subject: { kind: 'ownShape', id }, before: null, after: sealedShape(row) },
    };
  });
};

const removable = (id: string): Removable => ({
  table: ownShape,
  kind: 'ownShape',
  id,
  name: 'reference shape',
});

/** Takes the shape out of the case, with the reason; file and line stay and it can be restored. */
export function removeOwnShape(db: Db, caseId: string, shapeId: string, reason: string, actor: Actor): void {
  setRemoved(db, caseId, removable(shapeId), reason, actor);
}

export function restoreOwnShape(db: Db, caseId: string, shapeId: string, actor: Actor): void {
  setRemoved(db, caseId, removable(shapeId), null, actor);
}

type Row = typeof ownShape.$inferSelect;

const toOwnShape = (row: Row): OwnShape => ({
  id: row.id,
  order: row.sortOrder,
  shape: row.shape,
  name: row.name,
  source: row.source,
  sha256: row.sha256,
  fileName: row.fileName,
  pointsMm: fromSamples(row.points),
  removed: row.removedAt === null ? null : { at: row.removedAt, reason: row.removedReason ?? '' },
  createdAt: row.createdAt,
});

/** The row as the log has it: the points by their hash. */
function sealedShape(row: Row): Readonly<Record<string, Json>> {
  const { pointsMm, ...said } = toOwnShape(row);
  return { ...said, points: pointsMm.length / 2, pointsSha256: row.pointsSha256 };
}

const rowsOf = (db: Db | Tx, caseId: string): readonly Row[] =>
  db
    .select()
    .from(ownShape)
    .where(eq(ownShape.caseId, caseId))
    .orderBy(asc(ownShape.sortOrder), sql`rowid`)
    .all();

/** All reference shapes of the case in their order, removed ones included. */
export const readOwnShapes = (db: Db | Tx, caseId: string): readonly OwnShape[] =>
  rowsOf(db, caseId).map(toOwnShape);

/** What is kept of the case's own shapes now, to hold against the log: the hash of the points is computed anew. */
export const keptOwnShapes = (db: Db, caseId: string): readonly Readonly<Record<string, Json>>[] =>
  rowsOf(db, caseId).map((row) => sealedShape({ ...row, pointsSha256: sha256Hex(row.points) }));
