import { sql } from 'drizzle-orm';
import { blob, check, integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { entityColumns, entityRules, refersTo } from './entity';
import { vehicle } from './vehicle';

export const recorderRun = sqliteTable(
  'recorder_run',
  {
    ...entityColumns(),
    name: text('name').notNull(),
    vehicleId: text('vehicle_id'),
    fileName: text('file_name').notNull(),
    sha256: text('sha256').notNull(),
    rows: integer('rows').notNull(),
    clockOffsetS: real('clock_offset_s').notNull(),
    note: text('note').notNull(),
  },
  (t) => [
    ...entityRules('recorder_run', t),
    refersTo({ caseId: t.caseId, ref: t.vehicleId }, vehicle),
    check('recorder_run_sha256', sql`length(${t.sha256}) = 64`),
  ],
);

/** Which channels a run has. `samplesSha256` seals the samples in the log of the case. */
export const recorderChannel = sqliteTable(
  'recorder_channel',
  {
    runId: text('run_id')
      .notNull()
      .references(() => recorderRun.id),
    channel: text('channel').notNull(),
    unit: text('unit').notNull(),
    sortOrder: integer('sort_order').notNull(),
    samplesSha256: text('samples_sha256').notNull(),
  },
  (t) => [primaryKey({ columns: [t.runId, t.channel] })],
);

/** Samples of one channel as 64-bit floats, little-endian, in order; NaN where the recorder wrote nothing. */
export const recorderChunk = sqliteTable(
  'recorder_chunk',
  {
    runId: text('run_id')
      .notNull()
      .references(() => recorderRun.id),
    channel: text('channel').notNull(),
    chunk: integer('chunk').notNull(),
    samples: blob('samples', { mode: 'buffer' }).notNull(),
  },
  (t) => [
    primaryKey({ columns: [t.runId, t.channel, t.chunk] }),
    check('recorder_chunk_whole', sql`length(${t.samples}) > 0 and length(${t.samples}) % 8 = 0`),
  ],
);
