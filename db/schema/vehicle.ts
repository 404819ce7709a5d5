import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules } from './entity';

export const vehicle = sqliteTable(
  'vehicle',
  {
    ...entityColumns(),
    position: integer('position').notNull(),
    mark: text('mark').notNull(),
    number: text('number').notNull(),
    type: text('type').notNull(),
    load: text('load'),
    lading: text('lading'),
    hazmat: integer('hazmat', { mode: 'boolean' }),
    leadingEnd: text('leading_end'),
    derailed: integer('derailed', { mode: 'boolean' }),
    firstDerailed: integer('first_derailed', { mode: 'boolean' }),
    derailedTrucks: text('derailed_trucks'),
    derailedAxles: text('derailed_axles'),
    derailedSide: text('derailed_side'),
    note: text('note'),
  },
  (t) => entityRules('vehicle', t),
);
