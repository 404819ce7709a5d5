import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const instrument = sqliteTable(
  'instrument',
  {
    ...entityColumns(),
    name: text('name').notNull(),
    kind: text('kind').notNull(),
    resolution: text('resolution'),
    standardUncertainty: text('standard_uncertainty'),
    calibratedOn: text('calibrated_on'),
    note: text('note'),
  },
  (t) => entityRules('instrument', t),
);
