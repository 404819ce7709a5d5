import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const lineStretch = sqliteTable(
  'line_stretch',
  {
    ...entityColumns(),
    name: text('name'),
    hand: text('hand'),
    note: text('note'),
  },
  (t) => entityRules('line_stretch', t),
);
