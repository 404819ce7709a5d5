import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { vehicle } from './vehicle';

export const wheelset = sqliteTable(
  'wheelset',
  {
    ...entityColumns(),
    vehicle: text('vehicle').notNull(),
    axle: integer('axle').notNull(),
    firstDerailed: integer('first_derailed', { mode: 'boolean' }),
    wheelDesign: text('wheel_design'),
    measuredWhere: text('measured_where'),
    disturbance: text('disturbance').notNull(),
    note: text('note'),
  },
  (t) => [...entityRules('wheelset', t), refersTo({ caseId: t.caseId, ref: t.vehicle }, vehicle)],
);
