import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { wheelset } from './wheelset';

export const wheelDefect = sqliteTable(
  'wheel_defect',
  {
    ...entityColumns(),
    wheelset: text('wheelset').notNull(),
    side: text('side').notNull(),
    type: text('type').notNull(),
    appearance: text('appearance'),
    note: text('note'),
  },
  (t) => [...entityRules('wheel_defect', t), refersTo({ caseId: t.caseId, ref: t.wheelset }, wheelset)],
);
