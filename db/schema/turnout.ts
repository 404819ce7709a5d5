import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const turnout = sqliteTable(
  'turnout',
  {
    ...entityColumns(),
    name: text('name').notNull(),
    frogNumber: text('frog_number'),
    hand: text('hand'),
    movement: text('movement').notNull(),
    lined: text('lined'),
    pointRead: text('point_read'),
    pointProtection: text('point_protection'),
    lockAndThrow: text('lock_and_throw'),
    disturbance: text('disturbance').notNull(),
    note: text('note'),
  },
  (t) => entityRules('turnout', t),
);
