import { sql } from 'drizzle-orm';
import { blob, check, index, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { STANDARD_SHAPES, type StandardShape } from '~/lib/case/trace';
import { entityColumns, removalCheck } from './entity';
import { oneOf } from './one-of';

/**
 * A reference shape the users brought. Only its removal is ever changed and no row is deleted
 * (triggers in the migrations); `points` are kept as those of a trace.
 */
export const ownShape = sqliteTable(
  'own_shape',
  {
    ...entityColumns(),
    shape: text('shape').$type<StandardShape>().notNull(),
    name: text('name').notNull(),
    source: text('source').notNull(),
    sha256: text('sha256').notNull(),
    fileName: text('file_name').notNull(),
    points: blob('points', { mode: 'buffer' }).notNull(),
    pointsSha256: text('points_sha256').notNull(),
  },
  (t) => [
    index('own_shape_case').on(t.caseId, t.sortOrder),
    removalCheck('own_shape', t),
    check('own_shape_shape', sql`${t.shape} in (${oneOf(STANDARD_SHAPES)})`),
    check('own_shape_sha256', sql`length(${t.sha256}) = 64 and length(${t.pointsSha256}) = 64`),
    check('own_shape_points_whole', sql`length(${t.points}) > 0 and length(${t.points}) % 16 = 0`),
  ],
);
