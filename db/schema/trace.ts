import { sql } from 'drizzle-orm';
import { blob, check, index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { DISTURBANCES, type Disturbance } from '~/lib/case/record';
import { TRACED_SHAPES, type Trace, type TracedShape } from '~/lib/case/trace';
import { entityColumns, refersTo, removalCheck } from './entity';
import { instrument } from './instrument';
import { oneOf } from './one-of';
import { person } from './person';

/**
 * An outline as it was traced. The line, how it was made and the file it came from are never
 * changed and no row is deleted (triggers in the migrations). `points` are x, y pairs in mm as
 * 64-bit floats, little-endian; `pointsSha256` seals them in the log of the case. `making`,
 * `uncertainty` and `hand` are JSON.
 */
export const trace = sqliteTable(
  'trace',
  {
    ...entityColumns(),
    shape: text('shape').$type<TracedShape>().notNull(),
    subjectKind: text('subject_kind').$type<Trace['subject']['kind']>().notNull(),
    subjectId: text('subject_id').notNull(),
    side: text('side').$type<Trace['side']>().notNull(),
    behindMm: real('behind_mm'),
    sha256: text('sha256').notNull(),
    fileName: text('file_name').notNull(),
    making: text('making').notNull(),
    points: blob('points', { mode: 'buffer' }).notNull(),
    pointsSha256: text('points_sha256').notNull(),
    uncertainty: text('uncertainty').notNull(),
    mirrored: integer('mirrored', { mode: 'boolean' }).notNull(),
    hand: text('hand'),
    distanceRunKm: real('distance_run_km'),
    instrumentId: text('instrument_id'),
    personId: text('person_id'),
    takenAt: text('taken_at'),
    disturbance: text('disturbance').$type<Disturbance>().notNull(),
    note: text('note').notNull(),
  },
  (t) => [
    index('trace_case').on(t.caseId, t.sortOrder),
    removalCheck('trace', t),
    refersTo({ caseId: t.caseId, ref: t.instrumentId }, instrument),
    refersTo({ caseId: t.caseId, ref: t.personId }, person),
    check('trace_shape', sql`${t.shape} in (${oneOf(TRACED_SHAPES)})`),
    check(
      'trace_subject',
      sql`(${t.shape} = 'wheel' and ${t.subjectKind} = 'wheelset') or (${t.shape} = 'rail' and ${t.subjectKind} = 'rail') or (${t.shape} = 'point' and ${t.subjectKind} = 'turnout')`,
    ),
    check(
      'trace_behind',
      sql`(${t.shape} = 'point' and ${t.behindMm} is not null and ${t.behindMm} >= 0) or (${t.shape} <> 'point' and ${t.behindMm} is null)`,
    ),
    check('trace_side', sql`${t.side} in ('left', 'right')`),
    check('trace_sha256', sql`length(${t.sha256}) = 64 and length(${t.pointsSha256}) = 64`),
    check('trace_points_whole', sql`length(${t.points}) > 0 and length(${t.points}) % 16 = 0`),
    check('trace_distance', sql`${t.distanceRunKm} is null or ${t.distanceRunKm} >= 0`),
    check('trace_disturbance', sql`${t.disturbance} in (${oneOf(DISTURBANCES)})`),
  ],
);
