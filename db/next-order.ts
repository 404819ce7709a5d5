import { eq, max } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { Tx } from './change';
import type { EntityTable, WithRemoval } from './schema/entity';

/** Where a new record of a table stands in its case: after the last one, removed ones included; 0 for the first. */
export function nextOrder(tx: Tx, caseId: string, given: SQLiteTable & WithRemoval): number {
  // The columns are there by the type; each table has a type of its own only by its name.
  const table = given as unknown as EntityTable;
  const last = tx
    .select({ order: max(table.sortOrder) })
    .from(table)
    .where(eq(table.caseId, caseId))
    .get();
  return (last?.order ?? -1) + 1;
}
