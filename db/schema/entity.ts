import { sql } from 'drizzle-orm';
import {
  check,
  foreignKey,
  integer,
  type sqliteTable,
  text,
  unique,
  type AnySQLiteColumn,
} from 'drizzle-orm/sqlite-core';
import { caseFile } from './case-file';

/** Columns every kind of record carries beside its own fields. */
export const entityColumns = () => ({
  id: text('id').primaryKey(),
  caseId: text('case_id')
    .notNull()
    .references(() => caseFile.id),
  sortOrder: integer('sort_order').notNull(),
  createdAt: text('created_at').notNull(),
  removedAt: text('removed_at'),
  removedReason: text('removed_reason'),
});

/** A table of any kind of record, of which only the columns common to all are known. */
export type EntityTable = ReturnType<typeof sqliteTable<'entity', ReturnType<typeof entityColumns>>>;

/** The columns a removal is written into. */
export type WithRemoval = {
  readonly id: AnySQLiteColumn;
  readonly caseId: AnySQLiteColumn;
  readonly removedAt: AnySQLiteColumn;
  readonly removedReason: AnySQLiteColumn;
};

/** Nothing is removed without a reason. */
export const removalCheck = (table: string, t: WithRemoval) =>
  check(
    `${table}_removal`,
    sql`(${t.removedAt} is null and ${t.removedReason} is null) or (${t.removedAt} is not null and coalesce(length(${t.removedReason}), 0) > 0)`,
  );

/** The pair (case, id) is what other records of the same case refer to. */
export const entityRules = (table: string, t: WithRemoval) => [
  unique(`${table}_case_id_id`).on(t.caseId, t.id),
  removalCheck(table, t),
];

/** A record may refer to records of its own case only: the case is part of the key. */
export const refersTo = (
  column: { readonly caseId: AnySQLiteColumn; readonly ref: AnySQLiteColumn },
  to: { readonly caseId: AnySQLiteColumn; readonly id: AnySQLiteColumn },
) => foreignKey({ columns: [column.caseId, column.ref], foreignColumns: [to.caseId, to.id] });
