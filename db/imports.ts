import { and, eq } from 'drizzle-orm';
import { z } from 'zod';
import type { ColumnMapping } from '~/lib/case/imports/mapping';
import type { Json } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { insertEntities } from './entities';
import type { Fields } from './fields';
import { newId } from './id';
import type { Db } from './open';
import { freshReading, insertReadings, type NewReading } from './readings';
import { importMapping, stagedImport } from './schema';

export const IMPORT_KINDS = ['consist', 'stations', 'line', 'recorder'] as const;
export type ImportKind = (typeof IMPORT_KINDS)[number];

/** What an uploaded file waits to become: rows of an import, an outline, a reference shape. */
export const STAGED_KINDS = [...IMPORT_KINDS, 'trace', 'ownShape'] as const;
export type StagedKind = (typeof STAGED_KINDS)[number];

export type StagedImport<K extends StagedKind = ImportKind> = {
  readonly id: string;
  readonly caseId: string;
  readonly kind: K;
  readonly fileName: string;
  /** The file itself, in the file store. */
  readonly sha256: string;
  readonly mapping: ColumnMapping | null;
  readonly createdAt: string;
};

export type NewStagedImport = Pick<StagedImport<StagedKind>, 'kind' | 'fileName' | 'sha256'> & {
  readonly mapping?: ColumnMapping | null;
};

const mappingSchema = z.record(z.string(), z.object({ target: z.string(), unit: z.string().nullable() }));

/** Notes an uploaded file that waits to be confirmed. The case does not change, so the log has no entry. */
export function stageImport(db: Db, caseId: string, given: NewStagedImport): string {
  const id = newId();
  db.insert(stagedImport)
    .values({
      id,
      caseId,
      kind: given.kind,
      fileName: given.fileName,
      sha256: given.sha256,
      mapping: given.mapping == null ? null : JSON.stringify(given.mapping),
      createdAt: new Date().toISOString(),
    })
    .run();
  return id;
}

/** The staged import, or null when it was confirmed or dropped meanwhile. */
export function readStagedImport(db: Db, caseId: string, id: string): StagedImport<StagedKind> | null {
  const row = db
    .select()
    .from(stagedImport)
    .where(and(eq(stagedImport.caseId, caseId), eq(stagedImport.id, id)))
    .get();
  if (row === undefined) return null;
  return {
    id: row.id,
    caseId: row.caseId,
    kind: z.enum(STAGED_KINDS).parse(row.kind),
    fileName: row.fileName,
    sha256: row.sha256,
    mapping: row.mapping === null ? null : mappingSchema.parse(JSON.parse(row.mapping)),
    createdAt: row.createdAt,
  };
}

/** Keeps the column matching as far as it has come. */
export function setStagedMapping(db: Db, caseId: string, id: string, mapping: ColumnMapping): void {
  db.update(stagedImport)
    .set({ mapping: JSON.stringify(mapping) })
    .where(and(eq(stagedImport.caseId, caseId), eq(stagedImport.id, id)))
    .run();
}

export function dropStagedImport(db: Db, caseId: string, id: string): void {
  db.delete(stagedImport)
    .where(and(eq(stagedImport.caseId, caseId), eq(stagedImport.id, id)))
    .run();
}

const normalRailroad = (railroad: string): string => railroad.trim().toLowerCase();

/** Remembers the railroad's own column names for the next file of this kind. */
export function rememberMapping(
  db: Db,
  railroad: string,
  importKind: ImportKind,
  mapping: ColumnMapping,
): void {
  const set = { mapping: JSON.stringify(mapping), updatedAt: new Date().toISOString() };
  db.insert(importMapping)
    .values({ railroad: normalRailroad(railroad), importKind, ...set })
    .onConflictDoUpdate({ target: [importMapping.railroad, importMapping.importKind], set })
    .run();
}

export function recallMapping(db: Db, railroad: string, importKind: ImportKind): ColumnMapping | null {
  const row = db
    .select()
    .from(importMapping)
    .where(
      and(eq(importMapping.railroad, normalRailroad(railroad)), eq(importMapping.importKind, importKind)),
    )
    .get();
  return row === undefined ? null : mappingSchema.parse(JSON.parse(row.mapping));
}

/** One row of a file: a record and the readings on it. */
export type ImportRow = {
  readonly fields: Fields;
  readonly readings: readonly Omit<NewReading, 'subject'>[];
};

export type ImportResult = { readonly ids: readonly string[]; readonly readingIds: readonly string[] };

/** Thrown when a staged import was already confirmed or dropped: the app says so and imports nothing. */
export class StagedImportGone extends Error {
  constructor() {
    super('This file was already imported or dropped. Look at the list, or upload it again.');
  }
}

/** Uses up a staged import within the transaction that imports it, so that it cannot be imported twice. */
export function takeStaged(tx: Tx, caseId: string, id: string): { fileName: string; sha256: string } {
  const row = tx
    .delete(stagedImport)
    .where(and(eq(stagedImport.caseId, caseId), eq(stagedImport.id, id)))
    .returning({ fileName: stagedImport.fileName, sha256: stagedImport.sha256 })
    .get();
  if (row === undefined) throw new StagedImportGone();
  return row;
}

/** Adds the vehicles of a staged consist file with their readings: all or none, one entry of the log. */
export const commitConsist = (
  db: Db,
  caseId: string,
  stagedImportId: string,
  rows: readonly ImportRow[],
  actor: Actor,
): ImportResult => commitRows(db, caseId, 'vehicle', stagedImportId, rows, actor);

/** Adds the stations of a staged file with their readings: all or none, one entry of the log. */
export const commitStations = (
  db: Db,
  caseId: string,
  stagedImportId: string,
  rows: readonly ImportRow[],
  actor: Actor,
): ImportResult => commitRows(db, caseId, 'station', stagedImportId, rows, actor);

/** Adds the rows of a line's profile with their readings: all or none, one entry of the log. */
export const commitLine = (
  db: Db,
  caseId: string,
  stagedImportId: string,
  rows: readonly ImportRow[],
  actor: Actor,
): ImportResult => commitRows(db, caseId, 'lineStretch', stagedImportId, rows, actor);

function commitRows(
  db: Db,
  caseId: string,
  kind: 'vehicle' | 'station' | 'lineStretch',
  stagedImportId: string,
  rows: readonly ImportRow[],
  actor: Actor,
): ImportResult {
  return write(db, caseId, actor, (tx, at) => {
    const file = takeStaged(tx, caseId, stagedImportId);
    const entities = insertEntities(
      tx,
      caseId,
      kind,
      rows.map((row) => row.fields),
      at,
    );
    const readings = entities.flatMap(({ id }, index) =>
      (rows[index]?.readings ?? []).map((given) => freshReading({ ...given, subject: { kind, id } }, at)),
    );
    insertReadings(tx, caseId, readings);
    const after: Json = { file, rows: entities, readings };
    return {
      result: { ids: entities.map((entity) => entity.id), readingIds: readings.map((row) => row.id) },
      change: { action: 'import', subject: { kind, id: null }, before: null, after },
    };
  });
}
