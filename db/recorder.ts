import { and, asc, eq } from 'drizzle-orm';
import type { RecorderRun } from '~/lib/case/record';
import { recorderChannel as channelOf } from '~/lib/case/recorder';
import { sha256Hex } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import { nextOrder } from './next-order';
import { takeStaged } from './imports';
import type { Db } from './open';
import { setRemoved, type Removable } from './removal';
import { fromSamples, toSamples } from './samples';
import { recorderChannel, recorderChunk, recorderRun } from './schema';

export type NewRecorderRun = Pick<
  RecorderRun,
  'name' | 'vehicleId' | 'fileName' | 'sha256' | 'clockOffsetS' | 'note'
> & {
  /** The staged file this comes from; it is used up in the same transaction. */
  readonly stagedImportId?: string;
};

export type Series = {
  /** Id of a channel in lib/case/recorder. */
  readonly channel: string;
  /** The unit the file gave it in. */
  readonly unit: string;
  /** In the canonical unit of the channel's dimension; NaN where the recorder wrote nothing. */
  readonly values: Float64Array;
};

/** A chunk is one row: 128 KiB, so that no row needs the whole series in memory. */
const CHUNK = 16_384;

/** Adds a run with all its samples, all or none. Every series has the same length. */
export function addRecorderRun(
  db: Db,
  caseId: string,
  meta: NewRecorderRun,
  series: readonly Series[],
  actor: Actor,
): string {
  const rows = series[0]?.values.length ?? 0;
  if (rows === 0) throw new Error('A run needs at least one sample.');
  for (const { channel, values } of series) {
    if (channelOf(channel) === undefined) throw new Error(`There is no recorder channel ${channel}.`);
    if (values.length !== rows) throw new Error(`Channel ${channel} is not as long as the others.`);
  }
  const sealed = series.map(({ channel, unit, values }) => {
    const samples = toSamples(values);
    return { channel, unit, samples, samplesSha256: sha256Hex(samples) };
  });
  return write(db, caseId, actor, (tx, at) => {
    if (meta.stagedImportId !== undefined) takeStaged(tx, caseId, meta.stagedImportId);
    const added = {
      id: newId(),
      name: meta.name,
      vehicleId: meta.vehicleId,
      fileName: meta.fileName,
      sha256: meta.sha256,
      rows,
      clockOffsetS: meta.clockOffsetS,
      note: meta.note,
    };
    tx.insert(recorderRun)
      .values({ ...added, caseId, sortOrder: nextOrder(tx, caseId, recorderRun), createdAt: at })
      .run();
    sealed.forEach(({ channel, unit, samples, samplesSha256 }, sortOrder) => {
      tx.insert(recorderChannel).values({ runId: added.id, channel, unit, sortOrder, samplesSha256 }).run();
      for (let chunk = 0; chunk * CHUNK < rows; chunk += 1)
        tx.insert(recorderChunk)
          .values({
            runId: added.id,
            channel,
            chunk,
            samples: samples.subarray(chunk * CHUNK * 8, (chunk + 1) * CHUNK * 8),
          })
          .run();
    });
    const channels = sealed.map(({ channel, unit, samplesSha256 }) => ({ channel, unit, samplesSha256 }));
    return {
      result: added.id,
      change: {
        action: 'import',
        subject: { kind: 'recorderRun', id: added.id },
        before: null,
        after: { ...added, channels },
      },
    };
  });
}

/** All samples of a run by channel id, in the canonical units of the channels' dimensions. */
export function readRecorderRun(db: Db, runId: string): Readonly<Record<string, Float64Array>> {
  const channels = db
    .select()
    .from(recorderChannel)
    .where(eq(recorderChannel.runId, runId))
    .orderBy(asc(recorderChannel.sortOrder))
    .all();
  return Object.fromEntries(
    channels.map(({ channel }) => {
      const chunks = db
        .select({ samples: recorderChunk.samples })
        .from(recorderChunk)
        .where(and(eq(recorderChunk.runId, runId), eq(recorderChunk.channel, channel)))
        .orderBy(asc(recorderChunk.chunk))
        .all();
      return [channel, fromSamples(Buffer.concat(chunks.map((chunk) => chunk.samples)))];
    }),
  );
}

const removable = (id: string): Removable => ({
  table: recorderRun,
  kind: 'recorderRun',
  id,
  name: 'recorder run',
});

/** Takes the run out of the case, with the reason; its samples stay and the run can be restored. */
export function removeRecorderRun(db: Db, caseId: string, runId: string, reason: string, actor: Actor): void {
  setRemoved(db, caseId, removable(runId), reason, actor);
}

export function restoreRecorderRun(db: Db, caseId: string, runId: string, actor: Actor): void {
  setRemoved(db, caseId, removable(runId), null, actor);
}

/** All runs of the case in their order, removed ones included; samples are read by `readRecorderRun`. */
export function readRecorderRuns(db: Db | Tx, caseId: string): readonly RecorderRun[] {
  return db
    .select()
    .from(recorderRun)
    .where(eq(recorderRun.caseId, caseId))
    .orderBy(asc(recorderRun.sortOrder))
    .all()
    .map((row) => ({
      id: row.id,
      name: row.name,
      vehicleId: row.vehicleId,
      fileName: row.fileName,
      sha256: row.sha256,
      rows: row.rows,
      channels: Object.fromEntries(
        db
          .select()
          .from(recorderChannel)
          .where(eq(recorderChannel.runId, row.id))
          .orderBy(asc(recorderChannel.sortOrder))
          .all()
          .map(({ channel, unit }) => [channel, unit]),
      ),
      clockOffsetS: row.clockOffsetS,
      note: row.note,
      removed: row.removedAt === null ? null : { at: row.removedAt, reason: row.removedReason ?? '' },
      createdAt: row.createdAt,
    }));
}
