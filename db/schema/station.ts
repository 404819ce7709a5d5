import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const station = sqliteTable(
  'station',
  {
    ...entityColumns(),
    name: text('name').notNull(),
    disturbance: text('disturbance').notNull(),
    joint: text('joint'),
    note: text('note'),
  },
  (t) => entityRules('station', t),
);
