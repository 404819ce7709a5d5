import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { turnout } from './turnout';

export const rail = sqliteTable(
  'rail',
  {
    ...entityColumns(),
    rail: text('rail').notNull(),
    where: text('where').notNull(),
    section: text('section').notNull(),
    stockRailOf: text('stock_rail_of'),
    rolled: text('rolled'),
    joint: text('joint'),
    disturbance: text('disturbance').notNull(),
    note: text('note'),
  },
  (t) => [...entityRules('rail', t), refersTo({ caseId: t.caseId, ref: t.stockRailOf }, turnout)],
);
