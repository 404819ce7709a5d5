import { sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { vehicle } from './vehicle';

export const truck = sqliteTable(
  'truck',
  {
    ...entityColumns(),
    vehicle: text('vehicle').notNull(),
    end: text('end').notNull(),
    design: text('design'),
    sideBearings: text('side_bearings'),
    measuredWhere: text('measured_where'),
    disturbance: text('disturbance').notNull(),
    note: text('note'),
  },
  (t) => [...entityRules('truck', t), refersTo({ caseId: t.caseId, ref: t.vehicle }, vehicle)],
);
