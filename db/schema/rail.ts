import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const rail = sqliteTable(
  'rail',
  {
    ...entityColumns(),
    rail: text('rail').notNull(),
    where: text('where').notNull(),
    section: text('section').notNull(),
    rolled: text('rolled'),
    joint: text('joint'),
    disturbance: text('disturbance').notNull(),
    note: text('note'),
  },
  (t) => entityRules('rail', t),
);
