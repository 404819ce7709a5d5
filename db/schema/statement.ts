import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { person } from './person';

export const statement = sqliteTable(
  'statement',
  {
    ...entityColumns(),
    person: text('person').notNull(),
    takenBy: text('taken_by'),
    takenAt: text('taken_at'),
    manner: text('manner'),
    text: text('text').notNull(),
  },
  (t) => [
    ...entityRules('statement', t),
    refersTo({ caseId: t.caseId, ref: t.person }, person),
    refersTo({ caseId: t.caseId, ref: t.takenBy }, person),
  ],
);
