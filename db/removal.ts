import { and, eq } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Actor } from './actor';
import { write } from './change';
import type { Db } from './open';
import type { EntityTable, WithRemoval } from './schema/entity';

/** A record of the case by its table, and how the log and a message call it. */
export type Removable = {
  /** Any table with the columns of `entityColumns`. */
  readonly table: SQLiteTable & WithRemoval;
  readonly kind: string;
  readonly id: string;
  readonly name: string;
};

/**
 * Takes a record out of the case with the reason, or puts it back when that is null; the row stays and
 * the log keeps both. Nothing is logged where nothing changes. Throws when the case has no such record.
 */
export function setRemoved(
  db: Db,
  caseId: string,
  { table: given, kind, id, name }: Removable,
  reason: string | null,
  actor: Actor,
): void {
  // The columns are there by the type; each table has a type of its own only by its name.
  const table = given as unknown as EntityTable;
  write(db, caseId, actor, (tx, at) => {
    const now = tx
      .select({ at: table.removedAt, reason: table.removedReason })
      .from(table)
      .where(and(eq(table.caseId, caseId), eq(table.id, id)))
      .get();
    if (now === undefined) throw new Error(`No such ${name} in this case.`);
    if ((now.at === null) === (reason === null)) return { result: undefined, change: null };
    const removed = reason === null ? null : { at, reason };
    tx.update(table)
      .set({ removedAt: removed?.at ?? null, removedReason: removed?.reason ?? null })
      .where(eq(table.id, id))
      .run();
    return {
      result: undefined,
      change: {
        action: reason === null ? 'restore' : 'remove',
        subject: { kind, id },
        before: { removed: now.at === null ? null : { at: now.at, reason: now.reason ?? '' } },
        after: { removed },
      },
    };
  });
}
