import { and, asc, eq } from 'drizzle-orm';
import { caseKind, KINDS } from '~/lib/case/kinds';
import { ENTITY_KINDS, type CaseRecord } from '~/lib/case/record';
import { sha256Hex, type Json } from '~/lib/custody/canonical';
import { readEntities } from './entities';
import { fieldsOf } from './fields';
import { readJudgements, readStandings } from './narrative';
import type { Db } from './open';
import { keptOwnShapes } from './own-shapes';
import { readPhotos } from './photos';
import { keptRailroadLimits } from './railroad-limits';
import { readReadings } from './readings';
import { readRecorderRuns } from './recorder';
import type { Kept } from './replayed';
import { caseFile, narrative, recorderChannel, recorderChunk } from './schema';
import { keptTraces } from './traces';

export type KeptKind = { readonly kind: string; readonly words: string; readonly rows: readonly Kept[] };

/** Everything that is kept of a case now, read from its tables and not from memory, to hold against the log. */
export const keptRows = (db: Db, caseId: string): readonly KeptKind[] => [
  { kind: 'case', words: 'case', rows: caseRows(db, caseId) },
  ...ENTITY_KINDS.map((kind) => ({
    kind,
    words: KINDS[kind].name.toLowerCase(),
    rows: readEntities(db, caseId, kind).map(({ fields, ...row }) => ({ ...fields, ...row })),
  })),
  { kind: 'reading', words: 'reading', rows: readReadings(db, caseId).map((row) => ({ ...row })) },
  { kind: 'photo', words: 'photo', rows: readPhotos(db, caseId).map((row) => ({ ...row })) },
  {
    kind: 'recorderRun',
    words: 'recorder run',
    rows: readRecorderRuns(db, caseId).map((run) => ({ ...run, channels: channelsOf(db, run) })),
  },
  { kind: 'trace', words: 'outline', rows: keptTraces(db, caseId) },
  { kind: 'ownShape', words: 'reference shape', rows: keptOwnShapes(db, caseId) },
  {
    kind: 'railroadLimits',
    words: 'text of the railroad’s own limits',
    rows: keptRailroadLimits(db, caseId),
  },
  { kind: 'narrative', words: 'text of the investigator', rows: narrativeRows(db, caseId) },
  {
    kind: 'standing',
    words: 'decision on the explanation',
    rows: readStandings(db, caseId).map((row) => ({ ...row, id: row.explanation })),
  },
  {
    kind: 'judgement',
    words: 'judgement',
    rows: readJudgements(db, caseId).map((row) => ({ ...row, id: row.path })),
  },
];

const caseRows = (db: Db, caseId: string): readonly Kept[] =>
  db
    .select()
    .from(caseFile)
    .where(eq(caseFile.id, caseId))
    .all()
    .map((row) => ({ ...fieldsOf(caseKind, row), id: row.id }));

const narrativeRows = (db: Db, caseId: string): readonly Kept[] =>
  db
    .select()
    .from(narrative)
    .where(eq(narrative.caseId, caseId))
    .all()
    .map(({ caseId: _, ...texts }) => ({ ...texts, id: 'narrative' }));

/** The hash of the samples is computed anew. */
const channelsOf = (db: Db, { id }: CaseRecord['recorderRuns'][number]): Json =>
  db
    .select()
    .from(recorderChannel)
    .where(eq(recorderChannel.runId, id))
    .orderBy(asc(recorderChannel.sortOrder))
    .all()
    .map(({ channel, unit }) => {
      const chunks = db
        .select({ samples: recorderChunk.samples })
        .from(recorderChunk)
        .where(and(eq(recorderChunk.runId, id), eq(recorderChunk.channel, channel)))
        .orderBy(asc(recorderChunk.chunk))
        .all();
      return { channel, unit, samplesSha256: sha256Hex(Buffer.concat(chunks.map(({ samples }) => samples))) };
    });
