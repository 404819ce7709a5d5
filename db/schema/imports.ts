import { primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { caseFile } from './case-file';

/** A file uploaded and not yet confirmed. Nothing of it is in the case; the row goes when it is confirmed or dropped. */
export const stagedImport = sqliteTable('staged_import', {
  id: text('id').primaryKey(),
  caseId: text('case_id')
    .notNull()
    .references(() => caseFile.id),
  kind: text('kind').notNull(),
  fileName: text('file_name').notNull(),
  sha256: text('sha256').notNull(),
  mapping: text('mapping'),
  createdAt: text('created_at').notNull(),
});

/** Which column of a railroad's file holds what, as last confirmed. */
export const importMapping = sqliteTable(
  'import_mapping',
  {
    railroad: text('railroad').notNull(),
    importKind: text('import_kind').notNull(),
    mapping: text('mapping').notNull(),
    updatedAt: text('updated_at').notNull(),
  },
  (t) => [primaryKey({ columns: [t.railroad, t.importKind] })],
);
