import { sql } from 'drizzle-orm';
import { check, index, integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { caseFile } from './case-file';

/** The railroad's own limits as entered; the last row of a case stands, none is changed or deleted (triggers). */
export const railroadLimits = sqliteTable(
  'railroad_limits',
  {
    id: text('id').primaryKey(),
    caseId: text('case_id')
      .notNull()
      .references(() => caseFile.id),
    version: integer('version').notNull(),
    createdAt: text('created_at').notNull(),
    entered: text('entered').notNull(),
  },
  (t) => [
    index('railroad_limits_case').on(t.caseId, t.version),
    check('railroad_limits_entered', sql`length(${t.entered}) > 0`),
  ],
);
