import { sql } from 'drizzle-orm';
import { check, index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { SubjectKind } from '~/lib/readings/quantity';
import { entityColumns, refersTo, removalCheck } from './entity';
import { person } from './person';

export const photo = sqliteTable(
  'photo',
  {
    ...entityColumns(),
    sha256: text('sha256').notNull(),
    fileName: text('file_name').notNull(),
    mime: text('mime').notNull(),
    bytes: integer('bytes').notNull(),
    width: integer('width').notNull(),
    height: integer('height').notNull(),
    takenAt: text('taken_at'),
    latitude: real('latitude'),
    longitude: real('longitude'),
    caption: text('caption').notNull(),
    subjectKind: text('subject_kind').$type<SubjectKind>(),
    subjectId: text('subject_id'),
    personId: text('person_id'),
  },
  (t) => [
    index('photo_case').on(t.caseId, t.sortOrder),
    removalCheck('photo', t),
    refersTo({ caseId: t.caseId, ref: t.personId }, person),
    check('photo_subject', sql`(${t.subjectKind} is null) = (${t.subjectId} is null)`),
    check('photo_sha256', sql`length(${t.sha256}) = 64`),
  ],
);
