import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { caseFile } from './case-file';

/**
 * Append-only (triggers in the migrations). `before` and `after` are canonical JSON; `hash`
 * covers the row and the hash before it (lib/custody/canonical).
 */
export const changeLog = sqliteTable(
  'change_log',
  {
    caseId: text('case_id')
      .notNull()
      .references(() => caseFile.id),
    seq: integer('seq').notNull(),
    at: text('at').notNull(),
    actorPersonId: text('actor_person_id'),
    actorName: text('actor_name').notNull(),
    action: text('action').notNull(),
    subjectKind: text('subject_kind').notNull(),
    subjectId: text('subject_id'),
    before: text('before').notNull(),
    after: text('after').notNull(),
    prevHash: text('prev_hash').notNull(),
    hash: text('hash').notNull(),
  },
  (t) => [primaryKey({ columns: [t.caseId, t.seq] })],
);
