import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const person = sqliteTable(
  'person',
  {
    ...entityColumns(),
    name: text('name').notNull(),
    role: text('role').notNull(),
    organisation: text('organisation'),
    contact: text('contact'),
  },
  (t) => entityRules('person', t),
);
