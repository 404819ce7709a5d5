import { sql } from 'drizzle-orm';
import { check, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { Standing } from '~/lib/case/record';
import { caseFile } from './case-file';
import { refersTo } from './entity';
import { person } from './person';

export const narrative = sqliteTable('narrative', {
  caseId: text('case_id')
    .primaryKey()
    .references(() => caseFile.id),
  summary: text('summary').notNull(),
  determination: text('determination').notNull(),
  signatories: text('signatories').notNull(),
});

export const standing = sqliteTable(
  'standing',
  {
    caseId: text('case_id')
      .notNull()
      .references(() => caseFile.id),
    explanation: text('explanation').notNull(),
    standing: text('standing').$type<Standing['standing']>().notNull(),
    reason: text('reason').notNull(),
    personId: text('person_id'),
    at: text('at').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.caseId, t.explanation] }),
    refersTo({ caseId: t.caseId, ref: t.personId }, person),
    check('standing_kind', sql`${t.standing} in ('excluded', 'stands')`),
    check('standing_reason', sql`length(${t.reason}) > 0`),
  ],
);

export const judgementChange = sqliteTable(
  'judgement_change',
  {
    caseId: text('case_id')
      .notNull()
      .references(() => caseFile.id),
    path: text('path').notNull(),
    value: real('value').notNull(),
    reason: text('reason').notNull(),
    personId: text('person_id'),
    at: text('at').notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.caseId, t.path] }),
    refersTo({ caseId: t.caseId, ref: t.personId }, person),
    check('judgement_reason', sql`length(${t.reason}) > 0`),
  ],
);
