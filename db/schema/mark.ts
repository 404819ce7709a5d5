import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const mark = sqliteTable(
  'mark',
  {
    ...entityColumns(),
    type: text('type').notNull(),
    rail: text('rail').notNull(),
    appearance: text('appearance'),
    isPod: integer('is_pod', { mode: 'boolean' }),
    madeBy: text('made_by'),
    walkedBackFt: text('walked_back_ft'),
    disturbance: text('disturbance'),
    description: text('description'),
  },
  (t) => entityRules('mark', t),
);
